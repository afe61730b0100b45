using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Measuring;
using NameBand.Names;

namespace NameBand.Pipeline.Ways;

/// <summary>What a job's folder holds of measures of the machine's letters, and what is still to be measured.</summary>
internal static class KeyedMeasures
{
    /// <summary>Below so many names there is nothing to choose: all of them are sewn anyway.</summary>
    private const int FewNames = 3;

    public static Result<LetterKnowledge> Read(BandJob job, MeasuredAlphabets? alphabets)
    {
        var problems = new List<Problem>();
        var lengths = SewnLengths.Read(job.Folder, SewingDirection.FirstLetterFirst(job.Letters));
        problems.AddRange(lengths.Problems);
        var lines = new List<(double HeightMm, LineSet Set)>();

        // Lines are read beside the alphabet that measure made of them, but not beside one written by hand.
        if (alphabets is null || IsMadeByMeasure(job))
        {
            foreach (double height in job.Letters.Sizes.Select(s => s.Mm).Distinct()
                .Where(h => InnerFile.IsThere(job.Folder, LineSheet.Name(h))))
            {
                var sheet = LineSheet.Read(job.Folder, LineSheet.Name(height));
                problems.AddRange(sheet.Problems);
                if (sheet.Value is { } set && set.Lines.Any(l => l.LengthMm is not null))
                {
                    lines.Add((height, set));
                }
            }
        }

        if (lengths.Value is null || problems.Exists(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<LetterKnowledge>(problems);
        }

        var known = LetterKnowledge.Of(job.Letters, alphabets, lines, lengths.Value, First(job.Letters));
        problems.AddRange(Unsaid(job.Letters, lengths.Value));
        return known with { Problems = [.. problems, .. known.Problems] };
    }

    /// <summary>
    /// Letters that were measured at a height the machine does not have are of another machine. Where something is sewn already
    /// that is said,
    /// and nothing stops.
    /// </summary>
    public static IEnumerable<Problem> OtherHeights(LettersSettings letters, MeasuredAlphabets? alphabets, bool isBegun)
    {
        foreach (var (heightMm, line) in alphabets?.StatedHeightsMm.Where(s => letters.Sizes.All(o => Math.Abs(o.Mm - s.HeightMm) > 0.05))
            ?? [])
        {
            var where = new Where(letters.Alphabet, line, Key: "height_mm");
            Said found =
                $"Letters {heightMm:0.##} mm high stand here, and the machine has {Wording.List([.. letters.Sizes.Select(s => s.InMillimetres())])}.";
            Said mend =
                $"Add \"{heightMm:0.##} mm\" to letters.sizes if it has that height too; else take the lines of that height out, or measure this machine’s letters (measure JOB).";
            yield return isBegun ? Problem.NeedsPerson(where, found, mend) : Problem.CannotUse(where, found, mend);
        }
    }

    /// <summary>The setting that lengths were sewn at where nothing else is said.</summary>
    private static SizeStep First(LettersSettings letters) =>
        new(letters.Sizes[0].Mm, letters.Spacings.IsEmpty ? letters.Gap?.Mm ?? 0 : letters.Spacings[0].Mm);

    private static IEnumerable<Problem> Unsaid(LettersSettings letters, SewnLengths lengths)
    {
        bool isOpen(SewnLength l) =>
            (letters.Sizes.Length > 1 && l.HeightMm is null) || (letters.Spacings.Length > 1 && l.SpacingMm is null);
        if (lengths.All.FirstOrDefault(isOpen) is { } open)
        {
            Said gap = letters.Spacings.IsEmpty ? "" : (Said)$" and gaps of {First(letters).GapMm:0.##} mm";
            yield return Problem.Note(
                new Where(SewnLengths.FileName, open.FileLine),
                $"{lengths.All.Count(isOpen)} lengths do not say at which setting they were sewn: letters {First(letters).HeightMm:0.##} mm high{gap} are assumed, the first of the job.",
                "If they were sewn at another setting, add the columns size_mm and gap_mm, as key-in.csv has them.");
        }
    }

    /// <summary>The names to sew on a scrap first; none once enough is known.</summary>
    public static ImmutableArray<Name> ToMeasure(LetterKnowledge known, ImmutableArray<Name> names, SizeStep step)
    {
        if (known.IsMeasured || names.IsEmpty)
        {
            return [];
        }

        var fit = names.Where(n => Letters.Of(n.Text).Count > 1).ToList();
        return [.. known.First([.. fit.Select(n => known.Keys.Of(n.Text))], step, LetterKnowledge.EnoughNames).Select(i => fit[i])];
    }

    /// <summary>What to measure before the plan can be relied on.</summary>
    public static IEnumerable<Problem> Asked(BandJob job, LetterKnowledge known, ImmutableArray<Name> toMeasure, NameComposer composer)
    {
        if (toMeasure.IsEmpty)
        {
            yield break;
        }

        double half = toMeasure.Max(n => composer.Foretell(composer.Keys.Of(n.Text)) is var told ? (told.HighMm - told.LowMm) / 2 : 0);
        string names = string.Join(", ", toMeasure.Select(n => $"“{PlainText.Short(n.Text)}”"));
        Said so = known.NamesRead == 0
            ? "The machine’s letters are not measured yet: lengths are those of letters in general"
            : (Said)$"Of {LetterKnowledge.EnoughNames} names to measure {known.NamesRead} {(known.NamesRead == 1 ? "is" : "are")} measured: lengths are still uncertain";
        string columns = job.Letters.Sizes.Length > 1 || job.Letters.Spacings.Length > 1
            ? "name,measured_mm,size_mm,gap_mm,sewn_on" : "name,measured_mm,sewn_on";
        yield return Problem.NeedsPerson(
            new Where(job.Letters.Alphabet),
            $"{so}, and a name may come out {half:0} mm longer or shorter. Draw no start marks yet.",
            toMeasure.Length < FewNames
                ? (Said)$"Sew on a scrap and measure: {names}, with {Setting(composer)}. Write the lengths into {SewnLengths.FileName} ({columns}, the last one scrap) and run make again."
                : $"Sew these three on a scrap of the same cloth and backing, with {Setting(composer)}, measure them after pressing, and write the lengths into {SewnLengths.FileName} ({columns}, the last one scrap): {names}. Then run make again.") with
        {
            IsBeforeSewing = true,
        };
    }

    private static Said Setting(NameComposer composer) => composer.Step.GapMm > 0
        ? (Said)$"letters {composer.Step.HeightMm:0.##} mm high and a gap of {composer.Step.GapMm:0.0} mm"
        : $"letters {composer.Step.HeightMm:0.##} mm high";

    private static bool IsMadeByMeasure(BandJob job)
    {
        using var reader = new StreamReader(InnerFile.Open(job.Folder, job.Letters.Alphabet));
        return (reader.ReadLine() ?? "").Contains("how", StringComparison.Ordinal);
    }
}

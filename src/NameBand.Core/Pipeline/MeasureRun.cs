using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Measuring;
using NameBand.MachineLetters.Spelling;
using NameBand.Names;
using NameBand.Output.Sheets;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>One run of measuring a machine's letters: writes the sheet, or reads it back and writes the alphabet.</summary>
internal sealed class MeasureRun
{
    private const int RarelyUsed = 2; // Times in the whole list: a letter used no more often hardly moves any length, and may be estimated.

    private readonly BandJob _job;
    private readonly double _heightMm;
    private readonly List<Problem> _problems = [];

    private MeasureRun(BandJob job, double heightMm)
    {
        _job = job;
        _heightMm = heightMm;
    }

    private string SheetName => LineSheet.Name(_heightMm);

    public static MeasureReport Run(string jobFolder, Length? size, int? mostLines)
    {
        var read = JobReader.Read(jobFolder);
        if (!read.IsUsable)
        {
            return Refused(0, read.Problems);
        }

        var letters = read.Value!.Letters;
        if (letters.Sizes.IsEmpty)
        {
            return Refused(0, [Problem.CannotUse(
                new Where("job.json", Key: "letters.sizes"), "The job does not say which letter heights the machine offers.",
                "Add \"letters\": { \"sizes\": [\"8 mm\", \"6 mm\"] } with the heights of its capitals, as you measure them on cloth.")]);
        }

        double height = size?.Mm ?? letters.Sizes[0].Mm;
        if (size is not null && letters.Sizes.All(s => Math.Abs(s.Mm - height) > 0.05))
        {
            return Refused(height, [Problem.CannotUse(
                new Where(Key: "--size"), $"{size.Value.InMillimetres()} is not among the sizes of the job.",
                $"Take one of {string.Join(", ", letters.Sizes.Select(s => s.InMillimetres()))}, or add it to letters.sizes.")]);
        }

        var taken = JobLock.Take(read.Value.Folder);
        using var held = taken.Value;
        return held is null ? Refused(height, taken.Problems) : new MeasureRun(read.Value, height).Run(mostLines);
    }

    private MeasureReport Run(int? mostLines)
    {
        var corrections = Corrections.Read(_job.Folder);
        var names = corrections.Value is null ? null : ListReader.Read(_job, corrections.Value);
        var shelf = new FaceShelf();
        var face = shelf.Open(_job.Lettering.Face, _job.Folder);
        var stopping = corrections.Problems.Concat(names?.Problems ?? []).Concat(face.Problems)
            .Where(p => p.Severity == Severity.CannotUse).ToList();
        if (stopping.Count > 0 || names?.Value is null || face.Value is null)
        {
            return Refused(_heightMm, stopping);
        }

        var known = ReadAlphabets();
        if (known is { IsUsable: false })
        {
            return Refused(_heightMm, known.Problems);
        }

        var has = MachineSpelling.Has(_job.Letters, known?.Value);
        var spelled = MachineSpelling.Check(names.Value, corrections.Value!, has, _ => _job.Letters.MarksByHand);
        var uses = spelled.Names.SelectMany(n => new PressedKeys(has).Of(n.Text)).GroupBy(l => l, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        var shapes = LetterShapes.Of(uses.Keys, face.Value, shelf);
        var priors = new Priors(
            _heightMm, _job.Letters.ReadingError.Mm, l => shapes.TryGetValue(l, out var shape) ? shape.Ink.WidthMm : null);
        if (uses.Count == 0)
        {
            return Refused(_heightMm, [Problem.CannotUse(
                new Where(_job.Lists[0]), "No name on the lists can be sewn with the machine’s letters.",
                "Run names on the job to see why.")]);
        }

        if (spelled.Held.Length > 0)
        {
            _problems.Add(Problem.Note(
                new Where("job.json", Key: "letters.has"),
                $"{spelled.Held.Length} names have letters that the machine is not known to have; they are not on the sheet.",
                "If it has them, add them to letters.has; what make offers for these names stands in its report."));
        }

        return InnerFile.IsThere(_job.Folder, SheetName)
            ? ReadBack(uses, priors, known?.Value)
            : WriteSheet(uses, priors, mostLines);
    }

    private MeasureReport WriteSheet(IReadOnlyDictionary<string, int> uses, Priors priors, int? mostLines)
    {
        var bounds = new LineBounds(
            MostLetters: Math.Min(new LineBounds().MostLetters, _job.Letters.Holds ?? int.MaxValue), MostLines: mostLines);
        double gap = _job.Letters.Gap?.Mm ?? (0.1 * _heightMm);
        double Rough(string letter) => ((priors.FaceWidthMm(letter) ?? 0.6) * _heightMm) + gap;
        var plan = LineDesign.Choose(uses, Rough, bounds);
        var lines = LineRuns.Together(plan.Lines, Rough, _job.Letters.Holds);
        if (plan.Left.Length > 0)
        {
            _problems.Add(Problem.Note(
                new Where(SheetName),
                $"With {plan.Lines.Length} lines these letters are left to be estimated by the proportions of {_job.Lettering.Face}: {string.Join(" ", plan.Left)}",
                "To have them measured, delete the sheet and allow more lines."));
        }
        else if (uses.Values.Count(n => n <= RarelyUsed) is var rare and > 5)
        {
            _problems.Add(Problem.Note(
                new Where(SheetName),
                $"{rare} of the {uses.Count} letters come only once or twice in all names.",
                $"To sew fewer lines, delete the sheet and run measure with --lines {Math.Max(10, plan.Lines.Length - rare)}: the rarest letters are then estimated by the proportions of {_job.Lettering.Face}."));
        }

        Write(SheetName, stream => stream.Write(Encoding.UTF8.GetBytes(LineSheet.Write(lines))));
        var printed = new List<string>();
        foreach (var paper in Paper.Both)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(SheetName)}-{paper.Word}.pdf");
            Write(name, stream => MeasureSheet.Write(stream, paper, _job.Title, _heightMm, lines, SheetName));
            printed.Add(name);
        }

        return new MeasureReport(
            ExitStatus.AllPlaced, _heightMm, SheetName, [.. printed], lines.Length, lines.Length, null, null,
            priors.ReadingErrorMm, false, [.. _problems]);
    }

    private MeasureReport ReadBack(IReadOnlyDictionary<string, int> uses, Priors priors, MeasuredAlphabets? known)
    {
        var sheet = LineSheet.Read(_job.Folder, SheetName);
        if (sheet.Value is null)
        {
            return Refused(_heightMm, sheet.Problems);
        }

        var unfilled = sheet.Value.Unfilled.ToList();
        _problems.AddRange(sheet.Problems);
        _problems.AddRange(unfilled.Select(u => Problem.NeedsPerson(
            new Where(SheetName, u.Row),
            $"Line {u.Line.Number}, “{Letters.Shown(u.Line.Text)}”, has no length yet.",
            "Sew and measure it; if the machine has no such letter, write none as its length.")));
        if (sheet.Value.Lines.All(l => l.LengthMm is null))
        {
            return Report(sheet.Value, unfilled.Count, null, null);
        }

        var solved = WidthSolver.Solve(sheet.Value.Lines, uses.Keys, priors);
        _problems.AddRange(solved.Suspects.Select(s => Told(s, sheet.Value)));
        if (solved.SpareLines == 0)
        {
            _problems.Add(Problem.Note(
                new Where(SheetName), "No measured line checks another, so a misreading would go unseen.",
                "Fill in the lines of mixed letters as well."));
        }

        bool isOurs = known is null || FirstLine(_job.Letters.Alphabet).Contains("how", StringComparison.Ordinal);
        if (!isOurs)
        {
            _problems.Add(Problem.NeedsPerson(
                new Where(_job.Letters.Alphabet), "This alphabet was written by hand, so it was left as it is.",
                "Rename it, or give another name in letters.alphabet, to have what was measured written there."));
            return Report(sheet.Value, unfilled.Count, solved, null);
        }

        var alphabets = known?.With(solved.Alphabet) ?? new MeasuredAlphabets([solved.Alphabet]);
        Write(_job.Letters.Alphabet, stream => stream.Write(Encoding.UTF8.GetBytes(AlphabetFile.Write(alphabets))));
        return Report(sheet.Value, unfilled.Count, solved, _job.Letters.Alphabet);
    }

    private Problem Told(Suspect suspect, LineSet sheet)
    {
        int row = sheet.Rows[sheet.Lines.IndexOf(suspect.Line)];
        return Problem.NeedsPerson(
            new Where(SheetName, row),
            $"Line {suspect.Line.Number}, “{Letters.Shown(suspect.Line.Text)}”, was measured as {suspect.Line.LengthMm:0.#} mm, and by all other lines it should be about {suspect.ExpectedMm:0.#} mm.",
            "Measure this line again; if the reading stands, sew it again. Then write the new length and run measure once more.");
    }

    private MeasureReport Report(LineSet sheet, int unfilled, Solved? solved, string? file) => new(
        _problems.Any(p => p.Severity == Severity.NeedsPerson) ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced,
        _heightMm, SheetName, [], sheet.Lines.Length, unfilled, solved?.Alphabet, file,
        solved?.ReadingErrorMm ?? _job.Letters.ReadingError.Mm, solved?.ErrorIsFound ?? false, [.. _problems]);

    private string FirstLine(string name)
    {
        using var reader = new StreamReader(InnerFile.Open(_job.Folder, name));
        return reader.ReadLine() ?? "";
    }

    private Result<MeasuredAlphabets>? ReadAlphabets() => InnerFile.IsThere(_job.Folder, _job.Letters.Alphabet)
        ? AlphabetFile.Read(_job.Folder, _job.Letters.Alphabet, _heightMm, _job.Letters.Gap?.Mm, 2 * _job.Letters.ReadingError.Mm)
        : null;

    private void Write(string name, Action<Stream> write)
    {
        using var content = new MemoryStream();
        write(content);
        WholeFile.Put(Path.Combine(_job.Folder, name), content.ToArray());
    }

    private static MeasureReport Refused(double heightMm, IEnumerable<Problem> problems) =>
        new(ExitStatus.CannotUse, heightMm, null, [], 0, 0, null, null, 0, false, [.. problems]);
}

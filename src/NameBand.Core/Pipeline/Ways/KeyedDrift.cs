using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Drift;
using NameBand.MachineLetters;
using NameBand.Names;
using NameBand.Pipeline.Resume;

namespace NameBand.Pipeline.Ways;

/// <summary>Sets out anew what is still to be sewn of typed names: after the ends that were measured, and into what lies bare.</summary>
internal static class KeyedDrift
{
    /// <param name="begun">Null until something is said to be sewn.</param>
    /// <param name="problems">What was found before; a list of its own.</param>
    /// <param name="shown">The plan in the out folder, where nothing but drift.csv says what is sewn.</param>
    public static Result<StripPlan> Taken(
        StripPlan plan, BandJob job, SewingProgress? begun, List<Problem> problems, IReadOnlyCollection<EarlierRound>? shown = null)
    {
        var read = DriftFile.Read(job.Folder);
        problems.AddRange(read.Problems);
        if (read.Value is null)
        {
            return Result.Fail<StripPlan>(problems);
        }

        bool forward = SewingDirection.FirstLetterFirst(job.Letters);
        var ends = read.Value.All;
        ends = [.. ends, .. Bare(plan, begun?.Log, forward).Where(b => ends.All(e => e.Number != b.Number))];
        bool isFixed = !plan.MaySetOut;
        if (isFixed && !read.Value.All.IsEmpty)
        {
            problems.Add(Problem.CannotUse(
                new Where(DriftFile.FileName), plan.Hem.IsCurved
                    ? "Names on a strip that is cut to the curve are not set out again after a measured end: the curve of the cloth "
                        + "holds each in its place."
                    : "Names that stand in two lines are not set out again after a measured end: what one line would win, the other has "
                        + "sewn.",
                $"Take {DriftFile.FileName} out of the folder, and begin each name at its own mark."));
            return Result.Fail<StripPlan>(problems);
        }

        if (plan.Hem.IsCurved && begun?.Log.Bare.Any() == true)
        {
            problems.Add(Problem.NeedsPerson(
                new Where(SewingLogFile.FileName),
                    "It says how much lies bare, and names on a strip that is cut to the curve are not set out again.",
                    "Begin each name at its own mark."));
        }

        if (ends.IsEmpty || isFixed)
        {
            return Result.Of(plan, problems);
        }

        var places = begun is not null
            ? new ShownPlaces(AsSewn(plan, begun), AreLaidOut: true) : shown is null ? null : new ShownPlaces(shown, AreLaidOut: false);
        ends = begun is null ? ends : [.. ends, .. SewnSince(plan, begun.Log, ends, places!.Rounds, forward)];
        var corrected = DriftCorrection.Apply(plan, ends, forward, job.Lettering.Spread, places);
        problems.AddRange(corrected.Problems);
        if (corrected.Value is null)
        {
            return Result.Fail<StripPlan>(problems);
        }

        problems.AddRange(corrected.Value.Rounds.Where(r => r.Sewn is not null).Select(r => Problem.Note(
            Said(ends),
            $"Round {r.Number}: {r.Sewn!.SewnNames} names are sewn and end {Math.Abs(r.Sewn.OffMm):0.0} mm "
                + $"{(r.Sewn.OffMm < 0 ? (Said)"before" : "behind")} their place. "
                + $"The rest is set out again with gaps of {r.GapMm:0.0} mm.")));
        return Result.Of(corrected.Value, problems);
    }

    private static Where Said(ImmutableArray<MeasuredEnd> ends) =>
        new(ends.Any(e => e.Where.File == DriftFile.FileName) ? DriftFile.FileName : ends[0].Where.File);

    /// <summary>Lengths said of the strip whose names nobody said to be sewn there.</summary>
    public static IEnumerable<Problem> NotSaidToBeSewn(
        BandJob job, NameList list, SewingLog? log, EarlierPlan? plan, ImmutableArray<SewnLength> lengths)
    {
        if (log is null && DriftFile.Read(job.Folder).Value is { All.IsEmpty: false })
        {
            yield break;
        }

        var sewn = plan?.Names.Where(n => log?.OfNames.IsSewn(n.Order) == true).Select(n => n.Text).ToHashSet(StringComparer.Ordinal) ?? [];
        var known = list.Names.Select(n => n.Text).ToHashSet(StringComparer.Ordinal);
        foreach (var told in lengths.Where(l => l.Name.Length > 0 && !sewn.Contains(l.Name)).GroupBy(l => known.Contains(l.Name)))
        {
            var first = told.First();
            int count = told.Count();
            Said names = Common.Said.Plain(string.Join(", ", told.Take(3).Select(l => $"“{PlainText.Short(l.Name)}”"))) + (count > 3 ? " and others" : "");
            Said which = count == 1 ? "This length says" : (Said)$"{count} lengths say";
            Said number = first.Number is { } n ? (Said)$"n{n.ToString(CultureInfo.InvariantCulture)}" : "n and the number of the name";
            yield return Problem.Note(
                new Where(SewnLengths.FileName, first.FileLine),
                $"{which} nothing of a scrap, and {(told.Key ? (Said)$"{names} {(count == 1 ? (Said)"is" : "are")} not said to be sewn" : $"no name {names} is to be sewn")}: "
                + $"{(count == 1 ? (Said)"it counts" : "they count")} for the letters and for no place on the strip.",
                told.Key ? (Said)$"What is on the strip, say so: sewn JOB {number}. What was sewn on a scrap gets the word {SewnLengths.ScrapWord} in its column sewn_on."
                    : $"What was sewn on a scrap gets the word {SewnLengths.ScrapWord} in its column sewn_on; else see how the list has the name.");
        }
    }

    /// <summary>Rounds as the plan shows them that is sewn from, names that were measured since as long as they are.</summary>
    private static List<EarlierRound> AsSewn(StripPlan plan, SewingProgress begun)
    {
        var laid = plan.Rounds.SelectMany(r => r.Names).ToDictionary(n => n.Order);
        EarlierName Now(EarlierName name) =>
            laid.GetValueOrDefault(name.Order) is { } now && Math.Abs(now.WidthMm - name.WidthMm) > Tolerance.ReadBackMm
            ? name with { ShownWidthMm = now.WidthMm, ShownStartMm = name.ShownStartMm + now.StartMm - name.StartMm } : name;
        return [.. begun.Plan.Rounds.Select(r =>
            r with { Segments = [.. r.Segments.Select(s => s with { Names = [.. s.Names.Select(Now)] })] })];
    }

    /// <summary>What was sewn after the last measured end of its round ends where the plan had it that it was sewn from.</summary>
    private static IEnumerable<MeasuredEnd> SewnSince(
        StripPlan plan, SewingLog log, ImmutableArray<MeasuredEnd> ends, IReadOnlyCollection<EarlierRound> shown, bool forward)
    {
        int before = 0;
        foreach (var round in plan.Rounds)
        {
            var names = (forward ? round.Names : round.Names.Reverse()).ToList();
            int last = before + names.FindLastIndex(n => log.OfNames.IsSewn(n.Order)) + 1;
            int measured = ends.Where(e => e.Number > before && e.Number <= before + names.Count).Select(e => e.Number)
                .DefaultIfEmpty(int.MaxValue).Max();
            if (last > measured && shown.FirstOrDefault(r => r.Number == round.Number) is { } was
                && was.Segments.SelectMany(s => s.Names).FirstOrDefault(n => n.Order == names[last - before - 1].Order) is { } name)
            {
                double end = forward ? name.ShownStartMm + name.ShownWidthMm : was.LengthMm - name.ShownStartMm;
                yield return new MeasuredEnd(last, "", end, 0) { Where = new Where(SewingLogFile.FileName) };
            }

            before += names.Count;
        }
    }

    /// <summary>What lies bare on the garment says where the last name that was sewn then ends.</summary>
    private static IEnumerable<MeasuredEnd> Bare(StripPlan plan, SewingLog? log, bool forward)
    {
        var turns = new Dictionary<int, MeasuredEnd>();
        foreach (var bare in log?.Bare ?? [])
        {
            int before = plan.Rounds.TakeWhile(r => r.Number != bare.Round).Sum(r => r.Names.Count());
            if (plan.Rounds.FirstOrDefault(r => r.Number == bare.Round) is not { } round)
            {
                continue;
            }

            int last = (forward ? round.Names : round.Names.Reverse()).ToList().FindLastIndex(n => bare.Sewn.Contains(n.Order));
            if (last >= 0)
            {
                turns[before + last + 1] =
                    new MeasuredEnd(before + last + 1, "", round.HemMm - bare.LeftMm, 0) { Where = new Where(SewingLogFile.FileName) };
            }
        }

        return turns.Values.OrderBy(e => e.Number);
    }
}

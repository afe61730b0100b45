using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout.Drift;

/// <summary>How far a strip is sewn, and how it came out.</summary>
/// <param name="SewnNames">Names sewn, from the end that is sewn first.</param>
/// <param name="SewnToMm">Where the last of them ended, from that end.</param>
/// <param name="OffMm">That less where it was planned to end.</param>
/// <param name="Factor">How much longer than planned the rest is expected to come out, as a factor near 1.</param>
public sealed record SewnSoFar(int SewnNames, double SewnToMm, double OffMm, double Factor);

/// <summary>
/// Sets the unsewn rest of a strip out again after the end of a sewn name has been measured, so that the strip still
/// ends at its hem.
/// </summary>
public static class DriftCorrection
{
    /// <summary>How much longer or shorter than planned sewn strips come out, as a standard deviation: our assumption.</summary>
    private const double UsualDriftPart = 0.01;

    /// <summary>How well the end of one name tells of the drift: a reading and one name's own unevenness.</summary>
    private const double EndErrorMm = 1;

    /// <summary>A measured end this far off, as a part of the strip, is a mistake and not drift.</summary>
    private const double MostDriftPart = 0.15;

    private const double NearMm = 30;

    /// <param name="forward">The strip is sewn from its left end; else from its right end.</param>
    /// <param name="spread">Slack goes between the names; else it stays at the end, and gaps are only ever made smaller.</param>
    public static Result<StripPlan> Apply(StripPlan plan, ImmutableArray<MeasuredEnd> ends, bool forward, bool spread)
    {
        var problems = new List<Problem>();
        var rounds = ImmutableArray.CreateBuilder<Round>(plan.Rounds.Length);
        int before = 0;
        foreach (var round in plan.Rounds)
        {
            int count = round.Names.Count();
            var here = ends.Where(e => e.Number > before && e.Number <= before + count).ToList();
            rounds.Add(here.Count == 0 ? round : Reset(plan, round, here, before, forward, spread, problems));
            before += count;
        }

        problems.AddRange(ends.Where(e => e.Number > before).Select(e => Problem.CannotUse(
            new Where(DriftFile.FileName, e.FileLine), FormattableString.Invariant($"There is no name {e.Number}; the last one is {before}."),
            "Write the number that stands before the name on the key-in sheet.")));
        if (problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<StripPlan>(problems);
        }

        var bySegment = rounds.SelectMany(r => r.Segments.Select(s => (Round: r, Segment: s))).ToDictionary(p => p.Segment.Number);
        var hoopings = plan.Hoopings.Select(h => h with
        {
            Segments = [.. h.Segments.Select(s => s with { Round = bySegment[s.Segment.Number].Round, Segment = bySegment[s.Segment.Number].Segment })],
        });
        return Result.Of(plan with { Rounds = rounds.ToImmutable(), Hoopings = [.. hoopings] }, problems);
    }

    private static Round Reset(
        StripPlan plan, Round round, List<MeasuredEnd> ends, int before, bool forward, bool spread, List<Problem> problems)
    {
        var names = (forward ? round.Names : round.Names.Reverse()).ToList();
        foreach (var end in ends)
        {
            Check(end, names[end.Number - before - 1], round, forward, problems);
        }

        var last = ends.MaxBy(e => e.Number)!;
        int sewn = last.Number - before;
        double planned = EndOf(names[sewn - 1], round, forward);
        double factor = Factor(last.EndMm, planned);
        var rest = names.Skip(sewn).ToList();
        double gap = Gap(plan, round, rest, last.EndMm, factor, spread, out double overMm);
        if (rest.Count > 0 && gap < round.GapMm / 2)
        {
            problems.Add(Problem.NeedsPerson(
                new Where(DriftFile.FileName, last.FileLine),
                FormattableString.Invariant($"After “{last.NameOr(names[sewn - 1])}” only {gap:0.0} mm are left between names, where {round.GapMm:0.0} mm were planned."),
                "Move the last names to another round, or sew them smaller."));
        }

        var moved = new Dictionary<int, PlacedName>();
        double at = last.EndMm;
        for (int i = 0; i < names.Count; i++)
        {
            // What is sewn lies where the cloth took it: drawn out or in as far as the measured end tells.
            double start = i < sewn ? StartOf(names[i], round, forward) * last.EndMm / planned : at + gap;
            double width = i < sewn ? names[i].WidthMm * last.EndMm / planned : names[i].WidthMm * factor;
            at = i < sewn ? at : start + width;
            moved[names[i].Order] = names[i] with { StartMm = start, WidthMm = width };
        }

        double length = round.HemMm + overMm;
        var placed = moved.ToDictionary(p => p.Key, p => forward ? p.Value : p.Value with { StartMm = length - p.Value.StartMm - p.Value.WidthMm });
        return round with
        {
            LengthMm = rest.Count == 0 ? round.LengthMm : length,
            GapMm = gap,
            Segments = [.. round.Segments.Select(s => Moved(plan, s, placed))],
            Sewn = new SewnSoFar(sewn, last.EndMm, last.EndMm - planned, factor),
        };
    }

    private static void Check(MeasuredEnd end, PlacedName name, Round round, bool forward, List<Problem> problems)
    {
        string text = name.Lettered.Name.Text;
        var where = new Where(DriftFile.FileName, end.FileLine);
        if (end.Name.Length > 0 && !string.Equals(end.Name, text, StringComparison.Ordinal))
        {
            problems.Add(Problem.CannotUse(
                where, FormattableString.Invariant($"Number {end.Number} is “{PlainText.Short(text)}” now and not “{PlainText.Short(end.Name)}”."),
                "See whether the list or the order has changed since this was sewn, and write the number on the newest sheet."));
            return;
        }

        double planned = EndOf(name, round, forward);
        if (Math.Abs(end.EndMm - planned) > NearMm + (MostDriftPart * planned))
        {
            problems.Add(Problem.CannotUse(
                where, FormattableString.Invariant($"“{PlainText.Short(text)}” was to end at {planned:0} mm, and {end.EndMm:0} mm is too far from that to be drift."),
                "Measure from the end of the strip that was sewn first to where the name ends, in millimetres."));
        }
    }

    /// <summary>
    /// The drift of the sewn part, believed the more the longer that part is: a millimetre in the first name says
    /// little, a centimetre in a metre much.
    /// </summary>
    private static double Factor(double endMm, double plannedMm)
    {
        double seen = (endMm / plannedMm) - 1;
        double doubt = EndErrorMm / plannedMm;
        double trust = UsualDriftPart * UsualDriftPart / ((UsualDriftPart * UsualDriftPart) + (doubt * doubt));
        return 1 + (trust * seen);
    }

    /// <summary>The gap that makes the rest end at the hem; none is smaller than nothing, and then the strip runs over.</summary>
    private static double Gap(StripPlan plan, Round round, List<PlacedName> rest, double endMm, double factor, bool spread, out double overMm)
    {
        double room = round.HemMm - endMm - rest.Sum(n => n.WidthMm * factor);
        double gaps = rest.Count + (plan.Hem.Closed ? 0.5 : 0);
        overMm = Math.Max(0, -room);
        double gap = rest.Count == 0 ? round.GapMm : Math.Max(0, room / gaps);
        return spread ? gap : Math.Min(gap, round.GapMm);
    }

    private static Segment Moved(StripPlan plan, Segment segment, Dictionary<int, PlacedName> placed)
    {
        ImmutableArray<PlacedName> names = [.. segment.Names.Select(n => placed[n.Order])];
        double start = Math.Min(segment.StartMm, names[0].StartMm);
        double end = Math.Max(segment.StartMm + segment.LengthMm, names[^1].EndMm);
        return segment with { StartMm = start, LengthMm = end - start, ClothStartMm = plan.OnClothMm(start), Names = names };
    }

    private static double StartOf(PlacedName name, Round round, bool forward) => forward ? name.StartMm : round.LengthMm - name.EndMm;

    private static double EndOf(PlacedName name, Round round, bool forward) => StartOf(name, round, forward) + name.WidthMm;

    private static string NameOr(this MeasuredEnd end, PlacedName name) =>
        PlainText.Short(end.Name.Length > 0 ? end.Name : name.Lettered.Name.Text);
}

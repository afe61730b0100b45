using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout.Drift;

/// <summary>
/// Sets the unsewn rest of a strip out again after the end of a sewn name has been measured, so that the strip still
/// ends at its hem.
/// </summary>
internal static class DriftCorrection
{
    /// <summary>How much longer or shorter than planned sewn strips come out, as a standard deviation: our assumption.</summary>
    private const double UsualDriftPart = 0.01;

    /// <summary>How well the end of one name tells of the drift: a reading and one name's own unevenness.</summary>
    private const double EndErrorMm = 1;

    /// <summary>A measured end this far off, as a part of the strip, is a mistake and not drift: our assumption.</summary>
    private const double MostDriftPart = 0.15;

    /// <summary>Near the strip's beginning that part is less than a slip of the tape or of the pins: our assumption.</summary>
    private const double NearMm = 30;

    /// <summary>A name that reaches so little into a place kept clear is not spoken of.</summary>
    private const double NearZoneMm = 1;

    /// <summary>As far off as an end may be measured and still be believed, where it was to lie so far along the strip.</summary>
    public static double MostOffMm(double alongMm) => NearMm + (MostDriftPart * alongMm);

    /// <param name="forward">The strip is sewn from its left end; else from its right end.</param>
    /// <param name="spread">Slack goes between the names; else it stays at the end, and gaps are only ever made smaller.</param>
    /// <param name="shown">Where the plan in the out folder shows its names: what is sewn and measured there stays there; null
    /// for none.</param>
    public static Result<StripPlan> Apply(
        StripPlan plan, ImmutableArray<MeasuredEnd> ends, bool forward, bool spread, ShownPlaces? shown = null)
    {
        var problems = new List<Problem>();
        var rounds = ImmutableArray.CreateBuilder<Round>(plan.Rounds.Length);
        int before = 0;
        foreach (var round in plan.Rounds)
        {
            int count = round.Names.Count();
            var now = round;
            var own = ends.Where(e => e.Number > before && e.Number <= before + count).OrderBy(e => e.Number).ToList();
            foreach (var end in own)
            {
                // Each end was sewn by the sheet that the ends before it had made.
                now = Reset(plan, now, end, before, (forward, spread), problems);
            }

            if (now != round)
            {
                now = shown?.Kept(now, forward, (segment, placed) => Moved(plan, segment, placed)) ?? now;
                problems.AddRange(OnClearPlaces(plan, now));
                if (now.Sewn is { } sewn && sewn.SewnNames < count
                    && GapBounds.Objection(own[^1].Where, Last(now, sewn, forward), now.GapMm, round.GapMm) is { } beyond)
                {
                    problems.Add(beyond);
                }
            }

            rounds.Add(now);
            before += count;
        }

        problems.AddRange(ends.Where(e => e.Number > before).Select(e => Problem.CannotUse(
            e.Where, $"There is no name {e.Number}; the last one is {before}.",
            "Write the number that stands before the name on the key-in sheet.")));
        if (problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<StripPlan>(problems);
        }

        var bySegment = rounds.SelectMany(r => r.Segments.Select(s => (Round: r, Segment: s))).ToDictionary(p => p.Segment.Number);
        var hoopings = plan.Hoopings.Select(h =>
        {
            // A segment that now begins elsewhere begins there on its cloth too.
            double first = ByMm(h.Segments[0]);
            return h with
            {
                OnClothMm = h.OnClothMm + first,
                Segments =
                [
                    .. h.Segments.Select(s => s with
                    {
                        Round = bySegment[s.Segment.Number].Round,
                        Segment = bySegment[s.Segment.Number].Segment,
                        XMm = s.XMm + ByMm(s) - first,
                    }),
                ],
            };
        });
        return Result.Of(plan with { Rounds = rounds.ToImmutable(), Hoopings = [.. hoopings] }, problems);

        double ByMm(HoopedSegment was) => plan.OnClothMm(bySegment[was.Segment.Number].Segment.StartMm - was.Segment.StartMm);
    }

    private static string Last(Round round, SewnSoFar sewn, bool forward) =>
        (forward ? round.Names : round.Names.Reverse()).ElementAt(sewn.SewnNames - 1).Lettered.Name.Text;

    /// <summary>Names that came to lie on a seam, a placket or another place that is kept clear.</summary>
    private static IEnumerable<Problem> OnClearPlaces(StripPlan plan, Round round)
    {
        var stretches = FreeInterval.Of(plan.Hem.WithNothingKeptFree(), round.Number);
        foreach (var name in round.Names.Where(n =>
            n.EndMm <= round.HemMm && !stretches.Any(s => n.StartMm >= s.StartMm - NearZoneMm && n.EndMm <= s.EndMm + NearZoneMm)))
        {
            yield return Problem.NeedsPerson(
                new Where(DriftFile.FileName),
                $"Set out after what was measured, “{PlainText.Short(name.Lettered.Name.Text)}” lies on a place that is kept clear, from {name.StartMm:0} to {name.EndMm:0} mm.",
                "Sew it past that place by hand and measure its end, or move it to another round.");
        }
    }

    private static Round Reset(
        StripPlan plan, Round round, MeasuredEnd end, int before, (bool Forward, bool Spread) how, List<Problem> problems)
    {
        var (forward, spread) = how;
        var names = (forward ? round.Names : round.Names.Reverse()).ToList();
        int sewn = end.Number - before;
        var earlier = round.Sewn ?? new SewnSoFar(0, 0, 0, 0, 1);
        double planned = EndOf(names[sewn - 1], round, forward);
        if (!Check(end, names[sewn - 1], planned, earlier, sewn, problems))
        {
            return round;
        }

        double part = (end.EndMm - earlier.SewnToMm) / (planned - earlier.SewnToMm);
        double plannedMm = earlier.PlannedMm + ((planned - earlier.SewnToMm) / earlier.Factor);
        double factor = Factor(end.EndMm, plannedMm);
        double more = factor / earlier.Factor;
        var rest = names.Skip(sewn).ToList();
        var (gap, overMm) = Gap(plan, round, rest, end.EndMm, more, spread);
        var placed = new Dictionary<int, PlacedName>();
        double length = rest.Count == 0 ? round.LengthMm : round.HemMm + overMm;
        double at = end.EndMm;
        for (int i = 0; i < names.Count; i++)
        {
            // What is sewn lies where the cloth took it: drawn out or in as far as the measured end tells.
            double was = StartOf(names[i], round, forward);
            double start = i < earlier.SewnNames ? was : i < sewn ? earlier.SewnToMm + ((was - earlier.SewnToMm) * part) : at + gap;
            double width = names[i].WidthMm * (i < earlier.SewnNames ? 1 : i < sewn ? part : more);
            at = i < sewn ? at : start + width;
            placed[names[i].Order] = names[i] with
            {
                StartMm = forward ? start : length - start - width,
                WidthMm = width,
                PlannedMm = names[i].PlannedMm ?? (names[i].StartMm, names[i].WidthMm),
            };
        }

        return round with
        {
            LengthMm = length,
            GapMm = gap,
            Segments = [.. round.Segments.Select(s => Moved(plan, s, placed))],
            Sewn = new SewnSoFar(sewn, end.EndMm, end.EndMm - planned, plannedMm, factor),
        };
    }

    private static bool Check(
        MeasuredEnd end, PlacedName name, double planned, SewnSoFar earlier, int sewn, List<Problem> problems)
    {
        string text = PlainText.Short(name.Lettered.Name.Text);
        var where = end.Where;
        if (end.Name.Length > 0 && !string.Equals(end.Name, name.Lettered.Name.Text, StringComparison.Ordinal))
        {
            problems.Add(Problem.CannotUse(
                where, $"Number {end.Number} is “{text}” now and not “{PlainText.Short(end.Name)}”.",
                "Check whether the list or the order has changed since this was sewn, and write the number on the newest sheet."));
        }
        else if (sewn == earlier.SewnNames)
        {
            problems.Add(Problem.CannotUse(
                where, $"The end of number {end.Number}, “{text}”, appears here a second time.",
                    "Keep the line that is right."));
        }
        else if (Math.Abs(end.EndMm - planned) > MostOffMm(planned) || end.EndMm <= earlier.SewnToMm)
        {
            problems.Add(Problem.CannotUse(
                where, $"“{text}” was to end at {planned:0} mm, and {end.EndMm:0} mm is too far from that to be drift.",
                "Measure from the end of the strip that was sewn first to where the name ends, in millimetres."));
        }
        else
        {
            return true;
        }

        return false;
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
    private static (double GapMm, double OverMm) Gap(
        StripPlan plan, Round round, List<PlacedName> rest, double endMm, double factor, bool spread)
    {
        double room = round.HemMm - plan.Hem.EndMarginMm - endMm - rest.Sum(n => n.WidthMm * factor);
        double gaps = rest.Count + (plan.Hem.Closed ? 0.5 : 0);
        double gap = rest.Count == 0 ? round.GapMm : Math.Max(0, room / gaps);
        return (spread ? gap : Math.Min(gap, round.GapMm), Math.Max(0, -room));
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
}

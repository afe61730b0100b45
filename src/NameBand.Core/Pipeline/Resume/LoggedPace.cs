using System.Collections.Immutable;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Pipeline.Ways;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>What the estimate says of one hooping.</summary>
internal readonly record struct ReckonedHooping(int Number, double MachineMinutes, double HandMinutes);

/// <summary>Learns from the sewing log.</summary>
internal static class LoggedPace
{
    /// <summary>All hoopings of a plan, with the hand work that <c>--hands</c> speaks of: hooping, setting straight, clipping and tearing away.</summary>
    public static ImmutableArray<ReckonedHooping> Reckoned(StripPlan plan, Estimate estimate, HandSettings hands)
    {
        var figures = estimate.ByNumber();
        return [.. plan.Hoopings.Select(Reckon)];

        ReckonedHooping Reckon(Hooping hooping)
        {
            int names = hooping.Segments.Sum(s => s.Segment.Names.Length);
            double byHand = hands.HoopingMinutes + (names * (hands.ClippingMinutesPerName + hands.TearAwayMinutesPerName));
            return new ReckonedHooping(hooping.Number, figures[hooping.Number].MachineMinutes, byHand * (1 + hands.RestAllowance));
        }
    }

    public static (LearnedPace? Machine, LearnedPace? Hands) Of(SewingLog? log, ImmutableArray<ReckonedHooping> hoopings)
    {
        if (log is null)
        {
            return (null, null);
        }

        var left = hoopings.Where(h => !log.IsSewn(h.Number)).ToList();
        var machine = PaceLearning.Learn(Timed(log, hoopings, null), left.Sum(h => h.MachineMinutes));
        var hands = PaceLearning.Learn(
            TimedByHand(log, hoopings),
            left.Sum(h => h.HandMinutes));
        return (machine.Timed > 0 ? machine : null, hands.Timed > 0 ? hands : null);
    }

    /// <summary>The whole job by the pace that the log shows; as it was where nothing was timed.</summary>
    public static Estimate AtOwnPace(Estimate estimate, SewingLog? log, StripPlan plan, HandSettings hands)
    {
        if (log is null)
        {
            return estimate;
        }

        var reckoned = Reckoned(plan, estimate, hands);
        var machine = PaceLearning.Learn(Timed(log, reckoned, null), estimate.MachineMinutes.Likely);
        var byHand = PaceLearning.Learn(TimedByHand(log, reckoned), Estimate.Sum(estimate.HandWork.Where(w => w.IsAtTheHoop)).Likely);
        return OwnPace.Apply(estimate, machine.Timed > 0 ? machine : null, byHand.Timed > 0 ? byHand : null);
    }

    /// <summary>What is still to sew of the whole job: hoopings the log does not call sewn, by the pace it shows where it timed any.</summary>
    public static WorkLeft Left(SewingLog? log, StripPlan plan, Estimate estimate, HandSettings hands)
    {
        var reckoned = Reckoned(plan, estimate, hands);
        var left = reckoned.Where(h => log is null || !log.IsSewn(h.Number)).ToList();
        double whole = reckoned.Sum(h => h.MachineMinutes);
        double part = whole > 0 ? left.Sum(h => h.MachineMinutes) / whole : 0;
        var all = estimate.MachineMinutes;
        return new WorkLeft(left.Count, Of(log, reckoned).Machine?.Now ?? new Figure(part * all.Low, part * all.Likely, part * all.High));
    }

    /// <summary>Minutes a machine takes for each one reckoned; 1 when nothing was timed on it.</summary>
    /// <param name="machine">Null: any.</param>
    public static double Factor(SewingLog? log, ImmutableArray<ReckonedHooping> hoopings, string? machine) =>
        log is null ? 1 : PaceLearning.Learn(Timed(log, hoopings, machine), 1).PaceFactor;

    private static List<TimedWork> Timed(SewingLog log, ImmutableArray<ReckonedHooping> hoopings, string? machine) =>
        [.. Pairs(log, hoopings)
            .Where(p => p.Entry.Minutes > 0 && (machine is null || string.Equals(p.Entry.Machine, machine, StringComparison.OrdinalIgnoreCase)))
            .Select(p => new TimedWork(p.Hooping.MachineMinutes, p.Entry.Minutes!.Value))];

    private static List<TimedWork> TimedByHand(SewingLog log, ImmutableArray<ReckonedHooping> hoopings) =>
        [.. Pairs(log, hoopings).Where(p => p.Entry.HandMinutes > 0).Select(p => new TimedWork(p.Hooping.HandMinutes, p.Entry.HandMinutes!.Value))];

    /// <summary>The last time each hooping was said to be sewn, unless that was a mistake: a second saying mends the first.</summary>
    private static IEnumerable<(SewingEntry Entry, ReckonedHooping Hooping)> Pairs(SewingLog log, ImmutableArray<ReckonedHooping> hoopings) =>
        from entries in log.Entries.GroupBy(e => e.Hooping)
        where log.Last(entries.Key)?.Deed != SewingDeed.Mistake
        let entry = entries.LastOrDefault(e => e.Deed == SewingDeed.Sewn)
        where entry is not null
        from hooping in hoopings
        where hooping.Number == entry.Hooping
        select (entry, hooping);
}

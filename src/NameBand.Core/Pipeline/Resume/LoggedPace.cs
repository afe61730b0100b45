using System.Collections.Immutable;
using NameBand.Estimating;
using NameBand.Job;

namespace NameBand.Pipeline.Resume;

/// <summary>What the estimate says of one hooping, or of one name that is logged by itself.</summary>
internal readonly record struct EstimatedHooping(int Number, double MachineMinutes, double HandMinutes)
{
    public bool IsName { get; init; }

    /// <summary>What the log says of its kind.</summary>
    public SewingLog In(SewingLog log) => IsName ? log.OfNames : log;
}

/// <summary>Learns from the sewing log.</summary>
internal static class LoggedPace
{
    /// <summary>
    /// All hoopings, with the hand work that <c>--hands</c> speaks of: hooping, setting straight, clipping and tearing away; and
    /// all names that are logged by themselves, with keying in, finding the start mark and clipping.
    /// </summary>
    public static ImmutableArray<EstimatedHooping> Estimated(Estimate estimate)
    {
        var byName = estimate.Names.Select(n => n.Hooping).ToHashSet();
        return
        [
            .. estimate.Hoopings.Where(h => !byName.Contains(h.Number))
                .Select(h => new EstimatedHooping(h.Number, h.MachineMinutes, h.TimedHandMinutes)),
            .. estimate.Names.Select(n => new EstimatedHooping(n.Order, n.MachineMinutes, n.TimedHandMinutes) { IsName = true }),
        ];
    }

    public static (LearnedPace? Machine, LearnedPace? Hands) Of(SewingLog? log, ImmutableArray<EstimatedHooping> hoopings)
    {
        if (log is null)
        {
            return (null, null);
        }

        var left = hoopings.Where(h => !h.In(log).IsSewn(h.Number)).ToList();
        var machine = PaceLearning.Learn(Timed(log, hoopings, null), left.Sum(h => h.MachineMinutes));
        var hands = PaceLearning.Learn(
            TimedByHand(log, hoopings),
            left.Sum(h => h.HandMinutes));
        return (machine.Timed > 0 ? machine : null, hands.Timed > 0 ? hands : null);
    }

    /// <summary>The whole job by the pace that the log shows; as it was where nothing was timed.</summary>
    public static Estimate AtOwnPace(Estimate estimate, SewingLog? log)
    {
        if (log is null)
        {
            return estimate;
        }

        var estimated = Estimated(estimate);
        return OwnPace.Apply(estimate, Timed(log, estimated, null), TimedByHand(log, estimated));
    }

    /// <summary>Minutes a machine takes for each one estimated; 1 when nothing was timed on it.</summary>
    /// <param name="machine">Null: any.</param>
    public static double Factor(SewingLog? log, ImmutableArray<EstimatedHooping> hoopings, string? machine) =>
        log is null ? 1 : PaceLearning.Learn(Timed(log, hoopings, machine), 1).PaceFactor;

    private static List<TimedWork> Timed(SewingLog log, ImmutableArray<EstimatedHooping> hoopings, string? machine) =>
        [.. Pairs(log, hoopings)
            .Where(p => p.Entry.Minutes > 0
                && (machine is null || string.Equals(p.Entry.Machine, machine, StringComparison.OrdinalIgnoreCase)))
            .Select(p => new TimedWork(p.Hooping.MachineMinutes, p.Entry.Minutes!.Value))];

    private static List<TimedWork> TimedByHand(SewingLog log, ImmutableArray<EstimatedHooping> hoopings) =>
        [.. Pairs(log, hoopings).Where(p => p.Entry.HandMinutes > 0)
            .Select(p => new TimedWork(p.Hooping.HandMinutes, p.Entry.HandMinutes!.Value))];

    /// <summary>The last time each hooping, or name, was said to be sewn, unless that was a mistake: a second saying mends the
    /// first.</summary>
    private static IEnumerable<(SewingEntry Entry, EstimatedHooping Hooping)> Pairs(
        SewingLog log, ImmutableArray<EstimatedHooping> hoopings) =>
        Pairs(log, hoopings, isName: false).Concat(Pairs(log.OfNames, hoopings, isName: true));

    private static IEnumerable<(SewingEntry Entry, EstimatedHooping Hooping)> Pairs(
        SewingLog log, ImmutableArray<EstimatedHooping> hoopings, bool isName) =>
        from entries in log.Entries.GroupBy(e => e.Hooping)
        where log.Last(entries.Key)?.Deed != SewingDeed.Mistake
        let entry = entries.LastOrDefault(e => e.Deed == SewingDeed.Sewn)
        where entry is not null
        from hooping in hoopings
        where hooping.Number == entry.Hooping && hooping.IsName == isName
        select (entry, hooping);
}

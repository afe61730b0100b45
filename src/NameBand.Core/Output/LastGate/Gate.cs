using System.Collections.Immutable;

namespace NameBand.Output.LastGate;

/// <summary>
/// The last look before an out folder is put in its place: the finished needle paths and the plan are read as a stranger
/// would read them, and laid on the flat cloth, piece by piece. A hooping whose needle would go where it must not is
/// named, whatever the rooms that made it thought of it.
/// </summary>
internal static class Gate
{
    /// <param name="planJson">Bytes of the plan.</param>
    /// <param name="pathOf">Bytes of a hooping's needle path: as it was sewn, where it was.</param>
    /// <param name="isSewn">What is said to be spoiled or unpicked is not sewn.</param>
    /// <returns>In the order of the hoopings' numbers; none where all is well.</returns>
    public static ImmutableArray<GateFault> Check(
        ReadOnlyMemory<byte> planJson, GateRules rules, Func<int, byte[]?> pathOf, Func<int, bool> isSewn)
    {
        var plan = GatePlan.Read(planJson);
        var readings = new GateReading[plan.Hoopings.Length];
        Parallel.For(0, readings.Length, i => readings[i] = GateReading.Of(plan, plan.Hoopings[i], rules, pathOf(plan.Hoopings[i].Number)));
        var sewn = readings.Where(r => isSewn(r.Hooping)).Select(r => r.Hooping).ToHashSet();
        var over = Overlaps(readings).ToLookup(p => p.Own.Hooping);
        var faults = ImmutableArray.CreateBuilder<GateFault>();
        var stopped = new HashSet<int>();
        foreach (var reading in readings.Where(r => !sewn.Contains(r.Hooping)).OrderBy(r => r.Hooping))
        {
            // What is sewn lies fast; of two that are not, the later one gives way.
            var hits = over[reading.Hooping]
                .Where(p => sewn.Contains(p.Other.Hooping) || (p.Other.Hooping < reading.Hooping && !stopped.Contains(p.Other.Hooping)))
                .OrderByDescending(p => sewn.Contains(p.Other.Hooping)).ThenBy(p => p.Other.Hooping).ThenBy(p => p.Own.FromMm).ToList();
            var fault = hits.Count > 0 ? GateFault.Over(hits[0].Own, hits[0].Other, sewn.Contains(hits[0].Other.Hooping)) : reading.Fault;
            if (fault is not null)
            {
                faults.Add(fault);
                stopped.Add(reading.Hooping);
            }
        }

        return faults.ToImmutable();
    }

    /// <summary>All pairs of runs of different hoopings that share cloth, each pair both ways round.</summary>
    private static IEnumerable<(GateRun Own, GateRun Other)> Overlaps(IEnumerable<GateReading> readings)
    {
        foreach (var strip in readings.SelectMany(r => r.Runs).GroupBy(r => (r.Cloth, r.Lane)))
        {
            var open = new List<GateRun>();
            foreach (var run in strip.OrderBy(r => r.FromMm).ThenBy(r => r.Hooping))
            {
                open.RemoveAll(o => o.ToMm <= run.FromMm + GateReading.PlayMm);
                foreach (var other in open)
                {
                    if (other.Hooping != run.Hooping && run.ToMm > run.FromMm + GateReading.PlayMm)
                    {
                        yield return (run, other);
                        yield return (other, run);
                    }
                }

                open.Add(run);
            }
        }
    }
}

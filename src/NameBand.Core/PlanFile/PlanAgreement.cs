using NameBand.Common;

namespace NameBand.PlanFile;

/// <summary>Whether a plan.json agrees with itself. It adds up what stands there, and knows nothing of how it was laid out.</summary>
internal static class PlanAgreement
{
    // Minutes stand to a thousandth in each row, and to a tenth of a minute in plans of version 0.1, which have no rows.
    private const decimal SameMinutes = 0.05m;

    // Two lengths that were rounded to a thousandth each, and their sum.
    private const decimal SameMm = 0.01m;

    /// <summary>What does not agree, each in a sentence; empty where all does.</summary>
    public static IEnumerable<Said> Faults(WrittenPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. Sums(plan), .. Hoopings(plan), .. Names(plan)];
    }

    private static IEnumerable<Said> Sums(WrittenPlan plan)
    {
        foreach (var (by, said) in new[] { ("machine", plan.Totals.MachineMinutes), ("hands", plan.Totals.HandsOnMinutes) })
        {
            if (plan.Work is { } work && work.Where(w => w.By == by).Sum(w => w.Minutes) is var sum && Math.Abs(sum - said) > SameMinutes)
            {
                yield return by == "machine"
                    ? (Said)$"The minutes of the machine come to {sum:0.0} in the rows of work and to {said:0.0} in the totals."
                    : $"The minutes of the hands come to {sum:0.0} in the rows of work and to {said:0.0} in the totals.";
            }
        }

        decimal lengthMm = plan.Rounds.Sum(r => r.LengthMm);
        if (Math.Abs(lengthMm - plan.Strip.TotalLengthMm) > SameMm * (plan.Rounds.Count + 1))
        {
            yield return $"The rounds come to {lengthMm:0.0} mm of strip, and the strip is said to be {plan.Strip.TotalLengthMm:0.0} mm.";
        }

        int named = plan.Rounds.SelectMany(r => r.Segments).Sum(s => s.Names.Count);
        if (named != plan.Totals.Names)
        {
            yield return $"{named} names stand in the rounds, and the totals say {plan.Totals.Names}.";
        }

        if (plan.Hoopings.Count != plan.Totals.Hoopings || plan.Hoopings.Sum(h => (long)h.Stitches) != plan.Totals.Stitches)
        {
            yield return $"{plan.Hoopings.Count} hoopings with {plan.Hoopings.Sum(h => (long)h.Stitches)} stitches stand in the list, and the totals say {plan.Totals.Hoopings} with {plan.Totals.Stitches}.";
        }
    }

    private static IEnumerable<Said> Hoopings(WrittenPlan plan)
    {
        var lying = plan.Hoopings.SelectMany(h => h.Segments).CountBy(s => s.Number).ToDictionary(s => s.Key, s => s.Value);
        foreach (var segment in plan.Rounds.SelectMany(r => r.Segments))
        {
            if (lying.GetValueOrDefault(segment.Number) is var times && times != 1)
            {
                yield return $"Segment {segment.Number} lies in {times} hoopings, and has to lie in one.";
            }

            lying.Remove(segment.Number);
        }

        foreach (int unknown in lying.Keys.Order())
        {
            yield return $"A hooping holds segment {unknown}, and no round has it.";
        }
    }

    /// <summary>Every placed row is in the rounds once, and every name of the rounds is a placed row.</summary>
    private static IEnumerable<Said> Names(WrittenPlan plan)
    {
        var places = plan.Rounds.SelectMany(r => r.Segments).SelectMany(s => s.Names)
            .CountBy(n => new RowRef(n.List, n.Line)).ToDictionary(n => n.Key, n => n.Value);
        foreach (var row in plan.Rows)
        {
            int times = places.GetValueOrDefault(new RowRef(row.List, row.Line));
            if (times != (row.Outcome == "placed" ? 1 : 0))
            {
                yield return row.Outcome == "placed"
                    ? (Said)$"“{PlainText.Short(row.Text)}” ({row.List}, line {row.Line}) is placed, and stands {times} times in the rounds."
                    : $"“{PlainText.Short(row.Text)}” ({row.List}, line {row.Line}) is not to be placed, and stands {times} times in the rounds.";
            }
        }
    }
}

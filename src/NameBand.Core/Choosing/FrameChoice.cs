using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Choosing;

/// <summary>A job laid out in one of her frames, with one kind of marks.</summary>
/// <param name="Frame">Its name; null: the field that the job gives.</param>
/// <param name="Plan">Null where it cannot be laid out.</param>
internal sealed record InFrame(string? Frame, StripPlan? Plan, Func<double> CostMinutes)
{
    public bool IsMixed => Plan is not null && Plan.Hoopings.Any(h => h.Frame is not null);
}

/// <summary>
/// Chooses the frame: what is seen is calculated in the one that holds the largest letters and the most names; of the frames in
/// which all looks the same, the one that costs her least.
/// </summary>
internal static class FrameChoice
{
    /// <param name="tried">The largest frame first.</param>
    /// <returns>Index of the chosen one.</returns>
    public static int Best(ImmutableArray<InFrame> tried, KeptChoices kept)
    {
        int seen = Largest(tried);
        if (tried[seen].Plan is not { } asSeen)
        {
            return seen;
        }

        int[] alike = [.. Enumerable.Range(0, tried.Length).Where(i => i == seen || (tried[i].Plan is { } p && LooksTheSame(p, asSeen)))];
        int[] again = [.. alike.Where(i => IsKept(tried[i], kept))];
        int[] left = again.Length > 0 ? again : alike;
        return left.Length == 1 ? left[0] : left.MinBy(i => tried[i].CostMinutes());
    }

    private static bool IsKept(InFrame tried, KeptChoices kept) =>
        kept.Frame is not null && tried.Frame == kept.Frame && (kept.IsMixed is null || kept.IsMixed == tried.IsMixed);

    /// <summary>Index of the one that holds the most names in the largest letters.</summary>
    public static int Largest(ImmutableArray<InFrame> tried) => Enumerable.Range(0, tried.Length).Where(i => tried[i].Plan is not null)
        .OrderBy(i => tried[i].Plan!.Held.Length).ThenByDescending(i => tried[i].Plan!.LetterHeightMm).FirstOrDefault();

    /// <summary>Whether two plans put the same things in the same places on the garment.</summary>
    public static bool LooksTheSame(StripPlan one, StripPlan other)
    {
        return one.Joins == other.Joins && one.Rounds.Length == other.Rounds.Length
            && Math.Abs(one.LetterHeightMm - other.LetterHeightMm) < Tolerance.KeptMm
            && one.Held.Select(h => h.Row).ToHashSet().SetEquals(other.Held.Select(h => h.Row))
            && one.Rounds.Zip(other.Rounds).All(r => Math.Abs(r.First.LengthMm - r.Second.LengthMm) < Tolerance.KeptMm
                && Same([.. Lying(r.First)], [.. Lying(r.Second)]));

        static IEnumerable<PlacedName> Lying(Round round) => round.NamesAndMotifs.OrderBy(n => n.StartMm);

        static bool Same(ImmutableArray<PlacedName> one, ImmutableArray<PlacedName> other) => one.Length == other.Length
            && one.Zip(other).All(n => n.First.Lettered.Name == n.Second.Lettered.Name
                && Math.Abs(n.First.StartMm - n.Second.StartMm) < Tolerance.KeptMm
                && Math.Abs(n.First.BaselineYMm - n.Second.BaselineYMm) < Tolerance.KeptMm);
    }
}

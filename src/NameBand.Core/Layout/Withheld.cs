using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>A plan without hoopings that must not be sewn as they were planned.</summary>
internal static class Withheld
{
    /// <param name="reasons">Why, by the number of the hooping.</param>
    /// <returns>The rest of the plan, and the rows that now stand in no segment.</returns>
    public static (StripPlan Plan, ImmutableArray<HeldRow> Held) From(StripPlan plan, IReadOnlyDictionary<int, Said> reasons)
    {
        var reasonOf = plan.Hoopings.Where(h => reasons.ContainsKey(h.Number))
            .SelectMany(h => h.Segments.Select(s => (s.Segment.Number, Reason: reasons[h.Number])))
                .ToDictionary(p => p.Number, p => p.Reason);
        var rounds = plan.Rounds.Select(r => Without(r, reasonOf, plan.Hem.Closed)).ToImmutableArray();
        var byNumber = rounds.ToDictionary(r => r.Number);
        var held = plan.Rounds.SelectMany(r => r.Segments).Where(s => reasonOf.ContainsKey(s.Number))
            .SelectMany(s => s.Names.Where(n => n.IsOfList)
                .Select(n => new HeldRow(n.Lettered.Name.Row, reasonOf[s.Number]) { IsForItsSize = true }));
        return (
            plan with
            {
                Rounds = rounds,
                Hoopings = [.. plan.Hoopings.Where(h => !reasons.ContainsKey(h.Number)).Select(h => h with
                {
                    Segments = [.. h.Segments.Select(s => s with { Round = byNumber[s.Round.Number] })],
                })],
                Cloths = [.. plan.Cloths.Select(c => c with { Hoopings = [.. c.Hoopings.Where(h => !reasons.ContainsKey(h))] })],
                BestFit = null,
            },
            [.. held]);
    }

    /// <summary>What is left of a round is as long as its hem again, unless that runs over it too.</summary>
    private static Round Without(Round round, Dictionary<int, Said> reasonOf, bool isClosed)
    {
        ImmutableArray<Segment> left = [.. round.Segments.Where(s => !reasonOf.ContainsKey(s.Number))];
        if (left.Length == round.Segments.Length)
        {
            return round;
        }

        var names = PlacesAlong.Merged(left.SelectMany(s => s.Names)).ToList();
        double gap = names.Count < 2 ? Math.Max(0, round.GapMm) : names.Skip(1).Zip(names, (n, before) => n.StartMm - before.EndMm).Min();
        double need = names.Select(n => n.EndMm).DefaultIfEmpty(0).Max() + (isClosed && names.Count > 0 ? Math.Max(0, gap) / 2 : 0);
        bool runsOver = round.LengthMm > round.HemMm + Tolerance.RoundingMm && need > round.HemMm + Tolerance.RoundingMm;
        return round with { LengthMm = runsOver ? Math.Min(need, round.LengthMm) : round.HemMm, GapMm = gap, Segments = left };
    }
}

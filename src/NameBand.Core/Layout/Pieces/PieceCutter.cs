using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;

namespace NameBand.Layout.Pieces;

/// <summary>A part of a laid round between two joins, with its names from left to right.</summary>
internal sealed record RoundPart(LaidRound Round, double StartMm, double EndMm, ImmutableArray<PlacedName> Names)
{
    public double LengthMm => EndMm - StartMm;

    /// <summary>For each name its run of neighbours that go the same way.</summary>
    public ImmutableArray<int> Runs { get; } = [.. NameRuns.Of(Names)];

    /// <summary>What of it is sewn in hoopings.</summary>
    public ImmutableArray<HoopedUnit> Hooped { get; init; } = [];

    /// <summary>The names that are sewn without a hoop, run by run.</summary>
    public IEnumerable<ImmutableArray<PlacedName>> Unhooped() => Names.Zip(Runs).Where(p => p.First.Lettered.IsInOneRun)
        .GroupBy(p => p.Second, p => p.First).Select(g => g.ToImmutableArray());
}

/// <summary>Cuts rounds into pieces, always in a gap between two names, never where nothing may be joined, and not at centre
/// front.</summary>
internal static class PieceCutter
{
    /// <summary>As even as the gaps allow, <paramref name="pieces"/> of them or more where one would be over the longest;
    /// diagonal joins at their own places.</summary>
    public static ImmutableArray<RoundPart> Cut(LaidRound round, int pieces, HemPlan hem)
    {
        double? longestMm = hem.LongestPieceMm(round.Number);
        if (hem.JoinBlankMm > 0)
        {
            return At(round, [.. DiagonalJoins(round, hem)]);
        }

        int least = Math.Max(pieces, longestMm is { } longest ? (int)Math.Ceiling((round.LengthMm / longest) - Tolerance.Rounding) : 1);
        double[] gaps = [.. Gaps(round)];
        var middles = GarmentMiddles.On(hem, round.LengthMm);
        double[] away = [.. gaps.Where(g => !middles.IsAtFront(g))];
        for (int count = least; ; count++)
        {
            var joins = Nearest(gaps, round.LengthMm, count);
            bool areGood = !joins.Exists(middles.IsAtFront)
                && (longestMm is not { } piece || LongestMm(joins, round.LengthMm) <= piece + Tolerance.RoundingMm);
            var parts = At(round, areGood ? joins : Evenest(away, round.LengthMm, count));
            if (longestMm is not { } most || parts.Length > gaps.Length || parts.All(p => p.LengthMm <= most + Tolerance.RoundingMm)
                || count > gaps.Length)
            {
                return parts;
            }
        }
    }

    /// <summary>The places that were kept for them; where names run over, the gaps that are as wide.</summary>
    private static IEnumerable<double> DiagonalJoins(LaidRound round, HemPlan hem) => round.LengthMm <= round.HemMm + Tolerance.RoundingMm
        ? JoinPlaces.Of(hem, round.Number)
        : round.Names.Zip(round.Names.Skip(1))
            .Where(p => p.Second.StartMm - p.First.EndMm >= hem.JoinBlankMm - Tolerance.RoundingMm)
            .Select(p => (p.First.EndMm + p.Second.StartMm) / 2);

    /// <summary>Middles of the gaps between neighbouring names that stand on the same stretch.</summary>
    private static IEnumerable<double> Gaps(LaidRound round)
    {
        for (int i = 1; i < round.Names.Length; i++)
        {
            double middle = (round.Names[i - 1].EndMm + round.Names[i].StartMm) / 2;
            bool isFree = round.LengthMm > round.HemMm + Tolerance.RoundingMm
                || round.Stretches.Any(s => middle > s.StartMm && middle < s.EndMm);
            if (isFree)
            {
                yield return middle;
            }
        }
    }

    private static List<double> Nearest(double[] gaps, double lengthMm, int pieces)
    {
        var joins = new List<double>();
        for (int k = 1; k < pieces && gaps.Length > 0; k++)
        {
            double wished = lengthMm * k / pieces;
            double nearest = gaps.MinBy(g => Math.Abs(g - wished));
            if (joins.Count == 0 || nearest > joins[^1])
            {
                joins.Add(nearest);
            }
        }

        return joins;
    }

    private static double LongestMm(List<double> joins, double lengthMm) =>
        joins.Append(lengthMm).Zip(joins.Prepend(0), (to, from) => to - from).Max();

    /// <summary>Joins in some of the gaps so that the longest piece is as short as can be, by the best of every gap for every
    /// join before it.</summary>
    private static List<double> Evenest(double[] gaps, double lengthMm, int pieces)
    {
        int joins = Math.Min(pieces - 1, gaps.Length);
        if (joins <= 0)
        {
            return [];
        }

        var longest = gaps.Select(g => g).ToArray();
        var before = new int[joins, gaps.Length];
        for (int k = 1; k < joins; k++)
        {
            var next = new double[gaps.Length];
            for (int i = 0; i < gaps.Length; i++)
            {
                next[i] = double.PositiveInfinity;
                for (int j = k - 1; j < i; j++)
                {
                    double most = Math.Max(longest[j], gaps[i] - gaps[j]);
                    if (most < next[i])
                    {
                        (next[i], before[k, i]) = (most, j);
                    }
                }
            }

            longest = next;
        }

        int at = Enumerable.Range(joins - 1, gaps.Length - joins + 1).MinBy(i => Math.Max(longest[i], lengthMm - gaps[i]));
        var found = new List<double>();
        for (int k = joins - 1; k >= 0; k--)
        {
            found.Insert(0, gaps[at]);
            at = before[k, at];
        }

        return found;
    }

    private static ImmutableArray<RoundPart> At(LaidRound round, List<double> joins)
    {
        var parts = ImmutableArray.CreateBuilder<RoundPart>();
        double from = 0;
        foreach (double to in joins.Append(round.LengthMm))
        {
            double start = from;
            bool isLast = to >= round.LengthMm;
            parts.Add(new RoundPart(
                round, start, to, [.. round.Names.Where(n => n.StartMm >= start - Tolerance.RoundingMm && (isLast || n.StartMm < to))]));
            from = to;
        }

        return parts.ToImmutable();
    }
}

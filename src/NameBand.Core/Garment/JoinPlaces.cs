using NameBand.Common;

namespace NameBand.Garment;

/// <summary>
/// Where a round is joined by slanting seams. Such a seam takes more of the strip than a gap between two names has, so
/// its places are settled before the names are laid out, and names keep out of them.
/// </summary>
internal static class JoinPlaces
{
    /// <summary>Middles of the joins along the round, from left to right; none where joins are straight and lie in gaps.</summary>
    public static IEnumerable<double> Of(HemPlan hem, int round)
    {
        double length = hem.RoundMm(round);
        if (hem.JoinBlankMm <= 0 || length <= 0)
        {
            yield break;
        }

        int pieces = Math.Max(
            LeastPieces(hem, round), hem.LongestPieceMm(round) is { } most ? (int)Math.Ceiling((length / most) - Tolerance.Rounding) : 1);
        double before = 0;
        for (int k = 1; k < pieces; k++)
        {
            double at = Clear(hem, round, length * k / pieces);
            if (at - before > hem.JoinBlankMm && length - at > hem.JoinBlankMm)
            {
                yield return at;
                before = at;
            }
        }
    }

    /// <summary>
    /// Joins of a round whose cloth is cut before it is known which names stand on it: even, clear of what <see cref="Clear"/>
    /// keeps clear, and in more pieces where one would be over the longest.
    /// </summary>
    public static IReadOnlyList<double> BeforeNames(HemPlan hem, int round, double lengthMm)
    {
        if (hem.JoinBlankMm > 0)
        {
            return [.. Of(hem, round)];
        }

        int least = hem.LongestPieceMm(round) is { } longest
            ? Math.Max(1, (int)Math.Ceiling((lengthMm / longest) - Tolerance.Rounding)) : 1;
        for (int pieces = least; ; pieces++)
        {
            List<double> joins =
                [.. Enumerable.Range(1, pieces - 1).Select(k => Clear(hem, round, lengthMm * k / pieces)).Distinct().Order()];
            double most = joins.Append(lengthMm).Zip(joins.Prepend(0), (to, from) => to - from).Max();
            if (most <= (hem.LongestPieceMm(round) ?? most) + Tolerance.RoundingMm || pieces >= 2 * least)
            {
                return joins;
            }
        }
    }

    /// <summary>Rounds fewer than the lanes of a cloth are cut into as many pieces as fill the lanes.</summary>
    private static int LeastPieces(HemPlan hem, int round)
    {
        if (hem.FixedRounds is not { } rounds || round > rounds)
        {
            return 1;
        }

        int first = (round - 1) / hem.Lanes * hem.Lanes;
        int beside = Math.Min(hem.Lanes, rounds - first);
        return (hem.Lanes / beside) + (round - 1 - first < hem.Lanes % beside ? 1 : 0);
    }

    /// <summary>The nearest place at which the join keeps out of seams, of what else is kept clear, and of centre front.</summary>
    private static double Clear(HemPlan hem, int round, double wishedMm)
    {
        double scale = hem.RoundMm(round) / hem.EdgeLengthMm;
        double reach = hem.JoinBlankMm / 2;
        var zones = hem.KeepClear.Select(z =>
            (From: (z.AtMm * scale) - (z.WidthMm / 2) - reach, To: (z.AtMm * scale) + (z.WidthMm / 2) + reach)).ToList();
        if (GarmentMiddles.On(hem, hem.RoundMm(round)).FrontMm is { } front)
        {
            zones.Add((front - GarmentMiddles.AtFrontMm, front + GarmentMiddles.AtFrontMm));
        }

        bool IsFree(double at) => !zones.Exists(z => at > z.From + Tolerance.Rounding && at < z.To - Tolerance.Rounding);
        return zones.SelectMany(z => new[] { z.From, z.To }).Prepend(wishedMm)
            .Where(at => at >= reach && at <= hem.RoundMm(round) - reach && IsFree(at))
            .OrderBy(at => Math.Abs(at - wishedMm)).FirstOrDefault(wishedMm);
    }
}

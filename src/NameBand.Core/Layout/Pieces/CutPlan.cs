using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout;

/// <summary>A cloth to be cut: its corner nearest the start of the bought cloth and its selvedge.</summary>
/// <param name="AlongMm">Along the bought cloth, as it is when it is cut (washed, where it shrinks).</param>
internal sealed record CutCloth(StripCloth Cloth, double AlongMm, double AcrossMm);

/// <summary>How the cloths for hooping are cut out of the cloth that is bought.</summary>
/// <param name="LengthMm">Least length of the cloth when it is cut.</param>
/// <param name="BoughtMm">Length to buy: longer, where the cloth is washed first and shrinks.</param>
/// <param name="ClothWidthMm">Usable width when it is cut.</param>
/// <param name="IsBias">Cut at 45° to the selvedge; places then count along and across the bias strips' own direction.</param>
internal sealed record CutPlan(double LengthMm, double BoughtMm, double ClothWidthMm, bool IsBias, ImmutableArray<CutCloth> Cuts)
{
    /// <summary>The diagonal of a square of side 1: how a strip at 45° lies to the threads of its cloth (plane geometry).</summary>
    internal static readonly double RootOfTwo = Math.Sqrt(2);

    /// <summary>Longest strip with square ends that lies at 45° in cloth of a width: W·√2 − w (plane geometry).</summary>
    public static double LongestOnBiasMm(double clothWidthMm, double stripWidthMm) => (clothWidthMm * RootOfTwo) - stripWidthMm;

    /// <summary>
    /// Length of cloth that strips of one width need when they lie beside each other at 45°: the longest reaches
    /// (l + w)/√2 along the cloth, and every further one begins w·√2 later (plane geometry).
    /// </summary>
    public static double BiasLengthMm(double longestMm, double stripWidthMm, int strips) =>
        ((longestMm + stripWidthMm) / RootOfTwo) + ((strips - 1) * stripWidthMm * RootOfTwo);

    /// <summary>
    /// Cloths lie along the selvedge, as many beside each other as the width holds; each goes where the least cloth
    /// has been used, the longest first.
    /// </summary>
    public static CutPlan Of(StripPlan plan, ShopSettings shop, bool isBias)
    {
        double shrink = 1 - shop.ClothShrinkagePart;
        double width = shop.ClothWidthMm * shrink;
        double most = plan.Cloths.Select(c => c.WidthMm).DefaultIfEmpty(0).Max();
        var longestFirst = plan.Cloths.OrderByDescending(c => c.LengthMm).ThenBy(c => c.Number).ToList();
        if (longestFirst.Count == 0)
        {
            return new CutPlan(0, 0, width, isBias, []);
        }

        if (longestFirst.Exists(c => c.Band is not null))
        {
            return Nested(longestFirst, width, shrink);
        }

        if (isBias)
        {
            double length = BiasLengthMm(longestFirst[0].LengthMm, most, longestFirst.Count);
            return new CutPlan(length, length / shrink, width, true, [.. longestFirst.Select((c, i) => new CutCloth(c, 0, i * most))]);
        }

        var used = new double[(int)Math.Max(1, Math.Floor((width / most) + Tolerance.Rounding))];
        var cuts = ImmutableArray.CreateBuilder<CutCloth>();
        foreach (var cloth in longestFirst)
        {
            int column = Array.IndexOf(used, used.Min());
            cuts.Add(new CutCloth(cloth, used[column], column * most));
            used[column] += cloth.LengthMm;
        }

        return new CutPlan(used.Max(), used.Max() / shrink, width, false, cuts.ToImmutable());
    }

    /// <summary>Pieces of rings nest in each other like bowls, their chords along the selvedge, as many as the width holds.</summary>
    private static CutPlan Nested(List<StripCloth> longestFirst, double width, double shrink)
    {
        var cuts = ImmutableArray.CreateBuilder<CutCloth>();
        double along = 0;
        double used = 0;
        CutCloth? below = null;
        foreach (var cloth in longestFirst)
        {
            double across = below is null ? 0 : below.AcrossMm + below.Cloth.Band!.NestedMm(cloth.Band!);
            if (across + cloth.WidthMm > width + Tolerance.RoundingMm || below is null)
            {
                (along, across) = (used, 0);
                used += cloth.LengthMm;
            }

            below = new CutCloth(cloth, along + ((used - along - cloth.LengthMm) / 2), across);
            cuts.Add(below);
        }

        return new CutPlan(used, used / shrink, width, false, cuts.ToImmutable());
    }
}

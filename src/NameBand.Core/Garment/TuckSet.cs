using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Garment;

/// <summary>A gap between two neighbouring names that can hold a tuck: nothing is sewn, joined or kept clear in it.</summary>
/// <param name="After">Index along the round, from 0, of the name on its left.</param>
/// <param name="MiddleMm">Along the finished round.</param>
public readonly record struct OpenGap(int After, double MiddleMm, double WidthMm);

/// <summary>
/// Tapered tucks of one round, all alike: each takes its width out of the upper edge and ends in nothing at the lower one. A
/// tuck is folded in the middle of a gap and laid to one side, where its fold lies under the cloth for half its width.
/// Widths and clearances are common practice, no source.
/// </summary>
/// <param name="WidthMm">What one takes out of the upper edge.</param>
public sealed record TuckSet(double WidthMm, ImmutableArray<OpenGap> Gaps)
{
    /// <summary>A narrower fold cannot be pinned.</summary>
    public const double LeastMm = 2;

    /// <summary>A wider one shows as a pleat.</summary>
    public const double MostMm = 10;

    /// <summary>Between the fold under the cloth and the nearest satin.</summary>
    public const double ClearMm = 1;

    /// <summary>Tucks are marked with a ruler.</summary>
    private const double StepMm = 0.5;

    public int Count => Gaps.Length;

    public double TakesMm => WidthMm * Count;

    /// <summary>The widest tuck that a gap holds: its two legs and, on one side, the fold beneath stay clear of the satin.</summary>
    public static double MostInMm(double gapMm) => Math.Min(MostMm, (gapMm / 2) - ClearMm);

    /// <summary>
    /// The narrowest tucks, and so the most of them, that take up what easing leaves, spread evenly over the gaps that can
    /// hold them; null where these cannot. They may take a narrow tuck's width more than there is to take, because all are alike.
    /// </summary>
    /// <param name="leastTakenMm">What they must take out of the upper edge in all.</param>
    /// <param name="mostTakenMm">All that is too long there.</param>
    public static TuckSet? For(double leastTakenMm, double mostTakenMm, ImmutableArray<OpenGap> gaps)
    {
        for (double width = LeastMm; width <= MostMm; width += StepMm)
        {
            double wide = width;
            int count = Math.Max(1, (int)Math.Ceiling((leastTakenMm / wide) - Tolerance.RoundingMm));
            OpenGap[] holding = [.. gaps.Where(g => MostInMm(g.WidthMm) >= wide - Tolerance.RoundingMm)];
            if (count <= holding.Length && wide * count <= mostTakenMm + LeastMm)
            {
                return new TuckSet(
                    wide, [.. Enumerable.Range(0, count).Select(i => holding[((2 * i) + 1) * holding.Length / (2 * count)])]);
            }
        }

        return null;
    }
}

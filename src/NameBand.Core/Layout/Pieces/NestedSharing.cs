using System.Collections.Immutable;
using System.Numerics;
using NameBand.Common;

namespace NameBand.Layout.Pieces;

/// <summary>
/// Which curved pieces lie on one cloth: of a few all ways are looked at. How close two nest hangs on their lengths and radii, and what
/// can be sewn together on where their names stand, so that no rule of thumb finds the best.
/// </summary>
/// <param name="work">Of the pieces of a set on one cloth, by the bits of their numbers.</param>
/// <param name="most">So many lie on one cloth at most.</param>
internal sealed class NestedSharing(int pieces, int most, Func<int, double> work)
{
    /// <summary>Of so many all ways are looked at.</summary>
    public const int MostPieces = 5;

    private readonly (double Work, int Cloth)?[] _best = new (double, int)?[1 << pieces];

    /// <summary>Least work of all of them.</summary>
    public double Least => Best((1 << pieces) - 1).Work;

    /// <summary>The pieces of each cloth.</summary>
    public ImmutableArray<ImmutableArray<int>> Cloths()
    {
        var cloths = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        for (int left = (1 << pieces) - 1; left != 0; left &= ~Best(left).Cloth)
        {
            cloths.Add(Of(Best(left).Cloth));
        }

        return cloths.ToImmutable();
    }

    public static ImmutableArray<int> Of(int set) => [.. Enumerable.Range(0, 32).Where(i => (set & (1 << i)) != 0)];

    private (double Work, int Cloth) Best(int left)
    {
        if (left == 0)
        {
            return (0, 0);
        }

        if (_best[left] is { } known)
        {
            return known;
        }

        // The first of those that are left lies on a cloth alone, or with any of the others; of equal ways with the fewest.
        int first = left & -left;
        int others = left & ~first;
        var sets = new List<int> { 0 };
        for (int with = others; with != 0; with = (with - 1) & others)
        {
            sets.Add(with);
        }

        var best = (Work: double.PositiveInfinity, Cloth: 0);
        foreach (int with in sets.Where(s => BitOperations.PopCount((uint)s) < most).OrderBy(s => BitOperations.PopCount((uint)s))
            .ThenBy(s => s))
        {
            double all = work(first | with) + Best(left & ~(first | with)).Work;
            best = all < best.Work - Tolerance.Rounding ? (all, first | with) : best;
        }

        _best[left] = best;
        return best;
    }
}

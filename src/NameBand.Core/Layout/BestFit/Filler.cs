using System.Collections.Immutable;

namespace NameBand.Layout.BestFit;

/// <summary>Ways to fill bins quickly, one after another.</summary>
internal static class Filler
{
    /// <summary>Largest piece first, each into the fullest bin that still takes it.</summary>
    public static ImmutableArray<ImmutableArray<int>> BestFitDecreasing(PackingProblem problem)
    {
        var bins = new List<(int Room, List<int> Pieces)>();
        foreach (int piece in problem.Kinds.SelectMany(k => k.Pieces))
        {
            int size = problem.Sizes[piece];
            int best = -1;
            for (int b = 0; b < bins.Count; b++)
            {
                if (bins[b].Room >= size && (best < 0 || bins[b].Room < bins[best].Room))
                {
                    best = b;
                }
            }

            if (best < 0)
            {
                bins.Add((problem.Capacity - size, [piece]));
            }
            else
            {
                bins[best].Pieces.Add(piece);
                bins[best] = (bins[best].Room - size, bins[best].Pieces);
            }
        }

        return [.. bins.Select(b => b.Pieces.ToImmutableArray())];
    }

    /// <summary>
    /// Bin after bin: the largest piece left, and with it the pieces that fill the rest of the bin best; among equal
    /// fillings the one of larger pieces (the least-slack way of Gupta and Ho, with the largest piece given).
    /// </summary>
    public static ImmutableArray<ImmutableArray<int>> LeastSlack(PackingProblem problem)
    {
        var left = problem.Kinds.SelectMany(k => k.Pieces).ToList();
        var bins = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        while (left.Count > 0)
        {
            int first = left[0];
            left.RemoveAt(0);
            var others = FullestSubset(problem, left, problem.Capacity - problem.Sizes[first]);
            bins.Add([first, .. others]);
            var gone = others.ToHashSet();
            left.RemoveAll(gone.Contains);
        }

        return bins.ToImmutable();
    }

    /// <summary>Pieces out of <paramref name="left"/> (largest first) that together come nearest to <paramref name="room"/>.</summary>
    public static List<int> FullestSubset(PackingProblem problem, IReadOnlyList<int> left, int room)
    {
        // reached[k] has a bit for every sum that the first k pieces small enough can make.
        var small = left.Where(p => problem.Sizes[p] <= room).ToList();
        int words = (room / 64) + 1;
        var reached = new List<ulong[]> { new ulong[words] };
        reached[0][0] = 1;
        foreach (int piece in small)
        {
            var sums = (ulong[])reached[^1].Clone();
            AddShifted(sums, reached[^1], problem.Sizes[piece]);
            reached.Add(sums);
            if (Has(sums, room))
            {
                break;
            }
        }

        int sum = room;
        while (!Has(reached[^1], sum))
        {
            sum--;
        }

        var taken = new List<int>();
        for (int k = reached.Count - 1; k > 0; k--)
        {
            if (!Has(reached[k - 1], sum))
            {
                taken.Add(small[k - 1]);
                sum -= problem.Sizes[small[k - 1]];
            }
        }

        taken.Reverse();
        return taken;
    }

    private static bool Has(ulong[] sums, int at) => (sums[at / 64] >> (at % 64) & 1) != 0;

    private static void AddShifted(ulong[] to, ulong[] from, int by)
    {
        int words = by / 64;
        int bits = by % 64;
        for (int i = to.Length - 1; i >= words; i--)
        {
            ulong shifted = from[i - words] << bits;
            if (bits > 0 && i > words)
            {
                shifted |= from[i - words - 1] >> (64 - bits);
            }

            to[i] |= shifted;
        }
    }
}

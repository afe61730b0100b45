using System.Runtime.Intrinsics;

namespace NameBand.Layout.BestFit;

/// <summary>
/// The filling of one bin that is worth most when every kind of piece has a price: the bounded knapsack problem,
/// solved exactly by dynamic programming over the capacity.
/// </summary>
internal sealed class PatternKnapsack(PackingProblem problem)
{
    private const int BitsPerWord = 64; // Of a ulong, whose bits say for each capacity whether a piece was taken.
    private readonly int _capacity = problem.Capacity;
    private double[] _best = [];
    private double[] _next = [];
    private readonly List<ulong[]> _taken = [];

    /// <summary>Cells worked on so far; counted instead of time, so that a budget gives the same answer on any machine.</summary>
    public long Work { get; private set; }

    /// <param name="prices">Worth of one piece of each kind; those not above 0 are left out.</param>
    /// <param name="most">Greatest number of pieces of each kind.</param>
    /// <returns>The worth of the best filling and how many pieces of each kind it holds.</returns>
    public (double Worth, int[] Counts) Best(ReadOnlySpan<double> prices, ReadOnlySpan<int> most)
    {
        if (_best.Length == 0)
        {
            _best = new double[_capacity + 1];
            _next = new double[_capacity + 1];
        }

        Array.Clear(_best);
        var kinds = new List<int>();
        for (int kind = 0; kind < prices.Length; kind++)
        {
            int size = problem.Kinds[kind].Size;
            int copies = prices[kind] > 0 ? Math.Min(most[kind], _capacity / size) : 0;
            for (int copy = 0; copy < copies; copy++)
            {
                Offer(kinds.Count, size, prices[kind]);
                kinds.Add(kind);
            }
        }

        var counts = new int[prices.Length];
        int room = _capacity;
        for (int k = kinds.Count - 1; k >= 0; k--)
        {
            // The bit of a capacity stands where the piece's own size has been taken off.
            int at = room - problem.Kinds[kinds[k]].Size;
            if (at >= 0 && (_taken[k][at / BitsPerWord] >> (at % BitsPerWord) & 1) != 0)
            {
                counts[kinds[k]]++;
                room = at;
            }
        }

        return (_best[_capacity], counts);
    }

    private void Offer(int piece, int size, double price)
    {
        if (_taken.Count == piece)
        {
            _taken.Add(new ulong[(_capacity / BitsPerWord) + 1]);
        }

        var taken = _taken[piece];
        Array.Clear(taken);
        Array.Copy(_best, _next, size);
        var from = _best.AsSpan(0, _capacity + 1 - size);
        var without = _best.AsSpan(size);
        var to = _next.AsSpan(size);
        int whole = from.Length / Vector256<double>.Count * Vector256<double>.Count;
        var added = Vector256.Create(price);
        for (int i = 0; i < whole; i += Vector256<double>.Count)
        {
            var with = Vector256.Create<double>(from.Slice(i)) + added;
            var old = Vector256.Create<double>(without.Slice(i));
            taken[i / BitsPerWord] |= (ulong)Vector256.GreaterThan(with, old).ExtractMostSignificantBits() << (i % BitsPerWord);
            Vector256.Max(with, old).CopyTo(to.Slice(i));
        }

        for (int i = whole; i < from.Length; i++)
        {
            double with = from[i] + price;
            taken[i / BitsPerWord] |= (with > without[i] ? 1UL : 0UL) << (i % BitsPerWord);
            to[i] = Math.Max(with, without[i]);
        }

        (_best, _next) = (_next, _best);
        Work += from.Length;
    }
}

using System.Collections.Immutable;

namespace NameBand.Layout.BestFit;

/// <summary>
/// Pieces to be put into as few bins of one capacity as can be (bin packing; with equal pieces counted together,
/// cutting stock). All sizes are whole numbers of one unit.
/// </summary>
internal sealed class PackingProblem
{
    private readonly int[] _kindOf;

    /// <param name="sizes">Every one from 1 to <paramref name="capacity"/>.</param>
    public PackingProblem(IReadOnlyList<int> sizes, int capacity)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacity, 1);
        if (sizes.Any(s => s < 1 || s > capacity))
        {
            throw new ArgumentOutOfRangeException(nameof(sizes), "Every piece must fit a bin and be larger than nothing.");
        }

        Capacity = capacity;
        Sizes = [.. sizes];
        Kinds = [.. Enumerable.Range(0, sizes.Count)
            .GroupBy(i => sizes[i])
            .OrderByDescending(g => g.Key)
            .Select(g => new Kind(g.Key, [.. g]))];
        _kindOf = new int[sizes.Count];
        for (int kind = 0; kind < Kinds.Length; kind++)
        {
            foreach (int piece in Kinds[kind].Pieces)
            {
                _kindOf[piece] = kind;
            }
        }
    }

    public int Capacity { get; }

    public ImmutableArray<int> Sizes { get; }

    /// <summary>Pieces of equal size counted together, largest first.</summary>
    public ImmutableArray<Kind> Kinds { get; }

    public int KindOf(int piece) => _kindOf[piece];

    /// <summary>Bins that the pieces would fill if they could be cut: the plainest bound.</summary>
    public int VolumeBound() => (int)((Sizes.Sum(s => (long)s) + Capacity - 1) / Capacity);

    /// <param name="Pieces">Their places in the list of sizes.</param>
    internal sealed record Kind(int Size, ImmutableArray<int> Pieces);
}

/// <summary>A way to fill the bins, and how good it is known to be.</summary>
/// <param name="Bins">For every bin the places of its pieces in the problem's list of sizes.</param>
/// <param name="Bound">No way at all needs fewer bins than this.</param>
/// <param name="PatternHoopings">
/// Value of the pattern linear program where it had to be solved, else the filled volume in bins; <see cref="Bound"/>
/// is this number rounded up.
/// </param>
internal sealed record Packing(ImmutableArray<ImmutableArray<int>> Bins, int Bound, double PatternHoopings)
{
    public bool IsProven => Bins.Length == Bound;
}

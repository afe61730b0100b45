using System.Collections.Immutable;

namespace NameBand.Layout.BestFit;

/// <summary>
/// Looks for a filling of a given number of bins by completing one bin after another: the largest piece left, with
/// the sets of pieces that leave no more empty than the whole may still waste (after R. E. Korf, A New Algorithm for
/// Optimal Bin Packing, AAAI 2002; from memory). Wide searches come after narrow ones; steps are counted, so that giving
/// up is the same on any machine.
/// </summary>
internal sealed class BinCompletion
{
    // A count of fillings of one bin that are looked at: the search is bounded by number, never by time. Our choice.
    private const int MostCompletions = 300;
    private readonly PackingProblem _problem;
    private readonly int _bins;
    private readonly int[] _sizes;
    private readonly int[] _stock;
    private readonly List<int[]> _filled = [];
    private int _width;
    private long _steps;

    private BinCompletion(PackingProblem problem, int bins)
    {
        _problem = problem;
        _bins = bins;
        _sizes = [.. problem.Kinds.Select(k => k.Size)];
        _stock = [.. problem.Kinds.Select(k => k.Pieces.Length)];
    }

    /// <summary>A filling of at most <paramref name="bins"/> bins, or null when none was found within the steps.</summary>
    public static ImmutableArray<ImmutableArray<int>>? Find(PackingProblem problem, int bins, long steps)
    {
        long spare = ((long)bins * problem.Capacity) - problem.Sizes.Sum(s => (long)s);
        foreach (int width in spare < 0 ? [] : new[] { 1, 2, 4, 12 })
        {
            var search = new BinCompletion(problem, bins) { _width = width, _steps = steps / 4 };
            if (search.Complete(spare))
            {
                return search.Bins();
            }
        }

        return null;
    }

    private ImmutableArray<ImmutableArray<int>> Bins()
    {
        var stock = _problem.Kinds.Select(k => new Queue<int>(k.Pieces)).ToArray();
        return [.. _filled.Select(kinds => kinds.Select(k => stock[k].Dequeue()).ToImmutableArray())];
    }

    private bool Complete(long spare)
    {
        int largest = Array.FindIndex(_stock, s => s > 0);
        if (largest < 0)
        {
            return true;
        }

        if (_filled.Count == _bins || _steps <= 0)
        {
            return false;
        }

        _stock[largest]--;
        foreach (var (kinds, empty) in Completions(largest, _problem.Capacity - _sizes[largest], spare).Take(_width))
        {
            foreach (int kind in kinds)
            {
                _stock[kind]--;
            }

            _filled.Add([largest, .. kinds]);
            if (Complete(spare - empty))
            {
                return true;
            }

            _filled.RemoveAt(_filled.Count - 1);
            foreach (int kind in kinds)
            {
                _stock[kind]++;
            }
        }

        _stock[largest]++;
        return false;
    }

    /// <summary>Sets of pieces for the room beside the largest one, fullest first, then those of larger pieces.</summary>
    private IEnumerable<(int[] Kinds, int Empty)> Completions(int first, int room, long spare)
    {
        var found = new List<(int[] Kinds, int Empty)>();
        var chosen = new List<int>();
        Add(first, room);
        return found.OrderBy(f => f.Empty).ThenBy(f => f.Kinds.Length);

        void Add(int from, int left)
        {
            _steps--;
            bool closed = true;
            for (int kind = FirstFitting(from, left); kind < _sizes.Length && found.Count < MostCompletions && _steps > 0; kind++)
            {
                if (_stock[kind] == 0)
                {
                    continue;
                }

                closed = false;
                _stock[kind]--;
                chosen.Add(kind);
                Add(kind, left - _sizes[kind]);
                chosen.RemoveAt(chosen.Count - 1);
                _stock[kind]++;
            }

            if (closed && left <= spare)
            {
                found.Add(([.. chosen], left));
            }
        }
    }

    private int FirstFitting(int from, int room)
    {
        int low = from;
        int high = _sizes.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _sizes[middle] <= room ? (low, middle) : (middle + 1, high);
        }

        return low;
    }
}

using NameBand.Common;

namespace NameBand.Layout.BestFit;

/// <summary>
/// The pattern linear program of P. C. Gilmore and R. E. Gomory (A Linear Programming Approach to the Cutting-Stock Problem,
/// Operations Research 9(6), 849–859, 1961; from memory): fillings of a bin in whatever parts, so that every kind of
/// piece is there often enough, with the least number of bins in all. Solved by the revised simplex method; fillings
/// are made as they are needed by <see cref="PatternKnapsack"/>.
/// </summary>
internal sealed class PatternProgram
{
    private readonly int _rows;
    private readonly PackingProblem _problem;
    private readonly PatternKnapsack _knapsack;
    private readonly int[] _most;
    private readonly double[] _demand;
    private readonly List<PatternColumn> _pool = [];
    private readonly PatternColumn[] _basis;
    private readonly double[][] _inverse;
    private readonly double[] _amounts;
    private long _pivotWork;

    public PatternProgram(PackingProblem problem, PatternKnapsack knapsack, IEnumerable<int[]> fillings)
    {
        _problem = problem;
        _knapsack = knapsack;
        _rows = problem.Kinds.Length;
        _most = [.. problem.Kinds.Select(k => k.Pieces.Length)];
        _demand = [.. problem.Kinds.Select(k => (double)k.Pieces.Length)];
        _basis = new PatternColumn[_rows];
        _inverse = new double[_rows][];
        _amounts = new double[_rows];
        for (int i = 0; i < _rows; i++)
        {
            int copies = Math.Min(_most[i], problem.Capacity / problem.Kinds[i].Size);
            _basis[i] = new PatternColumn(1, [(i, copies)]);
            _inverse[i] = new double[_rows];
            _inverse[i][i] = 1.0 / copies;
            _amounts[i] = _demand[i] / copies;
        }

        AddExchanges();
        _pool.AddRange(fillings.Select(PatternColumn.OfFilling));
    }

    /// <summary>Best bound found so far: no way of filling needs less than this many bins, whatever the state of the search.</summary>
    public double Bound { get; private set; }

    /// <summary>Cells of the knapsack and of the simplex tableau worked on so far.</summary>
    public long Work => _knapsack.Work + _pivotWork;

    /// <summary>The fillings in use, with how often each is (in part) used.</summary>
    public IEnumerable<(int[] Filling, double Times)> Fillings()
    {
        for (int i = 0; i < _rows; i++)
        {
            if (_basis[i].Cost > 0 && _amounts[i] > Tolerance.Rounding)
            {
                var filling = new int[_rows];
                foreach (var (row, count) in _basis[i].Entries)
                {
                    filling[row] = count;
                }

                yield return (filling, _amounts[i]);
            }
        }
    }

    /// <summary>
    /// Works until the program is solved, its bound rounded up reaches <paramref name="enough"/> bins, or the
    /// work reaches <paramref name="budget"/>.
    /// </summary>
    public void Solve(int enough, long budget)
    {
        var prices = new double[_rows];
        for (int step = 0; step < 40 * (_rows + 10) && Math.Ceiling(Bound - 1e-6) < enough && Work < budget; step++)
        {
            Prices(prices);
            if (FromPool(prices) is { } known)
            {
                if (!Enter(known))
                {
                    _pool.Remove(known);
                }

                continue;
            }

            var (worth, counts) = _knapsack.Best(prices, _most);
            Bound = Math.Max(Bound, DualWorth(prices) / Math.Max(worth, 1));
            if (worth <= 1 + 1e-7 || !Enter(Keep(counts)))
            {
                return;
            }

            Widen(prices, counts);
        }
    }

    /// <summary>
    /// A larger piece's place can hold a smaller one: as columns of no cost these keep the prices in the order of
    /// the sizes, which spares most of the fillings that would else have to be tried.
    /// </summary>
    private void AddExchanges()
    {
        for (int i = 0; i < _rows; i++)
        {
            _pool.Add(i + 1 < _rows ? new PatternColumn(0, [(i, -1), (i + 1, 1)]) : new PatternColumn(0, [(i, -1)]));
        }
    }

    /// <summary>After one filling was found, a few more are made from the pieces it left, at the same prices.</summary>
    private void Widen(double[] prices, int[] used)
    {
        int[] left = [.. _most.Select((m, i) => used[i] > 0 ? 0 : m)];
        for (int more = 0; more < 3; more++)
        {
            var (worth, counts) = Greedy(prices, left);
            if (worth <= 1 + 1e-6)
            {
                return;
            }

            Keep(counts);
            for (int i = 0; i < _rows; i++)
            {
                left[i] = counts[i] > 0 ? 0 : left[i];
            }
        }
    }

    private (double Worth, int[] Counts) Greedy(double[] prices, int[] left)
    {
        var counts = new int[_rows];
        double worth = 0;
        int room = _problem.Capacity;
        foreach (int kind in Enumerable.Range(0, _rows).OrderByDescending(i => prices[i] / _problem.Kinds[i].Size))
        {
            int taken = prices[kind] > 0 ? Math.Min(left[kind], room / _problem.Kinds[kind].Size) : 0;
            counts[kind] = taken;
            worth += taken * prices[kind];
            room -= taken * _problem.Kinds[kind].Size;
        }

        return (worth, counts);
    }

    private PatternColumn Keep(int[] counts)
    {
        var column = PatternColumn.OfFilling(counts);
        _pool.Add(column);
        return column;
    }

    private double DualWorth(double[] prices)
    {
        double worth = 0;
        for (int i = 0; i < _rows; i++)
        {
            worth += Math.Max(prices[i], 0) * _demand[i];
        }

        return worth;
    }

    private void Prices(double[] prices)
    {
        Array.Clear(prices);
        for (int i = 0; i < _rows; i++)
        {
            if (_basis[i].Cost > 0)
            {
                var row = _inverse[i];
                for (int j = 0; j < _rows; j++)
                {
                    prices[j] += row[j];
                }
            }
        }
    }

    private PatternColumn? FromPool(double[] prices)
    {
        PatternColumn? best = null;
        double least = -1e-7;
        foreach (var column in _pool)
        {
            double reduced = column.Cost;
            foreach (var (row, count) in column.Entries)
            {
                reduced -= prices[row] * count;
            }

            if (reduced < least)
            {
                (best, least) = (column, reduced);
            }
        }

        return best;
    }

    /// <summary>Brings a column into the basis; false when rounding leaves no pivot to trust.</summary>
    private bool Enter(PatternColumn entering)
    {
        var direction = new double[_rows];
        for (int i = 0; i < _rows; i++)
        {
            foreach (var (row, count) in entering.Entries)
            {
                direction[i] += _inverse[i][row] * count;
            }
        }

        int leaving = -1;
        double step = double.PositiveInfinity;
        for (int i = 0; i < _rows; i++)
        {
            if (direction[i] > 1e-7)
            {
                double ratio = Math.Max(_amounts[i], 0) / direction[i];
                if (ratio < step - 1e-12 || (ratio < step + 1e-12 && direction[i] > direction[leaving]))
                {
                    (leaving, step) = (i, Math.Min(ratio, step));
                }
            }
        }

        if (leaving < 0)
        {
            return false;
        }

        Pivot(entering, direction, leaving);
        return true;
    }

    private void Pivot(PatternColumn entering, double[] direction, int leaving)
    {
        var pivotRow = _inverse[leaving];
        double pivot = direction[leaving];
        for (int j = 0; j < _rows; j++)
        {
            pivotRow[j] /= pivot;
        }

        _amounts[leaving] = Math.Max(_amounts[leaving], 0) / pivot;
        for (int i = 0; i < _rows; i++)
        {
            double factor = direction[i];
            if (i == leaving || factor == 0)
            {
                continue;
            }

            var row = _inverse[i];
            for (int j = 0; j < _rows; j++)
            {
                row[j] -= factor * pivotRow[j];
            }

            _amounts[i] -= factor * _amounts[leaving];
        }

        _basis[leaving] = entering;
        _pivotWork += (long)_rows * _rows;
    }

    private sealed record PatternColumn(double Cost, (int Row, int Count)[] Entries)
    {
        public static PatternColumn OfFilling(int[] counts) =>
            new(1, [.. counts.Select((c, i) => (i, c)).Where(e => e.c > 0)]);
    }
}

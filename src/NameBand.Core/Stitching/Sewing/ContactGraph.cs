using NameBand.Stitching.Columns;

namespace NameBand.Stitching.Sewing;

/// <summary>A stretch of a column's centre line.</summary>
internal readonly record struct Leg(int Column, double From, double To);

/// <summary>The centre lines of a part, joined wherever two of its columns meet: for travel that satin covers later.</summary>
internal sealed class ContactGraph
{
    /// <summary>
    /// Going from one column to the next costs as much as so many mm more: holes where strokes meet are the ones that are too many.
    /// </summary>
    private const double StepOverMm = 0.5;

    private readonly IReadOnlyList<Column> _columns;
    private readonly List<(int Column, double At)> _nodes = [];
    private readonly List<double> _across = [];
    private readonly List<int>[] _on;

    public ContactGraph(IReadOnlyList<Column> columns, ColumnTree spanning)
    {
        _columns = columns;
        foreach (var c in spanning.Contacts)
        {
            Link(c.Butting, c.ButtAt, c.Host, c.HostAt);
        }

        // Where no contact reaches a column the tree joins it to the nearest one.
        for (int parent = 0; parent < columns.Count; parent++)
        {
            foreach (var branch in spanning.Branches[parent].Where(b => !IsContact(spanning, parent, b)))
            {
                Link(parent, branch.LeaveAt, branch.Child, branch.EnterAt);
            }
        }

        _on = [.. columns.Select(_ => new List<int>())];
        for (int i = 0; i < _nodes.Count; i++)
        {
            _on[_nodes[i].Column].Add(i);
        }
    }

    /// <summary>How far every place where columns meet is from a place, and the next such place on the way there; -1 for none.</summary>
    public (double[] Far, int[] Next) To(int column, double at)
    {
        double[] far = new double[_nodes.Count];
        int[] next = new int[_nodes.Count];
        bool[] done = new bool[_nodes.Count];
        for (int i = 0; i < far.Length; i++)
        {
            far[i] = _nodes[i].Column == column ? Along(column, _nodes[i].At, at) : double.PositiveInfinity;
            next[i] = -1;
        }

        for (int left = far.Length; left > 0; left--)
        {
            int nearest = -1;
            for (int i = 0; i < far.Length; i++)
            {
                nearest = !done[i] && (nearest < 0 || far[i] < far[nearest]) ? i : nearest;
            }

            done[nearest] = true;
            Reach(nearest ^ 1, nearest, _across[nearest >> 1]);
            foreach (int i in _on[_nodes[nearest].Column])
            {
                Reach(i, nearest, Along(_nodes[i].Column, _nodes[i].At, _nodes[nearest].At));
            }
        }

        return (far, next);

        void Reach(int node, int from, double step)
        {
            if (far[from] + step < far[node])
            {
                far[node] = far[from] + step;
                next[node] = from;
            }
        }
    }

    /// <summary>
    /// How far a place is from the one that <see cref="To"/> was asked for, with the first place where columns meet on the way;
    /// -1 for none.
    /// </summary>
    public (double Mm, int First) From(EdgePlace place, int column, double at, double[] far)
    {
        double best = place.Column == column ? Along(column, place.At, at) : double.PositiveInfinity;
        int first = -1;
        foreach (int i in _on[place.Column])
        {
            if (Along(place.Column, place.At, _nodes[i].At) + far[i] is var mm && mm < best)
            {
                (best, first) = (mm, i);
            }
        }

        return (best, first);
    }

    /// <summary>The stretches of centre line from a place to another.</summary>
    public List<Leg> Legs(EdgePlace place, int column, double at)
    {
        var (far, next) = To(column, at);
        int node = From(place, column, at, far).First;
        var legs = new List<Leg>();
        var (onColumn, from) = (place.Column, place.At);
        for (; node >= 0; node = next[node])
        {
            if (_nodes[node].Column != onColumn)
            {
                (onColumn, from) = _nodes[node];
            }
            else
            {
                legs.Add(new Leg(onColumn, from, _nodes[node].At));
                from = _nodes[node].At;
            }
        }

        legs.Add(new Leg(onColumn, from, at));
        return legs;
    }

    private static bool IsContact(ColumnTree tree, int parent, Branch b) =>
        tree.Contacts.Any(c => (c.Butting == parent && c.Host == b.Child && c.ButtAt == b.LeaveAt)
            || (c.Host == parent && c.Butting == b.Child && c.ButtAt == b.EnterAt));

    private void Link(int a, double aAt, int b, double bAt)
    {
        _nodes.Add((a, aAt));
        _nodes.Add((b, bAt));
        _across.Add(StepOverMm + (_columns[a].MiddleAt(aAt) - _columns[b].MiddleAt(bAt)).Length);
    }

    private double Along(int column, double a, double b)
    {
        double mm = Math.Abs(a - b);
        return _columns[column].Closed ? Math.Min(mm, _columns[column].Length - mm) : mm;
    }
}

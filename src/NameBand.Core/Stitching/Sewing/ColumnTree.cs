using NameBand.Stitching.Columns;
using NameBand.Stitching.Strokes;

namespace NameBand.Stitching.Sewing;

/// <summary>Where two columns meet: places along the centre lines of both.</summary>
/// <param name="ButtAt">Place on the column that butts: one of its ends.</param>
/// <param name="HostAt">Place on the column that runs through.</param>
internal readonly record struct Contact(int Butting, double ButtAt, int Host, double HostAt);

/// <summary>A column to be sewn while another one is under way.</summary>
/// <param name="LeaveAt">Place on the parent where one leaves for it.</param>
/// <param name="EnterAt">Place on the child where one arrives.</param>
internal readonly record struct Branch(int Child, double LeaveAt, double EnterAt);

/// <summary>
/// The order in which the columns of one connected piece are sewn without a jump: columns that butt are sewn before
/// the ones they butt against, as far as the piece allows.
/// </summary>
internal sealed class ColumnTree
{
    private ColumnTree(int root, List<Branch>[] branches, List<Contact> contacts, double cost)
    {
        Contacts = contacts;
        Root = root;
        Branches = branches;
        Cost = cost;
    }

    private const int MostRoots = 24; // A count: the longest columns; a letter has a dozen, so that only signs of many strokes lose any.

    public int Root { get; }

    /// <summary>For each column what is sewn from it.</summary>
    public List<Branch>[] Branches { get; }

    public IReadOnlyList<Contact> Contacts { get; }

    /// <summary>How often a column is sewn after one that butts against it; more where a column is out of reach.</summary>
    public double Cost { get; }

    /// <summary>A tree from each of the longest columns, the one that asks for the fewest concessions first.</summary>
    public static IReadOnlyList<ColumnTree> From(IReadOnlyList<Column> columns)
    {
        var contacts = FindContacts(columns);
        var apart = new Gaps(columns);
        return
        [
            .. Enumerable.Range(0, columns.Count).OrderByDescending(i => columns[i].Length).Take(MostRoots)
                .Select(root => Grow(columns, contacts, apart, root)).OrderBy(tree => tree.Cost - (0.001 * columns[tree.Root].Length)),
        ];
    }

    /// <summary>The column a column is sewn from, with the places of the step from one to the other; null for the root.</summary>
    public (int Parent, Branch Step)? StepTo(int column)
    {
        for (int parent = 0; parent < Branches.Length; parent++)
        {
            foreach (var branch in Branches[parent])
            {
                if (branch.Child == column)
                {
                    return (parent, branch);
                }
            }
        }

        return null;
    }

    private static List<Contact> FindContacts(IReadOnlyList<Column> columns)
    {
        var contacts = new List<Contact>();
        for (int i = 0; i < columns.Count; i++)
        {
            if (columns[i].Stroke.Start != EndKind.Free)
            {
                AddContact(columns, i, 0, contacts);
            }

            if (columns[i].Stroke.End != EndKind.Free)
            {
                AddContact(columns, i, columns[i].Length, contacts);
            }
        }

        return contacts;
    }

    /// <summary>Against the nearest column; none where an end lies farther off than its column is wide: that one butts against its
    /// own, as the bar of an e does, and a thread to the nearest other column would show.</summary>
    private static void AddContact(IReadOnlyList<Column> columns, int butting, double at, List<Contact> contacts)
    {
        var p = columns[butting].MiddleAt(at);
        double least = double.PositiveInfinity;
        var best = default(Contact);
        for (int i = 0; i < columns.Count; i++)
        {
            if (i == butting)
            {
                continue;
            }

            var (host, distance) = columns[i].Nearest(p);
            distance -= columns[i].WidthAt(host) / 2;
            if (distance < least)
            {
                least = distance;
                best = new Contact(butting, at, i, host);
            }
        }

        if (least < columns[butting].WidthMm)
        {
            contacts.Add(best);
        }
    }

    private static ColumnTree Grow(IReadOnlyList<Column> columns, List<Contact> contacts, Gaps apart, int root)
    {
        var branches = new List<Branch>[columns.Count];
        for (int i = 0; i < branches.Length; i++)
        {
            branches[i] = [];
        }

        double cost = 0;
        var reached = new bool[columns.Count];
        reached[root] = true;
        for (int left = columns.Count - 1; left > 0; left--)
        {
            int best = -1;
            for (int pass = 0; pass < 2 && best < 0; pass++)
            {
                for (int i = 0; i < contacts.Count && best < 0; i++)
                {
                    var c = contacts[i];
                    bool joins = pass == 0 ? reached[c.Host] && !reached[c.Butting] : reached[c.Butting] && !reached[c.Host];
                    best = joins ? i : -1;
                }

                cost += pass == 1 && best >= 0 ? 1 : 0;
            }

            if (best >= 0)
            {
                var c = contacts[best];
                bool down = reached[c.Host];
                int parent = down ? c.Host : c.Butting;
                int child = down ? c.Butting : c.Host;
                branches[parent].Add(down ? new Branch(child, c.HostAt, c.ButtAt) : new Branch(child, c.ButtAt, c.HostAt));
                reached[child] = true;
            }
            else
            {
                cost += 10;
                apart.JoinNearest(reached, branches);
            }
        }

        return new ColumnTree(root, branches, contacts, cost);
    }

    /// <summary>Where columns come nearest to each other, each pair sought when it is first wanted.</summary>
    private sealed class Gaps(IReadOnlyList<Column> columns)
    {
        // A count: gaps between parts are measured at nine places of a column, which is enough to say which one is near.
        private const int Parts = 8;

        private readonly (double Mm, Branch Step)?[] _known = new (double, Branch)?[columns.Count * columns.Count];

        /// <summary>A column that no contact reaches is joined where it comes nearest to one that is reached.</summary>
        public void JoinNearest(bool[] reached, List<Branch>[] branches)
        {
            double least = double.PositiveInfinity;
            int parent = -1;
            var best = default(Branch);
            for (int i = 0; i < columns.Count; i++)
            {
                for (int j = 0; j < columns.Count && !reached[i]; j++)
                {
                    if (reached[j] && (_known[(i * columns.Count) + j] ??= Between(i, j)) is var (mm, step) && mm < least)
                    {
                        (least, parent, best) = (mm, j, step);
                    }
                }
            }

            branches[parent].Add(best);
            reached[best.Child] = true;
        }

        private (double Mm, Branch Step) Between(int child, int parent)
        {
            (double Mm, Branch Step) best = (double.PositiveInfinity, default);
            for (int k = 0; k <= Parts; k++)
            {
                double at = columns[child].Length * k / Parts;
                var near = columns[parent].Nearest(columns[child].MiddleAt(at));
                best = near.Distance < best.Mm ? (near.Distance, new Branch(child, near.At, at)) : best;
            }

            return best;
        }
    }
}

using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Shapes;

/// <summary>
/// One connected piece of outline in mm: an outer ring (counter-clockwise) and its holes (clockwise), sampled
/// for the triangulation. The inside lies to the left when one walks from a point to its <see cref="Next"/>.
/// </summary>
internal sealed class Region
{
    public Region(IReadOnlyList<IReadOnlyList<Vec>> rings)
    {
        int count = rings.Sum(r => r.Count);
        Points = new Vec[count];
        Next = new int[count];
        Previous = new int[count];
        RingStarts = new int[rings.Count];
        int at = 0;
        for (int r = 0; r < rings.Count; r++)
        {
            RingStarts[r] = at;
            int size = rings[r].Count;
            for (int i = 0; i < size; i++)
            {
                Points[at + i] = rings[r][i];
                Next[at + i] = at + ((i + 1) % size);
                Previous[at + i] = at + ((i + size - 1) % size);
            }

            at += size;
        }
    }

    public Vec[] Points { get; }

    public int[] Next { get; }

    public int[] Previous { get; }

    public int[] RingStarts { get; }

    /// <summary>Width of a long band with the same area and outline.</summary>
    public double StrokeWidth()
    {
        double twice = 0;
        double around = 0;
        for (int i = 0; i < Points.Length; i++)
        {
            twice += Vec.Cross(Points[i], Points[Next[i]]);
            around += (Points[Next[i]] - Points[i]).Length;
        }

        return twice / Math.Max(1e-9, around);
    }

    /// <summary>The ring points from one to another, forwards, both included; null when they lie on different rings.</summary>
    public List<int>? Walk(int from, int to)
    {
        var walk = new List<int> { from };
        int at = from;
        while (at != to)
        {
            at = Next[at];
            if (at == from)
            {
                return null;
            }

            walk.Add(at);
        }

        return walk;
    }
}

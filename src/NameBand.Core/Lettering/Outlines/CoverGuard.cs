using NameBand.Common;

namespace NameBand.Lettering.Outlines;

/// <summary>
/// Compares an outline after its overlaps were resolved with what it was made from, along level lines. The
/// geometry kernel now and then drops a contour; this finds it at run time, whatever the face.
/// </summary>
internal static class CoverGuard
{
    // A count: a contour lost is as high as a stroke is wide, some tenth of a letter, so that four or five lines meet it.
    private const int Lines = 48;

    /// <summary>Part of the covered length by which the two may differ: flattening errors stay far below.</summary>
    private const double Tolerance = 0.005;

    /// <param name="before">The contours of each glyph at a letter height of 1 mm, filled by the nonzero rule; together they
    /// cover what any one covers.</param>
    public static bool Agrees(IReadOnlyList<List<Point[]>> before, Outline result)
    {
        List<Point[]> after = [.. result.Rings.Select(r => r.Points.ToArray())];
        var box = RingOrder.BoxOf(before.SelectMany(g => g).SelectMany(r => r));
        if (box.IsEmpty)
        {
            return after.Count == 0;
        }

        double covered = 0, differing = 0;
        var crossings = new List<(double X, int Turn)>();
        for (int line = 0; line < Lines; line++)
        {
            double y = box.BottomMm + (box.HeightMm * (line + 0.4142) / Lines);
            var wanted = new List<(double X, int Turn)>();
            foreach (var glyph in before)
            {
                Cross(glyph, y, crossings);
                Spans(crossings, evenOdd: false, wanted);
            }

            Cross(after, y, crossings);
            var found = new List<(double X, int Turn)>();
            Spans(crossings, evenOdd: true, found);
            Compare(wanted, found, ref covered, ref differing);
        }

        return differing <= (Tolerance * covered) + Tolerance;
    }

    private static void Cross(List<Point[]> rings, double y, List<(double X, int Turn)> crossings)
    {
        crossings.Clear();
        foreach (var ring in rings)
        {
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                if (ring[i].YMm > y != ring[j].YMm > y)
                {
                    double x = ring[j].XMm + ((ring[i].XMm - ring[j].XMm) * (y - ring[j].YMm) / (ring[i].YMm - ring[j].YMm));
                    crossings.Add((x, ring[i].YMm > y ? 1 : -1));
                }
            }
        }

        crossings.Sort();
    }

    /// <summary>Adds +1 where a covered span begins and -1 where it ends.</summary>
    private static void Spans(List<(double X, int Turn)> crossings, bool evenOdd, List<(double X, int Turn)> spans)
    {
        int winding = 0;
        foreach (var (x, turn) in crossings)
        {
            int next = evenOdd ? 1 - winding : winding + turn;
            if (winding == 0 || next == 0)
            {
                spans.Add((x, winding == 0 ? 1 : -1));
            }

            winding = next;
        }
    }

    private static void Compare(
        List<(double X, int Turn)> wanted, List<(double X, int Turn)> found, ref double covered, ref double differing)
    {
        var all = new List<(double X, int Wanted, int Found)>();
        all.AddRange(wanted.Select(w => (w.X, w.Turn, 0)));
        all.AddRange(found.Select(f => (f.X, 0, f.Turn)));
        all.Sort();
        int inWanted = 0, inFound = 0;
        for (int i = 0; i + 1 < all.Count; i++)
        {
            inWanted += all[i].Wanted;
            inFound += all[i].Found;
            double length = all[i + 1].X - all[i].X;
            covered += inWanted > 0 ? length : 0;
            differing += inWanted > 0 != inFound > 0 ? length : 0;
        }
    }
}

using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Tests.StitchQuality;

/// <summary>
/// A fine grid on which an outline and the thread of a needle path are drawn: thread of its real width, with its
/// ends cut square at the needle points.
/// </summary>
internal sealed class ThreadGrid
{
    public ThreadGrid(Outline outline, NeedlePath path, double threadMm, double cellMm)
    {
        CellMm = cellMm;
        var box = outline.Bounds();
        foreach (var step in path.Steps)
        {
            box = box.Include(step.At);
        }

        Left = box.LeftMm - 1;
        Bottom = box.BottomMm - 1;
        Width = (int)Math.Ceiling((box.WidthMm + 2) / cellMm);
        Height = (int)Math.Ceiling((box.HeightMm + 2) / cellMm);
        Inside = new bool[Width * Height];
        Layers = new byte[Width * Height];
        LastSatin = new int[Width * Height];
        FirstSatin = new int[Width * Height];
        FillOutline(outline);
        for (int i = 1; i < path.Steps.Length; i++)
        {
            if (path.Steps[i].Action == NeedleAction.Stitch && path.Steps[i].Kind != StitchKind.Mark
                && path.Steps[i - 1].Action == NeedleAction.Stitch)
            {
                DrawStitch(
                    path.Steps[i - 1].At, path.Steps[i].At, threadMm / 2, i, path.Steps[i].Kind is StitchKind.Satin or StitchKind.Running);
            }
        }
    }

    public double CellMm { get; }

    public double Left { get; }

    public double Bottom { get; }

    public int Width { get; }

    public int Height { get; }

    public bool[] Inside { get; }

    public byte[] Layers { get; }

    /// <summary>Step of the last satin or running stitch that covers the cell, or 0.</summary>
    public int[] LastSatin { get; }

    /// <summary>Step of the first satin or running stitch that covers the cell, or 0.</summary>
    public int[] FirstSatin { get; }

    public int CellOf(Point p) =>
        (Math.Clamp((int)((p.YMm - Bottom) / CellMm), 0, Height - 1) * Width) + Math.Clamp((int)((p.XMm - Left) / CellMm), 0, Width - 1);

    private void FillOutline(Outline outline)
    {
        var crossings = new List<double>();
        for (int row = 0; row < Height; row++)
        {
            double y = Bottom + ((row + 0.5) * CellMm);
            crossings.Clear();
            foreach (var ring in outline.Rings)
            {
                for (int i = 0, j = ring.Points.Length - 1; i < ring.Points.Length; j = i++)
                {
                    var (a, b) = (ring.Points[i], ring.Points[j]);
                    if ((a.YMm > y) != (b.YMm > y))
                    {
                        crossings.Add(((b.XMm - a.XMm) * (y - a.YMm) / (b.YMm - a.YMm)) + a.XMm);
                    }
                }
            }

            crossings.Sort();
            for (int k = 0; k + 1 < crossings.Count; k += 2)
            {
                int from = Math.Max(0, (int)Math.Ceiling(((crossings[k] - Left) / CellMm) - 0.5));
                int to = Math.Min(Width - 1, (int)Math.Floor(((crossings[k + 1] - Left) / CellMm) - 0.5));
                for (int column = from; column <= to; column++)
                {
                    Inside[(row * Width) + column] = true;
                }
            }
        }
    }

    private void DrawStitch(Point from, Point to, double half, int index, bool hides)
    {
        double length = from.DistanceTo(to);
        if (length < 1e-9)
        {
            return;
        }

        double ux = (to.XMm - from.XMm) / length;
        double uy = (to.YMm - from.YMm) / length;
        double reachX = Math.Abs(uy) * half;
        double reachY = Math.Abs(ux) * half;
        int left = Math.Max(0, (int)((Math.Min(from.XMm, to.XMm) - reachX - Left) / CellMm) - 1);
        int right = Math.Min(Width - 1, (int)((Math.Max(from.XMm, to.XMm) + reachX - Left) / CellMm) + 1);
        int bottom = Math.Max(0, (int)((Math.Min(from.YMm, to.YMm) - reachY - Bottom) / CellMm) - 1);
        int top = Math.Min(Height - 1, (int)((Math.Max(from.YMm, to.YMm) + reachY - Bottom) / CellMm) + 1);
        for (int row = bottom; row <= top; row++)
        {
            double y = Bottom + ((row + 0.5) * CellMm) - from.YMm;
            var (first, last) = InReach(y * ux, uy, half, (left, right), from.XMm);
            for (int column = first; column <= last; column++)
            {
                double x = Left + ((column + 0.5) * CellMm) - from.XMm;
                double along = (x * ux) + (y * uy);
                double across = (x * uy) - (y * ux);
                if (along >= 0 && along <= length && Math.Abs(across) <= half)
                {
                    int cell = (row * Width) + column;
                    Layers[cell] = (byte)Math.Min(255, Layers[cell] + 1);
                    if (hides)
                    {
                        LastSatin[cell] = index;
                        FirstSatin[cell] = FirstSatin[cell] == 0 ? index : FirstSatin[cell];
                    }
                }
            }
        }
    }

    /// <summary>Columns of a row that may lie within <paramref name="half"/> of the stitch's line, and one to spare on each side.</summary>
    private (int First, int Last) InReach(double middle, double uy, double half, (int Left, int Right) columns, double fromX)
    {
        if (Math.Abs(uy) < 1e-6)
        {
            return columns;
        }

        double x = (middle / uy) + fromX - Left;
        double reach = half / Math.Abs(uy);
        return ((int)Math.Max(columns.Left, ((x - reach) / CellMm) - 1.5), (int)Math.Min(columns.Right, ((x + reach) / CellMm) + 1.5));
    }
}

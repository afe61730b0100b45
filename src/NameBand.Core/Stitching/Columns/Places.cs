using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Columns;

/// <summary>Places evenly along an edge and the edge's directions there, each number in a row of its own so that many can be read
/// at once.</summary>
internal sealed class Places
{
    private Places(int count) => (X, Y, AlongX, AlongY) = (new double[count], new double[count], new double[count], new double[count]);

    public int Count => X.Length;

    public double[] X { get; }

    public double[] Y { get; }

    public double[] AlongX { get; }

    public double[] AlongY { get; }

    public static Places Along(ArcLengthPolyline edge, int count, double stepMm)
    {
        var places = new Places(count);
        for (int i = 0; i < count; i++)
        {
            double s = edge.Length * i / (count - 1);
            var at = edge.At(s);
            var along = edge.Direction(s, 1.2 * stepMm);
            (places.X[i], places.Y[i], places.AlongX[i], places.AlongY[i]) = (at.X, at.Y, along.X, along.Y);
        }

        return places;
    }
}

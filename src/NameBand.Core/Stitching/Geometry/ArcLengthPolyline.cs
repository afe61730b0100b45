using System.Runtime.InteropServices;

namespace NameBand.Stitching.Geometry;

/// <summary>An open line of points that is read by its arc length.</summary>
internal sealed class ArcLengthPolyline
{
    private readonly Vec[] _points;
    private readonly double[] _at;
    private int _known;

    public ArcLengthPolyline(List<Vec> points)
    {
        var all = CollectionsMarshal.AsSpan(points);
        _points = new Vec[all.Length];
        _at = new double[all.Length];
        int count = 0;
        foreach (var p in all)
        {
            if (count == 0)
            {
                _points[count++] = p;
            }
            else if ((p - _points[count - 1]).Length is var step && step > 1e-6)
            {
                _at[count] = _at[count - 1] + step;
                _points[count++] = p;
            }
        }

        if (count < all.Length)
        {
            Array.Resize(ref _points, count);
            Array.Resize(ref _at, count);
        }
    }

    public ReadOnlySpan<Vec> Points => _points;

    public double Length => _at.Length == 0 ? 0 : _at[^1];

    public double ArcOf(int point) => _at[point];

    public Vec At(double arc)
    {
        int i = SegmentAt(arc);
        if (_points.Length == 1)
        {
            return _points[0];
        }

        double t = Math.Clamp((arc - _at[i]) / (_at[i + 1] - _at[i]), 0, 1);
        return Vec.Mix(_points[i], _points[i + 1], t);
    }

    /// <summary>Direction of the chord from <paramref name="reach"/> before to <paramref name="reach"/> after the place.</summary>
    public Vec Direction(double arc, double reach) =>
        (At(Math.Min(Length, arc + reach)) - At(Math.Max(0, arc - reach))).Unit();

    /// <summary>Arc of the point of the trace nearest to <paramref name="p"/>.</summary>
    public double Nearest(Vec p)
    {
        double best = double.PositiveInfinity;
        double arc = 0;
        for (int i = 0; i + 1 < _points.Length; i++)
        {
            var along = _points[i + 1] - _points[i];
            double t = Math.Clamp(Vec.Dot(p - _points[i], along) / Vec.Dot(along, along), 0, 1);
            double distance = (p - Vec.Mix(_points[i], _points[i + 1], t)).Length;
            if (distance < best)
            {
                best = distance;
                arc = _at[i] + ((_at[i + 1] - _at[i]) * t);
            }
        }

        return arc;
    }

    /// <summary>The points from one arc to a later one, both ends included.</summary>
    public List<Vec> Part(double from, double to)
    {
        int first = 0;
        int last = _points.Length;
        while (first < last && !(_at[first] > from + 1e-6))
        {
            first++;
        }

        while (last > first && !(_at[last - 1] < to - 1e-6))
        {
            last--;
        }

        var part = new List<Vec>(last - first + 2) { At(from) };
        part.AddRange(_points.AsSpan(first, last - first));

        part.Add(At(to));
        return part;
    }

    /// <summary>Arc at which the ray first meets the trace, with the distance along the ray; null when it does not.</summary>
    public (double Arc, double Distance)? FirstHit(Vec from, Vec direction, double least)
    {
        (double Arc, double Distance)? best = null;
        for (int i = 0; i + 1 < _points.Length; i++)
        {
            var along = _points[i + 1] - _points[i];
            double det = Vec.Cross(direction, along);
            if (Math.Abs(det) < 1e-12)
            {
                continue;
            }

            var to = _points[i] - from;
            double distance = Vec.Cross(to, along) / det;
            double t = Vec.Cross(to, direction) / det;
            if (t >= -1e-9 && t <= 1 + 1e-9 && distance > least && (best is null || distance < best.Value.Distance))
            {
                best = (_at[i] + ((_at[i + 1] - _at[i]) * Math.Clamp(t, 0, 1)), distance);
            }
        }

        return best;
    }

    /// <summary>Most questions come near to the one before, so a few segments about it are tried first.</summary>
    private int SegmentAt(double arc)
    {
        // Segments looked at from the last one on before it is sought anew: places are asked for in order, a few segments apart.
        const int Near = 6;
        int last = _at.Length - 2;
        int i = _known;
        for (int tries = 0; tries < Near && i <= last; tries++)
        {
            if (_at[i] > arc && i > 0)
            {
                i--;
            }
            else if (i < last && _at[i + 1] <= arc)
            {
                i++;
            }
            else
            {
                return _known = i;
            }
        }

        int low = 0;
        int high = last;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            if (_at[middle] <= arc)
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        return _known = Math.Max(0, low);
    }
}

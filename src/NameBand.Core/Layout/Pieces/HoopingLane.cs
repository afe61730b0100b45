using NameBand.Common;

namespace NameBand.Layout.Pieces;

/// <summary>The names of one strip as they lie on the cloth beside others, and the fewest segments they can be cut into.</summary>
internal sealed class HoopingLane
{
    private readonly double[] _leftMm;
    private readonly double[] _rightMm;
    private readonly int[] _reach;
    private readonly int[] _least;
    private readonly double _offsetMm;

    /// <param name="leftMm">Left edge of each name on the cloth, from left to right.</param>
    /// <param name="rightMm">Right edge of each name on the cloth.</param>
    /// <param name="isOneSegment">Whether the names from the first to the second (both included) may be one segment.</param>
    public HoopingLane(double[] leftMm, double[] rightMm, double fieldMm, Func<int, int, bool> isOneSegment)
    {
        (_leftMm, _rightMm) = (leftMm, rightMm);
        _reach = new int[leftMm.Length];
        _least = new int[leftMm.Length + 1];
        for (int first = leftMm.Length - 1; first >= 0; first--)
        {
            // A name that alone is as long as the field is sewn all the same.
            int to = first + 1;
            while (to < leftMm.Length && rightMm[to] - leftMm[first] <= fieldMm + Tolerance.RoundingMm && isOneSegment(first, to))
            {
                to++;
            }

            _reach[first] = to;
            _least[first] = 1 + _least[to];
        }
    }

    private HoopingLane(HoopingLane lane, double offsetMm) =>
        (_leftMm, _rightMm, _reach, _least, _offsetMm) = (lane._leftMm, lane._rightMm, lane._reach, lane._least, offsetMm);

    public int Count => _reach.Length;

    /// <summary>The same names, moved along the cloth.</summary>
    public HoopingLane MovedTo(double offsetMm) => new(this, offsetMm);

    public double LeftMm(int name) => _leftMm[name] + _offsetMm;

    public double RightMm(int name) => _rightMm[name] + _offsetMm;

    /// <summary>The name after the longest segment that begins at <paramref name="first"/>.</summary>
    public int Reach(int first) => _reach[first];

    /// <summary>Fewest segments for all names from <paramref name="first"/> on: taking the longest one each time is the shortest
    /// path.</summary>
    public int Least(int first) => _least[first];

    /// <summary>The name after the longest segment from <paramref name="first"/> that ends in a field beginning at
    /// <paramref name="leftMm"/>.</summary>
    public int Within(int first, double leftMm, double fieldMm)
    {
        int to = first;
        while (to < _reach[first] && _rightMm[to] + _offsetMm - leftMm <= fieldMm + Tolerance.RoundingMm)
        {
            to++;
        }

        return to;
    }

    /// <summary>
    /// Whether a lane sewn up to <paramref name="name"/> is as far as one sewn up to <paramref name="other"/> can get with
    /// the segments it has more to go: then whatever the other does, it can do as well.
    /// </summary>
    public bool IsAsFar(int name, int other)
    {
        for (int more = _least[other] - _least[name]; more > 0; more--)
        {
            other = _reach[other];
        }

        return name >= other;
    }
}

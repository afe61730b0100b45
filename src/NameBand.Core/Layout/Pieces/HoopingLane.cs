using NameBand.Common;

namespace NameBand.Layout.Pieces;

/// <summary>
/// The names of one strip, and the motifs between them, as they lie on the cloth beside others, and the fewest segments they can be cut
/// into.
/// </summary>
/// <remarks>
/// A segment holds a name at least. A motif goes with either neighbour; where none can begin with it, none ends before it.
/// </remarks>
internal sealed class HoopingLane
{
    private readonly double[] _leftMm;
    private readonly double[] _rightMm;
    private readonly int[] _reach;
    private readonly int[] _least;
    private readonly bool[] _isName;
    private readonly double _offsetMm;

    /// <param name="leftMm">Left edge of each name on the cloth, from left to right.</param>
    /// <param name="rightMm">Right edge of each name on the cloth.</param>
    /// <param name="isOneSegment">Whether the names from the first to the second (both included) may be one segment.</param>
    /// <param name="isName">Null: all are names.</param>
    public HoopingLane(double[] leftMm, double[] rightMm, double fieldMm, Func<int, int, bool> isOneSegment, bool[]? isName = null)
    {
        (_leftMm, _rightMm) = (leftMm, rightMm);
        _isName = isName ?? [.. leftMm.Select(_ => true)];
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

            _reach[first] = LastEnd(first, to);
            _least[first] = Ends(first, _reach[first]).Select(e => 1 + _least[e]).DefaultIfEmpty(Never).Min();
        }
    }

    /// <summary>Segments of what cannot begin one. More than there are names, and small enough to be added up.</summary>
    private const int Never = 1_000_000;

    /// <summary>The farthest end of a segment, from which the rest can go on; <paramref name="first"/> if there is none.</summary>
    private int LastEnd(int first, int to)
    {
        while (to > first && _least[to] >= Never)
        {
            to--;
        }

        // One motif lies between two names: of two things one is a name.
        return to == first + 1 && !_isName[first] ? first : to;
    }

    private HoopingLane(HoopingLane lane, double offsetMm) =>
        (_leftMm, _rightMm, _isName, _reach, _least, _offsetMm) =
            (lane._leftMm, lane._rightMm, lane._isName, lane._reach, lane._least, offsetMm);

    public int Count => _reach.Length;

    /// <summary>The same names, moved along the cloth.</summary>
    public HoopingLane MovedTo(double offsetMm) => new(this, offsetMm);

    public double LeftMm(int name) => _leftMm[name] + _offsetMm;

    public double RightMm(int name) => _rightMm[name] + _offsetMm;

    /// <summary>The name after the longest segment that begins at <paramref name="first"/>.</summary>
    public int Reach(int first) => _reach[first];

    /// <summary>Fewest segments for all that is left from <paramref name="first"/> on.</summary>
    public int Least(int first) => _least[first];

    /// <summary>
    /// Where a segment may end that could end at <paramref name="to"/>: farther on is better, but for a motif that is left over there;
    /// then also the farthest before it at which none is. Empty where it holds no name.
    /// </summary>
    public int[] Ends(int first, int to)
    {
        int whole = to;
        while (whole > first && (IsLeftOver(whole) || _least[whole] >= Never))
        {
            whole--;
        }

        bool isOther = whole < to && whole > first && (whole > first + 1 || _isName[first]);
        return to == first ? [] : isOther ? [to, whole] : [to];
    }

    /// <summary>Whether up to one place no less is done than up to another, and all that is left can be sewn as from there.</summary>
    public bool IsAsFarOn(int place, int other) => place == other || (place > other && !IsLeftOver(place));

    private bool IsLeftOver(int place) => place < Count && !_isName[place];

    /// <summary>The name after the longest segment from <paramref name="first"/> that ends in a field beginning at
    /// <paramref name="leftMm"/>.</summary>
    public int Within(int first, double leftMm, double fieldMm)
    {
        int to = first;
        while (to < _reach[first] && _rightMm[to] + _offsetMm - leftMm <= fieldMm + Tolerance.RoundingMm)
        {
            to++;
        }

        return LastEnd(first, to);
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

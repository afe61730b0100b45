using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>A needle point of a run, with what the stitch that leads to it is for.</summary>
internal readonly record struct Needle(Vec At, StitchKind Kind);

/// <summary>Needle points sewn without a jump; the needle is brought to the first one.</summary>
internal sealed class SewnRun
{
    /// <summary>No stitch but a lock is shorter than this.</summary>
    public const double ShortestMm = 0.3;
    // As far as travel may go in one stitch: longer ones lie loose and catch (common practice, no source).
    private const double LongestMm = 2.5;

    private readonly List<Needle> _needles = [];

    public List<Needle> Needles => _needles;

    public Vec Last => _needles[^1].At;

    /// <summary>Adds a point, unless the needle already stands there.</summary>
    public void Add(Vec at, StitchKind kind, double leastMm = 0.02)
    {
        if (_needles.Count == 0 || (at - Last).Length >= leastMm)
        {
            _needles.Add(new Needle(at, kind));
        }
    }

    /// <summary>Goes straight to a point in even stitches that are not too long.</summary>
    public void GoTo(Vec to, StitchKind kind)
    {
        if (_needles.Count == 0)
        {
            Add(to, kind);
            return;
        }

        var from = Last;
        double length = (to - from).Length;
        if (length < ShortestMm)
        {
            return;
        }

        int parts = Math.Max(1, (int)Math.Ceiling(length / LongestMm));
        for (int i = 1; i <= parts; i++)
        {
            Add(Vec.Mix(from, to, (double)i / parts), kind);
        }
    }
}

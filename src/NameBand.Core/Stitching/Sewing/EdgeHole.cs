using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>A satin hole on an edge of a column.</summary>
/// <param name="Needle">Its place in the run.</param>
/// <param name="Wanted">Where it would lie were no other near.</param>
/// <param name="Inward">From there towards the other edge.</param>
/// <param name="WidthMm">From there to the other edge's hole.</param>
/// <param name="ReachMm">How far past the outline that is: drawn in by so much the thread still covers the edge.</param>
/// <param name="Side">0 for the left edge.</param>
/// <param name="Before">The one before it on the same edge, as its place in the list; -1: none.</param>
internal record struct EdgeHole(int Needle, Vec Wanted, Vec Inward, double WidthMm, double ReachMm, int Side, int Before)
{
    /// <summary>The one after it on the same edge; -1: none.</summary>
    public int After { get; set; } = -1;
}

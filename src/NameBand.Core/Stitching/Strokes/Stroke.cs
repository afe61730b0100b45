using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Strokes;

/// <summary>How a stroke ends.</summary>
internal enum EndKind
{
    /// <summary>On the outline: round, square or pointed as the outline is.</summary>
    Free,

    /// <summary>Against another stroke, under whose stitches it reaches a little.</summary>
    Butt,

    /// <summary>On a line that it shares with the ends of other strokes: none lies under another.</summary>
    Meet,
}

/// <summary>
/// One stroke of a letter: two edges that are pieces of the outline (or straight bridges past a stroke that butts
/// against it), walked in the same direction, and the pieces of outline that close it at its two ends.
/// </summary>
/// <param name="Left">Edge to the left of someone walking along the stroke.</param>
/// <param name="StartCap">Outline from the left edge's first point, round the start, to the right edge's first; empty for a butt.</param>
/// <param name="EndCap">Outline from the right edge's last point, round the end, to the left edge's last; empty for a butt.</param>
/// <param name="Closed">The stroke runs back into itself; edges then begin and end at the same chord.</param>
/// <param name="StartOut">Outward direction of a start that was cut at a corner; zero where the edges have to tell it.</param>
/// <param name="EndOut">The same of the end.</param>
internal sealed record Stroke(
    List<Vec> Left, List<Vec> Right, EndKind Start, EndKind End, List<Vec> StartCap, List<Vec> EndCap, bool Closed,
    Vec StartOut = default, Vec EndOut = default)
{
    public Stroke Reversed() => new(
        [.. Enumerable.Reverse(Right)], [.. Enumerable.Reverse(Left)], End, Start, EndCap, StartCap, Closed, EndOut, StartOut);
}

using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Stitching.Sewing;

/// <summary>The middle lines of a letter's strokes, as one follows them with a pencil or a darning foot.</summary>
internal static class Centrelines
{
    // A chord of that length strays from a bow of 2 mm radius by 0.004 mm: a line to follow looks smooth.
    private const double StepMm = 0.25;

    /// <summary>
    /// Lines of a piece at a letter height, in mm, its origin on the base line; empty when its outline cannot be read as
    /// strokes.
    /// </summary>
    public static ImmutableArray<ImmutableArray<Point>> Of(LetterPiece piece, double letterHeightMm)
    {
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        foreach (var column in PieceSewer.Columns(piece, letterHeightMm))
        {
            // The ends of a stroke lie on the outline; a thread is sewn half its own width inside, but a line to follow is not.
            int steps = Math.Max(1, (int)Math.Ceiling(column.Length / StepMm));
            lines.Add([.. Enumerable.Range(0, steps + 1)
                .Select(i => column.MiddleAt(column.Length * Math.Min((double)i / steps, column.Closed ? 1 - 1e-9 : 1)).ToPoint())]);
        }

        return lines.ToImmutable();
    }
}

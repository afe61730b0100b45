using NameBand.Lettering;
using NameBand.Stitching.Columns;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Sewing;

/// <summary>A letter piece read as strokes at one height, before it is settled how they are sewn.</summary>
/// <param name="Parts">One for each connected part; no columns where it could not be read.</param>
internal sealed record ReadPiece(LetterPiece Piece, IReadOnlyList<(Region Region, List<Column>? Columns)> Parts)
{
    /// <summary>Strokes of a dot or a comma are no longer in all: they are sewn as the letters beside them are.</summary>
    public const double LongestMarkMm = 2;

    /// <summary>A letter's strokes may be thinner here and there: for less than this part of them.</summary>
    private const double ThinPart = 0.25;
    private const double SampleMm = 0.2; // Half a thread's width: strokes do not change faster.

    private readonly double[] _widths = Widths(Parts);

    /// <summary>How long its strokes are in all, as the number of places where they were measured.</summary>
    public int Places => _widths.Length;

    public bool IsMark => Places * SampleMm < LongestMarkMm;

    /// <summary>A quarter of its strokes are thinner than this; without end where none was read.</summary>
    public double StrokeMm => _widths.Length == 0 ? double.PositiveInfinity : _widths[(int)(ThinPart * _widths.Length)];

    private static double[] Widths(IReadOnlyList<(Region Region, List<Column>? Columns)> parts)
    {
        var widths = new List<double>();
        foreach (var column in parts.SelectMany(p => p.Columns ?? []))
        {
            for (double s = SampleMm / 2; s < column.Length; s += SampleMm)
            {
                widths.Add(column.WidthAt(s));
            }
        }

        widths.Sort();
        return [.. widths];
    }
}

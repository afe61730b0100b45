using NameBand.Stitching.Columns;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// One way to read a region as strokes. No single way suits every letter of every face: where the first leaves crossings
/// aslant or ground bare, a few others are tried and the best one is kept.
/// </summary>
/// <param name="SpurDepth">A spur less deep than this part of its mouth is closed.</param>
/// <param name="CornerWindow">Over how much of its width a stroke has to turn to be parted at a corner.</param>
internal readonly record struct Reading(double SpurDepth, double CornerWindow)
{
    private const int MostColumns = 400; // A count: an outline that reads as more strokes is torn, and its edge is run. Our assumption.
    // Of the score: square crossings that leave three hundredths bare or aslant; others are not tried then. Our assumption.
    private const double GoodEnoughScore = 0.03;

    /// <summary>In a mark as small as that, columns that meet bring too many holes together.</summary>
    private const double AsOneWorth = 0.03;

    /// <summary>Dots and commas are shorter than this part of the letter height; letters are longer.</summary>
    private const double LongestMark = 0.45;

    private static readonly Reading First = new(0.72, 0.45);

    private static readonly Reading[] Others = [new(0.5, 0.45), new(0.72, 0.3), new(1.0, 0.45), new(0.35, 0.45)];

    /// <summary>The columns of a region; null when there are too many to be a letter.</summary>
    public static List<Column>? Best(Region region, Triangulation mesh, double letterHeightMm)
    {
        var inside = new InsideMap(region, Math.Max(0.05, 0.008 * letterHeightMm));
        var coarse = new InsideMap(region, Math.Max(0.1, 0.016 * letterHeightMm));
        var made = new ReadColumns(region, mesh, inside, coarse, Math.Max(0.1, 0.012 * letterHeightMm));
        var best = First.Columns(made);
        double least = ReadingScore.Of(best, coarse);
        if (made.AsOne(LongestMark * letterHeightMm) is { Count: > 0 } one && ReadingScore.Of(one, coarse) is var whole && whole < least
            + AsOneWorth)
        {
            (best, least) = (one, whole);
        }

        foreach (var other in Others)
        {
            if (least < GoodEnoughScore || best.Count > MostColumns / 4)
            {
                break;
            }

            var columns = other.Columns(made);
            double score = ReadingScore.Of(columns, coarse);
            if (score < least - 0.002)
            {
                (best, least) = (columns, score);
            }
        }

        return best.Count <= MostColumns ? [.. best.Select(c => c.Column)] : null;
    }

    private List<FilledColumn> Columns(ReadColumns made) => made.Of(SpurDepth, CornerWindow);
}

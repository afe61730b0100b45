using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Names;
using NameBand.Stitching;
using NameBand.Stitching.Columns;
using NameBand.Stitching.Sewing;

namespace NameBand.Tests.StitchQuality;

/// <summary>One letter sewn alone and measured.</summary>
internal sealed record LetterTrial(StitchMeasure Measure, Outline Outline, NeedlePath Path, IReadOnlyList<Column> Columns, Point Origin)
{
    public static Fabric Cotton { get; } = new(
        "trial cotton", "tear-away", "75/11", 0.40, 0.20, 0.5, 7, new SewingThread("40 wt", 26.7, 0.40));

    public static LetterTrial? Of(Stitcher stitcher, LetterPiece piece, double heightMm)
    {
        if (piece.Outline.Rings.Length == 0)
        {
            return null;
        }

        var path = stitcher.SewName(NameOf(piece.Text, [new PlacedPiece(piece, new Point(0, 0))], piece.Ink));
        var origin = new Point(Cotton.LettersReachMm(heightMm) - (piece.Ink.LeftMm * heightMm), 0);
        var outline = piece.Outline.Scaled(heightMm).Moved(origin);
        bool isRun = stitcher.Sewn(piece).IsRun;
        List<Column> columns = [.. PieceSewer.Columns(piece, heightMm)];
        return new LetterTrial(StitchMeasure.Of(piece.Text, outline, path, Cotton, isRun, columns, origin), outline, path, columns, origin);
    }

    public static LetteredName NameOf(string text, ImmutableArray<PlacedPiece> pieces, Box ink) =>
        new(new Name(text, new RowRef("trial.csv", 1)), pieces, ink);
}

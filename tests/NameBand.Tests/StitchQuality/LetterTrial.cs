using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Names;
using NameBand.Stitching;

namespace NameBand.Tests.StitchQuality;

/// <summary>One letter sewn alone and measured.</summary>
internal sealed record LetterTrial(StitchMeasure Measure, Outline Outline, NeedlePath Path)
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
        var outline = piece.Outline.Scaled(heightMm).Moved(new Point(Cotton.PullCompensationMm - (piece.Ink.LeftMm * heightMm), 0));
        bool isRun = stitcher.Sewn(piece).IsRun;
        return new LetterTrial(StitchMeasure.Of(piece.Text, outline, path, Cotton, isRun), outline, path);
    }

    public static LetteredName NameOf(string text, ImmutableArray<PlacedPiece> pieces, Box ink) =>
        new(new Name(text, new RowRef("trial.csv", 1)), pieces, ink);
}

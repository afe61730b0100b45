using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;

namespace NameBand.Lettering;

/// <summary>
/// One letter, or several whose outlines touch, drawn at a letter height of 1 mm with its origin on the
/// baseline. The same letter of the same face is the same object in every name, so that what is worked out
/// for it can be kept by reference.
/// </summary>
/// <param name="Key">Face and glyphs with their places: equal for equal outlines.</param>
/// <param name="Text">The characters it stands for, for messages.</param>
public sealed record LetterPiece(string Key, string Face, string Text, Outline Outline, Box Ink)
{
    public bool Equals(LetterPiece? other) => other is not null && Key == other.Key;

    public override int GetHashCode() => Key.GetHashCode(StringComparison.Ordinal);
}

/// <summary>A piece at its place in a name; <paramref name="At"/> is the piece's origin at a letter height of 1 mm.</summary>
public readonly record struct PlacedPiece(LetterPiece Piece, Point At);

/// <summary>
/// A shaped name, free of height: pieces in reading order at a letter height of 1 mm, the origin at the left end
/// of the baseline (which need not be the ink's left edge).
/// </summary>
/// <param name="Ink">Box of the true ink, accents and descenders included, at a letter height of 1 mm.</param>
public sealed record LetteredName(Name Name, ImmutableArray<PlacedPiece> Pieces, Box Ink)
{
    /// <summary>How it stands beside the others.</summary>
    public Standing Standing { get; init; } = Standing.Usual;

    /// <summary>How it gets onto the cloth.</summary>
    public Way Way { get; init; }

    /// <summary>A motif that a machine has: as wide as it is, whatever letters it stands between.</summary>
    public bool KeepsSize { get; init; }

    /// <summary>Sewn beside names that are hooped, in one run with its neighbours of the same way: no field bounds it.</summary>
    public bool IsInOneRun { get; init; }

    /// <summary>
    /// Width of the sewn name in mm at a letter height: ink plus pull compensation on each side, which only letters that we
    /// stitch ourselves have.
    /// </summary>
    public double WidthMm(double letterHeightMm, double pullCompensationMm) =>
        (Ink.WidthMm * letterHeightMm) + (WayTraits.Of(Way).FollowsCoordinates ? 2 * pullCompensationMm : 0);

    /// <summary>As wide and high as it would be at another size, its letters as they are: for measuring only.</summary>
    internal LetteredName Measuring(double factor) => this with { Ink = Ink.Scaled(factor) };
}

/// <summary>The names that could be shaped, in the list's order, and those that had to be held.</summary>
/// <param name="FaceName">The chosen face's own name.</param>
/// <param name="Held">Rows whose names have characters no face in the chain has, with the reason.</param>
internal sealed record LetteredList(string FaceName, ImmutableArray<LetteredName> Names, ImmutableArray<HeldRow> Held)
{
    /// <summary>Sewn between names; null for nothing.</summary>
    public LetteredName? Motif { get; init; }

    /// <summary>Gaps leave room for motifs, which are put into them once the names stand.</summary>
    public bool AreMotifsLater { get; init; }
}

/// <summary>A row that a room after the list holds back for a person's decision.</summary>
public sealed record HeldRow(RowRef Row, Said Reason)
{
    /// <summary>The name as it could be sewn, to be offered to its owner and never taken unasked; empty: none is known.</summary>
    public string Offer { get; init; } = "";

    /// <summary>Nothing is lacking but marks, which can be added by hand.</summary>
    public bool IsForMarks { get; init; }

    /// <summary>Letters of another face could be narrow or low enough.</summary>
    public bool IsForItsSize { get; init; }

    /// <summary>It fits when its own letters are so many times as high as they would be without a wish; null: none is known.</summary>
    public double? FitsAtFactor { get; init; }
}

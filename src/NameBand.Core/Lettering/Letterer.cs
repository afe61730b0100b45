using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Fonts;
using NameBand.Lettering.Shaping;
using NameBand.Names;

namespace NameBand.Lettering;

/// <summary>The door of the Lettering room: names and a face in, shaped outlines free of height out.</summary>
internal static class Letterer
{
    /// <summary>A name whose letters lie farther apart than this, at a letter height of 1 mm, comes from a damaged face.</summary>
    private const double MostMmPerCharacter = 60;

    /// <summary>
    /// Shapes every name of a list. A name that cannot be lettered whole is held with a reason; nothing is ever
    /// left out of a name, and no face's empty box stands in for a letter.
    /// </summary>
    /// <returns>Names in the list's order; as problems, notes on damaged faces of the shelf and on letters from other faces.</returns>
    /// <exception cref="OperationCanceledException"/>
    public static Result<LetteredList> Letter(NameList names, Face chosen, FaceShelf shelf, CancellationToken cancel = default)
    {
        var chain = new FaceChain(chosen, shelf);
        using var shaper = new NameShaper(chain);
        var pieces = new PieceMaker();
        var lettered = ImmutableArray.CreateBuilder<LetteredName>(names.Names.Length);
        var held = ImmutableArray.CreateBuilder<HeldRow>();
        foreach (var name in names.Names)
        {
            cancel.ThrowIfCancellationRequested();
            var (made, reason, offer) = LetterOne(name, shaper, pieces);
            if (made is not null)
            {
                lettered.Add(made);
            }
            else
            {
                held.Add(new HeldRow(name.Row, reason) { Offer = offer });
            }
        }

        var all = lettered.ToImmutable();
        return Result.Of(
            new LetteredList(chosen.Name, all, held.ToImmutable()),
            HelpingFaces.Note(chosen, all) is { } note ? [.. chain.Problems, note] : chain.Problems);
    }

    private static (LetteredName? Made, Said Reason, string Offer) LetterOne(Name name, NameShaper shaper, PieceMaker maker)
    {
        var shaped = shaper.Shape(name.Text);
        Said? reason = shaped.Unshown.Count > 0
            ? HoldReason.ForSigns(name.Text, shaped.Unshown)
            : shaped.Fault ?? FaultOf(name.Text, shaped);
        if (reason is not null)
        {
            return (null, reason, shaped.Unshown.Count > 0 ? HoldReason.OfferWithout(name.Text, shaped.Unshown) : "");
        }

        ImmutableArray<PlacedPiece> pieces;
        try
        {
            pieces = maker.Make(name.Text, shaped.Glyphs);
        }
        catch (FontFault)
        {
            return (null, HoldReason.Tangled(shaped.Glyphs[0].Face.Name), "");
        }

        var ink = Box.Empty;
        foreach (var piece in pieces)
        {
            ink = ink.Include(piece.Piece.Ink.Moved(piece.At));
        }

        double most = MostMmPerCharacter * (name.Text.Length + 1);
        return ink.IsEmpty || ink.WidthMm > most || ink.HeightMm > most
            ? (null, ink.IsEmpty ? HoldReason.NoInk : HoldReason.TooFarApart(shaped.Glyphs[0].Face.Name), "")
            : (new LetteredName(name, pieces, ink), "", "");
    }

    /// <summary>Looks for glyphs that cannot be used, and for characters that ought to leave ink and leave none.</summary>
    private static Said? FaultOf(string text, ShapedName shaped)
    {
        var inked = new bool[text.Length];
        foreach (var glyph in shaped.Glyphs)
        {
            var shape = glyph.Face.Shape(glyph.Glyph);
            if (shape.Fault is { } fault)
            {
                return HoldReason.Damaged(glyph.Face.Name, ClusterText(text, glyph.Cluster, shaped), fault);
            }

            inked[glyph.Cluster] |= !shape.Ink.IsEmpty;
        }

        foreach (var glyph in shaped.Glyphs)
        {
            if (!inked[glyph.Cluster] && ClusterText(text, glyph.Cluster, shaped) is var characters && HasVisible(characters))
            {
                return HoldReason.Blank(glyph.Face.Name, characters);
            }
        }

        return null;
    }

    private static bool HasVisible(string characters)
    {
        foreach (var rune in characters.EnumerateRunes())
        {
            if (SignKinds.IsVisible(rune))
            {
                return true;
            }
        }

        return false;
    }

    private static string ClusterText(string text, int start, ShapedName shaped)
    {
        int end = text.Length;
        foreach (var glyph in shaped.Glyphs)
        {
            end = glyph.Cluster > start ? Math.Min(end, glyph.Cluster) : end;
        }

        return text[start..end];
    }
}

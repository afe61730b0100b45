using NameBand.Cloth;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Chooses one style for all letters of a name. Running stitch beside satin looks like a mistake, so where only some letters
/// have strokes too thin for satin, those are widened.
/// </summary>
/// <param name="Asked">A letter whose strokes do not suit the name's style as they are drawn; null: none.</param>
internal readonly record struct NameStyling(NameStyle Style, ReadPiece? Asked)
{
    /// <summary>
    /// Thin strokes are widened by no more than this on each side: a quarter of the usual thread's width, which nobody sees. Past
    /// it a hairline is no longer one, and the maker is asked. Our assumption, from looking at letters.
    /// </summary>
    public const double MostWideningMm = 0.1;

    /// <summary>The thinnest stroke that is sewn in satin as it is drawn.</summary>
    public static double LeastStrokeMm(Fabric fabric) => Fabric.NarrowestSatinMm - (2 * fabric.PullCompensationMm);

    /// <summary>The thinnest stroke that is widened unasked where its neighbours are satin.</summary>
    public static double LeastWidenedMm(Fabric fabric) => LeastStrokeMm(fabric) - (2 * MostWideningMm);

    public static NameStyle Alone(ReadPiece piece, Fabric fabric) =>
        piece.StrokeMm < LeastStrokeMm(fabric) ? NameStyle.Run : NameStyle.Satin;

    public static NameStyling Of(IReadOnlyList<ReadPiece> pieces, Fabric fabric)
    {
        bool onlyMarks = pieces.All(p => p.IsMark);
        int thin = 0, wide = 0, all = 0;
        ReadPiece? thinnest = null;
        foreach (var piece in pieces)
        {
            if (piece.IsMark && !onlyMarks)
            {
                continue;
            }

            all += piece.Places;
            if (Alone(piece, fabric) == NameStyle.Satin)
            {
                wide += piece.Places;
                continue;
            }

            thin += piece.Places;
            thinnest = thinnest is null || piece.StrokeMm < thinnest.StrokeMm ? piece : thinnest;
        }

        return thinnest is null ? new NameStyling(NameStyle.Satin, null)
            : wide == 0 && thin == all ? new NameStyling(NameStyle.Run, null)
            : thinnest.StrokeMm >= LeastWidenedMm(fabric) ? new NameStyling(NameStyle.Satin, null)
            : new NameStyling(thin > wide ? NameStyle.Run : NameStyle.Satin, thinnest);
    }
}

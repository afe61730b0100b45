using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout;

/// <summary>A length of one round that is sewn and cut in one piece; joins lie in gaps between names.</summary>
/// <param name="Number">Unique in the job, from 1.</param>
/// <param name="StartMm">Where it starts along the finished round.</param>
/// <param name="Lane">Place on its cloth, from 1 at the top.</param>
/// <param name="OnClothMm">Distance from the cloth's left end to the piece's finished start.</param>
/// <param name="StartAllowanceMm">Cloth beyond its start for the seam or the turned-in end.</param>
public sealed record StripPiece(
    int Number, int Round, double StartMm, double LengthMm, int Cloth, int Lane, double OnClothMm, double StartAllowanceMm,
    double EndAllowanceMm)
{
    public double EndMm => StartMm + LengthMm;

    /// <summary>The piece of a round on which something lies that starts there; null where the round has no cloth.</summary>
    internal static StripPiece? At(IEnumerable<StripPiece> pieces, int round, double startMm)
    {
        // What drifted may begin before its strip does, and still lies on its first piece.
        var own = pieces.Where(p => p.Round == round).OrderBy(p => p.StartMm).ToList();
        return own.FindLast(p => p.StartMm <= startMm + Tolerance.RoundingMm) ?? own.FirstOrDefault();
    }
}

/// <summary>A cloth as it goes into the hoop, with one strip or several side by side, spare at both ends.</summary>
/// <param name="Hoopings">Numbers of the hoopings on it, from left to right.</param>
public sealed record StripCloth(
    int Number, double LengthMm, double WidthMm, double LanePitchMm, ImmutableArray<StripPiece> Pieces, ImmutableArray<int> Hoopings)
{
    /// <summary>Its shape where the strip is curved: then length and width are those of the rectangle about it.</summary>
    public ClothBand? Band { get; init; }

    public int Lanes => Pieces.Max(p => p.Lane);

    /// <summary>Centre line of a lane above the middle of the cloth.</summary>
    public double LaneYMm(int lane) => (((Lanes + 1) / 2.0) - lane) * LanePitchMm;
}

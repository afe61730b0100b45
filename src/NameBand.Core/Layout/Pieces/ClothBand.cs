using System.Collections.Immutable;
using NameBand.Garment;

namespace NameBand.Layout;

/// <summary>One of the strips nested on a band.</summary>
/// <param name="CentreMm">How much higher the centre of its arcs lies than that of the band, as the names are read.</param>
/// <param name="LeftRad">Angle about its own centre at which its lower finished edge meets the cut left end of the band.</param>
public sealed record BandLane(StripCurve Curve, double CentreMm, double LeftRad);

/// <summary>A cloth for a curved piece of strip: itself a piece of a ring about the same centre, wide enough for the hoop.</summary>
/// <param name="Curve">Of the strip along its middle.</param>
/// <param name="ArcMm">Length of the cloth along the strip's lower finished edge.</param>
/// <param name="WidthMm">From its inner edge to its outer one.</param>
public sealed record ClothBand(StripCurve Curve, double ArcMm, double WidthMm)
{
    /// <summary>More than this can neither be cut nor handled as one piece.</summary>
    public const double MostRad = 2.6;

    private const int Steps = 200; // A count: on a piece a metre long a step of 2.5 mm, from its middle to its end. Our choice.

    /// <summary>The band for one piece: as much cloth beyond its end as before its start.</summary>
    internal static ClothBand Of(StripCurve curve, StripPiece piece, FlatCloth flat, double fieldAcrossMm, double pitchMm, bool isCutFirst)
    {
        double spare = piece.OnClothMm - piece.StartAllowanceMm;
        double arc = piece.OnClothMm + flat.OnClothMm(piece.LengthMm) + piece.EndAllowanceMm + spare;
        return new ClothBand(curve, arc, isCutFirst ? pitchMm : Math.Max(fieldAcrossMm + (2 * ClothLayoutMeasures.BesideFieldMm), pitchMm));
    }

    /// <summary>The strips nested on it, from above; empty for one, which lies along its middle.</summary>
    public ImmutableArray<BandLane> Lanes { get; init; } = [];

    /// <summary>The arcs on which a piece lies, which may be one of several: its curve, how much higher its centre lies as it is
    /// read, and the angle of the cut left end.</summary>
    public BandLane LaneOf(StripPiece piece) => Lanes.IsEmpty ? new BandLane(Curve, 0, -AngleRad / 2) : Lanes[piece.Lane - 1];

    public double AngleRad => ArcMm / Curve.RadiusMm;

    public double OuterRadiusMm => Curve.CentreRadiusMm + (WidthMm / 2);

    public double InnerRadiusMm => Math.Max(0, Curve.CentreRadiusMm - (WidthMm / 2));

    /// <summary>Length of the rectangle about it, along its chord.</summary>
    public double LengthMm => 2 * OuterRadiusMm * Math.Sin(Math.Min(AngleRad, Math.PI) / 2);

    /// <summary>Height of the rectangle about it.</summary>
    public double HeightMm => OuterRadiusMm - ((AngleRad <= Math.PI ? InnerRadiusMm : OuterRadiusMm) * Math.Cos(AngleRad / 2));

    /// <summary>Area of the piece of ring: angle × width × radius of its middle.</summary>
    public double AreaMm2 => AngleRad * (OuterRadiusMm - InnerRadiusMm) * (OuterRadiusMm + InnerRadiusMm) / 2;

    /// <summary>Height of its upper edge (the outer arc, the band drawn as an arch) over the foot of its rectangle; null beside
    /// it.</summary>
    public double? TopMm(double xMm) => Math.Abs(xMm) <= LengthMm / 2
        ? Math.Sqrt((OuterRadiusMm * OuterRadiusMm) - (xMm * xMm)) - FootMm
        : null;

    /// <summary>Height of its lower boundary: the inner arc, and beside it the slanted ends.</summary>
    public double? BottomMm(double xMm)
    {
        if (Math.Abs(xMm) > LengthMm / 2)
        {
            return null;
        }

        double half = AngleRad / 2;
        double corner = InnerRadiusMm * Math.Sin(half);
        return Math.Abs(xMm) <= corner
            ? Math.Sqrt((InnerRadiusMm * InnerRadiusMm) - (xMm * xMm)) - FootMm
            : (Math.Abs(xMm) / Math.Tan(half)) - FootMm;
    }

    /// <summary>Height of the rectangle's foot over the centre of the arcs.</summary>
    public double FootMm => OuterRadiusMm - HeightMm;

    /// <summary>How much higher another band lies when it is nested close over this one, both drawn as arches.</summary>
    public double NestedMm(ClothBand above)
    {
        double half = Math.Min(LengthMm, above.LengthMm) / 2;
        double corner = Math.Min(half, above.InnerRadiusMm * Math.Sin(above.AngleRad / 2));
        double most = 0;
        foreach (double x in Enumerable.Range(0, Steps + 1).Select(i => half * i / Steps).Append(corner))
        {
            most = Math.Max(most, (TopMm(x) ?? 0) - (above.BottomMm(x) ?? 0));
        }

        return most;
    }
}

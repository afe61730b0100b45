using System.Text.Json;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>What plan.json says of curved strips, besides what it says of all.</summary>
internal static class PlanJsonCurve
{
    public static void WriteRound(Utf8JsonWriter json, StripPlan plan, Round round)
    {
        if (StripCurve.Of(plan.Hem, round.Number) is { } curve)
        {
            json.WriteNumber("radiusMm", Thousandths.Mm(curve.RadiusMm));
            json.WriteNumber("upperEdgeMm", Thousandths.Mm(round.LengthMm * (curve.RadiusMm - plan.Hem.Strip.FinishedWidthMm) / curve.RadiusMm));
        }
    }

    public static void WriteName(Utf8JsonWriter json, StripPlan plan, PlacedName name)
    {
        if (plan.Hem.IsCurved)
        {
            json.WriteNumber("onBaseLineMm", Thousandths.Mm(name.WidthMm - (2 * plan.InsetMm(name))));
        }
    }

    public static void WriteHooped(Utf8JsonWriter json, StripPlan plan, HoopedSegment hooped)
    {
        if (plan.FrameOf(hooped) is { } frame)
        {
            json.WriteNumber("chordMm", Thousandths.Mm(frame.ChordMm));
            json.WriteNumber("bowMm", Thousandths.Mm(frame.BowMm));
            json.WriteNumber("ruledLineYMm", Thousandths.Mm(plan.RuledLineYMm(hooped)));
        }
    }

    public static void WritePiece(Utf8JsonWriter json, StripPlan plan, StripPiece piece)
    {
        if (StripCurve.Of(plan.Hem, piece.Round) is { } curve)
        {
            var edges = CurvedEdges.Of(plan, piece, curve);
            json.WriteNumber("lowerCutEdgeMm", Thousandths.Mm(edges.LowerMm));
            json.WriteNumber("lowerCutRadiusMm", Thousandths.Mm(edges.LowerRadiusMm));
            json.WriteNumber("upperCutEdgeMm", Thousandths.Mm(edges.UpperMm));
            json.WriteNumber("upperCutRadiusMm", Thousandths.Mm(edges.UpperRadiusMm));
            json.WriteNumber("grainAtEndsDegrees", Thousandths.Tenths(edges.GrainRad * 180 / Math.PI));
        }
    }
}

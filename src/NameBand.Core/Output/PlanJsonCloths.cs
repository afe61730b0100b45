using System.Text.Json;
using NameBand.Garment;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>The parts of plan.json that say how strips lie on their cloths, on the garment, and how good the order is.</summary>
internal static class PlanJsonCloths
{
    public static void Write(Utf8JsonWriter json, StripPlan plan)
    {
        WriteBestFit(json, plan.BestFit);
        json.WriteStartArray("cloths");
        foreach (var cloth in plan.Cloths)
        {
            json.WriteStartObject();
            json.WriteNumber("number", cloth.Number);
            json.WriteNumber("lengthMm", Thousandths.Mm(cloth.LengthMm));
            json.WriteNumber("widthMm", Thousandths.Mm(cloth.WidthMm));
            json.WriteStartArray("pieces");
            foreach (var piece in cloth.Pieces)
            {
                json.WriteStartObject();
                json.WriteNumber("number", piece.Number);
                json.WriteNumber("round", piece.Round);
                json.WriteNumber("startMm", Thousandths.Mm(piece.StartMm));
                json.WriteNumber("lengthMm", Thousandths.Mm(piece.LengthMm));
                json.WriteNumber("lane", piece.Lane);
                json.WriteNumber("laneYMm", Thousandths.Mm(cloth.LaneYMm(piece.Lane)));
                json.WriteNumber("onClothMm", Thousandths.Mm(piece.OnClothMm));
                json.WriteNumber("startAllowanceMm", Thousandths.Mm(piece.StartAllowanceMm));
                json.WriteNumber("endAllowanceMm", Thousandths.Mm(piece.EndAllowanceMm));
                PlanJsonCurve.WritePiece(json, plan, piece);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>How much shorter the upper edge of the round's strip must become, and what to make of it.</summary>
    public static void WriteEase(Utf8JsonWriter json, RoundEase ease)
    {
        json.WriteNumber("upperEdgeShorterMm", Thousandths.Mm(ease.ShorterMm));
        json.WriteNumber("upperEdgeShorterPercent", ease.LengthMm > 0 ? Thousandths.Mm(100 * ease.Part) : 0);
        json.WriteNumber("upperEdgeGapsPercent", Thousandths.Mm(100 * ease.GapsPart));
        json.WriteString("upperEdge", Word(ease.Verdict));
    }

    private static void WriteBestFit(Utf8JsonWriter json, BestFitProof? fit)
    {
        if (fit is null)
        {
            return;
        }

        json.WriteStartObject("bestFit");
        json.WriteNumber("hoopings", fit.Hoopings);
        json.WriteNumber("bound", fit.Bound);
        json.WriteNumber("patternBound", Thousandths.Mm(fit.PatternHoopings));
        json.WriteNumber("gapMm", Thousandths.Mm(fit.GapMm));
        json.WriteBoolean("proven", fit.IsProven);
        json.WriteEndObject();
    }

    private static string Word(EaseVerdict verdict) => verdict switch
    {
        EaseVerdict.LiesFlat => "liesFlat",
        EaseVerdict.CanBeEased => "canBeEased",
        EaseVerdict.WantsShaping => "wantsShaping",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "No such verdict."),
    };
}

using System.Text.Json;
using NameBand.Layout;
using NameBand.Output;
using NameBand.Pipeline;

namespace NameBand.Web.Strip;

/// <summary>One hooping as it lies in the hoop, for its picture: in the coordinates of its needle path, mm.</summary>
internal static class HoopMap
{
    // A count: on an edge of half a metre a chord every centimetre strays from the arc by hundredths of a millimetre.
    private const int EdgeSteps = 48;
    private const double EdgeBeyondMm = 40; // The strip is drawn past the field, so that one sees how it goes on.

    public static void Write(Utf8JsonWriter json, LaidOutJob laid, Hooping hooping)
    {
        var plan = laid.Plan;
        var field = HoopField.Of(plan, hooping);
        json.WriteStartObject();
        json.WriteNumber("cut", plan.Hem.Strip.CutWidthMm);
        json.WriteNumber("finished", plan.Hem.Strip.FinishedWidthMm);
        json.WriteNumber("thread", laid.Fabric.Thread.DiameterMm);
        StripMap.Dyes(json, plan);
        json.WriteStartArray("order");
        foreach (var thread in plan.Threads.Of(hooping.Number)?.Order ?? [])
        {
            json.WriteNumberValue(plan.Threads.Threads.IndexOf(thread));
        }

        json.WriteEndArray();
        Array(json, "field", field.LeftMm, field.BottomMm, field.RightMm, field.TopMm);
        json.WriteStartArray("strips");
        foreach (var hooped in hooping.Segments)
        {
            var segment = hooped.Segment;
            json.WriteStartObject();
            json.WriteNumber("y", hooped.YMm);
            var (left, right) = plan.MarksAlongMm(hooped);
            double zero = StripPlan.OnClothMm(hooping, hooped);
            Array(json, "marks", hooped.XMm + segment.LeftMarkMm, hooped.XMm + plan.RightMarkMm(hooped));
            Array(json, "marksOnCloth", zero + left, zero + right);
            json.WriteNumber("markY", hooped.YMm + plan.RuledLineYMm(hooped));
            Edges(json, plan, hooped);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>The cut and finished edges of a curved strip, from the upper to the lower, as x and y one after another.</summary>
    private static void Edges(Utf8JsonWriter json, StripPlan plan, HoopedSegment hooped)
    {
        if (plan.FrameOf(hooped) is not { } frame)
        {
            return;
        }

        var strip = plan.Hem.Strip;
        json.WriteStartArray("edges");
        foreach (double y in (double[])[strip.CutWidthMm / 2, strip.FinishedWidthMm / 2, -strip.FinishedWidthMm / 2, -strip.CutWidthMm / 2])
        {
            json.WriteStartArray();
            for (int i = 0; i <= EdgeSteps; i++)
            {
                var at = frame.At(((frame.LengthMm + (2 * EdgeBeyondMm)) * i / EdgeSteps) - EdgeBeyondMm, y);
                json.WriteNumberValue(Math.Round(hooped.XMm + at.XMm, 2));
                json.WriteNumberValue(Math.Round(hooped.YMm + at.YMm, 2));
            }

            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void Array(Utf8JsonWriter json, string key, params ReadOnlySpan<double> values)
    {
        json.WriteStartArray(key);
        foreach (double value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }
}

using System.Text.Json;
using NameBand.Layout;
using NameBand.Output;

namespace NameBand.Web.Strip;

/// <summary>One hooping as it lies in the hoop, for its picture: in the coordinates of its needle path, mm.</summary>
internal static class HoopMap
{
    public static void Write(Utf8JsonWriter json, LaidJob laid, Hooping hooping)
    {
        var plan = laid.Plan;
        var field = HoopField.Of(plan, hooping);
        json.WriteStartObject();
        json.WriteNumber("number", hooping.Number);
        json.WriteNumber("cut", plan.Hem.Strip.CutWidthMm);
        json.WriteNumber("finished", plan.Hem.Strip.FinishedWidthMm);
        json.WriteNumber("markY", plan.MarkYMm);
        json.WriteNumber("thread", laid.Fabric.Thread.DiameterMm);
        Array(json, "field", field.LeftMm, field.BottomMm, field.RightMm, field.TopMm);
        json.WriteStartArray("strips");
        foreach (var hooped in hooping.Segments)
        {
            var segment = hooped.Segment;
            json.WriteStartObject();
            json.WriteNumber("round", hooped.Round.Number);
            json.WriteNumber("x", hooped.XMm);
            json.WriteNumber("y", hooped.YMm);
            json.WriteNumber("length", segment.LengthMm);
            json.WriteNumber("leftMark", segment.LeftMarkMm);
            json.WriteNumber("rightMark", segment.RightMarkMm);
            json.WriteNumber("onCloth", hooping.OnClothMm + hooped.XMm);
            json.WriteStartArray("names");
            foreach (var name in segment.Names)
            {
                json.WriteStartArray();
                json.WriteStringValue(name.Lettered.Name.Text);
                json.WriteNumberValue(name.Order);
                json.WriteNumberValue(plan.OnClothMm(name.StartMm - segment.StartMm));
                json.WriteNumberValue(name.WidthMm);
                json.WriteEndArray();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
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

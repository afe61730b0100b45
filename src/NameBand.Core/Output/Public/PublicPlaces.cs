using System.Text.Encodings.Web;
using System.Text.Json;
using NameBand.Common;

namespace NameBand.Output.Public;

/// <summary>Writes places.json: where each shown name lies, for a page of her own.</summary>
internal static class PublicPlaces
{
    public static void Write(Stream stream, PublicMatter matter)
    {
        using var json = new Utf8JsonWriter(
            stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.Default });
        json.WriteStartObject();
        json.WriteNumber("format", 1);
        json.WriteString("title", matter.Title);
        json.WriteString("page", OutPaths.PublicPage);
        json.WriteString("cloth", matter.Cloth.ToString());
        json.WriteStartArray("names");
        foreach (var name in matter.Names)
        {
            json.WriteStartObject();
            json.WriteString("name", name.Text);
            json.WriteNumber("number", name.Number);
            json.WriteNumber("round", name.Found.Round);
            json.WriteNumber("fromStartMm", Millimetres(name.Found.Placed.StartMm));
            json.WriteNumber("widthMm", Millimetres(name.Found.Placed.WidthMm));
            json.WriteNumber("roundLengthMm", Millimetres(name.Found.Middles.RoundLengthMm));
            json.WriteString("place", PublicName.PlaceInWords(matter.Plan, name.Found).English);
            json.WriteString("thread", name.Thread.ToString());
            json.WriteString("picture", OutPaths.PublicPicture(name.Number));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static decimal Millimetres(double mm) => new decimal(Thousandths.Of(mm)) / 1000;
}

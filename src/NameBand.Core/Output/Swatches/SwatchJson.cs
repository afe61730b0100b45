using System.Text.Encodings.Web;
using System.Text.Json;
using NameBand.Common;
using NameBand.PlanFile;

namespace NameBand.Output.Swatches;

/// <summary>Writes and reads swatch.json: what each sample of a swatch is and where it lies.</summary>
public static class SwatchJson
{
    private const int LargestFile = 1_000_000;

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(Stream stream, SwatchFacts facts)
    {
        using var json = new Utf8JsonWriter(stream, Options);
        json.WriteStartObject();
        json.WriteNumber("format", PlanJson.Format);
        json.WriteString("title", facts.Title);
        json.WriteString("planMark", facts.PlanMark);
        json.WriteString("fabric", facts.Fabric.Name);
        json.WriteString("thread", facts.Fabric.Thread.Name);
        json.WriteString("face", facts.FaceName);
        json.WriteString("word", facts.Plan.Word);
        json.WriteNumber("marksApartMm", Thousandths.Mm(facts.Plan.MarksApartMm));
        json.WriteStartArray("hoopings");
        foreach (var sewn in facts.Hoopings)
        {
            json.WriteStartObject();
            json.WriteNumber("number", sewn.Hooping.Number);
            json.WriteString("needlePath", OutPaths.SwatchNeedlePath(sewn.Hooping.Number));
            json.WriteString("proof", OutPaths.SwatchProof(sewn.Hooping.Number));
            json.WriteNumber("stitches", sewn.Stitches);
            json.WriteNumber("minutes", Thousandths.Tenths(sewn.Minutes));
            json.WriteNumber("leftMarkMm", Thousandths.Mm(sewn.Hooping.LeftMarkMm));
            json.WriteNumber("markYMm", Thousandths.Mm(sewn.Hooping.MarkYMm));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("samples");
        foreach (var (hooping, placed) in facts.Hoopings.SelectMany(h => h.Hooping.Samples.Select(s => (h.Hooping.Number, s))))
        {
            json.WriteStartObject();
            json.WriteString("label", placed.Sample.Label);
            json.WriteNumber("hooping", hooping);
            json.WriteNumber("spacingMm", Thousandths.Mm(placed.Sample.SpacingMm));
            json.WriteNumber("pullCompensationMm", Thousandths.Mm(placed.Sample.PullCompensationMm));
            json.WriteNumber("letterHeightMm", Thousandths.Mm(placed.Sample.LetterHeightMm));
            json.WriteBoolean("asTheJob", placed.Sample.IsJobs);
            json.WriteNumber("xMm", Thousandths.Mm(placed.At.XMm));
            json.WriteNumber("yMm", Thousandths.Mm(placed.At.YMm));
            json.WriteNumber("widthMm", Thousandths.Mm(placed.WidthMm));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>How far apart the marks of a swatch were; null when the folder has none that can be read.</summary>
    public static double? MarksApartMm(string swatchFolder)
    {
        try
        {
            if (!InnerFile.IsPlain(swatchFolder, OutPaths.Swatch) || InnerFile.Length(swatchFolder, OutPaths.Swatch) > LargestFile)
            {
                return null;
            }

            using var json = JsonDocument.Parse(InnerFile.Bytes(swatchFolder, OutPaths.Swatch));
            return json.RootElement.TryGetProperty("marksApartMm", out var apart) && apart.TryGetDouble(out double mm) && mm is >= 10 and <= 10_000
                ? mm : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException)
        {
            return null;
        }
    }
}

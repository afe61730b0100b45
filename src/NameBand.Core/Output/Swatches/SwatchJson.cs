using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using NameBand.Common;
using NameBand.Load.Swatches;
using NameBand.PlanFile;

namespace NameBand.Output.Swatches;

/// <summary>Writes and reads swatch.json: what each sample of a swatch is and where it lies.</summary>
internal static class SwatchJson
{
    private const int MostColumns = 20; // A count: a swatch has four; a file with more was not written by us.
    private const string ColumnsName = "columns";

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
        json.WriteString("fabric", facts.Fabric.Name.English);
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
        WriteColumns(json, facts);
        json.WriteEndObject();
    }

    private static void WriteColumns(Utf8JsonWriter json, SwatchFacts facts)
    {
        json.WriteStartArray(ColumnsName);
        foreach (var (hooping, placed) in facts.Hoopings.SelectMany(h => h.Hooping.Columns.Select(c => (h.Hooping.Number, c))))
        {
            var sewn = SwatchSewer.AsSewn(placed.Column, facts.Fabric);
            json.WriteStartObject();
            json.WriteString("label", sewn.Label);
            json.WriteNumber("hooping", hooping);
            json.WriteBoolean("level", sewn.IsLevel);
            json.WriteNumber("widthMm", Thousandths.Mm(sewn.WidthMm));
            json.WriteNumber("lengthMm", Thousandths.Mm(sewn.LengthMm));
            json.WriteNumber("xMm", Thousandths.Mm(placed.At.XMm));
            json.WriteNumber("yMm", Thousandths.Mm(placed.At.YMm));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>How far apart the marks of a swatch were; null when the folder has none that can be read.</summary>
    public static double? MarksApartMm(string swatchFolder) => Read<double?>(swatchFolder, json =>
        json.TryGetProperty("marksApartMm", out var apart) && apart.TryGetDouble(out double mm) && mm is >= 10 and <= 10_000 ? mm : null);

    /// <summary>The columns of a swatch as they were sewn; none of one made before there were any, or that cannot be read.</summary>
    public static ImmutableArray<SewnColumn> Columns(string swatchFolder)
    {
        var read = Read<ImmutableArray<SewnColumn>?>(swatchFolder, json =>
            json.TryGetProperty(ColumnsName, out var columns) && columns.GetArrayLength() <= MostColumns
                ? [.. columns.EnumerateArray().Select(Column)] : null);
        return read is { } all && all.All(c => c is { WidthMm: > 0.3 and < 50, LengthMm: > 0.3 and < 200 }) ? all : [];
    }

    private static SewnColumn Column(JsonElement column) => new(
        column.GetProperty("label").GetString() ?? "", column.GetProperty("level").GetBoolean(),
        column.GetProperty("widthMm").GetDouble(), column.GetProperty("lengthMm").GetDouble());

    private static T? Read<T>(string swatchFolder, Func<JsonElement, T?> read)
    {
        try
        {
            if (!InnerFile.IsPlain(swatchFolder, OutPaths.Swatch)
                || InnerFile.Length(swatchFolder, OutPaths.Swatch) > InnerFile.MostSettingsBytes)
            {
                return default;
            }

            using var json = JsonDocument.Parse(InnerFile.Bytes(swatchFolder, OutPaths.Swatch));
            return read(json.RootElement);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException
            or KeyNotFoundException or FormatException)
        {
            return default;
        }
    }
}

using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>A key's value as a person types it and as it stands in job.json.</summary>
internal static class KeyValue
{
    /// <summary>A maker's accents stay accents; it is shown as text and never as a page.</summary>
    private static readonly JsonSerializerOptions Readable = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Keys whose last word alone does not say what is asked.</summary>
    public static readonly IReadOnlyDictionary<string, string> OwnLabels = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["lettering.least"] = "Least height",
        ["lettering.gap"] = "Least gap between names",
        ["lettering.mostGap"] = "Widest gap between names",
        ["lettering.spread"] = "Spread the names over the round",
        ["lettering.motif"] = "Sewn between names",
        ["lettering.agreedFirst"] = "Agreed names first",
        ["hem.closed"] = "The edge goes round and meets itself",
        ["strip.sewn"] = "Names are sewn",
        ["strip.readBy"] = "Upright for",
        ["stitches.spacing"] = "Distance between stitch lines",
    };

    public static string Shown(string? json) => json is null ? "" : JsonNode.Parse(json) switch
    {
        JsonArray many when many.All(m => m is JsonValue) => string.Join("; ", many.Select(One)),
        var one => One(one),
    };

    /// <summary>What was typed as JSON; whether it will do is for the reader of job.json to say.</summary>
    public static JobEdit Edit(JobKeyCard key, string typed)
    {
        string text = typed.Trim();
        if (text.Length == 0)
        {
            return JobEdit.Remove(key.Path);
        }

        return key.Kind switch
        {
            JobKeyKind.Flag => new JobEdit(key.Path, text == "true" ? "true" : "false"),
            JobKeyKind.Texts => new JobEdit(key.Path, JsonSerializer.Serialize(Parts(text))),
            JobKeyKind.Number => new JobEdit(key.Path, NumberOrText(text)),
            JobKeyKind.Length when key.IsMany && text.Contains(';') =>
                new JobEdit(key.Path, "[" + string.Join(", ", Parts(text).Select(NumberOrText)) + "]"),
            JobKeyKind.Length => new JobEdit(key.Path, NumberOrText(text)),
            JobKeyKind.Form when text[0] is '[' or '{' && IsJson(text) => new JobEdit(key.Path, text),
            _ => JobEdit.Text(key.Path, text),
        };
    }

    private static string One(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : node?.ToJsonString(Readable) ?? "";

    private static bool IsJson(string text)
    {
        try
        {
            return JsonNode.Parse(text) is not null;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static string[] Parts(string text) => text.Split([';', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static string NumberOrText(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number)
            ? number.ToString("R", CultureInfo.InvariantCulture)
            : JsonSerializer.Serialize(text);
}

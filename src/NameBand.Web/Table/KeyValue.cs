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
            _ => JobEdit.Text(key.Path, text),
        };
    }

    private static string One(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : node?.ToJsonString(Readable) ?? "";

    private static string[] Parts(string text) => text.Split([';', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static string NumberOrText(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number)
            ? number.ToString("R", CultureInfo.InvariantCulture)
            : JsonSerializer.Serialize(text);
}

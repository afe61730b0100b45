using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>A key's value as a person types it and as it stands in job.json.</summary>
internal static class KeyValue
{
    /// <summary>A maker's accents stay accents; it is shown as text and never as a page.</summary>
    private static readonly JsonSerializerOptions Readable =
        new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A bare number that stands for a length is shown with the unit that it has.</summary>
    public static string Shown(JobKeyCard key, string? json) =>
        key.Kind == JobKeyKind.Length && json is not null ? JsonNode.Parse(json) switch
        {
            JsonArray many when many.All(m => m is JsonValue) => string.Join("; ", many.Select(OneLength)),
            var one => OneLength(one),
        } : Shown(json);

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
            // Never a bare number: on the page nobody says that it would be millimetres, so the unit is asked for.
            JobKeyKind.Length when key.IsMany && text.Contains(';') =>
                new JobEdit(key.Path, "[" + string.Join(", ", Parts(text).Select(ZeroOrText)) + "]"),
            JobKeyKind.Length => new JobEdit(key.Path, ZeroOrText(text)),
            _ => JobEdit.Text(key.Path, text),
        };
    }

    private static string One(JsonNode? node) =>
        node is JsonValue value && value.TryGetValue(out string? text) ? text : node?.ToJsonString(Readable) ?? "";

    private static string OneLength(JsonNode? node) =>
        node?.GetValueKind() == JsonValueKind.Number && node.ToJsonString() is var number && number != "0" ? number + " mm" : One(node);

    /// <summary>Nothing is nothing in any unit.</summary>
    private static string ZeroOrText(string text) =>
        text.Trim('0', '.').Length == 0 && text.Contains('0') ? "0" : JsonSerializer.Serialize(text);

    private static string[] Parts(string text) =>
        text.Split([';', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static string NumberOrText(string text) =>
        double.TryParse(
            text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number)
            ? number.ToString("R", CultureInfo.InvariantCulture)
            : JsonSerializer.Serialize(text);
}

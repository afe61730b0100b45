using System.Text.Json;

namespace NameBand.Common;

/// <summary>How places and severities of problems stand in JSON, in plan.json and in what a command answers.</summary>
internal static class ProblemJson
{
    public static string Word(Severity severity) => JsonNamingPolicy.CamelCase.ConvertName(severity.ToString());

    /// <summary>What of a place is not known is left out; a fault of the job as a whole may have none.</summary>
    public static void WriteWhere(Utf8JsonWriter json, Where where)
    {
        json.WriteStartObject("where");
        Text("file", where.File);
        Whole("line", where.Line);
        Whole("column", where.Column);
        Text("key", where.Key);
        Text("name", where.Name);
        json.WriteEndObject();

        void Text(string key, string? text)
        {
            if (text is not null)
            {
                json.WriteString(key, text);
            }
        }

        void Whole(string key, int? number)
        {
            if (number is { } value)
            {
                json.WriteNumber(key, value);
            }
        }
    }
}

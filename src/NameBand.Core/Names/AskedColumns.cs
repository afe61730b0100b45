using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Columns that may hold wishes not to be shown and whose meaning nobody has said: asked once for each column.</summary>
public static class AskedColumns
{
    /// <summary>The key of job.json under which the question is answered; stands in the problem that asks it.</summary>
    public const string Key = "columns";

    public static bool IsAsked(Problem problem) => problem is { Severity: Severity.NeedsPerson, Where: { Key: Key, Column: not null } };

    internal static Problem Ask(string list, CsvRow header, int index, ImmutableArray<Said> labels)
    {
        var label = labels[index];
        string written = label.English == header.Fields[index].Trim() ? label.English : PlainText.Short(header.Fields[index], 200);
        string name = JsonSerializer.Serialize(written, Writing);
        return Problem.NeedsPerson(
            new Where(list, header.Line, index + 1, Key),
            $"The column “{label}” may say whether a name may be shown, but NameBand cannot tell how. Until you say, the rows of this "
                + $"list are held.",
            $"Say it once in job.json. A yes there shows the name: \"columns\": {{ \"show\": [{name}] }}. A yes there hides it: "
            + $"\"columns\": {{ \"hide\": [{name}] }}. It is about the web alone: \"columns\": {{ \"web\": [{name}] }}. It has nothing to do with it: \"columns\": {{ \"ignored\": [{name}] }}.");
    }

    private static readonly JsonSerializerOptions Writing =
        new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}

using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace NameBand.Job;

/// <summary>One thing to set in job.json.</summary>
/// <param name="Path">A key such as <c>hem.length</c>.</param>
/// <param name="Json">The value as JSON; null: the key is taken out and its default holds.</param>
public sealed record JobEdit(string Path, string? Json)
{
    /// <summary>Sets a key to a text.</summary>
    public static JobEdit Text(string path, string text) => new(path, JsonSerializer.Serialize(text, JobEditing.Writing));

    /// <summary>Takes a key out, so that its default holds.</summary>
    public static JobEdit Remove(string path) => new(path, null);
}

/// <summary>Sets keys in the text of a job.json; what is not touched keeps its order and its words.</summary>
public static class JobEditing
{
    internal static JsonSerializerOptions Writing { get; } = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        // Names of lists and titles stay readable (but for signs such as emoji, which .NET always writes by their numbers);
        // the file is never put into a web page as it is.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <param name="bytes">The file as it is; empty: a new one is begun.</param>
    /// <returns>The new text, or null where the file as it is is no JSON object or an edit is no JSON.</returns>
    public static byte[]? Apply(ReadOnlySpan<byte> bytes, ImmutableArray<JobEdit> edits)
    {
        try
        {
            ReadOnlySpan<byte> text = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
            var root = text.IsEmpty ? new JsonObject { ["format"] = 1 } : JsonNode.Parse(text) as JsonObject;
            if (root is null)
            {
                return null;
            }

            foreach (var edit in edits)
            {
                string path = OlderSpellings.ToToday(edit.Path);
                if (OlderSpellings.Of(path) is { } older)
                {
                    Rename(root, older, path);
                }

                Set(root, path.Split('.'), edit.Json);
            }

            return Encoding.UTF8.GetBytes(root.ToJsonString(Writing) + "\n");
        }
        catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException)
        {
            return null; // Not JSON, or a key that stands there twice.
        }
    }

    /// <summary>The value of a key as it stands in the file, as JSON; null where the key is not there.</summary>
    public static string? ValueOf(ReadOnlySpan<byte> bytes, string path)
    {
        try
        {
            JsonNode? root = bytes.IsEmpty ? null : JsonNode.Parse(bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes);
            string today = OlderSpellings.ToToday(path);
            JsonNode? node = At(root, today) ?? (OlderSpellings.Of(today) is { } older ? At(root, older) : null);
            return node?.ToJsonString(new JsonSerializerOptions(Writing) { WriteIndented = false });
        }
        catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }

    private static JsonNode? At(JsonNode? root, string path) =>
        path.Split('.').Aggregate(root, (node, step) => (node as JsonObject)?[step]);

    /// <summary>Gives a key its name of today, in its place among the others.</summary>
    private static void Rename(JsonObject root, string older, string today)
    {
        int dot = older.LastIndexOf('.');
        if (At(root, older[..dot]) is JsonObject group && group.IndexOf(older[(dot + 1)..]) is >= 0 and var at)
        {
            var value = group.GetAt(at).Value;
            group.RemoveAt(at);
            if (!group.ContainsKey(today[(dot + 1)..]))
            {
                group.Insert(at, today[(dot + 1)..], value);
            }
        }
    }

    private static void Set(JsonObject root, string[] steps, string? json)
    {
        var group = root;
        foreach (string step in steps[..^1])
        {
            if (group[step] is not JsonObject inner)
            {
                if (json is null)
                {
                    return;
                }

                inner = [];
                group[step] = inner;
            }

            group = inner;
        }

        if (json is null)
        {
            group.Remove(steps[^1]);
            if (group.Count == 0 && steps.Length > 1)
            {
                Set(root, steps[..^1], null);
            }
        }
        else
        {
            group[steps[^1]] = JsonNode.Parse(json);
        }
    }
}

using System.Text;
using System.Text.Json;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>
/// Sets one number in a job.json and leaves every other byte of the file as it is. Written beside and renamed, so that the
/// file is whole, the earlier one or the new; refused when somebody saved the file in the meantime.
/// </summary>
internal static class JobFileEdit
{
    /// <param name="group">The group of the key, such as <c>strip</c>.</param>
    /// <param name="number">As it is to stand in the file.</param>
    /// <returns>The problem that kept it from being written; null when it was.</returns>
    /// <exception cref="IOException">The machine could not; the file is as it was.</exception>
    public static Problem? SetNumber(string jobFolder, string group, string key, string number) =>
        SetAll(jobFolder, group, [(key, number)]);

    /// <summary>The same of several keys of one group, all or none.</summary>
    public static Problem? SetAll(string jobFolder, string group, IReadOnlyList<(string Key, string Value)> values)
    {
        string key = values[0].Key;
        var taken = JobLock.Take(jobFolder);
        using var held = taken.Value;
        if (held is null)
        {
            return taken.Problems[0];
        }

        string path = Path.Combine(jobFolder, JobReader.FileName);
        var where = new Where(JobReader.FileName, Key: $"{group}.{key}");
        string written = string.Join(", ", values.Select(v => $"\"{v.Key}\": {v.Value}"));
        Said byHand = $"Write {written} in the group “{group}” yourself.";
        if (InnerFile.Objection(jobFolder, JobReader.FileName) is { } objection)
        {
            return objection with { Where = where, Mend = byHand };
        }

        byte[] before = InnerFile.Bytes(jobFolder, JobReader.FileName);
        if (before is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            return Problem.CannotUse(where, "job.json is saved as UTF-16, and is not changed from here.", $"{byHand} Or save it as UTF-8.");
        }

        byte[] after = values.Reverse().Aggregate(before, (file, v) => With(file, group, v.Key, v.Value));
        if (!InnerFile.Bytes(jobFolder, JobReader.FileName).AsSpan().SequenceEqual(before))
        {
            return Problem.CannotUse(where, "Another program saved job.json just now; nothing was changed.", "Run the command again.");
        }

        WholeFile.Put(path, after);
        return null;
    }

    /// <summary>The file with one number set. It must be a group that <see cref="JobReader"/> has found to be whole.</summary>
    internal static byte[] With(byte[] file, string group, string key, string number)
    {
        int mark = file is [0xEF, 0xBB, 0xBF, ..] ? 3 : 0;
        var at = Find(file.AsSpan(mark), group, key);
        (int from, int to, string text) = at switch
        {
            { Value: var (start, end) } => (start, end, number),
            { Group: { } inside } => (inside.After, inside.After, Insertion(file, mark, inside, $"\"{key}\": {number}")),
            _ => (at.Root.After, at.Root.After, Insertion(file, mark, at.Root, $"\"{group}\": {{ \"{key}\": {number} }}")),
        };
        return [.. file.AsSpan(0, mark + from), .. Encoding.UTF8.GetBytes(text), .. file.AsSpan(mark + to)];
    }

    /// <summary>Behind the opening brace, with the blanks that the next key has before it.</summary>
    private static string Insertion(byte[] file, int mark, Brace brace, string text)
    {
        int end = mark + brace.After;
        while (end < file.Length && file[end] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
        {
            end++;
        }

        string blanks = Encoding.UTF8.GetString(file.AsSpan(mark + brace.After, end - mark - brace.After));
        return brace.IsEmpty ? $" {text} " : $"{blanks}{text},{(blanks.Length == 0 ? " " : "")}";
    }

    private static Found Find(ReadOnlySpan<byte> json, string group, string key)
    {
        var reader = new Utf8JsonReader(json);
        Brace root = default;
        Brace? inside = null;
        string name = "";
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.StartObject && reader.CurrentDepth == 0)
            {
                root = new Brace((int)reader.BytesConsumed, IsEmpty(reader));
            }
            else if (reader.TokenType == JsonTokenType.PropertyName && reader.CurrentDepth == 1)
            {
                name = reader.GetString()!;
            }
            else if (reader.TokenType == JsonTokenType.StartObject && reader.CurrentDepth == 1 && name == group)
            {
                inside = new Brace((int)reader.BytesConsumed, IsEmpty(reader));
            }
            else if (reader.TokenType == JsonTokenType.PropertyName && reader.CurrentDepth == 2 && name == group
                && reader.ValueTextEquals(key))
            {
                reader.Read();
                return new Found(root, inside, ((int)reader.TokenStartIndex, (int)reader.BytesConsumed));
            }
        }

        return new Found(root, inside, null);
    }

    /// <summary>Works on a copy of the reader.</summary>
    private static bool IsEmpty(Utf8JsonReader reader) => reader.Read() && reader.TokenType == JsonTokenType.EndObject;

    /// <param name="After">The place behind an opening brace.</param>
    private readonly record struct Brace(int After, bool IsEmpty);

    private readonly record struct Found(Brace Root, Brace? Group, (int From, int To)? Value);
}

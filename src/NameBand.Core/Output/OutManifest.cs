using System.Security.Cryptography;
using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Common;

namespace NameBand.Output;

/// <summary>
/// Which files of an out folder we wrote, kept in the folder itself. A file that is not listed, or is no longer as we
/// wrote it, is a person's and outlives the folder's renewal.
/// </summary>
internal sealed partial class OutManifest
{
    // Only what lies at the top (worksheet, plan, page to read first) is short and likely to be written in by hand, so
    // only that is fingerprinted; below, a changed length tells.
    private readonly Dictionary<string, Entry>? _entries;
    private readonly DateTime _writtenUtc;

    private OutManifest(Dictionary<string, Entry>? entries, DateTime writtenUtc)
    {
        _entries = entries;
        _writtenUtc = writtenUtc;
    }

    private sealed record Entry(long Bytes, string? Sha256);

    /// <summary>Writes the manifest of all files now in <paramref name="folder"/>, in the order of their names.</summary>
    public static void Write(string folder)
    {
        var files = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(f => (Full: f, Relative: Relative(folder, f)))
            .OrderBy(f => f.Relative, StringComparer.Ordinal)
            .ToList();
        using var stream = File.Create(Path.Combine(folder, OutPaths.Manifest));
        using var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" });
        json.WriteStartObject();
        json.WriteNumber("format", 1);
        json.WriteStartArray("files");
        foreach (var (full, relative) in files)
        {
            json.WriteStartObject();
            json.WriteString("path", relative);
            json.WriteNumber("bytes", new FileInfo(full).Length);
            if (!relative.Contains('/'))
            {
                json.WriteString("sha256", Fingerprint(full));
            }

            json.WriteEndObject();
            json.Flush();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Reads a folder's manifest. Where it is missing or broken, files are known by the names we use.</summary>
    public static OutManifest Read(string folder)
    {
        try
        {
            string path = Path.Combine(folder, OutPaths.Manifest);
            using var json = JsonDocument.Parse(InnerFile.Bytes(path));
            var entries = new Dictionary<string, Entry>(StringComparer.Ordinal);
            foreach (var file in json.RootElement.GetProperty("files").EnumerateArray())
            {
                entries[file.GetProperty("path").GetString()!] = new Entry(
                    file.GetProperty("bytes").GetInt64(),
                    file.TryGetProperty("sha256", out var print) ? print.GetString() : null);
            }

            return new OutManifest(entries, File.GetLastWriteTimeUtc(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException
            or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return new OutManifest(null, DateTime.MinValue);
        }
    }

    /// <summary>Whether the file is one we wrote and nobody has changed since.</summary>
    public bool IsOurs(string folder, string relative)
    {
        if (relative == OutPaths.Manifest)
        {
            return true;
        }

        if (_entries is null)
        {
            return OurNames().IsMatch(relative);
        }

        string full = Path.Combine(folder, relative);
        return _entries.TryGetValue(relative, out var entry)
            && new FileInfo(full) is { LinkTarget: null } file
            && file.Length == entry.Bytes
            && (entry.Sha256 is null || entry.Sha256 == Fingerprint(full));
    }

    /// <summary>
    /// Whether the file is one we wrote, of the length we wrote, and older than this list of them, which was written last:
    /// then nobody has written to it since.
    /// </summary>
    public bool IsUntouched(string folder, string relative) =>
        _entries is not null && _entries.TryGetValue(relative, out var entry)
        && new FileInfo(Path.Combine(folder, relative)) is { Exists: true, LinkTarget: null } file
        && file.Length == entry.Bytes && file.LastWriteTimeUtc < _writtenUtc;

    /// <summary>Whether we made this sub-folder, so that it may go when nothing else is in it.</summary>
    public bool IsOurFolder(string relative) => _entries is null
        ? relative is "needle-paths" or "proofs" or "sheets" or "thanks" or "playback"
        : _entries.Keys.Any(k => k.StartsWith(relative + "/", StringComparison.Ordinal));

    /// <summary>Whether the folder holds a plan of ours, or a swatch, and of which format; null when it holds none.</summary>
    public static int? Format(string folder, OutKind kind)
    {
        try
        {
            var json = new Utf8JsonReader(InnerFile.Bytes(Path.Combine(folder, kind.File)));
            int? format = null;
            var missing = kind.Keys.ToHashSet(StringComparer.Ordinal);
            bool isObject = json.Read() && json.TokenType == JsonTokenType.StartObject;
            while (isObject && json.Read() && json.TokenType == JsonTokenType.PropertyName)
            {
                string key = json.GetString()!;
                missing.Remove(key);
                json.Read();
                format = key != "format" ? format : json.TokenType == JsonTokenType.Number && json.TryGetInt32(out int number) ? number : null;
                json.Skip();
            }

            return isObject && !json.Read() && missing.Count == 0 ? format : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    public static string Relative(string folder, string file) =>
        Path.GetRelativePath(folder, file).Replace(Path.DirectorySeparatorChar, '/');

    private static string Fingerprint(string file)
    {
        using var stream = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    [GeneratedRegex(
        @"^(plan\.json|swatch\.json|read-me-first\.txt|worksheet\.csv|changes\.csv|key-in\.csv|(key-in|template|swatch)-[a-z0-9]+\.pdf"
        + @"|needle-paths/(hooping-[0-9]{3,}|swatch-[0-9]{2,})\.(csv|svg|iso)"
        + @"|proofs/(cutting-plan|(hooping|load)-[0-9]{3,}|(round|swatch)-[0-9]{2,})\.png"
        + @"|sheets/((work-packet|proof-reading|name-finder|template)-[a-z0-9]+\.pdf|name-finder\.csv)"
        + @"|thanks/(thanks\.csv|name-[0-9]{4,}\.png)|playback/playback-[0-9]{3,}\.png)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex OurNames();
}

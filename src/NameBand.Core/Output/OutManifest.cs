using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Common;

namespace NameBand.Output;

/// <summary>
/// Which files of an out folder we wrote, kept in the folder itself with their lengths and SHA-256. By it a folder is known
/// to be whole; a file that is not listed, or is no longer as we wrote it, is a person's and outlives the folder's renewal.
/// </summary>
internal sealed partial class OutManifest
{
    /// <summary>As long as a name may be on the usual file systems, in bytes of the longest writing.</summary>
    private const int LongestPath = 255 / 4;

    private readonly Dictionary<string, Entry>? _entries;

    public static OutManifest None { get; } = new(null);

    private OutManifest(Dictionary<string, Entry>? entries) => _entries = entries;

    // Version 0.1 wrote a SHA-256 only of what lies at the top.
    private sealed record Entry(long Bytes, string? Sha256);

    /// <summary>Writes the manifest of all files now in <paramref name="folder"/>, in the order of their names.</summary>
    /// <param name="written">SHA-256 of each file as it was written; one that is missing is read.</param>
    public static void Write(string folder, IReadOnlyDictionary<string, string> written)
    {
        using var stream = InnerFile.Create(folder, OutPaths.Manifest);
        stream.Write(Of(folder, written));
    }

    /// <summary>The manifest of all files now in <paramref name="folder"/>, as its file holds it.</summary>
    /// <inheritdoc cref="Write"/>
    public static byte[] Of(string folder, IReadOnlyDictionary<string, string> written)
    {
        var files = InnerFile.Walk(folder).Where(f => f.Kind == EntryKind.File && f.Name is not (OutPaths.Manifest or WholeFile.Unfinished))
            .OrderBy(f => f.Name, StringComparer.Ordinal).ToList();
        using var stream = new MemoryStream();
        using var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" });
        json.WriteStartObject();
        json.WriteNumber("format", 1);
        json.WriteStartArray("files");
        foreach (var file in files)
        {
            json.WriteStartObject();
            json.WriteString("path", file.Name);
            json.WriteNumber("bytes", ((FileInfo)file.Info).Length);
            json.WriteString("sha256", written.TryGetValue(file.Name, out string? hash) ? hash : FileHash.Of(folder, file.Name));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        return stream.ToArray();
    }

    /// <summary>SHA-256 of a file as it was written; null where the list does not say.</summary>
    public string? HashOf(string relative) => _entries?.GetValueOrDefault(relative)?.Sha256;

    /// <summary>Whether we wrote a file of this name into the folder.</summary>
    public bool Lists(string relative) => _entries?.ContainsKey(relative) == true;

    /// <summary>SHA-256 of every file as it was written, so far as the list says.</summary>
    public IEnumerable<KeyValuePair<string, string>> Hashes => _entries is null
        ? [] : _entries.Where(e => e.Value.Sha256 is not null).Select(e => KeyValuePair.Create(e.Key, e.Value.Sha256!));

    /// <summary>Reads a folder's manifest. Where it is missing or broken, files are known by the names we use.</summary>
    public static OutManifest Read(string folder)
    {
        try
        {
            using var json = JsonDocument.Parse(InnerFile.Bytes(folder, OutPaths.Manifest));
            var entries = new Dictionary<string, Entry>(StringComparer.Ordinal);
            foreach (var file in json.RootElement.GetProperty("files").EnumerateArray())
            {
                string path = file.GetProperty("path").GetString() ?? "";
                entries[CanBeAPath(path) ? path : throw new FormatException("path")] = new Entry(
                    file.GetProperty("bytes").GetInt64(),
                    file.TryGetProperty("sha256", out var print) ? print.GetString() : null);
            }

            return new OutManifest(entries);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException
            or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return None;
        }
    }

    /// <summary>Names of ours are short; one with a NUL, or longer than a file can be called, the system refuses with a fault.</summary>
    private static bool CanBeAPath(string path) => path.Length is > 0 and <= LongestPath && !path.Contains('\0');

    /// <summary>Whether the file is one we wrote and nobody has changed since, or what a power cut left of it.</summary>
    public bool IsOurs(string folder, string relative)
    {
        if (relative == OutPaths.Manifest)
        {
            return true;
        }

        if (_entries is null)
        {
            return OurNames().IsMatch(relative) || (PublicNames().IsMatch(relative) && InnerFile.IsPlain(folder, OutPaths.PublicPlaces));
        }

        if (!_entries.TryGetValue(relative, out var entry) || !InnerFile.IsPlain(folder, relative))
        {
            return false;
        }

        // Only what lies at the top (worksheet, plan, page to read first) is likely to be written in by hand, so only
        // that is read; below, a changed length tells.
        bool isAsLong = InnerFile.Length(folder, relative) == entry.Bytes;
        return (isAsLong && (entry.Sha256 is null || relative.Contains('/') || entry.Sha256 == FileHash.Of(folder, relative)))
            || (entry.Bytes > 0 && SpoiledFile.Is(folder, relative));
    }

    /// <summary>The first file that is not as this list says, itself included; null when the folder is whole.</summary>
    /// <param name="alreadyRead">Files that need not be read again.</param>
    public string? Fault(string folder, IReadOnlySet<string>? alreadyRead = null) => _entries is null
        ? OutPaths.Manifest
        : Changed(folder, _entries, alreadyRead).Order(StringComparer.Ordinal).FirstOrDefault();

    /// <summary>How every file of the folder stands beside this list, in the order of their names.</summary>
    public FolderState StateOf(string folder)
    {
        if (_entries is null)
        {
            return FolderState.WithoutList;
        }

        var there = InnerFile.Walk(folder).Where(f => f.Kind == EntryKind.File).Select(f => f.Name).ToHashSet(StringComparer.Ordinal);
        string[] wrong = [.. Changed(folder, _entries).Order(StringComparer.Ordinal)];
        var spoiled = wrong.Where(n => there.Contains(n) && SpoiledFile.Is(folder, n)).ToHashSet(StringComparer.Ordinal);
        return new FolderState(
            _entries.Count, [.. wrong.Where(n => !there.Contains(n))], [.. spoiled.Order(StringComparer.Ordinal)],
            [.. wrong.Where(n => there.Contains(n) && !spoiled.Contains(n))],
            [.. there.Where(n => n is not (OutPaths.Manifest or WholeFile.Unfinished) && !_entries.ContainsKey(n))
            .Order(StringComparer.Ordinal)]);
    }

    private static ConcurrentBag<string> Changed(
        string folder, IReadOnlyDictionary<string, Entry> entries, IReadOnlySet<string>? alreadyRead = null)
    {
        var changed = new ConcurrentBag<string>();
        Parallel.ForEach(entries, e =>
        {
            if (alreadyRead?.Contains(e.Key) != true && !IsAsWritten(folder, e.Key, e.Value))
            {
                changed.Add(e.Key);
            }
        });
        return changed;
    }

    private static bool IsAsWritten(string folder, string name, Entry entry)
    {
        try
        {
            return InnerFile.IsPlain(folder, name) && InnerFile.Length(folder, name) == entry.Bytes
                && (entry.Sha256 is { } hash ? FileHash.Of(folder, name) == hash : entry.Bytes == 0 || !SpoiledFile.Is(folder, name));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>
    /// The first file that a power cut, and no person, can have left so: one that is gone, empty or full of NULs, or in a
    /// sub-folder and not as it was written. Null when there is none.
    /// </summary>
    public string? Spoiled(string folder) => _entries is null
        ? OutPaths.Manifest
        : Changed(folder, _entries)
            .Where(name => name.Contains('/') || !InnerFile.IsPlain(folder, name) || SpoiledFile.Is(folder, name))
            .Order(StringComparer.Ordinal).FirstOrDefault();

    /// <summary>Whether we made this sub-folder, so that it may go when nothing else is in it.</summary>
    public bool IsOurFolder(string relative) => _entries is null
        ? relative is "needle-paths" or "proofs" or "sheets" or "thanks" or "playback" or "pictures"
        : _entries.Keys.Any(k => k.StartsWith(relative + "/", StringComparison.Ordinal));

    /// <summary>Whether the folder holds a plan of ours, or a swatch, and of which format; null when it holds none.</summary>
    public static int? Format(string folder, OutKind kind)
    {
        try
        {
            var json = new Utf8JsonReader(InnerFile.Bytes(folder, kind.File));
            int? format = null;
            var missing = kind.Keys.ToHashSet(StringComparer.Ordinal);
            bool isObject = json.Read() && json.TokenType == JsonTokenType.StartObject;
            while (isObject && json.Read() && json.TokenType == JsonTokenType.PropertyName)
            {
                string key = json.GetString()!;
                missing.Remove(key);
                json.Read();
                format = key != "format"
                    ? format : json.TokenType == JsonTokenType.Number && json.TryGetInt32(out int number) ? number : null;
                json.Skip();
            }

            return isObject && !json.Read() && missing.Count == 0 ? format : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>
    /// Whether this is what a power cut left of a folder of ours, whose plan can no longer be read: then it is made anew.
    /// A folder whose plan somebody else wrote, or that never had one, is not.
    /// </summary>
    public static bool IsSpoiledOurs(string folder, OutKind kind)
    {
        try
        {
            if (!InnerFile.IsPlain(folder, kind.File) || !SpoiledFile.Is(folder, kind.File))
            {
                return Read(folder) is { _entries: { } listed } && listed.ContainsKey(kind.File);
            }

            return InnerFile.IsPlain(folder, OutPaths.Manifest)
                || InnerFile.Walk(folder).Any(e => e.Kind == EntryKind.File && e.Name != kind.File && OurNames().IsMatch(e.Name));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    [GeneratedRegex(
        @"^(plan\.json|swatch\.json|read-me-first\.txt|worksheet\.csv|earlier-marks\.csv|changes\.csv|key-in\.csv|(key-in|template|swatch)-[a-z0-9]+\.pdf"
        + @"|needle-paths/(hooping-[0-9]{3,}|swatch-[0-9]{2,})\.(csv|svg|nc|iso)"
        + @"|proofs/(cutting-plan|(hooping|load)-[0-9]{3,}|(round|swatch)-[0-9]{2,})\.png"
        + @"|sheets/((work-packet|proof-reading|name-finder|template|thanks-cards|paper-rehearsal|maker-[0-9]+)-[a-z0-9]+\.pdf|name-finder\.csv)"
        + @"|thanks/(thanks\.csv|name-[0-9]{4,}\.png)|playback/playback-[0-9]{3,}\.png)$",
        RegexOptions.CultureInvariant)]
    private static partial Regex OurNames();

    /// <summary>Of the page for supporters; in another folder a person may well have an index.html of her own.</summary>
    [GeneratedRegex(@"^(index\.html|places\.json|pictures/name-[0-9]{4,}\.svg)$", RegexOptions.CultureInvariant)]
    private static partial Regex PublicNames();
}

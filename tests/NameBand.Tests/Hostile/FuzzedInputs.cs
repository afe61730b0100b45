using System.Globalization;
using System.IO.Compression;

namespace NameBand.Tests.Hostile;

/// <summary>What guided spoiling found that went where no input had gone, packed in one file, a folder for each kind.</summary>
internal static class FuzzedInputs
{
    /// <summary>Where it lies in the project's folder.</summary>
    public const string Place = "tests/NameBand.Tests/Data/fuzzed.zip";

    private const int MostOfAKind = 24;
    private const int MostBytes = 6000;

    public static IEnumerable<string> Kinds(string file)
    {
        using var archive = ZipFile.OpenRead(file);
        return [.. archive.Entries.Select(e => e.FullName.Split('/')[0]).Distinct(StringComparer.Ordinal)];
    }

    public static IEnumerable<byte[]> Of(string file, string kind)
    {
        if (!File.Exists(file))
        {
            yield break;
        }

        using var archive = ZipFile.OpenRead(file);
        foreach (var entry in archive.Entries.Where(e => e.FullName.StartsWith(kind + "/", StringComparison.Ordinal)))
        {
            yield return BytesOf(entry);
        }
    }

    /// <summary>Keeps of one kind the smallest of what was found, spread over all; other kinds stay as they are.</summary>
    /// <returns>How many are kept.</returns>
    public static int Keep(string file, string kind, byte[][] found)
    {
        var all = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        if (File.Exists(file))
        {
            using var earlier = ZipFile.OpenRead(file);
            foreach (var entry in earlier.Entries.Where(e => !e.FullName.StartsWith(kind + "/", StringComparison.Ordinal)))
            {
                all[entry.FullName] = BytesOf(entry);
            }
        }

        byte[][] small = [.. found.Where(f => f.Length <= MostBytes).OrderBy(f => f.Length)];
        int most = Math.Min(MostOfAKind, small.Length);
        byte[][] kept = [.. Enumerable.Range(0, most).Select(i => small[i * small.Length / most])];
        for (int i = 0; i < kept.Length; i++)
        {
            all[string.Create(CultureInfo.InvariantCulture, $"{kind}/{i:00}")] = kept[i];
        }

        using var stream = File.Create(file);
        using var archive = new ZipArchive(stream, ZipArchiveMode.Create);
        foreach (var (name, bytes) in all)
        {
            var entry = archive.CreateEntry(name, CompressionLevel.SmallestSize);
            entry.LastWriteTime = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
            using var content = entry.Open();
            content.Write(bytes);
        }

        return kept.Length;
    }

    private static byte[] BytesOf(ZipArchiveEntry entry)
    {
        using var content = entry.Open();
        using var bytes = new MemoryStream();
        content.CopyTo(bytes);
        return bytes.ToArray();
    }
}

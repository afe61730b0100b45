using NameBand.Common;

namespace NameBand.Output;

/// <summary>
/// The folder <c>sewn</c> in a job: the files of every hooping that has been sewn, byte for byte, the plan they belong to,
/// and the list of them with their checksums. It lies as the out folder does.
/// </summary>
internal static class SewnFolder
{
    public const string Name = "sewn";

    private static readonly Lock OneAtATime = new();

    public static string Of(string jobFolder) => Path.Combine(jobFolder, Name);

    /// <summary>A file's place in the job's folder.</summary>
    public static string Place(string relative) => $"{Name}/{relative}";

    /// <summary>A hooping's kept file, or null when it is not there; a link is not followed.</summary>
    public static byte[]? Read(string jobFolder, string relative) =>
        InnerFile.IsPlain(jobFolder, Place(relative)) ? InnerFile.Bytes(jobFolder, Place(relative)) : null;

    /// <summary>
    /// Keeps a hooping's files and the plan. Each is written beside its place, confirmed by the disk and then renamed,
    /// so that a kept file is whole or not there.
    /// </summary>
    /// <param name="hooping">Null: names were sewn that are keyed in or traced, and the plan alone is kept.</param>
    /// <exception cref="IOException">The machine could not; whatever was kept before is as it was.</exception>
    public static void Keep(string jobFolder, string outFolder, int? hooping = null)
    {
        string[] ofHooping = hooping is { } number
            ? [OutPaths.NeedlePath(number), OutPaths.HoopingProof(number), OutPaths.NeedleDrawing(number), OutPaths.NeedleProgram(number)]
                : [];
        var files = ofHooping.Where(f => InnerFile.IsPlain(outFolder, f)).Append(OutPaths.Plan).ToList();
        var before = files.Append(OutPaths.Manifest).ToDictionary(f => f, f => Read(jobFolder, f), StringComparer.Ordinal);
        try
        {
            Put(jobFolder, files.ToDictionary(f => f, f => InnerFile.Bytes(outFolder, f), StringComparer.Ordinal));
        }
        catch
        {
            // Nothing is said of the hooping, so nothing of it stays.
            foreach (var (file, bytes) in before)
            {
                Restore(jobFolder, file, bytes);
            }

            throw;
        }
    }

    private static void Restore(string jobFolder, string relative, byte[]? bytes)
    {
        try
        {
            if (bytes is not null)
            {
                Put(jobFolder, relative, bytes);
            }
            else if (InnerFile.IsPlain(jobFolder, Place(relative)))
            {
                Disk.RemoveFile(Path.Combine(jobFolder, Place(relative)));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What does not agree is healed from the out folder.
        }
    }

    /// <summary>Puts files in their places and then the list of all of them. The caller holds the job's lock.</summary>
    /// <exception cref="IOException">The machine could not, or a link is in the way.</exception>
    internal static void Put(string jobFolder, IReadOnlyDictionary<string, byte[]> files)
    {
        // Hoopings are made on several cores; a folder has one unfinished file at a time.
        // What was listed before stays listed as it was, so that what was spoiled since is not taken for good.
        using var alone = OneAtATime.EnterScope();
        var hashes = OutManifest.Read(Of(jobFolder)).Hashes.ToDictionary(StringComparer.Ordinal);
        foreach (var (relative, bytes) in files.OrderBy(f => f.Key == OutPaths.Plan).ThenBy(f => f.Key, StringComparer.Ordinal))
        {
            Put(jobFolder, relative, bytes);
            hashes[relative] = FileHash.Of(bytes);
        }

        Put(jobFolder, OutPaths.Manifest, OutManifest.Of(Of(jobFolder), hashes));
        Disk.TryFlushFolder(Of(jobFolder));
        Disk.TryFlushFolder(jobFolder);
    }

    private static void Put(string jobFolder, string relative, byte[] bytes)
    {
        if (InnerFile.Objection(jobFolder, Place(relative)) is { } objection)
        {
            throw new RefusedEntryException(objection);
        }

        string to = Path.Combine(Of(jobFolder), relative);
        string folder = Path.GetDirectoryName(to)!;
        Disk.MakeFolder(folder);
        WholeFile.Sweep(folder);
        if (Read(jobFolder, relative) is not { } there || !there.AsSpan().SequenceEqual(bytes))
        {
            WholeFile.Put(to, bytes);
        }
    }
}

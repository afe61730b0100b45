using NameBand.Common;

namespace NameBand.Output;

/// <summary>
/// The folder <c>sewn</c> in a job: the files of every hooping that has been sewn, byte for byte, and the plan they
/// belong to. It lies as the out folder does.
/// </summary>
public static class SewnFolder
{
    public const string Name = "sewn";

    public static string Of(string jobFolder) => Path.Combine(jobFolder, Name);

    public static string PlanOf(string jobFolder) => Path.Combine(jobFolder, Name, OutPaths.Plan);

    /// <summary>A hooping's kept file, or null when it is not there.</summary>
    public static byte[]? Read(string jobFolder, string relative)
    {
        string path = Path.Combine(Of(jobFolder), relative);
        return File.Exists(path) ? File.ReadAllBytes(path) : null;
    }

    /// <summary>
    /// Keeps a hooping's files and the plan. Each is written beside its place, confirmed by the disk and then renamed,
    /// so that a kept file is whole or not there.
    /// </summary>
    /// <exception cref="IOException">The machine could not; whatever was kept before is as it was.</exception>
    public static void Keep(string jobFolder, string outFolder, int hooping)
    {
        string marker = Path.GetFileNameWithoutExtension(OutPaths.NeedlePath(hooping)) + ".";
        var files = Directory.EnumerateFiles(outFolder, marker + "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .Append(Path.Combine(outFolder, OutPaths.Plan)).Select(f => (From: f, To: Path.Combine(Of(jobFolder), Path.GetRelativePath(outFolder, f)))).ToList();
        var added = files.Where(f => !File.Exists(f.To)).ToList();
        try
        {
            files.ForEach(f => Put(f.From, f.To));
        }
        catch
        {
            // Nothing is said of the hooping, so nothing of it stays.
            added.ForEach(f => File.Delete(f.To));
            throw;
        }

        DiskFlush.TryFolder(Of(jobFolder));
        DiskFlush.TryFolder(jobFolder);
    }

    private static void Put(string from, string to)
    {
        string folder = Path.GetDirectoryName(to)!;
        Directory.CreateDirectory(folder);
        WholeFile.Sweep(folder);
        byte[] bytes = File.ReadAllBytes(from);
        if (!(File.Exists(to) && File.ReadAllBytes(to).AsSpan().SequenceEqual(bytes)))
        {
            WholeFile.Put(to, bytes);
        }
    }
}

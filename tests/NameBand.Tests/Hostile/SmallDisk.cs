using System.Diagnostics;

namespace NameBand.Tests.Hostile;

/// <summary>A disk in memory, small enough to be filled.</summary>
internal sealed class SmallDisk : IDisposable
{
    private const string Filler = "filler";

    private readonly TemporaryFolder _at = new();

    private SmallDisk()
    {
    }

    public string Path => _at.FullPath;

    /// <summary>Null where this machine lets nobody mount one.</summary>
    public static SmallDisk? Mount(string options = "size=16m")
    {
        var disk = new SmallDisk();
        if (OperatingSystem.IsLinux() && Ran("mount", "-t", "tmpfs", "-o", options, "none", disk.Path))
        {
            return disk;
        }

        disk._at.Dispose();
        return null;
    }

    public void CopyFrom(string folder)
    {
        foreach (string below in Directory.EnumerateDirectories(folder, "*", SearchOption.AllDirectories))
        {
            Directory.CreateDirectory(System.IO.Path.Combine(Path, System.IO.Path.GetRelativePath(folder, below)));
        }

        foreach (string file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            File.Copy(file, System.IO.Path.Combine(Path, System.IO.Path.GetRelativePath(folder, file)));
        }
    }

    /// <summary>Leaves so much room and no more.</summary>
    public void FillUpTo(long freeBytes)
    {
        using var file = File.Create(System.IO.Path.Combine(Path, Filler));
        byte[] block = new byte[4096];
        for (long left = new DriveInfo(Path).AvailableFreeSpace - freeBytes; left > 0; left -= block.Length)
        {
            file.Write(block, 0, (int)Math.Min(left, block.Length));
            file.Flush();
        }
    }

    public void MakeReadOnly()
    {
        if (!Ran("mount", "-o", "remount,ro", Path))
        {
            throw new IOException("The small disk cannot be closed to writing.");
        }
    }

    /// <summary>Every file with what it holds, and every folder.</summary>
    public SortedDictionary<string, string> Contents()
    {
        var contents = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var entry in new DirectoryInfo(Path).EnumerateFileSystemInfos("*", SearchOption.AllDirectories)
            .Where(e => e.Name != Filler))
        {
            contents[System.IO.Path.GetRelativePath(Path, entry.FullName)] = entry is FileInfo
                ? Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(entry.FullName))) : "folder";
        }

        return contents;
    }

    public void Dispose()
    {
        Ran("umount", "-l", Path);
        _at.Dispose();
    }

    private static bool Ran(string program, params string[] args)
    {
        try
        {
            using var process =
                Process.Start(new ProcessStartInfo(program, args) { RedirectStandardError = true, RedirectStandardOutput = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}

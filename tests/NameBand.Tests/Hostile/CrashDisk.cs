using System.Diagnostics;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>
/// A small disk with a file system of its own in one file. A copy of that file is what the disk holds at that moment: what
/// the system has not yet written is not in it, as after a power cut.
/// </summary>
internal sealed class CrashDisk : IDisposable
{
    private const long Bytes = 320L * 1024 * 1024;

    private readonly TemporaryFolder _at = new();
    private readonly Kind _kind;
    private int _mounts;
    private bool _isMounted;

    private CrashDisk(Kind kind)
    {
        _kind = kind;
        Directory.CreateDirectory(Path);
    }

    /// <param name="System">As the kernel names it.</param>
    /// <param name="Package">Debian's package with the program that makes one.</param>
    public sealed record Kind(string System, string Package, string Make, string[] With, string Options);

    public static Kind Xfs { get; } = new("xfs", "xfsprogs", "mkfs.xfs", ["-q", "-f"], "loop,nouuid");

    public static Kind Btrfs { get; } = new("btrfs", "btrfs-progs", "mkfs.btrfs", ["-q", "-f"], "loop");

    /// <summary>Without the rescue that writes a file out when it is renamed over another.</summary>
    public static Kind Ext4 { get; } = new("ext4", "e2fsprogs", "mkfs.ext4", ["-q", "-F"], "loop,noauto_da_alloc");

    public static Kind Of(string system) => new[] { Xfs, Btrfs, Ext4 }.Single(k => k.System == system);

    /// <summary>Where it is mounted.</summary>
    public string Path => _at["disk"];

    /// <summary>A name of its own for each mount: a loop device that still holds an earlier one is never taken for this one.</summary>
    private string Image => _at[FormattableString.Invariant($"image{_mounts}")];

    /// <summary>Makes and mounts one, or skips the running test and says why; under CI what can be there must be.</summary>
    public static CrashDisk Begin(Kind kind)
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "skipped: needs Linux (a disk in a file)");
        OutsideTool.Require(kind.Make, kind.Package);
        bool isKnown = File.ReadAllText("/proc/filesystems").Contains($"\t{kind.System}\n", StringComparison.Ordinal)
            || TryRun("modprobe", kind.System) is null;
        Skip.IfNot(isKnown, $"skipped: needs a kernel that knows {kind.System}; this one does not");
        var disk = new CrashDisk(kind);
        using (var image = File.Create(disk.Image))
        {
            image.SetLength(Bytes);
        }

        OutsideTool.Run(kind.Make, [.. kind.With, disk.Image]);
        string? refusal = disk.Mount();
        if (refusal is not null)
        {
            disk.Dispose();
        }

        bool mayBeMissing = Environment.GetEnvironmentVariable("CI") is null;
        Skip.If(refusal is not null && mayBeMissing,
            $"skipped: needs the right to mount a disk in a file (root and loop devices): {refusal}");
        Assert.True(refusal is null, $"This check must run here, but no disk in a file can be mounted: {refusal}");
        return disk;
    }

    /// <summary>Keeps what the disk holds just now.</summary>
    public void Snap(string name) => OutsideTool.Run("cp", ["--sparse=always", "--reflink=never", Image, _at[name]]);

    /// <summary>As if the power had been cut when the copy was taken, and come again.</summary>
    public void ComeAgain(string name)
    {
        Assert.True(Unmount() is null, $"The {_kind.System} cannot be taken off its folder.");
        File.Delete(Image);
        _mounts++;
        OutsideTool.Run("cp", ["--sparse=always", "--reflink=never", _at[name], Image]);
        Assert.True(Mount() is null, $"The {_kind.System} of {name} cannot be mounted again.");
    }

    public void Dispose()
    {
        if (Unmount() is not null)
        {
            TryRun("umount", "-l", Path);
        }

        _at.Dispose();
    }

    private string? Mount()
    {
        string? refusal = TryRun("mount", "-t", _kind.System, "-o", _kind.Options, Image, Path);
        _isMounted = refusal is null;
        return refusal;
    }

    /// <summary>Programs that other tests start hold every open file for a moment, this disk's too: a busy disk is asked again.</summary>
    /// <returns>What was said against it; null when it is off.</returns>
    private string? Unmount()
    {
        const int Times = 200;
        string? refusal = null;
        for (int time = 0; _isMounted && time < Times; time++)
        {
            refusal = TryRun("umount", Path);
            _isMounted = refusal is not null;
            if (_isMounted)
            {
                Thread.Sleep(50);
            }
        }

        return refusal;
    }

    /// <returns>What it said against it; null when it went well.</returns>
    private static string? TryRun(string program, params string[] args)
    {
        try
        {
            using var process =
                Process.Start(new ProcessStartInfo(program, args) { RedirectStandardError = true, RedirectStandardOutput = true })!;
            string errors = process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? null : errors.Trim();
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            return e.Message;
        }
    }
}

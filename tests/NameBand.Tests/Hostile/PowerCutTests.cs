using NameBand.Job;
using NameBand.Output;
using NameBand.Tests.OutputRoom;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>The power is cut at every step of an out folder's renewal; the next command finds a whole folder, whatever the disk.</summary>
public class PowerCutTests
{
    private const int Hoopings = 40;

    public static TheoryData<string, bool> Disks()
    {
        // Two renames instead of one exchange are tried on the simulated disk too; here one file system will do.
        return new() { { "xfs", false }, { "btrfs", false }, { "ext4", false }, { "ext4", true } };
    }

    [SkippableTheory]
    [MemberData(nameof(Disks))]
    public void A_power_cut_at_any_step_leaves_a_whole_folder(string system, bool withoutExchange)
    {
        using var disk = CrashDisk.Begin(CrashDisk.Of(system));
        string job = Directory.CreateDirectory(Path.Combine(disk.Path, "job")).FullName;
        string output = Path.Combine(job, "out");
        Renew(job, output, 1, null, withoutExchange);
        File.WriteAllText(Path.Combine(output, "notes.txt"), "mine");
        var snaps = new List<string> { "before" };
        disk.Snap("before");

        Renew(job, output, 2, step => Keep(step.ToString()), withoutExchange);
        Keep("done");

        foreach (string snap in snaps)
        {
            disk.ComeAgain(snap);
            var problems = OutFolder.MendInterrupted(job, output);
            Assert.DoesNotContain(problems, p => p.Severity != NameBand.Common.Severity.Note);
            Assert.True(
                OutManifest.Read(output).Fault(output) is null,
                $"{system}, {snap}: {OutManifest.Read(output).Fault(output)} is not as it was written");
            int made = Made(output);
            bool isNew = snap is "done" or nameof(OutStep.LateFilesCarried) or nameof(OutStep.OldRemoved);
            Assert.True(isNew ? made == 2 : made is 1 or 2, $"{system}, {snap}: plan {made}");
            Assert.Equal(["out"], Directory.EnumerateFileSystemEntries(job).Select(e => Path.GetFileName(e)));
            Renew(job, output, 3, null, withoutExchange);
            Assert.Equal(3, Made(output));
        }

        void Keep(string snap)
        {
            disk.Snap(snap);
            snaps.Add(snap);
        }
    }

    /// <summary>A whole job as the command makes it, and a hooping said to be sewn.</summary>
    [SkippableTheory]
    [InlineData("xfs")]
    [InlineData("btrfs")]
    [InlineData("ext4")]
    public void A_power_cut_after_a_finished_command_loses_nothing(string system)
    {
        using var disk = CrashDisk.Begin(CrashDisk.Of(system));
        string job = Directory.CreateDirectory(Path.Combine(disk.Path, "job")).FullName;
        KilledWork.Begin(job);
        disk.Snap("made");
        Assert.NotNull(Bander.Sewn(job, null, new SewingWord(1, SewingDeed.Sewn, Note: "number 7"), () => { }).Said);
        disk.Snap("sewn");

        foreach (string snap in new[] { "made", "sewn" })
        {
            disk.ComeAgain(snap);
            string output = Path.Combine(job, "out");
            Assert.Null(OutManifest.Read(output).Fault(output));
            Assert.True(OutManifest.Read(output).Hashes.Count() > 8);
            if (snap == "sewn")
            {
                Assert.Null(KilledWork.Fault(job, ["do sewn 0 7", "done sewn 0 7"]));
            }
        }
    }

    private static void Renew(string job, string output, int number, Action<OutStep>? atStep, bool withoutExchange)
    {
        using var folder = OutFolder.Begin(job, output, atStep, withoutExchange).Value!;
        OutFolderTests.Fill(folder, [.. Enumerable.Range(1, Hoopings)]);
        OutFolderTests.Write(folder, OutPaths.ReadMeFirst, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{number}"));
        folder.Commit();
    }

    private static int Made(string output) => int.Parse(
        File.ReadAllText(Path.Combine(output, OutPaths.ReadMeFirst)), System.Globalization.CultureInfo.InvariantCulture);
}

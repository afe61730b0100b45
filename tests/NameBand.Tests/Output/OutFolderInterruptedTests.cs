using System.Diagnostics;
using NameBand.Output;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class OutFolderInterruptedTests : IDisposable
{
    private readonly TempFolder _temp = new();

    public static TheoryData<string, bool> Steps()
    {
        var data = new TheoryData<string, bool>();
        foreach (var step in Enum.GetValues<OutStep>())
        {
            data.Add(step.ToString(), false);
            data.Add(step.ToString(), true);
        }

        return data;
    }

    public void Dispose() => _temp.Dispose();

    [Theory]
    [MemberData(nameof(Steps))]
    public void CutOffAtAnyStepTheNextStartFindsOneWholeFolder(string stepName, bool withoutExchange)
    {
        var cutOffAt = Enum.Parse<OutStep>(stepName);
        Make([1, 2, 3], null, withoutExchange);
        File.WriteAllText(Path.Combine(_temp.Out, "notes.txt"), "mine");
        var earlier = _temp.Contents();

        bool cut = Make([1], cutOffAt, withoutExchange);
        Assert.Equal(cutOffAt != OutStep.OldMovedAside || withoutExchange, cut);
        var notes = OutFolder.MendInterrupted(_temp.Job, _temp.Out);
        Assert.DoesNotContain(notes, n => n.Severity != NameBand.Common.Severity.Note);

        var now = _temp.Contents();
        if (cut && cutOffAt < OutStep.NewInPlace)
        {
            Assert.Equal(earlier, now);
        }
        else
        {
            Assert.Equal(
                ["out/.made-by-nameband.json", "out/needle-paths/hooping-001.csv", "out/notes.txt", "out/plan.json",
                "out/proofs/hooping-001.png", "out/worksheet.csv"],
                now.Keys);
            Assert.Equal("mine", now["out/notes.txt"]);
        }

        Assert.Equal(["out"], Directory.EnumerateFileSystemEntries(_temp.Job).Select(Path.GetFileName));
        Assert.Empty(OutFolder.MendInterrupted(_temp.Job, _temp.Out));

        // And the next run goes through without a mending before it.
        Make([1], cutOffAt, withoutExchange);
        Make([1, 2], null, withoutExchange);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(_temp.Out, "notes.txt")));
        Assert.False(File.Exists(Path.Combine(_temp.Out, OutPaths.NeedlePath(3))));
        Assert.True(File.Exists(Path.Combine(_temp.Out, OutPaths.NeedlePath(2))));
    }

    /// <summary>Part of a file is neither what was written nor nothing at all: still no person wrote it, for it is in our list.</summary>
    [Theory]
    [InlineData(OutPaths.Worksheet)]
    [InlineData("proofs/hooping-002.png")]
    public void What_a_power_cut_left_of_a_half_built_file_is_not_taken_for_a_persons(string file)
    {
        Make([1], null, false);
        File.Delete(Path.Combine(_temp.Out, OutPaths.Worksheet));
        var earlier = _temp.Contents();
        Make([1, 2], OutStep.ManifestWritten, false);
        string torn = Path.Combine(_temp.Job, ".out.nameband-new", file);
        File.WriteAllText(torn, File.ReadAllText(torn)[..1]);
        Assert.Single(OutFolder.MendInterrupted(_temp.Job, _temp.Out));
        Assert.Equal(earlier, _temp.Contents());
    }

    [Fact]
    public void OfAFolderThatIsAllOursNothingIsRescued()
    {
        Make([1, 2], null, false);
        string to = Directory.CreateDirectory(Path.Combine(_temp.Job, "other")).FullName;
        Assert.Empty(new CarryOver(OutManifest.Read(_temp.Out), _temp.Out, to).Rescue());
        Assert.Empty(Directory.EnumerateFileSystemEntries(to));

        File.WriteAllText(Path.Combine(_temp.Out, "proofs", "mine.txt"), "mine");
        Assert.Empty(new CarryOver(OutManifest.Read(_temp.Out), _temp.Out, to).Rescue());
        Assert.Equal("mine", File.ReadAllText(Assert.Single(Directory.GetFiles(to, "*", SearchOption.AllDirectories))));
    }

    [Fact]
    public void SomethingPutInThePlaceOfAHalfExchangedFolderIsNeverDeleted()
    {
        Make([1], null, true);
        Make([1], OutStep.OldMovedAside, true);
        Directory.CreateDirectory(_temp.Out);
        File.WriteAllText(Path.Combine(_temp.Out, "other.txt"), "other");
        var before = _temp.Contents();
        var problem = Assert.Single(OutFolder.Begin(_temp.Job, _temp.Out).Problems, p => p.Severity == NameBand.Common.Severity.CannotUse);
        Assert.Contains(".out.nameband-old", problem.Found.English, StringComparison.Ordinal);
        Assert.Equal("other", File.ReadAllText(Path.Combine(_temp.Out, "other.txt")));
        Assert.Equal(before.Count - 2, _temp.Contents().Count); // only the dead process's two lock files are gone

        File.Delete(Path.Combine(_temp.Out, "other.txt"));
        OutFolder.MendInterrupted(_temp.Job, _temp.Out);
        Assert.True(File.Exists(Path.Combine(_temp.Out, OutPaths.Plan)));
    }

    [SkippableFact]
    public void AKilledProcessLeavesAWholeFolder()
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs kill -9 (a process ended by the system without a word)");
        using (var first = OutFolder.Begin(_temp.Job, _temp.Out).Value!)
        {
            OutFolderTests.Fill(first, 1);
            OutFolderTests.Write(first, OutPaths.ReadMeFirst, "1");
            first.Commit();
        }

        File.WriteAllText(Path.Combine(_temp.Out, "notes.txt"), "mine");
        var random = new Random(20);
        for (int i = 0; i < 6; i++)
        {
            using var child = Process.Start(new ProcessStartInfo(
                DotNet,
                ["exec", typeof(OutFolderChild).Assembly.Location, OutFolderChild.Verb, _temp.Job, _temp.Out, (i % 2 == 1).ToString()])
            {
                RedirectStandardOutput = true,
            })!;
            Assert.Equal("renewing", child.StandardOutput.ReadLine());
            Thread.Sleep(random.Next(5, 120));
            Assert.False(child.HasExited);
            child.Kill();
            child.WaitForExit();

            OutFolder.MendInterrupted(_temp.Job, _temp.Out);
            Assert.Equal(["out"], Directory.EnumerateFileSystemEntries(_temp.Job).Select(Path.GetFileName));
            int hoopings = Directory.GetFiles(Path.Combine(_temp.Out, "needle-paths")).Length;
            Assert.Equal(
                FormattableString.Invariant($"{hoopings}"),
                File.ReadAllText(Path.Combine(_temp.Out, OutPaths.ReadMeFirst)));
            Assert.Equal(hoopings, Directory.GetFiles(Path.Combine(_temp.Out, "proofs")).Length);
            Assert.Equal("mine", File.ReadAllText(Path.Combine(_temp.Out, "notes.txt")));
        }
    }

    [Theory]
    [InlineData(OutStep.ManifestWritten, false)]
    [InlineData(OutStep.PersonsFilesCarried, false)]
    [InlineData(OutStep.PersonsFilesCarried, true)]
    internal void WhenTheMachineRefusesTheEarlierFolderIsAsItWas(OutStep step, bool withoutExchange)
    {
        Make([1, 2], null, withoutExchange);
        var earlier = _temp.Contents();
        using (var folder = OutFolder.Begin(
            _temp.Job, _temp.Out, s => _ = s == step ? throw new IOException("no room") : 0, withoutExchange).Value!)
        {
            OutFolderTests.Fill(folder, 1);
            Assert.Throws<IOException>(() => folder.Commit());
        }

        Assert.Equal(earlier, _temp.Contents());
        Assert.Equal(["out"], Directory.EnumerateFileSystemEntries(_temp.Job).Select(Path.GetFileName));
    }

    [SkippableFact]
    public void AFullDiskLeavesTheEarlierFolderWhole()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "skipped: needs Linux (a small disk of its own, in memory)");
        OutsideTool.Require("unshare", "util-linux");
        var start = new ProcessStartInfo(
            "unshare",
            [
                "--map-root-user", "--mount", "bash", "-c", "mount -t tmpfs -o size=600k none \"$1\" || exit 77; shift; exec \"$@\"",
                "bash",
                _temp.Job, DotNet, "exec", typeof(OutFolderChild).Assembly.Location, OutFolderChild.FillDiskVerb, _temp.Job,
            ])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var child = Process.Start(start)!;
        var errorsRead = child.StandardError.ReadToEndAsync();
        string said = child.StandardOutput.ReadToEnd();
        string errors = errorsRead.GetAwaiter().GetResult();
        child.WaitForExit();
        bool isClosed = child.ExitCode == 77 || errors.StartsWith("unshare:", StringComparison.Ordinal);
        Skip.If(
            isClosed && Environment.GetEnvironmentVariable("CI") is null,
            "skipped: needs the right to mount a small disk of its own (user namespaces are closed here)");
        Assert.True(child.ExitCode == 0, said + errors);
        Assert.Contains("No space left", said, StringComparison.Ordinal);
        Assert.EndsWith("whole\n", said, StringComparison.Ordinal);
        Assert.DoesNotContain("not whole", said, StringComparison.Ordinal);
    }

    private static string DotNet =>
        Environment.ProcessPath!.Contains("dotnet", StringComparison.Ordinal) ? Environment.ProcessPath : "dotnet";

    /// <summary>Renews the out folder; cut off at a step, leaves everything as a killed process does. Returns whether it was cut
    /// off.</summary>
    private bool Make(int[] hoopings, OutStep? cutOffAt, bool withoutExchange)
    {
        OutFolder? folder = null;
        void AtStep(OutStep step)
        {
            if (step == cutOffAt && folder is not null)
            {
                throw new CutOffException();
            }
        }

        folder = OutFolder.Begin(_temp.Job, _temp.Out, AtStep, withoutExchange).Value!;
        try
        {
            OutFolderTests.Fill(folder, hoopings);
            if (cutOffAt == OutStep.BuildFolderMade)
            {
                throw new CutOffException();
            }

            folder.Commit();
            folder.Dispose();
            return false;
        }
        catch (CutOffException)
        {
            folder.AbandonAsIfKilled();
            return true;
        }
    }

    private sealed class CutOffException : Exception;
}

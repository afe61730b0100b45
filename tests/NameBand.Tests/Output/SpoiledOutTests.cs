using NameBand.Common;
using NameBand.Output;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>What a power cut of an earlier version, or a bad disk, left of an out folder.</summary>
public sealed class SpoiledOutTests : IDisposable
{
    private readonly TempFolder _temp = new();

    public void Dispose() => _temp.Dispose();

    [Theory]
    [InlineData(".out.nameband-new", false)]
    [InlineData(".out.nameband-new", true)]
    [InlineData(".out.nameband-old", false)]
    [InlineData(".out.nameband-old", true)]
    public void OfTwoFoldersTheOneThatItsManifestShowsToBeWholeIsKept(string beside, bool withNuls)
    {
        Make(2);
        var whole = _temp.Contents();
        Directory.Move(_temp.Out, Path.Combine(_temp.Job, beside));
        Make(1, keepBeside: true);
        File.WriteAllText(Path.Combine(_temp.Out, "notes.txt"), "mine");
        Spoil(withNuls);

        var notes = OutFolder.MendInterrupted(_temp.Job, _temp.Out);

        Assert.Contains(notes, n => n.Found.English.Contains("as a power cut does", StringComparison.Ordinal));
        var now = _temp.Contents();
        Assert.Equal("mine", now["out/notes.txt"]);
        now.Remove("out/notes.txt");
        Assert.Equal(whole, now);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void WhereNoneIsWholeThatIsSaidAndAllIsMadeAnew(bool withNuls)
    {
        Make(2);
        File.WriteAllText(Path.Combine(_temp.Out, "notes.txt"), "mine");
        Spoil(withNuls);
        File.WriteAllText(Path.Combine(_temp.Out, "notes.txt"), "mine");

        var begun = OutFolder.Begin(_temp.Job, _temp.Out);
        Assert.Contains(begun.Problems, p => p.Severity == Severity.Note && p.Found.English.Contains("made again", StringComparison.Ordinal));
        using (var folder = begun.Value!)
        {
            OutFolderTests.Fill(folder, 1, 2);
            folder.Commit();
        }

        Assert.Equal(
            ["out/.made-by-nameband.json", "out/needle-paths/hooping-001.csv", "out/needle-paths/hooping-002.csv", "out/notes.txt",
            "out/plan.json",
                "out/proofs/hooping-001.png", "out/proofs/hooping-002.png", "out/worksheet.csv"],
            _temp.Contents().Keys);
        Assert.Null(OutManifest.Read(_temp.Out).Fault(_temp.Out));
    }

    /// <summary>Found by 20,000 spoilt lists of files: the system refuses to look at such a name, with a fault and not an answer.</summary>
    [Theory]
    [InlineData("plan\\u0000.json", 1)]
    [InlineData("proofs/long", 300)]
    public void A_list_of_files_with_a_name_no_file_can_have_counts_as_broken(string name, int times)
    {
        using var folder = new TemporaryFolder().With(OutPaths.Manifest,
            $$"""{ "format": 1, "files": [{ "path": "{{string.Concat(Enumerable.Repeat(name, times))}}", "bytes": 1 }] }""");
        var read = OutManifest.Read(folder.FullPath);
        Assert.Equal(OutPaths.Manifest, read.Fault(folder.FullPath));
        Assert.False(read.IsOurs(folder.FullPath, "my notes.txt"));
    }

    [Fact]
    public void WhatAPersonWroteIsNotTakenForSpoiled()
    {
        Make(2);
        File.AppendAllText(Path.Combine(_temp.Out, OutPaths.Worksheet), "1,yes\r\n");
        var before = _temp.Contents();
        using (var cut = OutFolder.Begin(_temp.Job, _temp.Out).Value!)
        {
            OutFolderTests.Fill(cut, 1);
            OutManifest.Write(cut.BuildFolder, new Dictionary<string, string>(StringComparer.Ordinal));
            cut.AbandonAsIfKilled();
        }

        OutFolder.MendInterrupted(_temp.Job, _temp.Out);
        Assert.Equal(before, _temp.Contents());
    }

    /// <summary>A path of null, one that leads out of the folder, and lengths that are none.</summary>
    [Theory]
    [InlineData("""{ "format": 1, "files": [ { "path": null, "bytes": 3 } ] }""")]
    [InlineData("""{ "format": 1, "files": [ { "path": "/etc/passwd", "bytes": 3 } ] }""")]
    [InlineData("""{ "format": 1, "files": [ { "path": "../../x", "bytes": -3, "sha256": 7 } ] }""")]
    [InlineData("""{ "format": 1, "files": [ { "path": "\ud800", "bytes": 1e99 } ] }""")]
    [InlineData("""{ "format": 1, "files": [ { "path": "", "bytes": 0, "sha256": "" } ] }""")]
    [InlineData("""{ "format": 1, "files": null }""")]
    [InlineData("[]")]
    [InlineData("null")]
    public void AManifestThatIsNoneOfOursStopsNothing(string manifest)
    {
        Make(2);
        File.WriteAllText(Path.Combine(_temp.Out, OutPaths.Manifest), manifest);
        Make(1);
        Assert.Null(OutManifest.Read(_temp.Out).Fault(_temp.Out));
        Assert.Equal("picture of 1", File.ReadAllText(Path.Combine(_temp.Out, OutPaths.HoopingProof(1))));
    }

    [Fact]
    public void AFileThatTheDiskGaveBackOtherwiseIsFoundBeforeTheExchange()
    {
        Make(2);
        var before = _temp.Contents();
        OutFolder? folder = null;
        using (folder = OutFolder.Begin(
            _temp.Job, _temp.Out,
            s => _ = s == OutStep.PersonsFilesCarried ? Spoiled(Path.Combine(folder!.BuildFolder, OutPaths.HoopingProof(1))) : 0,
            false).Value!)
        {
            OutFolderTests.Fill(folder, 1);
            Assert.Contains(
                "other bytes than were written", Assert.Throws<IOException>(() => folder.Commit()).Message, StringComparison.Ordinal);
        }

        Assert.Equal(before, _temp.Contents());
    }

    [SkippableFact]
    public void ANameThatIsNoTextIsCarriedOver()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "skipped: needs Linux (names of any bytes)");
        OutsideTool.Require("bash", "bash");
        Make(2);
        OutsideTool.Run(
            "bash", ["-c", "printf mine > \"$1\"/$'caf\\xe9.txt'; mkdir \"$1\"/proofs/$'\\xff'; printf too > \"$1\"/proofs/$'\\xff'/x",
            "bash", _temp.Out]);
        Make(1);
        Make(1);
        Assert.Equal("minetoo", OutsideTool.Run("bash", ["-c", "cat \"$1\"/$'caf\\xe9.txt' \"$1\"/proofs/$'\\xff'/x", "bash", _temp.Out]));
        Assert.Equal(["out"], Directory.EnumerateFileSystemEntries(_temp.Job).Select(Path.GetFileName));
        OutsideTool.Run("rm", ["-rf", _temp.Out]); // .NET cannot.
    }

    [Fact]
    public void WhatIsNowhereElseIsMovedOutOfALeftOverFolderBeforeItGoes()
    {
        Make(2);
        string left = Directory.CreateDirectory(Path.Combine(_temp.Job, ".out.nameband-new")).FullName;
        File.WriteAllText(Path.Combine(left, "photo.jpg"), "mine");
        OutFolder.MendInterrupted(_temp.Job, _temp.Out);
        Assert.Equal(OperatingSystem.IsLinux(), File.Exists(Path.Combine(_temp.Out, "photo.jpg")));
        Assert.False(Directory.Exists(left));
    }

    private static int Spoiled(string file)
    {
        File.WriteAllBytes(file, new byte[new FileInfo(file).Length]);
        return 0;
    }

    private void Spoil(bool withNuls)
    {
        foreach (string file in Directory.GetFiles(_temp.Out, "*", SearchOption.AllDirectories)
            .Where(f => !f.EndsWith("notes.txt", StringComparison.Ordinal)))
        {
            File.WriteAllBytes(file, withNuls ? new byte[new FileInfo(file).Length] : []);
        }
    }

    private void Make(int hoopings, bool keepBeside = false)
    {
        string target = keepBeside ? Path.Combine(_temp.Root, "made") : _temp.Out;
        using (var folder = OutFolder.Begin(_temp.Job, target).Value!)
        {
            OutFolderTests.Fill(folder, [.. Enumerable.Range(1, hoopings)]);
            folder.Commit();
        }

        if (keepBeside)
        {
            Directory.Move(target, _temp.Out);
        }
    }
}

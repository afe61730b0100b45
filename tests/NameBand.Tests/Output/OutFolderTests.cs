using System.Text;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Output.Sheets;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class OutFolderTests : IDisposable
{
    private readonly TempFolder _temp = new();

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void ANewFolderStandsOnlyOnceItIsWhole()
    {
        using (var folder = Begin())
        {
            Write(folder, OutPaths.Plan, OurPlan);
            Assert.False(Directory.Exists(_temp.Out));
            folder.Commit();
        }

        Assert.Equal([".made-by-nameband.json", "plan.json"], FilesInOut());
        Assert.Equal(["out"], EntriesOfJob());
    }

    [Fact]
    public void WithoutCommitTheEarlierFolderIsAsItWas()
    {
        Make(1, 2);
        var before = _temp.Contents();
        using (var folder = Begin())
        {
            Write(folder, OutPaths.Plan, "half");
        }

        Assert.Equal(before, _temp.Contents());
        Assert.Equal(["out"], EntriesOfJob());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void FilesOfAnEarlierLargerPlanGoAndAPersonsFilesStay(bool withoutExchange)
    {
        Make(1, 2, 3);
        File.WriteAllText(Path.Combine(_temp.Out, "notes – mine.txt"), "buy more indigo");
        Directory.CreateDirectory(Path.Combine(_temp.Out, "photos", "empty"));
        File.WriteAllText(Path.Combine(_temp.Out, "photos", "swatch.txt"), "first swatch");
        File.WriteAllText(Path.Combine(_temp.Out, "proofs", "drawn by hand.txt"), "a sketch");
        File.AppendAllText(Path.Combine(_temp.Out, OutPaths.Worksheet), "hooping 1 is done");

        using (var folder = OutFolder.Begin(_temp.Job, _temp.Out, null, withoutExchange).Value!)
        {
            Fill(folder, 1);
            var notes = folder.Commit();
            var note = Assert.Single(notes);
            Assert.Contains("worksheet (kept).csv", note.Found.English, StringComparison.Ordinal);
        }

        Assert.Equal(
            [
                ".made-by-nameband.json", "needle-paths/hooping-001.csv", "notes – mine.txt", "photos/swatch.txt", "plan.json",
                "proofs/drawn by hand.txt", "proofs/hooping-001.png", "worksheet (kept).csv", "worksheet.csv",
            ],
            FilesInOut());
        Assert.True(Directory.Exists(Path.Combine(_temp.Out, "photos", "empty")));
        Assert.Equal("buy more indigo", File.ReadAllText(Path.Combine(_temp.Out, "notes – mine.txt")));
        Assert.EndsWith("hooping 1 is done", File.ReadAllText(Path.Combine(_temp.Out, "worksheet (kept).csv")), StringComparison.Ordinal);
        Assert.Equal(["out"], EntriesOfJob());
    }

    [Fact]
    public void WithoutItsManifestAFolderIsKnownByTheNamesWeUse()
    {
        Make(1, 2);
        File.Delete(Path.Combine(_temp.Out, OutPaths.Manifest));
        File.WriteAllText(Path.Combine(_temp.Out, "notes.txt"), "mine");
        Make(1);
        Assert.Equal(
            [".made-by-nameband.json", "needle-paths/hooping-001.csv", "notes.txt", "plan.json", "proofs/hooping-001.png", "worksheet.csv"],
            FilesInOut());
    }

    /// <summary>Every file we write is known by its name alone, when the list of what we wrote is lost.</summary>
    [Fact]
    public void EveryNameOfOursIsKnown()
    {
        const System.Reflection.BindingFlags Own = System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.Static;
        var texts = typeof(OutPaths).GetFields(Own).Select(f => (string)f.GetRawConstantValue()!);
        var made = typeof(OutPaths).GetMethods(Own).Where(m => m.ReturnType == typeof(string))
            .SelectMany(m => new[] { 1, 123_456 }.SelectMany(n => Paper.Both.Select(p => (string)m.Invoke(
                null, [.. m.GetParameters().Select(a => a.ParameterType == typeof(int) ? (object)n : p.Word)])!))).Distinct();
        string[] names = [.. texts, .. made, .. OutPaths.OfHooping(2)];
        Assert.True(names.Length > 30, $"{names.Length}");
        var manifest = OutManifest.Read(_temp.Job);

        // What the page for supporters is made of has names that anybody might give: it is ours beside its own list of places.
        Assert.False(manifest.IsOurs(_temp.Job, OutPaths.PublicPage));
        File.WriteAllText(Path.Combine(_temp.Job, OutPaths.PublicPlaces), "{}");
        Assert.All(names, n => Assert.True(manifest.IsOurs(_temp.Job, n), n));
        Assert.All(names.Where(n => n.Contains('/')), n => Assert.True(manifest.IsOurFolder(n.Split('/')[0]), n));
        Assert.All(
            names, n => Assert.False(manifest.IsOurs(
                _temp.Job, Path.ChangeExtension(n, ".txt").Replace("read-me-first", "notes", StringComparison.Ordinal)), n));
        Assert.False(manifest.IsOurs(_temp.Job, "proofs/sketch.png"));
    }

    [Theory]
    [InlineData("notes.txt", "my own things")]
    [InlineData("plan.json", "{ \"plan\": \"of something else\" }")]
    [InlineData("plan.json", "not json")]
    public void AFolderWithoutAPlanOfOursIsRefusedAndNotTouched(string file, string content)
    {
        Directory.CreateDirectory(_temp.Out);
        File.WriteAllText(Path.Combine(_temp.Out, file), content);
        var before = _temp.Contents();
        var problem = Assert.Single(OutFolder.Begin(_temp.Job, _temp.Out).Problems);
        Assert.Equal(Severity.CannotUse, problem.Severity);
        Assert.Contains("no plan.json of ours", problem.Found.English, StringComparison.Ordinal);
        Assert.Equal(before, _temp.Contents());
    }

    [Fact]
    public void APlanOfANewerFormatIsRefusedByItsNumber()
    {
        Directory.CreateDirectory(_temp.Out);
        File.WriteAllText(
            Path.Combine(_temp.Out, OutPaths.Plan), OurPlan.Replace("\"format\": 1", "\"format\": 7", StringComparison.Ordinal));
        var problem = Assert.Single(OutFolder.Begin(_temp.Job, _temp.Out).Problems);
        Assert.Contains("format 7", problem.Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void TheJobItselfAndWhatHoldsItAreRefused()
    {
        foreach (string place in new[] { _temp.Job, _temp.Root, "/", Path.Combine(_temp.Job, "..") })
        {
            Assert.Null(OutFolder.Begin(_temp.Job, place).Value);
        }

        Assert.Empty(_temp.Contents());
    }

    [Fact]
    public void AFileInTheWayIsSaidToBeOne()
    {
        File.WriteAllText(_temp.Out, "a file");
        Assert.Contains("a file", OutFolder.Begin(_temp.Job, _temp.Out).Problems[0].Found.English, StringComparison.Ordinal);
        Assert.Equal("a file", File.ReadAllText(_temp.Out));
    }

    [Fact]
    public void AnEmptyFolderAndANewOneFarBelowAreTaken()
    {
        string deep = Path.Combine(_temp.Root, "elsewhere", "for the workroom");
        foreach (string place in new[] { _temp.Out, deep })
        {
            Directory.CreateDirectory(_temp.Out);
            using var folder = OutFolder.Begin(_temp.Job, place).Value!;
            Write(folder, OutPaths.Plan, OurPlan);
            folder.Commit();
            Assert.True(File.Exists(Path.Combine(place, OutPaths.Plan)));
        }

        // Without a commit, folders made on the way go again.
        OutFolder.Begin(_temp.Job, Path.Combine(_temp.Root, "a", "b", "c")).Value!.Dispose();
        Assert.False(Directory.Exists(Path.Combine(_temp.Root, "a")));
    }

    [Fact]
    public void ALinkInsideTheJobIsRefusedAndOneElsewhereStaysALink()
    {
        string real = Directory.CreateDirectory(Path.Combine(_temp.Root, "real")).FullName;
        Directory.CreateSymbolicLink(_temp.Out, real);
        Assert.Contains("“out” is a link", OutFolder.Begin(_temp.Job, _temp.Out).Problems[0].Found.English, StringComparison.Ordinal);
        Assert.Empty(OutFolder.MendInterrupted(_temp.Job, _temp.Out));
        Assert.Empty(Directory.EnumerateFileSystemEntries(real));

        string elsewhere = Path.Combine(_temp.Root, "elsewhere");
        Directory.CreateSymbolicLink(elsewhere, real);
        using var folder = OutFolder.Begin(_temp.Job, elsewhere).Value!;
        Fill(folder, 1);
        folder.Commit();
        Assert.NotNull(new DirectoryInfo(elsewhere).LinkTarget);
        Assert.True(File.Exists(Path.Combine(real, OutPaths.Plan)));
    }

    [Fact]
    public void ASecondWriterIsToldWhoWrites()
    {
        using var first = Begin();
        foreach (var problem in new[] { OutFolder.Begin(_temp.Job, _temp.Out).Problems[0], JobLock.Take(_temp.Job).Problems[0] })
        {
            Assert.Equal(Severity.CannotUse, problem.Severity);
            Assert.Contains(FormattableString.Invariant($"process {Environment.ProcessId}"), problem.Found.English, StringComparison.Ordinal);
        }

        // The first one's work is untouched by a mending that comes at the wrong time.
        Assert.Empty(OutFolder.MendInterrupted(_temp.Job, _temp.Out));
        Assert.True(Directory.Exists(first.BuildFolder));
    }

    [Fact]
    public void TwoJobsCannotWriteOneFolder()
    {
        string other = Directory.CreateDirectory(Path.Combine(_temp.Root, "other job")).FullName;
        using var first = Begin();
        Assert.Contains("writing here", OutFolder.Begin(other, _temp.Out).Problems[0].Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void ALockLeftByADeadProcessIsTakenOver()
    {
        File.WriteAllText(Path.Combine(_temp.Job, JobLock.FileName), "999999 deadbeef\n");
        OutFolder.MendInterrupted(_temp.Job, _temp.Out);
        Assert.Empty(_temp.Contents());
        File.WriteAllText(Path.Combine(_temp.Job, JobLock.FileName), "999999 deadbeef\n");
        Make(1);
        Assert.Equal(["out"], EntriesOfJob());
    }

    [SkippableFact]
    public void APlaceWhereNobodyCanWriteIsSaidPlainly()
    {
        Skip.IfNot(Directory.Exists("/proc/sys"), "skipped: needs /proc (a place where not even root can make a folder)");
        var problem = Assert.Single(OutFolder.Begin(_temp.Job, "/proc/sys/out").Problems);
        Assert.Equal(Severity.CannotUse, problem.Severity);
        Assert.NotEmpty(problem.Mend.English);
        Assert.Empty(_temp.Contents());
    }

    internal const string OurPlan = """{ "format": 1, "letterHeightMm": 10, "hoopings": [], "rows": [] }""";

    internal static void Write(OutFolder folder, string relative, string content)
    {
        using var stream = folder.Create(relative);
        stream.Write(Encoding.UTF8.GetBytes(content));
    }

    internal static void Fill(OutFolder folder, params int[] hoopings)
    {
        Write(folder, OutPaths.Plan, OurPlan);
        Write(folder, OutPaths.Worksheet, "hooping,done\r\n");
        foreach (int hooping in hoopings)
        {
            Write(folder, OutPaths.NeedlePath(hooping), "path of " + hooping);
            Write(folder, OutPaths.HoopingProof(hooping), "picture of " + hooping);
        }
    }

    private OutFolder Begin() => OutFolder.Begin(_temp.Job, _temp.Out).Value!;

    private void Make(params int[] hoopings)
    {
        using var folder = Begin();
        Fill(folder, hoopings);
        Assert.Empty(folder.Commit());
    }

    private IEnumerable<string> FilesInOut() => Directory.EnumerateFiles(_temp.Out, "*", SearchOption.AllDirectories)
        .Select(f => Path.GetRelativePath(_temp.Out, f).Replace('\\', '/')).Order(StringComparer.Ordinal);

    private IEnumerable<string> EntriesOfJob() =>
        Directory.EnumerateFileSystemEntries(_temp.Job).Select(e => Path.GetFileName(e)!).Order(StringComparer.Ordinal);
}

using NameBand.Common;
using NameBand.Job;
using NameBand.Tests.CommandLine;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>
/// A disk that is full, that has no place for one more file, or that takes no writing: the command says so and ends with
/// status 2, and every file and folder is as it was before.
/// </summary>
public sealed class FullDiskTests : IClassFixture<FullDiskTests.MadeJob>
{
    private const string NoMount = "skipped: needs the right to mount a small disk of its own (root on Linux)";

    private readonly MadeJob _job;

    public FullDiskTests(MadeJob job) => _job = job;

    /// <summary>A job that has been made, begun and swatched.</summary>
    public sealed class MadeJob : IDisposable
    {
        public MadeJob()
        {
            KilledWork.Begin(Folder.FullPath);
            Assert.InRange(CliRun.Of("sewn", Folder.FullPath, "1").Status, 0, 1);
            Assert.InRange(CliRun.Of("swatch", Folder.FullPath).Status, 0, 1);
        }

        public TemporaryFolder Folder { get; } = new();

        public void Dispose() => Folder.Dispose();
    }

    [SkippableTheory]
    [InlineData("make", 0, 40, 200, 8000)]
    [InlineData("print", 0, 300, 8000)]
    [InlineData("sewn", 0, 4, 12, 24, 8000)]
    [InlineData("swatch", 0, 60, 8000)]
    public void A_full_disk_is_told_and_loses_nothing(string verb, params int[] freeKB)
    {
        int refused = 0;
        foreach (int free in freeKB)
        {
            using var disk = Begin();
            disk.FillUpTo(free * 1024L);
            refused += Try(disk, verb, $"{free} KB free") ? 1 : 0;
        }

        Assert.InRange(refused, 1, freeKB.Length - 1);
    }

    [SkippableTheory]
    [InlineData("make", 0, 1, 2, 5, 500)]
    [InlineData("print", 0, 6, 500)]
    [InlineData("sewn", 0, 1, 2, 500)]
    [InlineData("swatch", 0, 3, 500)]
    public void A_disk_without_a_place_for_one_more_file_is_told_and_loses_nothing(string verb, params int[] freePlaces)
    {
        int taken = Directory.EnumerateFileSystemEntries(_job.Folder.FullPath, "*", SearchOption.AllDirectories).Count() + 1;
        int refused = 0;
        foreach (int free in freePlaces)
        {
            using var disk = Begin($"size=16m,nr_inodes={taken + free}");
            refused += Try(disk, verb, $"{free} places free") ? 1 : 0;
        }

        Assert.InRange(refused, 1, freePlaces.Length - 1);
    }

    [SkippableTheory]
    [InlineData("make")]
    [InlineData("print")]
    [InlineData("sewn")]
    [InlineData("swatch")]
    public void A_disk_that_takes_no_writing_is_told(string verb)
    {
        using var disk = Begin();
        disk.MakeReadOnly();
        Assert.True(Try(disk, verb, "closed to writing"));
    }

    [SkippableFact]
    public async Task A_save_of_the_page_on_a_full_disk_is_told_and_loses_nothing()
    {
        using var disk = Begin();
        disk.FillUpTo(0);
        var before = disk.Contents();
        using var table = new Worktable(disk.Path);
        table.Open();
        var title = await table.ChangeAsync("the title", JobEdit.Text("title", new string('x', 9000)));
        var decided = await table.DecideAsync("a row", new RowDecision(new RowRef("names.csv", 2), "Ana Lind", Decision.Keep, "", "why"));

        Assert.All([.. title, .. decided], p => Assert.NotEqual("", p.Mend));
        Assert.NotEmpty(title);
        Assert.NotEmpty(decided);
        Assert.Equal(before, disk.Contents());
    }

    private SmallDisk Begin(string options = "size=16m")
    {
        var disk = SmallDisk.Mount(options);
        Skip.If(disk is null && Environment.GetEnvironmentVariable("CI") is null, NoMount);
        Assert.True(disk is not null, "In CI a small disk must be there to be filled.");
        disk.CopyFrom(_job.Folder.FullPath);
        return disk;
    }

    /// <summary>Whether the command was refused; nothing was changed then.</summary>
    private static bool Try(SmallDisk disk, string verb, string how)
    {
        var before = disk.Contents();
        var run = CliRun.Of(verb == "sewn" ? [verb, disk.Path, "2", "--minutes", "12"] : [verb, disk.Path]);
        if (run.Status is 0 or 1)
        {
            return false;
        }

        Assert.True(run.Status == 2, $"{how}: status {run.Status}, {run.Errors}");
        Assert.Equal("", run.Out);
        Assert.Matches("room on the disk|right to write|may write there", run.ErrorsOnOneLine);
        Assert.Equal(before, disk.Contents());
        return true;
    }
}

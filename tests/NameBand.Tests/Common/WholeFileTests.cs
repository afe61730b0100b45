using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.CommonRoom;

public class WholeFileTests
{
    [Fact]
    public void A_file_that_cannot_take_its_place_leaves_nothing_beside_it()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["taken"]);
        Assert.ThrowsAny<Exception>(() => WholeFile.Put(folder["taken"], "new"u8));
        Assert.Equal(["taken"], Directory.EnumerateFileSystemEntries(folder.FullPath).Select(Path.GetFileName));
    }

    [Fact]
    public void A_name_as_long_as_a_file_system_takes_can_be_saved()
    {
        using var folder = new TemporaryFolder();
        string name = new string('n', 251) + ".csv";
        WholeFile.Put(folder[name], "one"u8);
        WholeFile.Put(folder[name], "two"u8);
        Assert.Equal("two", File.ReadAllText(folder[name]));
        Assert.Single(Directory.EnumerateFileSystemEntries(folder.FullPath));
    }

    [Fact]
    public void What_a_killed_process_left_half_written_goes_with_the_next_lock()
    {
        using var folder = new TemporaryFolder().With("job.json", "{}").With(WholeFile.Unfinished, "hal");
        JobLock.Take(folder.FullPath).Value!.Dispose();
        Assert.Equal(["job.json"], Directory.EnumerateFileSystemEntries(folder.FullPath).Select(Path.GetFileName));
    }

    [SkippableFact]
    public void The_rights_to_a_file_stay_as_they_were()
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs a system with rights as Unix has them");
        if (!OperatingSystem.IsWindows())
        {
            using var folder = new TemporaryFolder().With("job.json", "{}");
            var mine = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            File.SetUnixFileMode(folder["job.json"], mine);
            WholeFile.Put(folder["job.json"], "{ }"u8);
            Assert.Equal(mine, File.GetUnixFileMode(folder["job.json"]));
        }
    }
}

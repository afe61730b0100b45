using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Tests.Hostile;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>What Windows does while another program has a file of the out folder open: no renaming. Said by a simulated disk.</summary>
public sealed class HeldFolderTests : IDisposable
{
    private const int SharingViolation = unchecked((int)0x80070020);

    private readonly TempFolder _temp = new();
    private int _heldTimes;

    public HeldFolderTests()
    {
        Renew("earlier");
        File.WriteAllText(Path.Combine(_temp.Out, "notes.txt"), "mine");
    }

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void It_is_asked_again_with_growing_pauses()
    {
        _heldTimes = 3;
        var disk = Renew("new");
        Assert.Equal("new", Made());
        Assert.Equal(3, disk.Pauses.Count);
        Assert.Equal(disk.Pauses.Order(), disk.Pauses);
        Assert.True(disk.Pauses[2] > disk.Pauses[0]);
        Assert.Equal(["out"], Entries());
    }

    [Fact]
    public void What_is_finished_waits_and_the_next_command_puts_it_in_its_place()
    {
        _heldTimes = int.MaxValue;
        var refused = Assert.Throws<RefusedEntryException>(() => Renew("new"));
        Assert.Contains("Another program has a file of the folder “out” open", refused.Problem.Found.English, StringComparison.Ordinal);
        Assert.Contains("Close what shows files of that folder", refused.Problem.Mend.English, StringComparison.Ordinal);
        Assert.Equal("earlier", Made());
        Assert.Equal([".out.nameband-next", "out"], Entries());

        // Still held: it is told, and both stay.
        var told = Assert.Single(Mend());
        Assert.Equal(Severity.NeedsPerson, told.Severity);
        Assert.Equal("earlier", Made());
        File.WriteAllText(Path.Combine(_temp.Out, "notes.txt"), "mine, and changed");
        File.WriteAllText(Path.Combine(_temp.Out, "more.txt"), "mine too");

        _heldTimes = 0;
        Assert.Equal(Severity.Note, Assert.Single(Mend()).Severity);
        Assert.Equal("new", Made());
        Assert.Equal("mine, and changed", File.ReadAllText(Path.Combine(_temp.Out, "notes.txt")));
        Assert.Equal("mine too", File.ReadAllText(Path.Combine(_temp.Out, "more.txt")));
        Assert.Null(OutManifest.Read(_temp.Out).Fault(_temp.Out));
        Assert.Equal(["out"], Entries());
    }

    [Fact]
    public void What_waits_is_not_taken_once_it_was_sewn_from_the_earlier_one()
    {
        _heldTimes = int.MaxValue;
        Assert.Throws<RefusedEntryException>(() => Renew("new"));
        _heldTimes = 0;
        string log = Path.Combine(_temp.Job, SewingLogFile.FileName);
        File.WriteAllText(log, "hooping,deed\r\n");
        File.SetLastWriteTimeUtc(log, File.GetLastWriteTimeUtc(_temp.Job + "/.out.nameband-next/" + OutPaths.Manifest).AddMinutes(1));
        Assert.Equal("Run make.", Assert.Single(Mend()).Mend);
        Assert.Equal("earlier", Made());
        Assert.DoesNotContain(".out.nameband-next", Entries());
    }

    /// <summary>What a spreadsheet has open, Windows lets nobody replace: it is tried again, then the way out is told.</summary>
    [Theory]
    [InlineData(3, 1)]
    [InlineData(int.MaxValue, 2)]
    public void A_file_that_a_spreadsheet_has_open_is_asked_for_again(int heldTimes, int status)
    {
        using var job = new TemporaryFolder().With("names.csv", "Name\nAna Lind\nEmil Holub 🌟\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 } }""");
        int held = 0;
        var disk = new SimulatedDisk(job.FullPath)
        {
            Refuses = (_, deed) => Path.GetFileName(deed.To) == Corrections.FileName && held++ < heldTimes
                ? new IOException("The process cannot access the file because it is being used by another process.", SharingViolation)
                : null,
        };
        using var under = NameBand.Common.Disk.Under(disk);
        var said = CommandLine.CliRun.Of("names", job.FullPath, "--settle");
        Assert.True(said.Status == status, said.Errors);
        Assert.Equal(Math.Min(heldTimes, 8), disk.Pauses.Count);
        Assert.Equal(status == 1, File.Exists(job[Corrections.FileName]));
        Assert.Equal(status == 2, said.ErrorsOnOneLine.Contains(
            "Another program has a file open, most often a spreadsheet. Close the file there and try again.", StringComparison.Ordinal));
        Assert.False(File.Exists(job[WholeFile.Unfinished]));
    }

    [Fact]
    public void A_log_that_a_spreadsheet_has_to_itself_is_asked_for_again()
    {
        int held = 0;
        var disk = new SimulatedDisk(_temp.Job)
        {
            Refuses = (_, deed) => deed.Act == DiskAct.Open && Path.GetFileName(deed.Path) == SewingLogFile.FileName && held++ < 3
                ? new IOException("The process cannot access the file because it is being used by another process.", SharingViolation)
                : null,
        };
        using var under = NameBand.Common.Disk.Under(disk);
        using var alone = JobLock.Take(_temp.Job).Value!;
        SewingLogFile.Append(_temp.Job, alone, new SewingEntry(1, SewingDeed.Sewn));
        Assert.Equal(3, disk.Pauses.Count);
        Assert.Equal([1], SewingLogFile.Read(_temp.Job).Sewn.ToArray());
    }

    /// <summary>Refuses as often as is said to give the out folder another name.</summary>
    private SimulatedDisk Disk()
    {
        int held = 0;
        return new SimulatedDisk(_temp.Job)
        {
            Refuses = (_, deed) => (deed.Act == DiskAct.Move && deed.Path == _temp.Out && held++ < _heldTimes)
                || (deed.Act == DiskAct.Exchange && _heldTimes > 0)
                ? new IOException("The process cannot access the file because it is being used by another process.", SharingViolation)
                : null,
        };
    }

    private System.Collections.Immutable.ImmutableArray<Problem> Mend()
    {
        using var under = NameBand.Common.Disk.Under(Disk());
        return OutFolder.MendInterrupted(_temp.Job, _temp.Out);
    }

    private SimulatedDisk Renew(string content)
    {
        var disk = Disk();
        using var under = NameBand.Common.Disk.Under(disk);
        using var folder = OutFolder.Begin(_temp.Job, _temp.Out, null, withoutExchange: true).Value!;
        OutFolderTests.Fill(folder, 1, 2);
        OutFolderTests.Write(folder, OutPaths.ReadMeFirst, content);
        folder.Commit();
        return disk;
    }

    private string[] Entries() =>
        [.. Directory.GetFileSystemEntries(_temp.Job).Select(e => Path.GetFileName(e)).Order(StringComparer.Ordinal)];

    private string Made() => File.ReadAllText(Path.Combine(_temp.Out, OutPaths.ReadMeFirst));
}

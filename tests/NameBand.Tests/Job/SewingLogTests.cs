using System.Diagnostics;
using System.Text;
using CsCheck;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

public class SewingLogTests
{
    private static readonly SewingEntry[] Three =
    [
        new(3, SewingDeed.Sewn, 14.5, 8, "blue one", null, "2026-11-25T20:15", "p0011", "first evening, rain"),
        new(4, SewingDeed.Sewn),
        new(3, SewingDeed.Measured, MeasuredMm: 146.5, Note: "said \"quite straight\""),
    ];

    /// <summary>Source: the check value of CRC-32 published with its parameters: the nine digits "123456789" give CBF43926.</summary>
    [Fact]
    public void The_check_is_the_published_one() => Assert.Equal("ccbf43926", SewingLogLine.Check("123456789"));

    [Fact]
    public void What_was_said_is_read_back_and_the_file_is_one_a_person_can_read()
    {
        using var folder = new TemporaryFolder();
        Say(folder, Three);
        var log = SewingLogFile.Read(folder.FullPath);
        Assert.Equal(Three, log.Entries.AsEnumerable());
        Assert.Empty(log.Problems);
        string[] lines = File.ReadAllLines(folder[SewingLogFile.FileName]);
        Assert.Equal("hooping,what,minutes,hand_minutes,machine,measured_mm,when,path,note,check", lines[0]);
        Assert.StartsWith("3,sewn,14.5,8,blue one,,2026-11-25T20:15,p0011,\"first evening, rain\",c", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Names_and_rounds_have_lines_of_their_own_beside_those_of_hoopings()
    {
        using var folder = new TemporaryFolder();
        SewingEntry[] more =
        [
            new(3, SewingDeed.Sewn, 6, 2) { Of = SewingSubject.Name }, new(3, SewingDeed.Again) { Of = SewingSubject.Name },
            new(0, SewingDeed.Done, Path: "pin") { Of = SewingSubject.Round },
            new(2, SewingDeed.Undone, Path: "turn") { Of = SewingSubject.Round },
        ];
        Say(folder, [Three[0], .. more, .. Three[1..]]);
        string text = File.ReadAllText(folder[SewingLogFile.FileName]);
        Assert.Contains("\r\nn3,sewn,6,2,", text, StringComparison.Ordinal);
        Assert.Contains("\r\nall,done,,,,,,pin,,c", text, StringComparison.Ordinal);
        Assert.Contains("\r\nr2,undone,,,,,,turn,,c", text, StringComparison.Ordinal);
        var log = SewingLogFile.Read(folder.FullPath);
        Assert.Empty(log.Problems);
        Assert.Equal(Three, log.Entries.AsEnumerable());
        Assert.Equal(more[..2], log.OfNames.Entries.AsEnumerable());
        Assert.Equal((FinishingStep.Pin, FinishingStep.Join), (log.Finishing.LastOf(1), log.Finishing.LastOf(2)));

        // What is none of them is left aside by itself.
        File.AppendAllText(
            folder[SewingLogFile.FileName],
            "n0,sewn,,,,,,,,\r\nr2,sewn,,,,,,pin,,\r\n4,done,,,,,,pin,,\r\nall,done,,,,,,iron,,\r\nx3,sewn,,,,,,,,\r\nN7,SEWN,5,,,,,,,\r\n");
        var mended = SewingLogFile.Read(folder.FullPath);
        Assert.Equal(5, mended.Problems.Count(p => p.Severity == Severity.NeedsPerson));
        Assert.True(mended.OfNames.IsSewn(7));
        Assert.Equal(log.Entries.AsEnumerable(), mended.Entries.AsEnumerable());
    }

    [Fact]
    public void The_last_word_on_a_hooping_counts()
    {
        SewingEntry[] said =
            [new(1, SewingDeed.Sewn), new(2, SewingDeed.Sewn), new(2, SewingDeed.Again), new(5, SewingDeed.Sewn),
            new(5, SewingDeed.Mistake), new(1, SewingDeed.Measured, MeasuredMm: 9)];
        var log = new SewingLog([.. said], []);
        Assert.Equal([1], log.Sewn.AsEnumerable());
        Assert.Equal([2], log.Spoiled.AsEnumerable());
        Assert.True(log.HasBegun);
        Assert.False(SewingLog.Empty.HasBegun);
    }

    [Fact]
    public void What_was_measured_before_a_hooping_was_spoiled_does_not_count_for_what_is_sewn_in_its_place()
    {
        SewingEntry[] said =
        [
            new(1, SewingDeed.Sewn), new(1, SewingDeed.Measured, MeasuredMm: 9), new(1, SewingDeed.Again), new(1, SewingDeed.Sewn),
            new(1, SewingDeed.Measured, MeasuredMm: 11), new(1, SewingDeed.Measured, MeasuredMm: 12),
            new(2, SewingDeed.Sewn), new(2, SewingDeed.Measured, MeasuredMm: 5), new(2, SewingDeed.Mistake),
        ];
        Assert.Equal([(1, 12.0), (1, 11.0)], new SewingLog([.. said], []).Measured.Select(e => (e.Hooping, e.MeasuredMm!.Value)));
    }

    [Fact]
    public void Cut_off_anywhere_the_whole_lines_before_the_cut_are_kept()
    {
        using var folder = new TemporaryFolder();
        Say(folder, Three);
        byte[] whole = File.ReadAllBytes(folder[SewingLogFile.FileName]);
        for (int length = 0; length <= whole.Length; length++)
        {
            var log = SewingLogFile.Parse(whole[..length]);
            int complete = Encoding.UTF8.GetString(whole[..length]).Split("\r\n").Length - 2;
            Assert.True(log.Entries.Length >= complete, $"{length} bytes");
            Assert.Equal(Three.Take(complete), log.Entries.Take(Math.Max(0, complete)));
        }
    }

    [Fact]
    public void A_torn_line_does_not_swallow_the_next_one()
    {
        using var folder = new TemporaryFolder();
        Say(folder, Three[0]);
        byte[] whole = File.ReadAllBytes(folder[SewingLogFile.FileName]);
        File.WriteAllBytes(folder[SewingLogFile.FileName], [.. whole, .. "4,sew"u8]);
        Say(folder, Three[2]);
        var log = SewingLogFile.Read(folder.FullPath);
        Assert.Equal([Three[0], Three[2]], log.Entries.AsEnumerable());
        var problem = Assert.Single(log.Problems);
        Assert.Equal((3, Severity.NeedsPerson), (problem.Where.Line!.Value, problem.Severity));
        Assert.Contains("4,sew", problem.Found.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("minus,sewn,3,,,,,,,", "not the number of a hooping")]
    [InlineData("0,sewn,3,,,,,,,", "not the number of a hooping")]
    [InlineData("12,sewn,-14,,,,,,,", "not a number of minutes")]
    [InlineData("12,sewn,NaN,,,,,,,", "not a number of minutes")]
    [InlineData("12,sewn,9999,,,,,,,", "not a number of minutes")]
    [InlineData("12,unpicked,3,,,,,,,", "not one of sewn")]
    [InlineData("12,1,3,,,,,,,", "not one of sewn")]
    [InlineData("12,measured,,,,,,,,", "not a length")]
    [InlineData("12,sewn", "2 columns")]
    [InlineData("12,sewn,3,,\"blue,,,,,", "quotation mark")]
    public void A_line_with_an_error_is_named_and_left_aside_and_the_others_count(string line, string why)
    {
        string good = SewingLogLine.Write(Three[0]);
        var log = SewingLogFile.Parse(Encoding.UTF8.GetBytes($"{SewingLogLine.Header}\r\n{line}\r\n{good}\r\n"));
        Assert.Equal([Three[0]], log.Entries.AsEnumerable());
        var problem = Assert.Single(log.Problems);
        Assert.Equal(2, problem.Where.Line);
        Assert.Contains(why, problem.Found.English, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Mend.English);
    }

    [Fact]
    public void A_line_changed_by_hand_counts_as_it_stands_and_is_noted()
    {
        string changed = SewingLogLine.Write(Three[0]).Replace("14.5", "41", StringComparison.Ordinal);
        var log = SewingLogFile.Parse(Encoding.UTF8.GetBytes($"{SewingLogLine.Header}\r\n{changed}\r\n7,sewn,12\r\n8,sewn,11,,,,,,\r\n"));
        Assert.Equal([(3, 41.0), (8, 11.0)], log.Entries.Select(e => (e.Hooping, e.Minutes!.Value)));
        Assert.Equal([Severity.Note, Severity.NeedsPerson, Severity.Note], log.Problems.Select(p => p.Severity));
    }

    [Fact]
    public void A_spreadsheets_semicolons_decimal_commas_and_byte_order_mark_are_understood()
    {
        string text = "\uFEFF" + SewingLogLine.Header.Replace(',', ';') + "\n3;sewn;14,5;8;blue one;;;;;c00000000\n";
        var log = SewingLogFile.Parse(Encoding.UTF8.GetBytes(text));
        Assert.Equal(14.5, Assert.Single(log.Entries).Minutes);
    }

    [Fact]
    public void What_is_said_after_a_spreadsheet_saved_it_is_read_too()
    {
        using var folder = new TemporaryFolder()
            .With(SewingLogFile.FileName, SewingLogLine.Header.Replace(',', ';') + "\r\n3;sewn;14,5;8;blue one;;;;;c00000000\r\n");
        Say(folder, new SewingEntry(4, SewingDeed.Sewn, 12, Note: "late; by the lamp"));
        var log = SewingLogFile.Read(folder.FullPath);
        Assert.Equal([3, 4], log.Sewn.AsEnumerable());
        Assert.Equal("late; by the lamp", log.Entries[1].Note);
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("＝1+1", "'＝1+1")]
    [InlineData("'-3", "''-3")]
    [InlineData("'til late", "'til late")]
    public void A_note_is_no_formula_to_a_spreadsheet_and_comes_back_as_it_was(string note, string field)
    {
        var entry = new SewingEntry(3, SewingDeed.Sewn, Machine: note, Note: note);
        string line = SewingLogLine.Write(entry);
        Assert.Contains($",{field},,,,{field},c", line, StringComparison.Ordinal);
        Assert.Equal(entry, SewingLogFile.Parse(Encoding.UTF8.GetBytes(SewingLogLine.Header + "\r\n" + line + "\r\n")).Entries.Single());
    }

    [Fact]
    public void No_bytes_at_all_make_it_throw() =>
        Gen.Byte.Array[0, 300].Sample(bytes => Assert.NotNull(SewingLogFile.Parse(bytes)), iter: 2000, seed: "0000KgvJX7r2");

    [Fact]
    public void Many_writers_lose_no_line()
    {
        using var folder = new TemporaryFolder();
        Parallel.For(1, 25, i => Say(folder, new SewingEntry(i, SewingDeed.Sewn, i)));
        var log = SewingLogFile.Read(folder.FullPath);
        Assert.Empty(log.Problems);
        Assert.Equal(Enumerable.Range(1, 24), log.Sewn.AsEnumerable());
    }

    [Fact]
    public void A_killed_writer_loses_nothing_that_it_had_said()
    {
        using var folder = new TemporaryFolder();
        for (int round = 0; round < 3; round++)
        {
            using var child =
                Process.Start(new ProcessStartInfo(
                    DotNet, ["exec", Here, SewingLogChild.Verb, folder.FullPath])
                { RedirectStandardOutput = true })!;
            string last = "";
            for (int i = 0; i < 20; i++)
            {
                last = child.StandardOutput.ReadLine() ?? throw new InvalidOperationException("The child ended by itself.");
            }

            child.Kill();
            child.WaitForExit();
            string? rest = child.StandardOutput.ReadToEnd().TrimEnd().Split('\n').LastOrDefault(l => l.Length > 0);
            int said = int.Parse(rest ?? last, System.Globalization.CultureInfo.InvariantCulture);
            Assert.True(SewingLogFile.Read(folder.FullPath).Sewn.Length >= said);
        }
    }

    /// <summary>The system refuses to let the log grow beyond 4 KiB, as a full disk would.</summary>
    [SkippableFact]
    public void A_disk_that_is_full_takes_nothing_that_was_said_before()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "skipped: needs Linux (a limit on the size of files stands for the full disk)");
        using var folder = new TemporaryFolder();
        var start = new ProcessStartInfo(
            "bash", ["-c", "ulimit -f 4; exec \"$@\"", "bash", DotNet, "exec", Here, SewingLogChild.Verb, folder.FullPath])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        start.Environment["DOTNET_DbgEnableMiniDump"] = "0";
        using var child = Process.Start(start)!;
        string said = child.StandardOutput.ReadToEnd();
        child.StandardError.ReadToEnd();
        child.WaitForExit();
        Assert.NotEqual(0, child.ExitCode);
        int last = int.Parse(said.TrimEnd().Split('\n')[^1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(last, 20, 200);
        var log = SewingLogFile.Read(folder.FullPath);
        Assert.Equal(Enumerable.Range(1, last), log.Sewn.Take(last));

        // With room on the disk again the next line stands by itself, whatever the full disk left behind.
        Say(folder, new SewingEntry(1000, SewingDeed.Sewn, 12));
        Assert.True(SewingLogFile.Read(folder.FullPath).IsSewn(1000));
    }

    private static string Here => typeof(SewingLogTests).Assembly.Location;

    private static string DotNet =>
        Environment.ProcessPath!.Contains("dotnet", StringComparison.Ordinal) ? Environment.ProcessPath : "dotnet";

    internal static void Say(TemporaryFolder folder, params SewingEntry[] entries)
    {
        using var held = PatientLock.Take(folder.FullPath, () => Thread.Sleep(50)).Value
            ?? throw new InvalidOperationException("The lock was not to be had.");
        SewingLogFile.Append(folder.FullPath, held, entries);
    }
}

using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>How cloth is held and hoopings are marked.</summary>
public class HoldingKeysTests
{
    private const string Keyed = "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\"] }, ";
    private const string KeyedHooped = "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\"], \"hooped\": true }, ";
    private const string Traced = "\"way\": \"traced\", ";

    [Theory]
    [InlineData("", FrameHold.Screw, MarkMethod.Sewn)]
    [InlineData(Keyed, FrameHold.None, MarkMethod.None)]
    [InlineData(KeyedHooped, FrameHold.Screw, MarkMethod.None)]
    [InlineData(Traced, FrameHold.None, MarkMethod.None)]
    public void A_job_that_does_not_say_is_held_and_marked_as_ever(string way, FrameHold hold, MarkMethod marks)
    {
        var job = Read(way).Value!;
        Assert.Equal((hold, marks, true, true), (job.Holding.Hold, job.Holding.Marks, job.Holding.IsHoldFree, job.Holding.AreMarksFree));
        Assert.Equal((4.5, 7.0), (job.Hands.HoopingMinutes, job.Hands.FirstHoopingsMinutes));
    }

    /// <summary>What is set for letters the machine types does not hold back a machine that follows coordinates.</summary>
    [Fact]
    public void Needle_paths_are_hooped_whatever_is_set_of_typed_letters()
    {
        var read = Read("""
            "way": "needlePath", "letters": { "sizes": ["9 mm"], "hooped": false }, "hoop": { "hold": "clamp" },
            """);
        Assert.Empty(read.Problems.Where(p => p.Where.Key?.StartsWith("hoop", StringComparison.Ordinal) == true));
        Assert.Equal(FrameHold.Clamp, read.Value!.Holding.Hold);
    }

    [Theory]
    [InlineData("screw", 4.5, 7)]
    [InlineData("laid", 3.5, 3.5)]
    [InlineData("clamp", 2, 2)]
    [InlineData("magnet", 1.5, 1.5)]
    public void Each_hold_has_its_minutes_and_hers_win(string hold, double minutes, double first)
    {
        string hoop = $"\"hoop\": {{ \"hold\": \"{hold}\" }}, \"marks\": \"drawn\", ";
        var job = Read(hoop).Value!;
        Assert.Equal((minutes, first), (job.Hands.HoopingMinutes, job.Hands.FirstHoopingsMinutes));
        Assert.Equal((MarkMethod.Drawn, false), (job.Holding.Marks, job.Holding.AreMarksFree));
        var own = Read(hoop + "\"hands\": { \"hoopingMinutes\": 6, \"drawnMarksMinutes\": 2, \"paperMarksMinutes\": 3 }, ").Value!.Hands;
        Assert.Equal((6.0, 6.0, 2.0, 3.0), (own.HoopingMinutes, own.FirstHoopingsMinutes, own.DrawnMarksMinutes, own.PaperMarksMinutes));
    }

    [Fact]
    public void A_hold_says_that_typed_names_are_hooped()
    {
        var job = Read(Keyed + "\"hoop\": { \"hold\": \"magnet\" }, ").Value!;
        Assert.True(job.IsHooped && job.Letters.Hooped);
    }

    [Fact]
    public void Of_several_ways_hold_and_marks_are_those_of_needle_paths()
    {
        const string Both = "\"ways\": [\"machineLetters\", \"needlePath\"], \"letters\": { \"sizes\": [\"9 mm\"] }, ";
        var read = Read(Both + "\"hoop\": { \"hold\": \"magnet\" }, \"marks\": \"drawn\", ");
        Assert.Empty(read.Problems);
        Assert.Equal((FrameHold.Magnet, MarkMethod.Drawn), (read.Value!.Holding.Hold, read.Value.Holding.Marks));
        Assert.Equal((true, false), (read.Value.IsHoopedIn(Way.NeedlePath), read.Value.IsHoopedIn(Way.MachineLetters)));
        Assert.Equal("marks", Assert.Single(Read(Both + "\"marks\": \"none\", ").Problems).Where.Key);
    }

    [Theory]
    [InlineData("\"hoop\": { \"hold\": \"none\" }, ", "hoop.hold", "follows coordinates sews in a hoop")]
    [InlineData("\"marks\": \"none\", ", "marks", "nobody can set a hooping where it belongs")]
    [InlineData(Traced + "\"hoop\": { \"hold\": \"clamp\" }, ", "hoop.hold", "without a hoop")]
    [InlineData(Traced + "\"marks\": \"sewn\", ", "marks", "one template")]
    [InlineData(Keyed + "\"hoop\": { \"hold\": \"none\" }, \"marks\": \"sewn\", ", "marks", "no crosses")]
    [InlineData(KeyedHooped + "\"marks\": \"sewn\", ", "marks", "no crosses")]
    [InlineData(Keyed + "\"marks\": \"drawn\", ", "marks", "start mark of its own")]
    [InlineData(KeyedHooped + "\"hoop\": { \"hold\": \"none\" }, ", "hoop.hold", "one says a hoop, the other none")]
    [InlineData("\"marks\": \"chalk\", ", "marks", "drawn")]
    [InlineData("\"hoop\": { \"hold\": \"screws\" }, ", "hoop.hold", "screw")]
    public void What_does_not_go_together_is_refused(string keys, string key, string says)
    {
        var problem = Assert.Single(Read(keys).Problems);
        Assert.Equal(key, problem.Where.Key);
        Assert.Contains(says, (problem.Found + problem.Mend).English, StringComparison.Ordinal);
        Assert.NotEqual("", problem.Mend);
    }

    private static Result<BandJob> Read(string keys) =>
        JobReaderTests.ReadAll($"{{ \"format\": 1, {keys}\"lists\": [\"names.csv\"], \"hem\": {{ \"length\": \"3.66 m\" }} }}");
}

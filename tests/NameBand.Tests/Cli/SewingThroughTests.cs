using System.Text.Json;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>The sample sewn on through the command line: logged, latecomers, a spoiled hooping, before and after.</summary>
public class SewingThroughTests
{
    private static TemporaryFolder Sample()
    {
        var folder = new TemporaryFolder();
        foreach (string file in Directory.EnumerateFiles(Path.Combine(Repository.Root, "samples", "lantern-walk")))
        {
            folder.With(Path.GetFileName(file), File.ReadAllBytes(file));
        }

        return folder;
    }

    [Fact]
    public void Three_hoopings_are_logged_two_latecomers_come_and_one_hooping_is_spoiled_and_sewn_again()
    {
        using var folder = Sample();
        string job = folder.FullPath;
        Assert.InRange(CliRun.Of("make", job).Status, 0, 1);
        for (int hooping = 1; hooping <= 3; hooping++)
        {
            var said = CliRun.Of("sewn", job, $"{hooping}", "--minutes", "14", "--hands", "11");
            Assert.Equal((0, ""), (said.Status, said.Errors));
        }

        var sewn = new[] { 1, 3 }.ToDictionary(h => h, h => File.ReadAllBytes(folder[$"out/needle-paths/hooping-{h:000}.csv"]));
        var hours = CliRun.Of("hours", job);
        Assert.Contains("Learned from your log At the machine: 3 hoopings timed", hours.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("before anything was timed it was", hours.OutOnOneLine, StringComparison.Ordinal);
        using (var json = JsonDocument.Parse(CliRun.Of("hours", job, "--json", "--evening", "2h").Out))
        {
            var pace = json.RootElement.GetProperty("machinePace");
            Assert.Equal(3, pace.GetProperty("timed").GetInt32());
            double Width(string when) =>
                pace.GetProperty(when + "HighMinutes").GetDouble() - pace.GetProperty(when + "LowMinutes").GetDouble();
            double Relative(string when) => Width(when) / pace.GetProperty(when + "LikelyMinutes").GetDouble();
            Assert.True(Relative("left") < Relative("before"), "the range narrows");
            var dealt = json.RootElement.GetProperty("sittings").EnumerateArray()
                .SelectMany(s => s.GetProperty("hoopings").EnumerateArray()).Select(h => h.GetInt32()).ToList();
            Assert.Equal(dealt.Count, dealt.Distinct().Count());
            Assert.DoesNotContain(dealt, h => h <= 3);
        }

        File.AppendAllText(folder["names.csv"], "\r\nPip Rushmore,late1@lantern.example,5,,\r\nAva Heron,late2@lantern.example,5,,\r\n");
        var made = CliRun.Of("make", job);
        Assert.InRange(made.Status, 0, 1);
        Assert.Contains("Since the plan before", made.Out, StringComparison.Ordinal);
        Assert.Contains("by your own pace; without your log", made.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("2 names: Pip Rushmore (hooping ", made.OutOnOneLine, StringComparison.Ordinal);
        Assert.Matches("Sew the [0-9]+ needle paths still to be sewn in [^:]+: 4–[0-9]+[.]", made.OutOnOneLine);
        Assert.DoesNotContain("Sew the swatch", made.OutOnOneLine, StringComparison.Ordinal);
        AssertAsSewn();

        Assert.Equal(0, CliRun.Of("sewn", job, "2", "--again", "--note", "thread nest").Status);
        Assert.InRange(CliRun.Of("make", job).Status, 0, 1);

        // It lies elsewhere now, and its old sheet is still about.
        using var open = JsonDocument.Parse(CliRun.Of("sewn", job, "--json").Out);
        var second = open.RootElement.GetProperty("hoopings").EnumerateArray().Single(h => h.GetProperty("number").GetInt32() == 2);
        Assert.True(second.GetProperty("asksForMark").GetBoolean());
        Assert.Equal(2, CliRun.Of("sewn", job, "2", "--minutes", "15").Status);
        var once = CliRun.Of("sewn", job, "2", "--minutes", "15", "--mark", second.GetProperty("mark").GetString()!);
        Assert.Equal(0, once.Status);
        string names = string.Join(" and ", second.GetProperty("names").EnumerateArray().Select(n => $"“{n.GetString()}”"));
        Assert.Contains($"Hooping 2, {names}, is logged as sewn, 15 minutes at the machine.", once.OutOnOneLine, StringComparison.Ordinal);
        using var state = JsonDocument.Parse(CliRun.Of("sewn", job, "--json").Out);
        Assert.Equal([1, 2, 3], state.RootElement.GetProperty("hoopings").EnumerateArray()
            .Where(h => h.GetProperty("state").GetString() == "sewn").Select(h => h.GetProperty("number").GetInt32()));
        AssertAsSewn();

        void AssertAsSewn() =>
            Assert.All(sewn, s => Assert.Equal(s.Value, File.ReadAllBytes(folder[$"out/needle-paths/hooping-{s.Key:000}.csv"])));
    }

    [Theory]
    [InlineData("--evening", "soon")]
    [InlineData("--evening", "-2h")]
    public void An_evening_that_is_no_length_of_time_is_refused(string option, string value)
    {
        using var folder = Sample();
        var run = CliRun.Of("hours", folder.FullPath, $"{option}={value}");
        Assert.Equal((64, ""), (run.Status, run.Out));
        Assert.NotEqual("", run.Errors);
    }

    [Theory]
    [InlineData("1", "--minutes=-3")]
    [InlineData("1", "--minutes=2000")]
    [InlineData("0", "--minutes=3")]
    [InlineData("1", "--measured=nothing")]
    [InlineData("1", "--measured=0 mm")]
    public void What_cannot_be_true_of_a_hooping_is_refused_and_not_written(string hooping, string option)
    {
        using var folder = Sample();
        var run = CliRun.Of("sewn", folder.FullPath, hooping, option);
        Assert.Equal((64, ""), (run.Status, run.Out));
        Assert.NotEqual("", run.Errors);
        Assert.False(File.Exists(folder["sewing-log.csv"]));
    }

    [Theory]
    [InlineData("machineLetters")]
    [InlineData("traced")]
    public void A_job_without_needle_paths_asks_for_names_and_not_for_hoopings(string way)
    {
        using var folder = new TemporaryFolder();
        folder.With(
            "job.json", $$"""{ "format": 1, "way": "{{way}}", "lists": ["names.csv"], "hem": { "length": "900 mm" }, "letters": { "sizes": "8 mm" } }""");
        folder.With("names.csv", "name\nAnna\n");
        Assert.Contains("Run make first", CliRun.Of("sewn", folder.FullPath, "n1").ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.True(CliRun.Of("make", folder.FullPath).Status <= 1);
        var run = CliRun.Of("sewn", folder.FullPath, "1");
        Assert.Equal(2, run.Status);
        Assert.Contains("Say the name’s number: sewn JOB n1.", run.ErrorsOnOneLine, StringComparison.Ordinal);
    }
}

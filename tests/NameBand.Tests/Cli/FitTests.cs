using System.Text.Json;
using Xunit;

namespace NameBand.Tests.CommandLine;

public class FitTests
{
    private const string Job =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "0.7 m", "turn": 0.3 }, "strip": { "rounds": 2 } }""";

    private static TemporaryFolder Folder(string job = Job) => new TemporaryFolder()
        .With("job.json", job)
        .With("names.csv", "Name\n" + string.Join('\n', Enumerable.Range(1, 10).Select(i => $"Tamsin Marsh {(char)('A' + i)}")) + "\n");

    [Fact]
    public void The_table_has_the_same_figures_as_a_run_and_nothing_is_written()
    {
        using var folder = Folder();
        string[] before = Directory.GetFileSystemEntries(folder.FullPath);
        var fit = CliRun.Of("fit", folder.FullPath, "--json");
        Assert.Equal((0, ""), (fit.Status, fit.Errors));
        Assert.Equal(before, Directory.GetFileSystemEntries(folder.FullPath));
        using var report = JsonDocument.Parse(fit.Out);
        var choices = report.RootElement.GetProperty("choices").EnumerateArray().ToList();
        Assert.True(choices.Select(c => c.GetProperty("face").GetString()).Distinct().Count() >= 5);
        foreach (var face in choices.GroupBy(c => c.GetProperty("face").GetString()))
        {
            // Another round is shown only while it allows larger letters.
            var fitting = face.Where(c => c.GetProperty("fits").GetBoolean()).Select(c => c.GetProperty("letterHeightMm").GetDouble()).ToList();
            Assert.Equal(fitting.Distinct().Order(), fitting);
        }

        var two = choices.First(c => c.GetProperty("rounds").GetInt32() == 2 && c.GetProperty("face").GetString() == "Nunito Bold");

        var make = CliRun.Of("make", folder.FullPath, "--json");
        using var plan = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder.FullPath, "out", "plan.json")));
        Assert.True(make.Status <= 1);
        Assert.Equal(plan.RootElement.GetProperty("letterHeightMm").GetDouble(), two.GetProperty("letterHeightMm").GetDouble(), 3);
        var totals = plan.RootElement.GetProperty("totals");
        // Two rounds lie side by side of themselves, where nothing is written of it.
        Assert.Equal(totals.GetProperty("hoopings").GetInt32(), two.GetProperty("laneHoopings").GetInt32());
        Assert.Equal(totals.GetProperty("machineMinutes").GetDouble(), two.GetProperty("laneMachineMinutes").GetDouble(), 1e-1);
        Assert.True(two.GetProperty("laneHoopings").GetInt32() < two.GetProperty("hoopings").GetInt32());
    }

    private const string Curved =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.9 m", "turn": 0.5, "closed": false }, "strip": { "shape": "curved" } }""";

    /// <summary>A curved strip is cut along a curve whose length is worked out: it never comes to its hem's to the last digit.</summary>
    [Fact]
    public void A_strip_that_make_finds_to_meet_its_hem_fits_here_too()
    {
        using var folder = Folder(Curved);
        using var fit = JsonDocument.Parse(CliRun.Of("fit", folder.FullPath, "--json").Out);
        var one = fit.RootElement.GetProperty("choices").EnumerateArray().First();
        using var make = JsonDocument.Parse(CliRun.Of("make", folder.FullPath, "--json").Out);

        Assert.True(make.RootElement.GetProperty("matchesHem").GetBoolean());
        Assert.Equal((true, 0), (one.GetProperty("fits").GetBoolean(), one.GetProperty("tooLongMm").GetDouble()));
        Assert.DoesNotContain(") +0 m", CliRun.Of("fit", folder.FullPath).Out, StringComparison.Ordinal);
    }

    /// <summary>Two groups with rounds of their own: one round is too few, and the choice begins with two.</summary>
    [Fact]
    public void A_job_that_needs_two_rounds_has_its_choices_from_two_on()
    {
        using var folder = Folder("""
            { "format": 1, "lists": ["names.csv"], "columns": { "group": "gift" }, "hem": { "length": "1 m", "turn": 0 },
              "groups": [ { "name": "large", "from": 50, "place": "ownRound" }, { "name": "others", "rest": true, "place": "ownRound" } ] }
            """);
        folder.With("names.csv", "name,gift\nOrla Penhale,60\nBram Sedgewick,40\nTuva Lind,20\n");
        using var json = JsonDocument.Parse(CliRun.Of("fit", folder.FullPath, "--json").Out);
        int[] rounds = [.. json.RootElement.GetProperty("choices").EnumerateArray().Select(c => c.GetProperty("rounds").GetInt32())];
        Assert.NotEmpty(rounds);
        Assert.Equal(2, rounds.Min());
    }

    private const string Letters =
        """{ "format": 1, "way": "machineLetters", "lists": ["names.csv"], "hem": { "length": "0.9 m", "turn": 0.3 }, "strip": { "rounds": 2 }, "letters": { "sizes": ["9 mm", "7 mm"] } }""";

    private const string Traced =
        """{ "format": 1, "way": "traced", "lists": ["names.csv"], "hem": { "length": "0.7 m", "turn": 0.3 }, "strip": { "rounds": 2 } }""";

    /// <summary>What is keyed in or traced is counted as make counts it: no hoops, no faces a machine does not have.</summary>
    [Theory]
    [InlineData(Letters, "the machine’s own letters", 1)]
    [InlineData(Traced, "Nunito Bold", 5)]
    public void A_job_without_needle_paths_is_counted_by_its_own_way(string job, string face, int leastFaces)
    {
        using var folder = Folder(job);
        using var fit = JsonDocument.Parse(CliRun.Of("fit", folder.FullPath, "--json").Out);
        var choices = fit.RootElement.GetProperty("choices").EnumerateArray().ToList();
        int faces = choices.Select(c => c.GetProperty("face").GetString()).Distinct().Count();
        Assert.True(leastFaces == 1 ? faces == 1 : faces >= leastFaces);
        var two = choices.Single(c => c.GetProperty("rounds").GetInt32() == 2 && c.GetProperty("face").GetString() == face);

        Assert.True(CliRun.Of("make", folder.FullPath).Status <= 1);
        using var plan = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder.FullPath, "out", "plan.json")));
        Assert.Equal(plan.RootElement.GetProperty("letterHeightMm").GetDouble(), two.GetProperty("letterHeightMm").GetDouble(), 3);
        var totals = plan.RootElement.GetProperty("totals");
        foreach (string key in new[] { "hoopings", "machineMinutes", "handsOnMinutes" })
        {
            Assert.Equal(totals.GetProperty(key).GetDouble(), two.GetProperty(key).GetDouble(), 0.051);
        }

        Assert.Contains("Runs", CliRun.Of("fit", folder.FullPath).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_is_read_by_people_and_a_broken_job_is_refused_as_by_make()
    {
        using var folder = Folder();
        var fit = CliRun.Of("fit", folder.FullPath);
        Assert.Equal(0, fit.Status);
        Assert.Matches("Rounds {3}Letters +Hoopings +At the machine +By hand", fit.Out);
        Assert.Contains("Nunito Bold", fit.Out, StringComparison.Ordinal);
        using var broken = Folder(Job.Replace("0.7 m", "-1 m", StringComparison.Ordinal));
        var refused = CliRun.Of("fit", broken.FullPath);
        Assert.Equal(2, refused.Status);
        Assert.Contains("is negative", refused.ErrorsOnOneLine, StringComparison.Ordinal);
    }
}

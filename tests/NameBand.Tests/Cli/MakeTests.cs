using System.Globalization;
using System.Text.Json;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>What <c>make</c>, <c>names</c> and <c>faces</c> say when all goes well, and when something waits for a person.</summary>
public class MakeTests
{
    private const string Job =
        """{ "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 } }""";
    private const string Two = "Name,E-mail\nAda Marsh,a@lantern.example\nBo Reed,b@lantern.example\n";
    private const string Held = Two + "ada marsh,c@lantern.example\nBo Reed,b@lantern.example\n";

    [Fact]
    public void A_job_that_is_all_well_ends_with_0_and_says_so()
    {
        using var folder = Folder(Two);

        var run = CliRun.Of("make", folder.FullPath);

        Assert.Equal((0, ""), (run.Status, run.Errors));
        Assert.StartsWith("Lantern walk\n\n2 names on one round in Nunito Bold, letters ", run.Out, StringComparison.Ordinal);
        Assert.Contains("0.6 m (23 5/8 in) with 2 names: ", run.Out, StringComparison.Ordinal);
        Assert.Contains("fits its hem.", run.Out, StringComparison.Ordinal);
        Assert.Contains("Nothing needs a decision: every name is placed.", run.Out, StringComparison.Ordinal);
        Assert.Contains($"1. Look at the proofs in {folder.FullPath}/out/proofs", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.True(File.Exists(folder["out/plan.json"]));
        Assert.DoesNotContain('\u001b', run.Out);
        Assert.DoesNotContain('\u00a0', run.Out);
        Assert.All(run.Out.Split('\n'), l => Assert.Equal(l.TrimEnd(), l));
    }

    [Fact]
    public void What_waits_for_a_person_comes_with_list_line_and_reason_and_ends_with_1()
    {
        using var folder = Folder(Held);

        var run = CliRun.Of("make", folder.FullPath);

        Assert.Equal((1, ""), (run.Status, run.Errors));
        Assert.Contains("1 thing needs a decision before you sew", run.Out, StringComparison.Ordinal);
        Assert.Contains("1. names.csv, line 4, “ada marsh”", run.Out, StringComparison.Ordinal);
        Assert.Contains("Of 4 rows, 1 is a repeat and 0 are left out", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("1. Settle what is listed above, and run make again.", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_strip_that_does_not_fit_is_told_in_words()
    {
        using var folder =
            Folder(Two, Job.Replace("60 cm", "10 cm", StringComparison.Ordinal)[..^2] + ", \"lettering\": { \"height\": \"12 mm\" } }");

        var run = CliRun.Of("make", folder.FullPath);

        Assert.Equal(1, run.Status);
        Assert.Contains("too long for its hem of 100 mm (3 15/16 in).", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("1. round 1", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_out_folder_may_lie_elsewhere()
    {
        using var folder = Folder(Two);
        using var elsewhere = new TemporaryFolder();

        var run = CliRun.Of("make", folder.FullPath, "--out", elsewhere["second try"]);

        Assert.Equal(0, run.Status);
        Assert.True(File.Exists(elsewhere["second try/plan.json"]));
        Assert.False(Path.Exists(folder["out"]));
        Assert.Contains(elsewhere["second try"] + "/proofs", run.OutOnOneLine, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_is_one_object_on_standard_output_and_nothing_else()
    {
        using var folder = Folder(Held);

        var run = CliRun.Of("make", folder.FullPath, "--json");

        Assert.Equal((1, ""), (run.Status, run.Errors));
        using var json = JsonDocument.Parse(run.Out);
        var root = json.RootElement;
        Assert.Equal((1, 1), (root.GetProperty("format").GetInt32(), root.GetProperty("status").GetInt32()));
        Assert.Equal(2, root.GetProperty("names").GetInt32());
        Assert.True(root.GetProperty("matchesHem").GetBoolean());
        Assert.Equal(600, root.GetProperty("rounds")[0].GetProperty("hemMm").GetDouble(), 0.001);
        Assert.Equal("ada marsh", root.GetProperty("held")[0].GetProperty("text").GetString());
        Assert.Equal(4, root.GetProperty("held")[0].GetProperty("line").GetInt32());
        Assert.Equal(
            (4, 2, 1, 1, 0),
            (Row("all"), Row("placed"), Row("merged"), Row("held"), Row("leftOut")));
        Assert.Equal(folder["out"], root.GetProperty("outFolder").GetString());
        Assert.True(root.GetProperty("machineMinutes").GetProperty("likely").GetDouble() > 0);
        Assert.DoesNotContain("lantern.example", run.Out, StringComparison.Ordinal);

        int Row(string outcome) => root.GetProperty("rows").GetProperty(outcome).GetInt32();
    }

    [Fact]
    public void Names_says_what_became_of_every_row_and_writes_nothing()
    {
        using var folder = Folder(Held);

        var run = CliRun.Of("names", folder.FullPath);

        Assert.Equal((1, ""), (run.Status, run.Errors));
        Assert.StartsWith(
            "4 rows in the list: 2 names to sew, 1 held for you to decide and 1 merged.\n", run.Out, StringComparison.Ordinal);
        Assert.Contains("1. names.csv, line 4, “ada marsh”", run.Out, StringComparison.Ordinal);
        Assert.Contains(
            "\nlist,line,was,decision,text,why,details,show,alike\nnames.csv,4,ada marsh,,,", run.Out, StringComparison.Ordinal);
        Assert.Contains("names.csv, line 5, “Bo Reed”: the same as names.csv, line 3", run.Out, StringComparison.Ordinal);
        Assert.Equal(
            ["job.json", "names.csv"],
            Directory.GetFileSystemEntries(folder.FullPath).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_lines_that_names_prints_settle_what_was_held()
    {
        using var folder = Folder(Held);
        string printed = CliRun.Of("names", folder.FullPath).Out;
        string lines = printed[printed.IndexOf("list,line,was", StringComparison.Ordinal)..].Split("\n\n")[0];

        folder.With("corrections.csv", lines.Replace("ada marsh,,", "ada marsh,keep,", StringComparison.Ordinal) + "\n");

        var run = CliRun.Of("names", folder.FullPath);
        Assert.Equal(0, run.Status);
        Assert.StartsWith(
            "4 rows in the list: 3 names to sew and 1 merged.\n\nNothing needs a decision.\n", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Faces_lists_the_shelf_with_the_height_from_which_each_can_be_sewn()
    {
        var run = CliRun.Of("faces");
        using var json = JsonDocument.Parse(CliRun.Of("faces", "--json").Out);

        Assert.Equal((0, ""), (run.Status, run.Errors));
        Assert.Matches(@"(?m)^  Nunito Bold +satin from [23]\.\d mm, clear from 6\.\d mm\.", run.Out);
        Assert.All(
            json.RootElement.GetProperty("faces").EnumerateArray(), f => Assert.InRange(f.GetProperty("leastHeightMm").GetDouble(), 1, 25));
        Assert.True(json.RootElement.GetProperty("faces").GetArrayLength() >= 8);
    }

    [Fact]
    public void A_run_that_is_stopped_says_so_and_leaves_nothing_behind()
    {
        using var folder = Folder(Two);
        using var stop = new CancellationTokenSource();
        stop.Cancel();

        var run = CliRun.Of(stop, "make", folder.FullPath);

        Assert.Equal(new CliRun(130, "", "Stopped. Your earlier output is unchanged.\n"), run);
        Assert.Equal(
            ["job.json", "names.csv"],
            Directory.GetFileSystemEntries(folder.FullPath).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_comma_culture_and_windows_line_ends_change_nothing()
    {
        using var plain = Folder(Two);
        using var windows = Folder(Two.ReplaceLineEndings("\r\n"), Job.Replace(", ", ",\r\n", StringComparison.Ordinal));
        string expected = CliRun.Of("make", plain.FullPath).Out.Replace(plain.FullPath, "JOB", StringComparison.Ordinal);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            var run = CliRun.Of("make", windows.FullPath);
            Assert.Equal(OnOneLine(expected), OnOneLine(run.Out.Replace(windows.FullPath, "JOB", StringComparison.Ordinal)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.Equal(File.ReadAllBytes(plain["out/plan.json"]), File.ReadAllBytes(windows["out/plan.json"]));
    }

    private static TemporaryFolder Folder(string list, string job = Job) =>
        new TemporaryFolder().With("job.json", job).With("names.csv", list);

    private static string OnOneLine(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>As many hoopings as rounds are no runs: hours and make say the same of the hoop.</summary>
    [Theory]
    [InlineData("true", "Sittings 2 hoopings At the machine", "2 hoopings")]
    [InlineData("false", "Sittings each strip in one run, without a hoop (2 runs) At the machine", "2 runs")]
    public void Typed_names_in_a_hoop_are_not_said_to_be_sewn_without_one(string hooped, string made, string hours)
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name\nAda Marsh\nBo Reed\nCleo Weir\nDara Ost\n")
            .With("job.json", $$"""
                { "lists": ["names.csv"], "hem": { "length": "300 mm", "turn": 0 }, "way": "machineLetters",
                  "letters": { "hooped": {{hooped}}, "sizes": ["9 mm"] }, "strip": { "rounds": 2 } }
                """);
        Assert.Contains(made, CliRun.Of("make", folder.FullPath).OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains($"4 names in {hours}", CliRun.Of("hours", folder.FullPath).OutOnOneLine, StringComparison.Ordinal);

        File.AppendAllText(folder["names.csv"], "Eda Fry\n");
        string part = hooped == "true" ? "hooping" : "run";
        Assert.Contains($"1 name: Eda Fry ({part} ", CliRun.Of("make", folder.FullPath).OutOnOneLine, StringComparison.Ordinal);
    }
}

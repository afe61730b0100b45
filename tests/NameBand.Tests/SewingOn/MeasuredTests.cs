using System.Globalization;
using System.Text.Json;
using NameBand.Job;
using NameBand.Layout.Resuming;
using NameBand.PlanFile;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>A measured length is one that cloth comes to, of the strip it was measured on, and of what lies there now.</summary>
public class MeasuredTests
{
    private static SewnStrip Piece(SewnJob job, int hooping, int strip = 1) => SewnStrip.Of(Plan(job), hooping)[strip - 1];

    private static EarlierPlan Plan(SewnJob job) => EarlierPlanFile.Read(job.Folder, "out/plan.json").Value!;

    private static string Mm(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture) + " mm";

    private static SewnJob Begun()
    {
        var job = new SewnJob(SewnJob.TenNames);
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Equal(ExitStatus.AllPlaced, job.Say(1).Status);
        return job;
    }

    private static string Log(SewnJob job) => File.ReadAllText(job["sewing-log.csv"]);

    [Theory]
    [InlineData("1.46 m")]
    [InlineData("30 mm")]
    [InlineData("1 in")]
    public void A_length_that_no_cloth_comes_to_is_refused_with_what_was_expected_and_nothing_is_written(string nonsense)
    {
        using var job = Begun();
        var piece = Piece(job, 1);
        string before = Log(job);
        foreach (string[] sure in new[] { Array.Empty<string>(), ["--sure"] })
        {
            var run = CliRun.Of(["sewn", job.Folder, "1", "--measured", nonsense, .. sure]);
            Assert.Equal((2, ""), (run.Status, run.Out));
            Assert.Contains(
                string.Create(CultureInfo.InvariantCulture, $"{piece.ExpectedMm:0.0} mm"), run.ErrorsOnOneLine, StringComparison.Ordinal);
            Assert.Contains($"left edge of “{piece.Names[0]}”", run.ErrorsOnOneLine, StringComparison.Ordinal);
            Assert.Contains("No cloth comes to that", run.ErrorsOnOneLine, StringComparison.Ordinal);
        }

        Assert.Equal(before, Log(job));
    }

    /// <summary>The bounds as they are promised: shortening from −1 to 6 %, or 1.5 mm off where that is more; three times that
    /// when it is sure.</summary>
    [Fact]
    public void What_is_taken_and_what_only_when_it_is_sure_lies_where_it_is_promised()
    {
        var long_ = new SewnStrip(1, 1, 1, 200, 198, ["Bo"]);
        AssertBounds(long_, isSure: false, 200 * 0.94, 200 * 1.01);
        AssertBounds(long_, isSure: true, 200 * 0.82, 200 * 1.03);
        var short_ = new SewnStrip(1, 1, 1, 20, 19.8, ["Bo"]);
        AssertBounds(short_, isSure: false, 19.8 - 1.5, 19.8 + 1.5);
        AssertBounds(short_, isSure: true, 19.8 - 4.5, 19.8 + 4.5);

        static void AssertBounds(SewnStrip piece, bool isSure, double low, double high)
        {
            Assert.True(piece.CanBe(low + 0.01, isSure) && piece.CanBe(high - 0.01, isSure));
            Assert.False(piece.CanBe(low - 0.01, isSure) || piece.CanBe(high + 0.01, isSure));
        }
    }

    [Fact]
    public void What_is_far_off_is_taken_when_it_is_sure_and_the_line_to_say_so_can_be_pasted()
    {
        using var job = Begun();
        double mm = Math.Round(Piece(job, 1).OnClothMm * 0.9, 2);
        var refused = CliRun.Of("sewn", job.Folder, "1", "--measured", Mm(mm));
        Assert.Equal(2, refused.Status);
        Assert.Contains($"sewn JOB 1 --measured \"{Mm(mm)}\" --sure", refused.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.DoesNotContain("measured", Log(job).Split("\r\n")[^2], StringComparison.Ordinal);
        var taken = CliRun.Of("sewn", job.Folder, "1", "--measured", Mm(mm), "--sure");
        Assert.Equal((0, ""), (taken.Status, taken.Errors));
        Assert.Contains("was expected", taken.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(mm, SewingLogFile.Read(job.Folder).Entries[^1].MeasuredMm!.Value, 2);
    }

    [Fact]
    public void Of_several_strips_it_is_asked_which_and_each_counts_for_itself()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings("\"rounds\": 2, \"lanes\": 2");
        File.WriteAllText(
            job["job.json"], File.ReadAllText(job["job.json"]).Replace("\"900 mm\"", "\"900 mm\", \"turn\": 0", StringComparison.Ordinal));
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        int hooping = Plan(job).Hoopings.First(h => h.Segments.Length == 2).Number;
        Assert.Equal(ExitStatus.AllPlaced, job.Say(hooping).Status);
        var (upper, lower) = (Piece(job, hooping, 1), Piece(job, hooping, 2));
        Assert.Equal(2, upper.Strips);
        double first = upper.OnClothMm * 0.98, second = lower.OnClothMm * 0.95;

        var asked = CliRun.Of("sewn", job.Folder, $"{hooping}", "--measured", Mm(first));
        Assert.Equal(2, asked.Status);
        Assert.Contains("holds 2 strips: 1, the uppermost, from the left edge of", asked.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Contains($"“{lower.Names[^1]}”", asked.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Contains("--strip 1", asked.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("sewn", job.Folder, $"{hooping}", "--measured", Mm(first), "--strip", "3").Status);
        Assert.Equal(0, CliRun.Of("sewn", job.Folder, $"{hooping}", "--measured", Mm(first), "--strip", "1").Status);
        Assert.Equal(0.02, job.Make().Plan!.Shortening, 3);
        Assert.Equal(0, CliRun.Of("sewn", job.Folder, $"{hooping}", "--measured", Mm(second), "--strip", "2").Status);
        Assert.Equal(1 - ((first + second) / (upper.OnClothMm + lower.OnClothMm)), job.Make().Plan!.Shortening, 3);
    }

    [Fact]
    public void What_was_measured_before_a_hooping_was_spoiled_does_not_count_for_the_one_sewn_in_its_place()
    {
        using var job = Begun();
        double asked = job.Make().Plan!.Shortening;
        job.Say(1, SewingDeed.Measured, measuredMm: Piece(job, 1).OnClothMm * 0.95);
        Assert.Equal(0.05, job.Make().Plan!.Shortening, 3);
        job.Say(1, SewingDeed.Again);
        job.Make();
        Assert.Equal(ExitStatus.AllPlaced, job.Say(1).Status);
        Assert.Equal(asked, job.Make().Plan!.Shortening, 6);
    }

    /// <summary>What is sewn keeps its place on the cloth, and along the finished round follows what was measured: it can be sewn
    /// on.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void After_a_measure_and_after_a_drift_the_next_hooping_can_be_said_to_be_sewn(bool isDrift)
    {
        using var job = Begun();
        Assert.Equal(ExitStatus.AllPlaced, job.Say(2).Status);
        if (isDrift)
        {
            double end = EndOf(job, 2, out int number);
            File.WriteAllText(job["drift.csv"], string.Create(CultureInfo.InvariantCulture, $"number,end_mm\n{number},{end + 6:0.###}\n"));
        }
        else
        {
            Assert.Equal(ExitStatus.AllPlaced, job.Say(1, SewingDeed.Measured, measuredMm: Piece(job, 1).OnClothMm * 0.96).Status);
        }

        job.Make();
        Assert.Equal(ExitStatus.AllPlaced, job.Say(3).Status);
        Assert.Equal(ExitStatus.AllPlaced, job.Say(1).Status);
    }

    [Fact]
    public void Nonsense_in_an_older_log_is_left_aside_and_told()
    {
        using var job = Begun();
        double asked = job.Make().Plan!.Shortening;
        File.AppendAllText(job["sewing-log.csv"], "1,measured,,,,1460,,,,\r\n");
        var report = job.Make();
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Equal(asked, report.Plan!.Shortening, 6);
        Assert.Contains(
            report.Problems,
            p => p.Found.English.Contains("no cloth comes to that", StringComparison.Ordinal)
            && p.Mend.English.Contains("sewn JOB 1 --measured", StringComparison.Ordinal));
        job.Say(1, SewingDeed.Measured, measuredMm: Piece(job, 1).OnClothMm * 0.98);
        var mended = job.Make();
        Assert.Equal(0.02, mended.Plan!.Shortening, 3);
        Assert.DoesNotContain(mended.Problems, p => p.Found.English.Contains("no cloth comes to that", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("--sure")]
    [InlineData("--strip=1")]
    public void Sure_and_strip_go_with_a_length(string option)
    {
        using var job = Begun();
        Assert.Equal(64, CliRun.Of("sewn", job.Folder, "1", option).Status);
    }

    [Fact]
    public void A_drift_line_of_a_spoiled_hooping_stops_nothing_and_counts_no_longer()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        job.Say(1);
        job.Say(2);
        double planned = EndOf(job, 2, out int number);
        string line = string.Create(CultureInfo.InvariantCulture, $"{number},{planned + 6:0.###}\n");
        File.WriteAllText(job["drift.csv"], "number,end_mm\n" + line);
        job.Make();
        Assert.Equal(planned + 6, EndOf(job, 2, out _), 2);

        Assert.Equal(ExitStatus.AllPlaced, job.Say(2, SewingDeed.Again).Status);
        var again = job.Make();
        Assert.Equal(ExitStatus.AllPlaced, again.Status);
        var note = Assert.Single(again.Problems, p => p.Where is { File: "drift.csv", Line: 2 });
        Assert.Contains("counts no longer", note.Found.English, StringComparison.Ordinal);
        Assert.Equal(planned, EndOf(job, 2, out _), 2);

        // Sewn in its place, it lies where it was planned, whatever the old line says; a new line counts.
        Assert.Equal(ExitStatus.AllPlaced, job.Say(2).Status);
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Equal(planned, EndOf(job, 2, out _), 2);
        File.AppendAllText(job["drift.csv"], string.Create(CultureInfo.InvariantCulture, $"{number},{planned + 3:0.###}\n"));
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Equal(planned + 3, EndOf(job, 2, out _), 2);
    }

    private static double EndOf(SewnJob job, int hooping, out int number)
    {
        var plan = job.Plan();
        int segment = plan.GetProperty("hoopings").EnumerateArray().Single(h => h.GetProperty("number").GetInt32() == hooping)
            .GetProperty("segments")[0].GetProperty("number").GetInt32();
        JsonElement last = plan.GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .Single(s => s.GetProperty("number").GetInt32() == segment).GetProperty("names").EnumerateArray().Last();
        number = last.GetProperty("order").GetInt32();
        return last.GetProperty("startMm").GetDouble() + last.GetProperty("widthMm").GetDouble();
    }
}

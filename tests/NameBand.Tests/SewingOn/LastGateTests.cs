using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using NameBand.Common;
using NameBand.Output.LastGate;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>The last gate looks at finished needle paths and plan alone, and lets out nothing that would ruin cloth.</summary>
public class LastGateTests
{
    private static readonly GateRules Rules = new(110, 100, 5, 17.4, IsCentreAbove: true);

    private static SewnJob Made(string strip = "\"rounds\": 1, \"lanes\": 2, \"shortening\": 0.02")
    {
        var job = new SewnJob(SewnJob.TenNames);
        job.Settings(
            strip, ", \"marks\": \"sewn\", \"hoop\": { \"along\": \"110 mm\", \"across\": \"100 mm\", \"spare\": \"5 mm\" }",
            ", \"height\": \"6 mm\"");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        return job;
    }

    /// <param name="change">What is done to the needle points of a hooping: action, whether it is a mark, x and y.</param>
    private static ImmutableArray<GateFault> Look(
        SewnJob job, int hooping, Func<bool, double, double, (double X, double Y)> change, params int[] sewn) =>
        Gate.Check(
            File.ReadAllBytes(job["out/plan.json"]), Rules, n => n == hooping ? Changed(job.Path(n), change) : job.Path(n), sewn.Contains);

    private static byte[] Changed(byte[] csv, Func<bool, double, double, (double X, double Y)> change)
    {
        string[] all = Encoding.UTF8.GetString(csv).Split("\r\n");
        bool isMark = Array.Exists(all, l => l.EndsWith(",stop", StringComparison.Ordinal));
        var lines = all.Select((line, i) =>
        {
            string[] cells = line.Split(',');
            if (i == 0 || cells.Length < 4)
            {
                return line;
            }

            var (x, y) = change(
                isMark, double.Parse(cells[1], CultureInfo.InvariantCulture), double.Parse(cells[2], CultureInfo.InvariantCulture));
            isMark &= cells[3] != "stop";
            return FormattableString.Invariant($"{cells[0]},{x:0.000},{y:0.000},{cells[3]}");
        }).ToList();
        return Encoding.UTF8.GetBytes(string.Join("\r\n", lines));
    }

    [Fact]
    public void What_is_well_passes()
    {
        using var job = Made();
        Assert.Empty(Look(job, 1, (_, x, y) => (x, y)));
        Assert.Empty(Look(job, 1, (_, x, y) => (x, y), 1, 2));
    }

    [Fact]
    public void Nothing_goes_over_what_is_sewn_unless_that_is_spoiled()
    {
        using var job = Made("\"rounds\": 1, \"shortening\": 0.02");
        double[] lies = [.. job.Plan().GetProperty("hoopings").EnumerateArray().Select(h => h.GetProperty("onClothMm").GetDouble())];
        (double X, double Y) Along(bool mark, double x, double y) => (x + lies[2] - lies[1], y);
        var fault = Assert.Single(Look(job, 2, Along, 3));
        Assert.Equal(2, fault.Hooping);
        Assert.Contains("over hooping 3, which is sewn", fault.Found.English, StringComparison.Ordinal);

        // Hooping 3 is not sewn, or no longer: then it is the later one that gives way.
        fault = Assert.Single(Look(job, 2, Along));
        Assert.Equal(3, fault.Hooping);

        // What is sewn is not judged.
        Assert.Empty(Look(job, 2, Along, 2, 3));
    }

    [Fact]
    public void The_field_less_its_spare_the_zone_and_the_marks_are_judged()
    {
        using var job = Made();
        Assert.Contains("of the flat cloth", Assert.Single(Look(job, 1, (_, x, y) => (x * 1.3, y))).Found.English, StringComparison.Ordinal);
        Assert.Contains(
            "past the sewing zone", Assert.Single(Look(job, 1, (mark, x, y) => (x, mark ? y : y + 6))).Found.English, StringComparison.Ordinal);
        Assert.Contains(
            "alignment mark", Assert.Single(Look(job, 1, (mark, x, y) => (x, mark ? y + 5 : y))).Found.English, StringComparison.Ordinal);

        // Into the strip below it on the same cloth.
        var wide = Rules with { AcrossMm = 300 };
        byte[] low = Changed(job.Path(1), (mark, x, y) => (x, mark ? y - 22 : y));
        var fault = Assert.Single(Gate.Check(File.ReadAllBytes(job["out/plan.json"]), wide, n => n == 1 ? low : job.Path(n), _ => false));
        Assert.Contains("alignment mark", fault.Found.English, StringComparison.Ordinal);
        Assert.Empty(Look(job, 1, (_, x, y) => (x * 1.3, y), 1));
    }

    [Fact]
    public void A_path_that_is_not_whole_and_a_plan_that_contradicts_itself_are_stopped()
    {
        using var job = Made();
        byte[] plan = File.ReadAllBytes(job["out/plan.json"]);
        var fault = Assert.Single(Gate.Check(plan, Rules, n => n == 2 ? [] : job.Path(n), _ => false));
        Assert.Contains("not whole", fault.Found.English, StringComparison.Ordinal);
        var told = JsonNode.Parse(plan)!;
        told["hoopings"]![1]!["onClothMm"] = told["hoopings"]![1]!["onClothMm"]!.GetValue<double>() + 3;
        fault = Assert.Single(Gate.Check(Encoding.UTF8.GetBytes(told.ToJsonString()), Rules, n => job.Path(n), _ => false));
        Assert.Contains("two places", fault.Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void What_drifted_to_before_its_strip_is_seen_too()
    {
        using var job = Made("\"rounds\": 1, \"shortening\": 0.02");
        var told = JsonNode.Parse(File.ReadAllBytes(job["out/plan.json"]))!;
        var segment = told["rounds"]![0]!["segments"]![0]!;
        double by = segment["startMm"]!.GetValue<double>() + segment["names"]![0]!["startMm"]!.GetValue<double>() + 1;
        segment["startMm"] = segment["startMm"]!.GetValue<double>() - by;
        foreach (var name in segment["names"]!.AsArray())
        {
            name!["startMm"] = name["startMm"]!.GetValue<double>() - by;
        }

        double[] lies = [.. job.Plan().GetProperty("hoopings").EnumerateArray().Select(h => h.GetProperty("onClothMm").GetDouble())];
        byte[] over = Changed(job.Path(2), (_, x, y) => (x + lies[0] - (by / 0.98) - lies[1], y));
        var fault = Assert.Single(Gate.Check(
            Encoding.UTF8.GetBytes(told.ToJsonString()), Rules, n => n == 2 ? over : job.Path(n), n => n == 1));
        Assert.Contains("over hooping 1, which is sewn", fault.Found.English, StringComparison.Ordinal);
    }

    /// <summary>A hoop that became too short for a name already planned: its hooping is not written, and every plan says so.</summary>
    [Fact]
    public void What_does_not_pass_is_not_written_and_every_make_says_so()
    {
        using var job = new SewnJob("Bo Reed", "Jo Marsh", "Maximiliane Ohdenwald", "Nia Yeo", "Al Po", "Ida Lo", "Rafe Holm");
        void Hoop(int alongMm) => job.Settings(
            "\"rounds\": 1",
            FormattableString.Invariant($", \"hoop\": {{ \"along\": \"{alongMm} mm\", \"across\": \"100 mm\", \"spare\": \"5 mm\" }}"),
            ", \"height\": \"7 mm\"");
        Hoop(140);
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        Assert.Contains("Maximiliane Ohdenwald", job.PlacedTexts());
        job.Say(1);
        Hoop(80);
        for (int time = 0; time < 3; time++)
        {
            var report = job.Make();
            Assert.Equal(ExitStatus.NeedsPerson, report.Status);
            var read = new ClothReading(job["out"]);
            Assert.DoesNotContain("Maximiliane Ohdenwald", read.Placed);
            var row = Assert.Single(read.Rows, r => r.Outcome == "held");
            Assert.Equal("Maximiliane Ohdenwald", row.Text);
            Assert.True(row.Reason.Length > 20, row.Reason);
            Assert.Equal(6, read.Placed.Count);
            Assert.Equal(6, job.Plan().GetProperty("totals").GetProperty("names").GetInt32());
            Assert.Equal(read.Hoopings.Count, Directory.GetFiles(job["out/needle-paths"]).Length);
            if (time == 0)
            {
                Assert.Contains(
                    report.Problems,
                    p => p.Severity == Severity.NeedsPerson && p.Found.English.Contains("was not written", StringComparison.Ordinal));
                Assert.Contains("so it was not written", row.Reason, StringComparison.Ordinal);
            }

            job.Say(read.Hoopings.First(h => h > time + 1));
        }
    }
}

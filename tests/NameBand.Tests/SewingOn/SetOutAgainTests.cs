using System.Globalization;
using System.Text.Json;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>What is unsewn is set out again by the same wishes as the first plan, and after a measured drift still ends at the
/// hem.</summary>
public class SetOutAgainTests
{
    private sealed record Placed(int Order, string Text, double StartMm, double EndMm, int Hooping, bool IsSewn);

    /// <summary>All names of a plan, left to right.</summary>
    private static List<Placed> Read(SewnJob job, params int[] sewn)
    {
        var plan = job.Plan();
        var hoopingOf = plan.GetProperty("hoopings").EnumerateArray()
            .SelectMany(h =>
                h.GetProperty("segments").EnumerateArray()
                .Select(s => (Segment: s.GetProperty("number").GetInt32(), Hooping: h.GetProperty("number").GetInt32())))
            .ToDictionary(p => p.Segment, p => p.Hooping);
        return [.. plan.GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .SelectMany(s => s.GetProperty("names").EnumerateArray().Select(n => (Segment: s, Name: n)))
            .Select(p => new Placed(
                p.Name.GetProperty("order").GetInt32(), p.Name.GetProperty("text").GetString()!, Number(p.Name, "startMm"),
                Number(p.Name, "startMm") + Number(p.Name, "widthMm"), hoopingOf[p.Segment.GetProperty("number").GetInt32()],
                sewn.Contains(hoopingOf[p.Segment.GetProperty("number").GetInt32()])))
            .OrderBy(p => p.StartMm)];
    }

    private static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();

    private static void Drift(SewnJob job, params (int Number, double EndMm)[] ends) => File.WriteAllText(
        job["drift.csv"],
        "number,end_mm\n" + string.Concat(ends.Select(e => string.Create(CultureInfo.InvariantCulture, $"{e.Number},{e.EndMm:0.###}\n"))));

    [Fact]
    public void A_measured_end_moves_what_is_sewn_and_the_rest_still_ends_at_the_hem()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        var before = Read(job);
        job.Say(1);
        job.Say(2);
        byte[] path = job.Path(2);
        var last = before.Last(n => n.Hooping == 2);
        Drift(job, (last.Order, last.EndMm + 6));
        var report = job.Make();
        Assert.True(report.Status == ExitStatus.AllPlaced, string.Join('\n', report.Problems.Select(p => p.Found)));
        Assert.Contains(report.Problems, p => p.Found.English.Contains("drift.csv", StringComparison.Ordinal));
        var after = Read(job, 1, 2);
        Assert.Equal(path, job.Path(2));
        Assert.Equal(last.EndMm + 6, after.Single(n => n.Text == last.Text).EndMm, 2);
        var first = before.Last(n => n.Hooping == 1);
        Assert.Equal(first.EndMm + (6 * first.EndMm / last.EndMm), after.Single(n => n.Text == first.Text).EndMm, 2);
        double hem = Number(job.Plan().GetProperty("rounds")[0], "hemMm");
        Assert.Equal(hem, Number(job.Plan().GetProperty("rounds")[0], "lengthMm"), 3);
        var rest = after.SkipWhile(n => n.Text != last.Text).ToList();
        double[] gaps = [.. rest.Zip(rest.Skip(1), (a, b) => b.StartMm - a.EndMm)];
        Assert.All(gaps, g => Assert.Equal(gaps[0], g, 1));
        Assert.Equal(gaps[0] / 2, hem - rest[^1].EndMm, 1);

        // Sewn on from the new plan, the same line changes nothing more.
        job.Say(3);
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Equal(after.Select(n => (n.Text, n.StartMm)), Read(job).Select(n => (n.Text, n.StartMm)));
    }

    [Fact]
    public void Measures_that_cannot_be_are_answered()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Make();
        var names = Read(job);
        Drift(job, (1, names[0].EndMm + 1));
        Assert.Contains(job.Make().Problems, p => p.Mend.English.Contains("sewn", StringComparison.Ordinal) && p.Where.File == "drift.csv");
        job.Say(1);
        foreach (var (number, end, word) in new[] { (99, 10.0, "no name 99"), (names[^1].Order, names[^1].EndMm, "not said to be sewn"),
            (1, names[0].EndMm + 200, "too far") })
        {
            Drift(job, (number, end));
            var report = job.Make();
            Assert.Equal(ExitStatus.CannotUse, report.Status);
            Assert.Contains(report.Problems, p => p.Found.English.Contains(word, StringComparison.Ordinal) && p.Mend.English.Length > 10);
        }
    }

    [Fact]
    public void What_is_set_out_again_keeps_clear_of_seams_and_of_joins_and_begins_at_its_place()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings("\"rounds\": 1, \"piece\": \"700 mm\"");
        SetHem(job, ", \"keepClear\": [\"40 mm at 400 mm\"], \"start\": \"600 mm\"");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var before = Read(job);
        Assert.Equal("Bo Reed", before.First(n => n.StartMm > 600).Text);
        int sewn = before.First(n => n.StartMm > 600).Hooping;
        job.Say(sewn);
        job.Names.Add("Otto Lind");
        job.Names.Add("Gytha Moor");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var after = Read(job, sewn);
        Assert.Equal(12, after.Count);
        Assert.All(after, n => Assert.True(n.EndMm <= 380 + 0.01 || n.StartMm >= 420 - 0.01, $"{n.Text} lies over the seam"));
        var joins = job.Plan().GetProperty("cloths").EnumerateArray().SelectMany(c => c.GetProperty("pieces").EnumerateArray())
            .Select(p => Number(p, "startMm")).Where(s => s > 0).ToList();
        Assert.NotEmpty(joins);
        Assert.All(joins, j => Assert.All(after, n => Assert.True(n.EndMm <= j || n.StartMm >= j, $"{n.Text} lies over the join at {j}")));
        var listed = after.Where(n => !n.IsSewn).OrderBy(n => n.StartMm < 600).ThenBy(n => n.StartMm).Select(n => n.Text).ToList();
        Assert.Equal(job.Names.Where(listed.Contains), listed);
    }

    [Fact]
    public void The_widest_gap_holds_in_what_is_set_out_again()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings("\"rounds\": 1");
        SetHem(job, "", 1650, ", \"height\": \"8 mm\", \"mostGap\": \"40 mm\"");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        job.Say(1);
        SetHem(job, "", 1660, ", \"height\": \"8 mm\", \"mostGap\": \"40 mm\"");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var fresh = Read(job, 1).Where(n => !n.IsSewn).OrderBy(n => n.StartMm).ToList();
        var gaps = fresh.Zip(fresh.Skip(1), (a, b) => b.StartMm - a.EndMm).ToList();
        Assert.True(gaps.Count > 5);
        Assert.All(gaps, g => Assert.InRange(g, 0, 40.01));
        Assert.Contains(gaps, g => g > 39.9);
    }

    [Fact]
    public void Strips_side_by_side_still_share_hoopings()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings("\"rounds\": 1, \"lanes\": 2", ", \"hoop\": { \"along\": \"160 mm\" }");
        SetHem(job, "");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        int plain = job.Plan().GetProperty("hoopings").GetArrayLength();
        job.Say(1);
        SetHem(job, ", \"tolerance\": \"7 mm\"", 1660);
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var hoopings = job.Plan().GetProperty("hoopings").EnumerateArray().ToList();
        var fresh = hoopings.Where(h => h.GetProperty("number").GetInt32() != 1 && h.GetProperty("segments").GetArrayLength() == 2)
            .ToList();
        Assert.NotEmpty(fresh);
        Assert.All(fresh, h => Assert.Equal(50.8, Math.Abs(Number(h.GetProperty("segments")[1], "yMm")), 3));
        Assert.True(hoopings.Count <= plain + 1, $"{hoopings.Count} hoopings after {plain}");
        Assert.Equal(SewnJob.TenNames.Order(StringComparer.Ordinal), Read(job).Select(n => n.Text).Order(StringComparer.Ordinal));
        var segments = job.Plan().GetProperty("rounds")[0].GetProperty("segments").EnumerateArray()
            .Select(s => s.GetProperty("number").GetInt32()).ToList();
        Assert.Equal(segments.Count, segments.Distinct().Count());
    }

    [Fact]
    public void Best_fit_is_looked_for_again_among_what_is_unsewn()
    {
        // A long name and a short one share a hooping; two long ones do not.
        using var job = new SewnJob(
            "Bartholomew Fern", "Wilhelmina Abery", "Maximiliane Ohde", "Ferdinanda Wolke", "Christabell Moor",
            "Bo Li", "Jo Ax", "Nia Yeo", "Ada Po", "Io Mo");
        job.Settings("\"rounds\": 1");
        SetHem(job, "", 900, ", \"order\": \"bestFit\", \"height\": \"7 mm\"");
        job.Make();
        job.Say(1);
        SetHem(job, "", 910, ", \"order\": \"bestFit\", \"height\": \"7 mm\"");
        job.Make();
        int best = job.Plan().GetProperty("hoopings").GetArrayLength();
        SetHem(job, "", 910, ", \"order\": \"listed\", \"height\": \"7 mm\"");
        job.Make();
        Assert.InRange(best, 1, job.Plan().GetProperty("hoopings").GetArrayLength() - 1);
        Assert.Equal(10, Read(job).Count);
    }

    private static void SetHem(SewnJob job, string hem, int lengthMm = 1650, string lettering = "")
    {
        string text = File.ReadAllText(job["job.json"]);
        int from = text.IndexOf("\"hem\": {", StringComparison.Ordinal);
        int to = text.IndexOf('}', from);
        text = text[..from] + $$"""
            "hem": { "length": "{{lengthMm}} mm"{{hem}}
            """ + text[to..];
        from = text.IndexOf("\"lettering\": {", StringComparison.Ordinal);
        to = text.IndexOf('}', from);
        File.WriteAllText(job["job.json"], text[..from] + "\"lettering\": { \"least\": \"5 mm\"" + lettering + text[to..]);
    }
}

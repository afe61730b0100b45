using System.Text.Json;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Alphabets;
using NameBand.Pipeline;
using NameBand.Pipeline.Stages;
using NameBand.Reports;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Strips with two lines of names that are sewn, added to and made again: nothing sewn moves.</summary>
public class TwoLinesSewnTests
{
    private const string Strip = "\"lines\": 2, \"cutWidth\": \"2 3/4 in\"";

    private static Dictionary<string, string> Places(JsonElement plan) => plan.GetProperty("rounds").EnumerateArray()
        .SelectMany(r => r.GetProperty("segments").EnumerateArray())
        .SelectMany(s => s.GetProperty("names").EnumerateArray().Select(n => (Segment: s, Name: n)))
        .ToDictionary(
            n => n.Name.GetProperty("text").GetString()!,
            n => string.Join(
                ' ', n.Segment.GetProperty("number"), n.Name.GetProperty("onLine"), n.Name.GetProperty("startMm"),
                n.Name.GetProperty("baselineYMm")));

    [Fact]
    public void Latecomers_stand_in_new_pairs_and_what_is_sewn_and_planned_stays_where_it_was()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings(Strip + ", \"keepFree\": \"150 mm\"");
        var made = job.Make();
        Assert.NotEqual(ExitStatus.CannotUse, made.Status);
        var plan = job.Plan();
        Assert.Equal(2, plan.GetProperty("rounds")[0].GetProperty("segments")[0].GetProperty("names")[1].GetProperty("onLine").GetInt32());
        Assert.Contains(
            made.Problems, p => p.Where.Key == "strip.lines" && p.Found.English.Contains("10 names stand in two lines", StringComparison.Ordinal));
        var before = Places(plan);
        byte[] path = job.Path(1), proof = job.Proof(1);
        job.Say(1);

        job.Make();
        Assert.Equal(before, Places(job.Plan()));

        job.Names.AddRange(["Odo Finch", "Una Larch"]);
        var more = job.Make();
        var after = Places(job.Plan());
        Assert.Equal(12, after.Count);
        Assert.All(before, b => Assert.Equal(b.Value, after[b.Key]));
        Assert.Equal(path, job.Path(1));
        Assert.Equal(proof, job.Proof(1));
        Assert.DoesNotContain(more.Problems, p => p.Severity == Severity.CannotUse);
    }

    [Fact]
    public void A_latecomer_stands_below_a_name_that_stands_alone_and_nothing_else_moves()
    {
        using var job = new SewnJob([.. SewnJob.TenNames.Take(9)]);
        job.Settings(Strip);
        job.Make();
        var before = Places(job.Plan());
        string alone = Assert.Single(before.Keys, b => IsAlone(job.Plan(), b));
        job.Say(Hooping(job.Plan(), other: alone));
        job.Names.Add("Jo Ek");
        job.Make();
        var after = Places(job.Plan());
        Assert.All(before, b => Assert.Equal(b.Value, after[b.Key]));
        Assert.Equal(after[alone].Split(' ')[0], after["Jo Ek"].Split(' ')[0]);
        Assert.Equal("2", after["Jo Ek"].Split(' ')[1]);
        Assert.False(IsAlone(job.Plan(), alone));

        static int Hooping(JsonElement plan, string other) =>
            plan.GetProperty("hoopings").EnumerateArray().Select(h => h.GetProperty("number").GetInt32())
            .First(h => !NamesIn(plan, h).Contains(other));
    }

    private static IEnumerable<string> NamesIn(JsonElement plan, int hooping)
    {
        var segments = plan.GetProperty("hoopings").EnumerateArray().Single(h => h.GetProperty("number").GetInt32() == hooping)
            .GetProperty("segments").EnumerateArray().Select(s => s.GetProperty("number").GetInt32()).ToHashSet();
        return plan.GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .Where(s => segments.Contains(s.GetProperty("number").GetInt32()))
            .SelectMany(s => s.GetProperty("names").EnumerateArray().Select(n => n.GetProperty("text").GetString()!));
    }

    /// <summary>Whether no name of the other line reaches under or over it.</summary>
    private static bool IsAlone(JsonElement plan, string name)
    {
        var all = plan.GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .SelectMany(s => s.GetProperty("names").EnumerateArray()).Select(n => (
                Text: n.GetProperty("text").GetString(), Line: n.GetProperty("onLine").GetInt32(),
                From: n.GetProperty("startMm").GetDouble(),
                To: n.GetProperty("startMm").GetDouble() + n.GetProperty("widthMm").GetDouble())).ToList();
        var own = all.Single(n => n.Text == name);
        return !all.Exists(n => n.Line != own.Line && n.From < own.To && n.To > own.From);
    }

    [Fact]
    public void One_line_of_a_job_begun_with_two_is_told_and_the_rest_goes_on_in_two()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings(Strip);
        job.Make();
        var before = Places(job.Plan());
        job.Say(1);
        job.Settings("\"cutWidth\": \"2 3/4 in\"");
        var made = job.Make();
        Assert.Equal(before, Places(job.Plan()));
        Assert.Contains(
            made.Problems,
            p => p.Severity == Severity.NeedsPerson && p.Where.Key == "strip.lines"
            && p.Mend.English.Contains("\"lines\": 2", StringComparison.Ordinal));
    }

    [Fact]
    public void Typed_names_are_keyed_line_by_line_and_the_other_name_of_a_sewn_pair_keeps_its_place()
    {
        using var job =
            new NamedJob(NamedJob.Keyed.Replace("9 mm", "5 mm", StringComparison.Ordinal)
            + ", \"strip\": { \"lines\": 2, \"cutWidth\": \"2 3/4 in\" }");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var sheet = job.Sheet();
        Assert.Equal(["upper", "upper", "upper", "lower", "lower", "lower"], sheet.Select(r => r["on_line"]));

        // The run is drawn back to its beginning once: 2 minutes and a tenth for rest.
        Assert.Equal(2.2, Back(job.Make()), 6);
        foreach (var line in sheet.GroupBy(r => r["on_line"]))
        {
            Assert.Equal("", line.First()["start_from_last_mm"]);
            double[] starts =
                [.. line.Select(r => double.Parse(r["start_on_cloth_mm"], System.Globalization.CultureInfo.InvariantCulture))];
            Assert.Equal(starts.Order(), starts);
        }

        static double Back(MakeReport report) =>
            report.Estimate!.HandWork.Single(w => w.Act.English.StartsWith("going back", StringComparison.Ordinal)).Minutes.Likely;

        var before = job.Places();
        string sewn = before.Single(p => p.Value.Number == 3).Key, mate = before.Single(p => p.Value.Number == 4).Key;
        job.Say(3);
        job.Make();
        Assert.Equal(before, job.Places());

        // Wider letters: what is not sewn is set out anew, but for the pair that is begun.
        job.Letters(5.5);
        job.Make();
        var after = job.Places();
        Assert.Equal((before[sewn], before[mate]), (after[sewn], after[mate]));
        Assert.NotEqual(before.Single(p => p.Value.Number == 5).Value.WidthMm, after.Single(p => p.Value.Number == 5).Value.WidthMm);
    }

    [Fact]
    public void A_curved_strip_is_no_mend_for_two_lines()
    {
        string[] first = ["Wren", "Hesper", "Tobin", "Ada", "Rufus", "Maren", "Kit"],
        last = ["Alder", "Quayle", "Marsh", "Willowby", "Penhale", "Farthing"];
        using var folder = new TemporaryFolder();
        folder.With("names.csv", "Name\n" + string.Concat(first.SelectMany(f => last.Select(l => $"{f} {l}\n"))));
        folder.With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3 m", "turn": 0.75 }, "strip": { "lines": 2, "cutWidth": "70 mm" } }""");
        var laid = Planning.Run(folder.FullPath, new FaceShelf(), default).Value!;
        Assert.Contains(laid.Plan.Easing, e => e.Verdict == EaseVerdict.WantsShaping);
        Assert.DoesNotContain(laid.EaseMends, m => m.Kind == EaseMendKind.Curve);
    }

    [Fact]
    public void A_measured_end_of_a_typed_name_is_refused_where_names_stand_in_two_lines()
    {
        using var job =
            new NamedJob(NamedJob.Keyed.Replace("9 mm", "5 mm", StringComparison.Ordinal)
            + ", \"strip\": { \"lines\": 2, \"cutWidth\": \"2 3/4 in\" }");
        job.With("drift.csv", "number,name,end_mm\n1,,80\n");
        var made = job.Make();
        Assert.Equal(ExitStatus.CannotUse, made.Status);
        Assert.Contains(made.Problems, p => p.Where.File == "drift.csv" && p.Found.English.Contains("two lines", StringComparison.Ordinal));
    }
}

using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Sewing through to the last name: what is sewn stays, whatever becomes of the list.</summary>
public class SewingOnTests
{
    private static SewnJob Begun(out Dictionary<int, byte[]> sewn)
    {
        var job = new SewnJob("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        sewn = [];
        foreach (int hooping in new[] { 1, 2 })
        {
            Assert.Equal(ExitStatus.AllPlaced, job.Say(hooping, minutes: 12).Status);
            sewn[hooping] = job.Path(hooping);
        }

        return job;
    }

    [Fact]
    public void Made_again_with_nothing_changed_nothing_changes()
    {
        using var job = Begun(out _);
        var before = Enumerable.Range(1, 6).Select(h => (job.Path(h), job.Proof(h))).ToList();
        var starts = job.ClothStarts();
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Equal(before, Enumerable.Range(1, 6).Select(h => (job.Path(h), job.Proof(h))));
        Assert.Equal(starts, job.ClothStarts());
    }

    [Fact]
    public void A_latecomer_never_moves_what_is_sewn_nor_changes_a_byte_of_it()
    {
        using var job = Begun(out var sewn);
        var starts = job.ClothStarts();
        job.Names.Insert(0, "Late Rivermouth");
        job.Names.Add("Pip Ash");
        var report = job.Make();
        Assert.NotEqual(ExitStatus.CannotUse, report.Status);
        Assert.Equal(8, job.PlacedTexts().Length);
        foreach (var (hooping, path) in sewn)
        {
            Assert.Equal(path, job.Path(hooping));
            Assert.Equal(job.Proof(hooping, "sewn"), job.Proof(hooping));
            Assert.Equal(starts[hooping], job.ClothStarts()[hooping]);
        }
    }

    [Fact]
    public void Room_that_was_kept_free_takes_a_latecomer_and_nobody_moves()
    {
        using var job = new SewnJob("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");
        job.Settings("\"rounds\": 2, \"keepFree\": \"120 mm\"");
        job.Settings("", ", \"machine\": { \"stitchesPerMinute\": 600 }");
        job.Make();
        job.Say(1);
        job.Make();
        var before = Enumerable.Range(1, 6).ToDictionary(h => h, h => job.Path(h));
        job.Names.RemoveAt(4);
        job.Names.Add("Al Ash");
        job.Make();
        Assert.Equal(
            [1, 2, 3, 4, 6],
            before.Keys.Where(h =>
                File.Exists(job[$"out/needle-paths/hooping-{h:000}.csv"]) && job.Path(h).AsSpan().SequenceEqual(before[h])));
        Assert.Contains("Al Ash", job.PlacedTexts());
    }

    [Fact]
    public void A_sewn_name_that_was_changed_in_the_list_stays_as_sewn_and_is_told()
    {
        using var job = Begun(out var sewn);
        job.Names[1] = "Bram Sedgwick";
        var report = job.Make();
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Contains(report.Problems, p => p.Found == "This name is sewn as “Bram Sedgewick”, and the list now says “Bram Sedgwick”.");
        Assert.Contains("Bram Sedgewick", job.PlacedTexts());
        Assert.Equal(sewn[2], job.Path(2));

        // Sewn again, it gets the new words, in its old place and under its old number.
        Assert.Equal(ExitStatus.AllPlaced, job.Say(2, SewingDeed.Again).Status);
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Contains("Bram Sedgwick", job.PlacedTexts());
        Assert.Equal(sewn[1], job.Path(1));
    }

    [Fact]
    public void A_sewn_name_that_was_withdrawn_stays_on_the_cloth_and_is_no_name_of_the_job()
    {
        using var job = Begun(out var sewn);
        job.Names.RemoveAt(0);
        var report = job.Make();
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Contains(report.Problems, p => p.Where.Name == "Orla Penhale" && p.Found.English.Contains("no row", StringComparison.Ordinal));
        Assert.Equal(5, job.PlacedTexts().Length);
        Assert.Equal(5, job.Plan().GetProperty("totals").GetProperty("names").GetInt32());
        Assert.Equal(5, job.Plan().GetProperty("rows").EnumerateArray().Count(r => r.GetProperty("outcome").GetString() == "placed"));
        Assert.Equal(sewn[1], job.Path(1));

        // And the plan after that one still knows it.
        job.Say(3);
        job.Make();
        Assert.Equal(sewn[1], job.Path(1));
    }

    [Fact]
    public void A_list_exported_anew_in_another_order_moves_nothing()
    {
        using var job = Begun(out _);
        var starts = job.ClothStarts();
        job.Names.Reverse();
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Equal(starts, job.ClothStarts());
    }

    [Fact]
    public void Face_and_cloth_are_settled_by_the_first_hooping()
    {
        using var job = Begun(out var sewn);
        job.Settings("", ", \"fabric\": \"felt\"");
        var report = job.Make();
        Assert.Contains(report.Problems, p => p.Where.Key == "fabric" && p.Severity == Severity.NeedsPerson);
        Assert.Equal("quilting cotton", job.Plan().GetProperty("fabric").GetString());
        Assert.Equal(sewn[1], job.Path(1));
    }

    [Fact]
    public void A_measured_piece_sets_the_rest_out_again_and_leaves_what_is_sewn_where_it_lies_on_the_cloth()
    {
        using var job = Begun(out var sewn);
        var starts = job.ClothStarts();
        var plan = job.Make().Plan!;
        var segment = plan.Hoopings[0].Segments[0].Segment;
        double onCloth = plan.OnClothMm(segment.Names[^1].StartMm - segment.Names[0].StartMm) + segment.Names[^1].WidthMm;
        job.Say(1, SewingDeed.Measured, measuredMm: onCloth * 0.97);
        var again = job.Make().Plan!;
        Assert.Equal(0.03, again.Shortening, 4);
        foreach (int hooping in sewn.Keys)
        {
            Assert.Equal(sewn[hooping], job.Path(hooping));
            Assert.Equal(starts[hooping], job.ClothStarts()[hooping]);
        }

        Assert.All(again.Rounds, r => Assert.Equal(r.HemMm, r.LengthMm, 3));
    }

    [Fact]
    public void Sewn_files_that_were_lost_are_told_and_those_of_another_plan_are_not_taken()
    {
        using var job = Begun(out _);
        File.Delete(job["sewn/needle-paths/hooping-002.csv"]);
        File.Delete(job["out/needle-paths/hooping-002.csv"]);
        Assert.Contains(
            job.Make().Problems, p => p.Found.English.Contains("Hooping 2 is sewn, and its kept files are missing", StringComparison.Ordinal));

        File.AppendAllText(job["out/needle-paths/hooping-001.csv"], "1,0,0,end\r\n");
        var refused = job.Say(3);
        Assert.Equal(ExitStatus.CannotUse, refused.Status);
        Assert.Contains(refused.Problems, p => p.Found.English.Contains("does not hold hooping 1 as it was sewn", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_the_plan_that_was_sewn_from_nothing_is_planned_anew()
    {
        using var job = Begun(out _);
        File.Delete(job["sewn/plan.json"]);
        File.Delete(job["out/plan.json"]);
        var report = job.Make();
        Assert.Equal(ExitStatus.CannotUse, report.Status);
        Assert.Contains(report.Problems, p => p.Mend.English.Contains("“sewn”", StringComparison.Ordinal));
    }

    [Fact]
    public void A_hooping_that_is_not_there_is_refused_and_nothing_is_written()
    {
        using var job = Begun(out _);
        byte[] log = File.ReadAllBytes(job["sewing-log.csv"]);
        Assert.Equal(ExitStatus.CannotUse, job.Say(99).Status);
        Assert.Equal(ExitStatus.CannotUse, job.Say(5, SewingDeed.Again).Status);
        Assert.Equal(log, File.ReadAllBytes(job["sewing-log.csv"]));
    }
}

using System.Text.Json;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Where the job says so, what is not sewn yet takes another face, height and cloth, and what is sewn keeps its own.</summary>
public class RestDiffersTests
{
    private const string Other = ", \"face\": \"Vollkorn Bold\", \"height\": \"6.5 mm\"";
    private const string Wished = ", \"fabric\": \"felt\", \"sewing\": { \"restMayDiffer\": true }";

    private static SewnJob Begun()
    {
        var job = new SewnJob("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Equal(ExitStatus.AllPlaced, job.Say(1, minutes: 12).Status);
        Assert.Equal(ExitStatus.AllPlaced, job.Say(2, minutes: 12).Status);
        return job;
    }

    private static JsonElement Hooping(SewnJob job, int number) =>
        job.Plan().GetProperty("hoopings").EnumerateArray().Single(h => h.GetProperty("number").GetInt32() == number);

    private static JsonElement Name(SewnJob job, string text) => job.Plan().GetProperty("rounds").EnumerateArray()
        .SelectMany(r => r.GetProperty("segments").EnumerateArray()).SelectMany(s => s.GetProperty("names").EnumerateArray())
        .Single(n => n.GetProperty("text").GetString() == text);

    private static double Width(SewnJob job, string text) => Name(job, text).GetProperty("widthMm").GetDouble();

    [Fact]
    public void What_is_sewn_keeps_every_byte_and_its_place_and_the_rest_takes_what_the_job_says()
    {
        using var job = Begun();
        var (paths, proofs, starts) = (new[] { job.Path(1), job.Path(2) }, new[] { job.Proof(1), job.Proof(2) }, job.ClothStarts());
        string sewnFace = job.Plan().GetProperty("face").GetString()!;
        double sewnHeight = job.Plan().GetProperty("letterHeightExactMm").GetDouble();
        var (sewnWidth, restWidth) = (Width(job, "Orla Penhale"), Width(job, "Tuva Lind"));
        job.Settings("", Wished, Other);
        var report = job.Make();

        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Equal(
            ["lettering.face", "fabric", "lettering.height"],
            report.Problems.Where(p => p.Found.English.Contains("the rest may differ", StringComparison.Ordinal)).Select(p => p.Where.Key));
        Assert.Equal(paths, [job.Path(1), job.Path(2)]);
        Assert.Equal(proofs, [job.Proof(1), job.Proof(2)]);
        Assert.Equal((starts[1], starts[2]), (job.ClothStarts()[1], job.ClothStarts()[2]));
        Assert.Equal(6, job.PlacedTexts().Length);
        var plan = job.Plan();
        Assert.Equal(
            ("Vollkorn Bold", "felt", 6.5),
            (plan.GetProperty("face").GetString(), plan.GetProperty("fabric").GetString(), plan.GetProperty("letterHeightMm").GetDouble()));
        Assert.Equal(
            (sewnFace, "quilting cotton"),
            (Hooping(job, 1).GetProperty("sewnAs").GetProperty("face").GetString(),
            Hooping(job, 1).GetProperty("sewnAs").GetProperty("fabric").GetString()));
        Assert.Equal(sewnHeight, Name(job, "Orla Penhale").GetProperty("letterHeightMm").GetDouble(), 3);
        Assert.Equal(sewnWidth, Width(job, "Orla Penhale"), 3);
        Assert.NotEqual(restWidth, Width(job, "Tuva Lind"), 1);
        Assert.False(Hooping(job, 3).TryGetProperty("sewnAs", out _));
    }

    [Fact]
    public void Sewn_on_from_the_mixed_plan_nothing_changes_and_each_hooping_is_known_by_what_it_was_sewn_in()
    {
        using var job = Begun();
        string sewnFace = job.Plan().GetProperty("face").GetString()!;
        job.Settings("", Wished, Other);
        job.Make();
        int next = job.Plan().GetProperty("hoopings").EnumerateArray().Select(h => h.GetProperty("number").GetInt32()).First(n => n > 2);
        Assert.Equal(ExitStatus.AllPlaced, job.Say(next).Status);
        var before = Files(job);
        var report = job.Make();
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Equal(before, Files(job));
        Assert.Equal(sewnFace, Hooping(job, 1).GetProperty("sewnAs").GetProperty("face").GetString());
        Assert.False(Hooping(job, next).TryGetProperty("sewnAs", out _));

        // Taken out, the rest follows the plan that was sewn from last; sewn again, the first one does too.
        job.Settings("", ", \"fabric\": \"felt\"", Other);
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        Assert.Equal(before, Files(job));
        job.Say(1, SewingDeed.Again);
        double sewnWidth = Width(job, "Orla Penhale");
        job.Make();
        Assert.NotEqual(sewnWidth, Width(job, "Orla Penhale"), 1);
        Assert.Equal(job.Path(2, "sewn"), job.Path(2));
        Assert.DoesNotContain("letterHeightMm", Name(job, "Orla Penhale").EnumerateObject().Select(p => p.Name));

        static List<string> Files(SewnJob job) =>
            [.. Directory.EnumerateFiles(job["out/needle-paths"]).Concat(Directory.EnumerateFiles(job["out/proofs"]))
            .Order(StringComparer.Ordinal)
                .Select(f => Path.GetFileName(f)
                + Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(f))))];
    }

    [Fact]
    public void Without_the_key_a_differing_face_is_told_with_the_key_that_would_allow_it()
    {
        using var job = Begun();
        job.Settings("", "", Other);
        var report = job.Make();
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        var told = Assert.Single(report.Problems, p => p.Where.Key == "lettering.face");
        Assert.Equal(Severity.NeedsPerson, told.Severity);
        Assert.Contains("\"sewing\": { \"restMayDiffer\": true }", told.Mend.English, StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_that_do_not_fit_so_are_held_and_what_is_sewn_stays()
    {
        using var job = Begun();
        byte[] path = job.Path(1);
        job.Settings("", Wished, ", \"height\": \"40 mm\"");
        var report = job.Make();
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Equal(4, job.Plan().GetProperty("rows").EnumerateArray().Count(r => r.GetProperty("outcome").GetString() == "held"));
        Assert.Equal(path, job.Path(1));
    }
}

using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Typed names come out longer or shorter than foretold: the gaps of what is still to be sewn take it up.</summary>
public class TypedLengthTests
{
    private const string Backwards =
        "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\"], \"holds\": \"any\", \"tops\": \"left\" }";

    [Theory]
    [InlineData(NamedJob.Keyed, "Hesper Quayle")]
    [InlineData(Backwards, "Kit Farthing")]
    public void A_sewn_names_own_length_moves_the_next_start_marks_and_the_round_still_ends_at_its_hem(string way, string first)
    {
        using var job = new NamedJob(way);
        job.Make();
        var before = job.Places();
        var was = before[first];
        double longer = was.WidthMm + 3;
        Said(0, job, $"n{was.Number}", "--length", Mm(longer));
        var report = job.Make();
        Assert.True(report.Plan!.MatchesHem);
        var after = job.Places();
        Assert.Equal(longer, after[first].WidthMm, 0.051);
        bool isLeft = way == NamedJob.Keyed;
        Assert.Equal(
            isLeft ? was.StartMm : was.StartMm + was.WidthMm, isLeft ? after[first].StartMm : after[first].StartMm + after[first].WidthMm,
            0.002);
        AssertEvenGaps(after, from: 0, to: 5);
        Assert.Equal(
            before["Kit Farthing"].StartMm + before["Kit Farthing"].WidthMm, after["Kit Farthing"].StartMm + after["Kit Farthing"].WidthMm,
            0.002);
        Assert.Equal(before["Hesper Quayle"].StartMm, after["Hesper Quayle"].StartMm, 0.002);
        Assert.DoesNotContain(
            report.Problems,
            p => p.Found.English.Contains("set out again", StringComparison.Ordinal)
            || p.Found.English.Contains("left between names", StringComparison.Ordinal));

        // It stays so, and is gone on from.
        byte[] once = File.ReadAllBytes(job["out/plan.json"]);
        job.Make();
        Assert.Equal(once, File.ReadAllBytes(job["out/plan.json"]));
        Assert.NotNull(job.Say(isLeft ? 2 : 5).Said);
        job.Make();
        Assert.Equal(after[first], job.Places()[first]);
    }

    /// <summary>Each moves what comes after it, from where it ended and not from where the plan had shown it.</summary>
    [Fact]
    public void Of_two_names_that_were_measured_the_later_one_tells_where_the_next_begins()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        Said(0, job, "n1", "--length", Mm(job.Places()["Hesper Quayle"].WidthMm + 3));
        job.Make();
        double secondMm = job.Places()["Tobin Marsh"].WidthMm + 4;
        Said(0, job, "n2", "--length", Mm(secondMm));
        job.Make();
        var places = job.Places();
        Assert.Equal(secondMm, places["Tobin Marsh"].WidthMm, 0.051);
        AssertEvenGaps(places, from: 1, to: 5);
        double firstGapMm = places["Tobin Marsh"].StartMm - End(places["Hesper Quayle"]);
        double nextGapMm = places["Ada Willowby"].StartMm - End(places["Tobin Marsh"]);
        Assert.InRange(firstGapMm - nextGapMm, 0.5, 3);
    }

    [Fact]
    public void The_bare_length_that_is_left_on_the_garment_is_what_the_rest_is_spread_into()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        Refused(job, "no name is logged as sewn yet", "--left", "300 mm");
        job.Say(1, 4);
        job.Make();
        var before = job.Places();
        double expected = 1000 - End(before["Rufus Penhale"]);
        Refused(job, "is too far from that", "--left", "20 mm");
        Refused(job, "There is no round 2", "--left", "300 mm", "--round", "2");
        string log = File.ReadAllText(job["sewing-log.csv"]);
        string said = Said(0, job, "--left", Mm(expected - 12));
        Assert.Contains("of round 1 is logged as left bare", said, StringComparison.Ordinal);
        string line = File.ReadAllText(job["sewing-log.csv"])[log.Length..];
        Assert.StartsWith("r1,left,,,,", line, StringComparison.Ordinal);
        var report = job.Make();
        var after = job.Places();
        Assert.Equal(1000 - (expected - 12), End(after["Rufus Penhale"]), 0.06);
        Assert.Equal(End(before["Kit Farthing"]), End(after["Kit Farthing"]), 0.002);
        AssertEvenGaps(after, from: 3, to: 5);
        Assert.True(report.Plan!.MatchesHem);
        Assert.Equal(["sewn", "sewn", "sewn", "sewn", "", ""], job.Sheet().Select(r => r["done"]));

        // What is said later stands on it; what was unpicked no longer counts.
        byte[] once = File.ReadAllBytes(job["out/plan.json"]);
        job.Make();
        Assert.Equal(once, File.ReadAllBytes(job["out/plan.json"]));
        Assert.NotNull(job.Say(5).Said);
        job.Names.Insert(5, "Bo Reed");
        job.Make();
        Assert.Equal(after["Rufus Penhale"].StartMm, job.Places()["Rufus Penhale"].StartMm, 0.01);
        Assert.Equal(after["Maren Lovdal"].StartMm, job.Places()["Maren Lovdal"].StartMm, 0.01);
        Assert.Equal(after["Maren Lovdal"].WidthMm, job.Places()["Maren Lovdal"].WidthMm, 0.01);
        Assert.Equal(End(before["Kit Farthing"]), job.Places().Values.Max(End), 0.01);
        job.Say(4, deed: SewingDeed.Again);
        job.Make();
        Assert.Equal(before["Hesper Quayle"].StartMm, job.Places()["Hesper Quayle"].StartMm, 0.01);
    }

    [Fact]
    public void Only_gaps_beyond_their_bounds_are_told()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        job.Say(1, 4);
        job.Make();
        double expected = 1000 - End(job.Places()["Rufus Penhale"]);
        double gap = job.Plan().GetProperty("rounds")[0].GetProperty("gapMm").GetDouble();
        Said(0, job, "--left", Mm(expected - (1.05 * gap)));
        var told = job.Make().Problems.Single(p => p.Found.English.Contains("are left between names", StringComparison.Ordinal));
        Assert.Equal(("sewing-log.csv", Severity.NeedsPerson), (told.Where.File, told.Severity));
        Assert.StartsWith("After “Rufus Penhale” only", told.Found.English, StringComparison.Ordinal);
        Assert.NotEmpty(told.Mend.English);
    }

    /// <summary>Rounds share names out as evenly as they can be filled: what is left of a round that is nearly sewn is no reason
    /// to do that again.</summary>
    [Fact]
    public void A_names_own_length_sends_no_other_to_the_next_round()
    {
        using var job =
            new NamedJob(NamedJob.Keyed + ", \"strip\": { \"rounds\": 2 }", "{ \"length\": \"450 mm\", \"closed\": false, \"turn\": 0 }");
        job.Names.AddRange(["Ida Vo", "Peregrine Underhill", "Una Fry", "Bartholomew Ostler"]);
        job.Make();
        string[] Low() => [.. job.Plan().GetProperty("rounds")[0].GetProperty("segments").EnumerateArray()
            .SelectMany(s => s.GetProperty("names").EnumerateArray()).Select(n => n.GetProperty("text").GetString()!)];
        string[] low = Low();
        Assert.InRange(low.Length, 4, 6);
        foreach (string name in low[..^1])
        {
            var (number, _, width) = job.Places()[name];
            Said(0, job, $"n{number}", "--length", Mm(width - 2));
            Assert.True(job.Make().Plan!.MatchesHem);
            Assert.Equal(low, Low());
        }
    }

    /// <summary>What one line would win the other has sewn: marks stay, and only a gap beyond its bounds is told.</summary>
    [Fact]
    public void In_two_lines_marks_stay_and_a_gap_beyond_its_bounds_is_told()
    {
        using var job = new NamedJob(
            NamedJob.Keyed.Replace("9 mm", "5 mm", StringComparison.Ordinal)
                + ", \"strip\": { \"lines\": 2, \"cutWidth\": \"2 3/4 in\" }, \"lettering\": { \"gap\": \"4 mm\" }",
            "{ \"length\": \"226 mm\", \"closed\": false }");
        job.Make();
        var before = job.Places();
        var lower = job.Sheet().Where(r => r["on_line"] == "lower").ToList();
        string first = lower[0]["name"], next = lower[1]["name"];
        var was = before[first];
        double gap = before[next].StartMm - End(was);
        Said(0, job, $"n{was.Number}", "--length", Mm(was.WidthMm + (0.3 * gap)));
        Assert.DoesNotContain(job.Make().Problems, IsOfGaps);
        Said(0, job, $"n{was.Number}", "--length", Mm(was.WidthMm + (0.58 * gap)));
        var told = job.Make().Problems.Single(IsOfGaps);
        Assert.Equal((Severity.NeedsPerson, "lengths.csv"), (told.Severity, told.Where.File));
        Assert.StartsWith($"After “{first}” only", told.Found.English, StringComparison.Ordinal);
        Assert.Contains("sew the next one at its mark", told.Mend.English, StringComparison.Ordinal);
        Assert.Equal(before[next].StartMm, job.Places()[next].StartMm, 0.002);
    }

    [Fact]
    public void Beside_traced_names_the_next_marks_move_and_a_gap_beyond_its_bounds_is_told()
    {
        using var job = new NamedJob(
            "\"ways\": [\"machineLetters\", \"traced\"], \"letters\": { \"sizes\": [\"9 mm\"], \"holds\": \"any\" }, \"lettering\": { \"gap\": \"4 mm\" }",
            "{ \"length\": \"545 mm\", \"closed\": false }");
        job.Names.Insert(1, "Ægir Dunn");
        job.Make();
        var before = job.Places();
        var was = before["Hesper Quayle"];
        Said(0, job, $"n{was.Number}", "--length", Mm(was.WidthMm + 3));
        var report = job.Make();
        Assert.True(report.Plan!.MatchesHem);
        Assert.DoesNotContain(report.Problems, IsOfGaps);
        var after = job.Places();
        Assert.Equal(was.StartMm, after["Hesper Quayle"].StartMm, 0.002);
        Assert.Equal(before.Values.Max(End), after.Values.Max(End), 0.002);
        AssertEvenGaps(after, from: 0, to: 6);

        // The last but one takes nearly all of the one gap that is left.
        job.Say(2, 6);
        job.Make();
        var last = job.Places()["Maren Lovdal"];
        double gap = job.Places()["Kit Farthing"].StartMm - End(last);
        Said(0, job, $"n{last.Number}", "--length", Mm(last.WidthMm + (0.48 * gap)));
        Assert.StartsWith("After “Maren Lovdal” only", job.Make().Problems.Single(IsOfGaps).Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void Lengths_of_names_that_nobody_said_to_be_sewn_are_told_once()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        job.With(
            "lengths.csv",
            "name,order,measured_mm,sewn_on\nTobin Marsh,2,64,\nKit Farthing,6,70,\nHesper Quayle,1,76,scrap\nNell Ost,,46,\n");
        var told = job.Make().Problems.Where(p => p.Where.File == "lengths.csv").OrderBy(p => p.Where.Line).ToList();
        Assert.Equal([2, 5], told.Select(p => p.Where.Line!.Value));
        Assert.StartsWith(
            "2 lengths say nothing of a scrap, and “Tobin Marsh”, “Kit Farthing” are not said to be sewn", told[0].Found.English,
            StringComparison.Ordinal);
        Assert.Contains("sewn JOB n2", told[0].Mend.English, StringComparison.Ordinal);
        Assert.Contains("no name “Nell Ost” is to be sewn", told[1].Found.English, StringComparison.Ordinal);
        Assert.All(told, p => Assert.Equal(Severity.Note, p.Severity));
        job.Say(2);
        job.Say(6);
        Assert.Equal([5], job.Make().Problems.Where(p => p.Where.File == "lengths.csv").Select(p => p.Where.Line!.Value));
    }

    [Fact]
    public void A_length_told_by_mistake_is_taken_back_on_a_scrap_and_on_the_strip()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        string sheet = File.ReadAllText(job["out/key-in.csv"]);
        Refused(job, "No length of n2 on a scrap is logged", "n2", "--scrap", "--mistake");
        double longer = job.Places()["Tobin Marsh"].WidthMm + 3;
        Assert.Contains(
            "long on a scrap: that is logged, and the name is still to sew", Said(0, job, "n2", "--scrap", "--length", Mm(longer)),
            StringComparison.Ordinal);
        Said(0, job, "n2", "--scrap", "--length", Mm(longer + 1));
        Assert.Contains($"The length of n2, “Tobin Marsh” on a scrap, {longer + 1:0.0} mm, counts no longer"
            .Replace(".0 mm", " mm", StringComparison.Ordinal), Said(0, job, "n2", "--scrap", "--mistake"), StringComparison.Ordinal);
        Said(0, job, "n2", "--scrap", "--mistake");
        Refused(job, "No length of n2", "n2", "--scrap", "--mistake");
        Assert.Equal(2, File.ReadLines(job["lengths.csv"]).Count(l => l.EndsWith("\"scrap, taken back\"", StringComparison.Ordinal)));
        Assert.False(File.Exists(job["sewing-log.csv"]));
        job.Make();
        Assert.Equal(sheet, File.ReadAllText(job["out/key-in.csv"]));

        // Pressed at the wrong name, with its length: neither is left of it, and its line in the file says so.
        Said(0, job, "n2", "--length", Mm(longer));
        string said = Said(0, job, "n2", "--mistake");
        Assert.Contains("counts as not sewn", said, StringComparison.Ordinal);
        Assert.Contains("counts no longer", said, StringComparison.Ordinal);
        var report = job.Make();
        Assert.Equal(sheet, File.ReadAllText(job["out/key-in.csv"]));
        Assert.DoesNotContain(report.Problems, p => p.Where.File == "lengths.csv");
    }

    [Fact]
    public void Two_lengths_of_one_name_are_asked_about_though_one_lacks_its_number()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.With("lengths.csv", "name,order,measured_mm\nTobin Marsh,2,64\nTobin Marsh,,69\n");
        Assert.Contains(
            job.Make().Problems, p => p.Found.English.Contains("has two lengths, 64 mm in line 2 and 69 mm in line 3", StringComparison.Ordinal));
    }

    private static bool IsOfGaps(Problem told) => told.Found.English.Contains("are left between names", StringComparison.Ordinal);

    private static double End((int Number, double StartMm, double WidthMm) name) => name.StartMm + name.WidthMm;

    private static string Mm(double mm) => mm.ToString("0.0", CultureInfo.InvariantCulture) + " mm";

    /// <summary>All gaps from one name to another, from the left, are alike.</summary>
    private static void AssertEvenGaps(Dictionary<string, (int Number, double StartMm, double WidthMm)> places, int from, int to)
    {
        var along = places.Values.OrderBy(p => p.StartMm).Skip(from).Take(to - from + 1).ToList();
        double[] gaps = [.. along.Zip(along.Skip(1)).Select(p => p.Second.StartMm - End(p.First))];
        Assert.InRange(gaps.Max() - gaps.Min(), 0, 0.01);
    }

    private static string Said(int status, NamedJob job, params string[] words)
    {
        var said = CliRun.Of(["sewn", job.Folder, .. words]);
        Assert.True(said.Status == status, said.Out + said.Errors);
        return said.OutOnOneLine;
    }

    private static void Refused(NamedJob job, string why, params string[] words)
    {
        var said = CliRun.Of(["sewn", job.Folder, .. words]);
        Assert.Equal(2, said.Status);
        Assert.Contains(
            why, string.Join(' ', (said.Out + said.Errors).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal);
    }
}

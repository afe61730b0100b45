using NameBand.Common;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Limp and stiffened strips that no hoop holds: what they shorten by, and a job that goes on with the other one.</summary>
public class StiffenedTests
{
    private const string Firm = "\"strip\": { \"stiffening\": \"starch\" }";
    private const string Limp = "\"strip\": { \"stiffening\": \"none\" }";

    [Theory]
    [InlineData(Firm, 0.01)]
    [InlineData(Limp, 0.03)]
    public void Cloth_shortens_under_its_stitches_and_not_in_the_gaps(string strip, double part)
    {
        using var job = new NamedJob($"{NamedJob.Keyed}, {strip}");
        Assert.True(job.Make().Plan!.MatchesHem);

        // By hand: each name loses its part, and the rest of the metre nothing.
        double sewn = job.Places().Values.Sum(n => n.WidthMm);
        Assert.Equal(part, Under(job), 9);
        Assert.Equal(part * sewn / 1000, Shortening(job), 0.000002);
    }

    [Theory]
    [InlineData(NamedJob.Keyed, Firm, 0.01, Limp, 0.03)]
    [InlineData(NamedJob.Keyed, Limp, 0.03, Firm, 0.01)]
    [InlineData(NamedJob.Traced, Firm, 0.01, Limp, 0.03)]
    public void A_job_that_goes_on_with_the_other_keeps_what_is_sewn_and_ends_at_its_hem(
        string way, string first, double was, string then, double now)
    {
        using var job = new NamedJob($"{way}, {first}");
        job.Make();
        Assert.NotNull(job.Say(1, 2).Said);
        job.Make();
        var (before, marks, once) = (job.Places(), OnCloth(job), File.ReadAllBytes(job["out/plan.json"]));
        string text = File.ReadAllText(job["job.json"]);
        job.With("job.json", text.Replace(first, then, StringComparison.Ordinal));
        var report = job.Make();
        Assert.True(report.Plan!.MatchesHem);
        Assert.Contains(report.Problems, p => p.Found.English.Contains("shortens differently from the plan", StringComparison.Ordinal));

        // By hand: the two that are sewn drew together as they were stiffened then, the four others will as they are now.
        double all = before.Values.Sum(n => n.WidthMm);
        double sewn = before["Hesper Quayle"].WidthMm + before["Tobin Marsh"].WidthMm;
        Assert.Equal(((was * sewn) + (now * (all - sewn))) / 1000, Shortening(job), 0.000002);
        var after = OnCloth(job);
        Assert.All(new[] { 1, 2 }, n => Assert.Equal(marks[n], after[n], 0.002));
        Assert.All(new[] { 3, 4, 5, 6 }, n => Assert.Equal(now > was, after[n] > marks[n] + 0.1));

        // Sewn from that plan it stays; with the first stiffening again all is as it was.
        job.With("job.json", text);
        job.Make();
        Assert.Equal(once, File.ReadAllBytes(job["out/plan.json"]));
        job.With("job.json", text.Replace(first, then, StringComparison.Ordinal));
        job.Make();
        Assert.NotNull(job.Say(3).Said);
        job.Make();
        var on = OnCloth(job);
        Assert.All(on, n => Assert.Equal(after[n.Key], n.Value, 0.002));
    }

    [Fact]
    public void A_shortening_that_she_tells_is_of_all_her_cloth()
    {
        using var job = new NamedJob($"{NamedJob.Keyed}, {Firm}");
        job.Make();
        job.Say(1, 2);
        job.With(
            "job.json", File.ReadAllText(job["job.json"])
            .Replace("\"starch\"", "\"starch\", \"shortening\": 0.02", StringComparison.Ordinal));
        Assert.True(job.Make().Plan!.MatchesHem);
        Assert.Equal(0.02 * job.Places().Values.Sum(n => n.WidthMm) / 1000, Shortening(job), 0.000002);
    }

    private static double Under(NamedJob job) => job.Plan().GetProperty("strip").GetProperty("underStitchesPart").GetDouble();

    private static double Shortening(NamedJob job) => job.Plan().GetProperty("strip").GetProperty("shortening").GetDouble();

    /// <summary>Where each name's left edge lies on the flat cloth, by its number.</summary>
    private static Dictionary<int, double> OnCloth(NamedJob job)
    {
        double shortening = Shortening(job);
        return job.Plan().GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .SelectMany(s => s.GetProperty("names").EnumerateArray().Select(n => (
                Number: n.GetProperty("order").GetInt32(),
                OnClothMm: s.GetProperty("onClothMm")
                .GetDouble() + ((n.GetProperty("startMm").GetDouble() - s.GetProperty("startMm").GetDouble()) / (1 - shortening)))))
            .ToDictionary(n => n.Number, n => n.OnClothMm);
    }
}

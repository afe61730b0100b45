using NameBand.Tests.SewingOn;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>
/// Rounds of a tiered skirt differ much in length, as do parts of one: names lie as close together on the short ones as on the long ones.
/// </summary>
public sealed class UnlikeRoundsTests
{
    private static readonly string[] First = ["Ada", "Bram", "Cosima", "Enid", "Greta", "Hollis", "Jorun"];
    private static readonly string[] Last = ["Marsh", "Reed", "Ashdown", "Penhale", "Quill", "Birchley"];

    [Theory]
    [InlineData("")]
    [InlineData("\"lettering\": { \"order\": \"bestFit\", \"height\": \"9 mm\" }")]
    [InlineData("\"lettering\": { \"height\": \"9 mm\" }")]
    [InlineData("\"lettering\": { \"height\": \"9 mm\" }, \"way\": \"traced\"")]
    [InlineData("\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\"] }")]
    [InlineData("\"lettering\": { \"height\": \"9 mm\" }", "\"keepClear\": [\"80 mm at 0.5 m\", \"80 mm at 1.7 m\"]")]
    public void Gaps_are_alike_on_short_rounds_and_long_ones(string more, string hem = "\"closed\": true")
    {
        string names = string.Concat(First.SelectMany(f => Last.Select(l => $"{f} {l}\n")));
        using var folder = new TemporaryFolder().With("names.csv", "Name\n" + names).With("job.json", $$"""
            { "format": 1, "lists": ["names.csv"], "hem": { "length": ["4 m", "3.4 m", "2.2 m"], {{hem}} }, "strip": { "rounds": 3 }
              {{(more.Length > 0 ? ", " + more : "")}} }
            """);
        var plan = Bander.Hours(folder.FullPath).Plan!;
        Assert.Equal(First.Length * Last.Length, plan.NameCount);
        double[] blank = [.. plan.Rounds.Select(r => (r.LengthMm - r.Names.Sum(n => n.WidthMm)) / r.Names.Count())];
        Assert.True(blank.Max() < 1.4 * blank.Min(), string.Join(" ", blank));
    }

    /// <summary>Beside what is sewn a short part and a long one are left.</summary>
    [Fact]
    public void Gaps_are_alike_on_both_sides_of_what_is_sewn()
    {
        using var job = new NamedJob(NamedJob.Traced, "{ \"length\": \"2 m\", \"closed\": false }");
        job.Make();
        job.Say(2);
        job.With("job.json", File.ReadAllText(job["job.json"]).Replace(
            "\"height\": \"8 mm\" }", "\"height\": \"9 mm\" }, \"sewing\": { \"restMayDiffer\": true }", StringComparison.Ordinal));
        var rounds = job.Make().Plan!.Rounds;
        var placed = rounds.Single().Names.OrderBy(n => n.StartMm).ToList();
        Assert.Equal(6, placed.Count);
        double[] gaps = [.. placed.Zip(placed.Skip(1), (one, next) => next.StartMm - one.StartMm - one.WidthMm)];
        Assert.True(gaps.Max() < 2 * gaps.Min(), string.Join(" ", placed.Select(n => $"{n.Lettered.Name.Text} {n.StartMm:0}–{n.EndMm:0}")));
        Assert.Equal("Tobin Marsh", placed[1].Lettered.Name.Text);
    }

    /// <summary>Who comes late is given a place in the middle of the widest gap, and all others stay.</summary>
    [Fact]
    public void A_latecomer_stands_in_the_middle_of_the_widest_gap()
    {
        using var job = new NamedJob(NamedJob.Traced, "{ \"length\": \"2 m\", \"closed\": false }");
        job.Make();
        job.Say(2);
        var before = job.Places();
        job.Names.Remove("Maren Lovdal");
        job.Names.Add("Senara Trewin");
        job.Make();
        var now = job.Places();
        Assert.All(now.Keys.Intersect(before.Keys), n => Assert.Equal(before[n], now[n]));
        var late = now["Senara Trewin"];
        double left = late.StartMm - now["Rufus Penhale"].StartMm - now["Rufus Penhale"].WidthMm;
        Assert.Equal(left, now["Kit Farthing"].StartMm - late.StartMm - late.WidthMm, 2);
        Assert.True(left > 200, $"{left}");
    }
}

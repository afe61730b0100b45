using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>The sample with strips side by side, in pieces, clear of seams, in other orders: made whole and read back from its
/// files.</summary>
public class SideBySideTests
{
    private static JsonElement Made(Action<JsonNode> change, ExitStatus status = ExitStatus.AllPlaced)
    {
        using var folder = MadeFolder.CopySample();
        var job = JsonNode.Parse(File.ReadAllText(folder["job.json"]))!;
        change(job);
        folder.With("job.json", job.ToJsonString());
        var report = Bander.Make(folder.FullPath);
        Assert.True(report.Status == status, string.Join('\n', report.Problems.Select(p => p.Found)));
        var made = new MadeFolder(report.OutFolder!);
        made.Check(longestOnClothMm: 150, shortening: 0.01, zoneMm: 14.05);
        Assert.Equal(60, made.Names.Count());
        Assert.True(new FileInfo(Path.Combine(report.OutFolder!, "proofs", "cutting-plan.png")).Length > 1000);
        return made.Plan;
    }

    private static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();

    private static int Hoopings(JsonElement plan) => plan.GetProperty("totals").GetProperty("hoopings").GetInt32();

    [Fact]
    public void Two_rounds_lie_side_by_side_in_one_field()
    {
        var plan = Made(job => job["strip"]!["lanes"] = "asManyAsFit");
        Assert.True(Hoopings(plan) < 45, $"{Hoopings(plan)}");
        Assert.Contains(plan.GetProperty("hoopings").EnumerateArray(), h => h.GetProperty("segments").GetArrayLength() == 2);
        foreach (var hooping in plan.GetProperty("hoopings").EnumerateArray())
        {
            var segments = hooping.GetProperty("segments").EnumerateArray().ToList();
            Assert.Equal((0.0, 0.0), (Number(segments[0], "xMm"), Number(segments[0], "yMm")));
            Assert.All(segments.Skip(1), s => Assert.Equal(50.8, Math.Abs(Number(s, "yMm")), 6));
            Assert.All(segments, s => Assert.InRange(Number(s, "xMm"), 0, 160));
        }

        var cloth = Assert.Single(plan.GetProperty("cloths").EnumerateArray());
        Assert.Equal([1, 2], cloth.GetProperty("pieces").EnumerateArray().Select(p => p.GetProperty("round").GetInt32()));
        Assert.Equal(180, Number(cloth, "widthMm"), 6);
    }

    [Fact]
    public void Seams_stay_clear_pieces_are_short_and_the_best_fit_says_its_bound()
    {
        var plan = Made(job =>
        {
            job["strip"]!["lanes"] = 2;
            job["strip"]!["piece"] = "1 m";
            job["lettering"]!["order"] = "bestFit";
            job["lettering"]!["height"] = "8 mm";
            job["hem"]!["keepClear"] = new JsonArray("40 mm at 0 mm", "60 mm at 1.82 m");
            job["hem"]!["start"] = "0.9 m";
        });
        var lower = plan.GetProperty("rounds")[0];
        double middle = 1820 * Number(lower, "hemMm") / Number(plan.GetProperty("hem"), "lengthMm");
        foreach (var name in lower.GetProperty("segments").EnumerateArray().SelectMany(s => s.GetProperty("names").EnumerateArray()))
        {
            double left = Number(name, "startMm");
            double right = left + Number(name, "widthMm");
            Assert.True(right <= middle - 30 + 0.01 || left >= middle + 30 - 0.01);
            Assert.InRange(left, 20 - 0.01, double.MaxValue);
        }

        Assert.All(
            plan.GetProperty("cloths").EnumerateArray().SelectMany(c => c.GetProperty("pieces").EnumerateArray()),
            p => Assert.InRange(Number(p, "lengthMm"), 100, 1000));
        var fit = plan.GetProperty("bestFit");
        Assert.Equal(Hoopings(plan), fit.GetProperty("hoopings").GetInt32());
        Assert.InRange(fit.GetProperty("bound").GetInt32(), 20, Hoopings(plan));
    }

    [Fact]
    public void The_samples_best_fit_order_is_at_most_one_hooping_from_its_bound()
    {
        var plan = Made(job =>
        {
            job["lettering"]!["order"] = "bestFit";
            job["lettering"]!["height"] = "8 mm";
        });
        var fit = plan.GetProperty("bestFit");
        Assert.Equal(Hoopings(plan), fit.GetProperty("hoopings").GetInt32());
        Assert.InRange(Hoopings(plan) - fit.GetProperty("bound").GetInt32(), 0, 1);
        Assert.Equal(Hoopings(plan) == fit.GetProperty("bound").GetInt32(), fit.GetProperty("proven").GetBoolean());
        Assert.Equal("canBeEased", plan.GetProperty("rounds")[0].GetProperty("upperEdge").GetString());
        Assert.Equal(1.5 * Math.PI * 19.05, Number(plan.GetProperty("rounds")[1], "upperEdgeShorterMm"), 0.001);
    }
}

using System.Text.Json;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>The second sample: two groups on rounds of their own, a heading, motifs, strips side by side.</summary>
public class QuayBannerTests
{
    private static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();

    private static TemporaryFolder Copy()
    {
        var folder = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "samples", "quay-banner")))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        return folder;
    }

    /// <summary>A heading is sewn, clipped and freed of its backing like a name.</summary>
    [Fact]
    public void A_heading_takes_minutes_of_hands()
    {
        using var folder = Copy();
        var report = Bander.Hours(folder.FullPath);
        int headings = report.Plan!.Rounds.Sum(r => r.Names.Count(n => n.IsHeading));
        Assert.True(headings > 0);
        Assert.Equal(26 + headings, report.Estimate!.HandWork.Single(w => w.Act == "clipping threads").Count);
    }

    [Fact]
    public void It_is_made_whole_and_every_sum_place_and_motif_is_right()
    {
        using var folder = Copy();
        var report = Bander.Make(folder.FullPath);
        Assert.True(report.Status == ExitStatus.AllPlaced, string.Join('\n', report.Problems.Select(p => p.Found)));
        var made = new MadeFolder(report.OutFolder!);
        made.Check(longestOnClothMm: 150, shortening: 0.01, zoneMm: 17.4);
        Assert.Equal(26, made.Names.Count());
        double height = Number(made.Plan, "letterHeightMm");
        string[] groups = ["lamp bearers", "neighbours"];
        foreach (var (round, k) in made.Rounds.Select((r, k) => (r, k)))
        {
            var names = round.GetProperty("segments").EnumerateArray().SelectMany(s => s.GetProperty("names").EnumerateArray()).ToList();
            Assert.All(names, n => Assert.Equal(groups[k], n.GetProperty("group").GetString()));
            Assert.All(names, n => Assert.Equal(height * (k == 0 ? 1.25 : 1), Number(n, "letterHeightMm"), 3));
        }

        var heading =
            Assert.Single(made.Segments.SelectMany(s => s.TryGetProperty("headings", out var h) ? h.EnumerateArray().ToList() : []));
        Assert.Equal("Lamp bearers", heading.GetProperty("text").GetString());
        Assert.True(Number(heading, "startMm") < made.Names.Where(n => n.GetProperty("group").GetString() == groups[0])
            .Min(n => Number(n, "startMm")));
        Assert.Contains(made.Plan.GetProperty("hoopings").EnumerateArray(), h => h.GetProperty("segments").GetArrayLength() == 2);
        CheckMotifs(made, height);
    }

    /// <summary>In the middle of a gap, clear on both sides, in one segment.</summary>
    private static void CheckMotifs(MadeFolder made, double height)
    {
        int motifs = 0;
        foreach (var round in made.Rounds)
        {
            var segments = round.GetProperty("segments").EnumerateArray().ToList();
            var names = segments.SelectMany(s => s.GetProperty("names").EnumerateArray()).OrderBy(n => Number(n, "startMm")).ToList();
            foreach (var motif in segments.SelectMany(s => s.TryGetProperty("motifs", out var m) ? m.EnumerateArray().ToList() : []))
            {
                double start = Number(motif, "startMm");
                double end = start + Number(motif, "widthMm");
                double before = names.Where(n => Number(n, "startMm") < start).Max(n => Number(n, "startMm") + Number(n, "widthMm"));
                double after = names.Where(n => Number(n, "startMm") > start).Min(n => Number(n, "startMm"));
                Assert.Equal(start - before, after - end, 0.003);
                Assert.True(start - before >= (0.5 * height) - 0.002);
                motifs++;
            }
        }

        Assert.InRange(motifs, 18, 24);
    }

    [Fact]
    public void What_stands_in_the_column_changes_nothing_as_long_as_the_groups_are_the_same()
    {
        using var folder = Copy();
        string before = Path.Combine(Bander.Make(folder.FullPath).OutFolder!, "plan.json");
        string plan = File.ReadAllText(before);
        string list = File.ReadAllText(folder["gifts.csv"]);
        folder.With(
            "gifts.csv", list.Replace(",60,", ",987654,", StringComparison.Ordinal).Replace(",12,", ",3.21,", StringComparison.Ordinal));
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(plan, File.ReadAllText(before));
        foreach (string file in Directory.GetFiles(report.OutFolder!, "*.*", SearchOption.AllDirectories)
            .Where(f => !f.EndsWith(".png", StringComparison.Ordinal)))
        {
            Assert.DoesNotContain("987654", File.ReadAllText(file), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void It_is_printed_too_and_the_finder_has_each_name_with_its_height_and_no_heading()
    {
        using var folder = Copy();
        var report = Bander.Print(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        string finder = File.ReadAllText(Path.Combine(report.OutFolder!, "sheets", "name-finder.csv"));
        Assert.Equal(27, finder.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.DoesNotContain("Lamp bearers", finder, StringComparison.Ordinal);
        string[] heights =
            [.. finder.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Split(',')[^1]).Distinct().Order()];
        Assert.Equal(2, heights.Length);
        Assert.Contains("Lamp bearers", File.ReadAllText(Path.Combine(report.OutFolder!, "worksheet.csv")), StringComparison.Ordinal);
    }
}

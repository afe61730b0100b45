using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>The sample with strips cut to the curve, made whole and read back from its files.</summary>
public class LanternCapeTests
{
    private static readonly string Cape = Path.Combine(Repository.Root, "samples", "lantern-cape");

    private static (MadeFolder Made, string Out) Make(TemporaryFolder folder, Action<JsonNode> change, double zoneMm = 23.75)
    {
        foreach (string file in Directory.GetFiles(Cape))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        var job = JsonNode.Parse(File.ReadAllText(folder["job.json"]))!;
        change(job);
        folder.With("job.json", job.ToJsonString());
        var report = Bander.Print(folder.FullPath);
        Assert.True(report.Status == ExitStatus.AllPlaced, string.Join('\n', report.Problems.Select(p => p.Found)));
        var made = new MadeFolder(report.OutFolder!);
        made.Check(longestOnClothMm: 150, shortening: 0.01, zoneMm);
        return (made, report.OutFolder!);
    }

    /// <summary>The number of a name stands between edge and fold, which are drawn 2 mm at a time, and neither runs through it.</summary>
    private static void AssertNumbersAreClear(UglyToad.PdfPig.PdfDocument packet)
    {
        var numbers = packet.GetPages().SelectMany(page =>
        {
            var edges = page.Paths.Where(p => p.IsStroked).SelectMany(p => p).Select(s => s.GetBoundingRectangle())
                .OfType<UglyToad.PdfPig.Core.PdfRectangle>().Where(r => r.Width is > 4 and < 8).ToList();
            return page.GetWords().Where(w => w.Text.All(char.IsAsciiDigit))
                .Select(w => w.BoundingBox)
                .Select(box => (Box: box, Near: edges.Where(e => e.Left < box.Right + 6 && e.Right > box.Left - 6).ToList()))
                .Where(n => n.Near.Exists(e => Math.Abs(e.Bottom - n.Box.Top) < 12))
                .Where(n => n.Near.Exists(e => Math.Abs(n.Box.Bottom - e.Top) < 22)).ToList();
        }).ToList();
        Assert.Equal(22, numbers.Count);
        Assert.All(numbers, n => Assert.DoesNotContain(n.Near, e => e.Top > n.Box.Bottom - 0.5 && e.Bottom < n.Box.Top + 0.5));
    }

    private static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();

    [Fact]
    public void The_sample_is_made_whole_and_its_plan_has_the_published_form()
    {
        using var folder = new TemporaryFolder();
        var (made, output) = Make(folder, _ => { });
        Assert.Equal(22, made.Names.Count());
        var result = JsonSchema.FromText(Repository.Read("docs/plan.schema.json"))
            .Evaluate(
                JsonNode.Parse(File.ReadAllText(Path.Combine(output, "plan.json"))),
                new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(
            result.IsValid,
            string.Join(
                '\n', result.Details.Where(d => d.HasErrors).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}")));

        using (var packet = UglyToad.PdfPig.PdfDocument.Open(Path.Combine(output, "sheets", "work-packet-a4.pdf")))
        {
            string words = string.Join(' ', packet.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
            Assert.Contains("cut to the curve of the hem and lies flat, so nothing is eased", words, StringComparison.Ordinal);
            Assert.DoesNotContain("ease it in the gaps", words, StringComparison.Ordinal);
            AssertNumbersAreClear(packet);

            // Sixteen hoopings at true size: a page is filled before the next begins.
            Assert.InRange(packet.NumberOfPages, 10, 15);
        }

        var round = Assert.Single(made.Rounds);
        double turn = 2 * Math.PI * 0.75;
        Assert.Equal(2600 - (3 * turn), Number(round, "lengthMm"), 3);
        Assert.Equal(Number(round, "lengthMm"), Number(round, "radiusMm") * turn, 2);
        Assert.Equal(turn * 31.75, Number(round, "lengthMm") - Number(round, "upperEdgeMm"), 2);
        Assert.Equal("liesFlat", round.GetProperty("upperEdge").GetString());
        foreach (var piece in made.Plan.GetProperty("cloths").EnumerateArray().SelectMany(c => c.GetProperty("pieces").EnumerateArray()))
        {
            Assert.InRange(Number(piece, "lengthMm"), 100, 1000);
            Assert.Equal(50.8, Number(piece, "lowerCutRadiusMm") - Number(piece, "upperCutRadiusMm"), 3);
            Assert.Equal(
                Number(piece, "lowerCutEdgeMm") / Number(piece, "lowerCutRadiusMm"),
                Number(piece, "upperCutEdgeMm") / Number(piece, "upperCutRadiusMm"), 5);
        }

        string[] sheet = File.ReadAllLines(Path.Combine(output, "worksheet.csv"));
        Assert.Contains("arc_off_line_mm", sheet[0], StringComparison.Ordinal);
        int columns = sheet[0].Split(',').Length;
        Assert.All(sheet.Skip(1).Where(l => !l.Contains('"', StringComparison.Ordinal)), l => Assert.Equal(columns, l.Split(',').Length));
        Assert.True(File.Exists(Path.Combine(output, "needle-paths", "hooping-001.svg")));
        Assert.True(File.Exists(Path.Combine(output, "sheets", "work-packet-a4.pdf")));
        Assert.Contains("arc_off_line_mm", File.ReadAllText(Path.Combine(output, "read-me-first.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_rounds_on_a_closed_hem_have_radii_of_their_own_and_equal_gaps()
    {
        using var folder = new TemporaryFolder();
        var (made, _) = Make(folder, job =>
        {
            job["strip"]!["rounds"] = 2;
            job["hem"]!["closed"] = true;
            job["lettering"]!["height"] = "7 mm";
        });
        var rounds = made.Rounds.ToList();
        Assert.Equal(31.75 + 12.7, Number(rounds[0], "radiusMm") - Number(rounds[1], "radiusMm"), 2);
        foreach (var round in rounds)
        {
            var names = round.GetProperty("segments").EnumerateArray().SelectMany(s => s.GetProperty("names").EnumerateArray()).ToList();
            double gap = Number(round, "gapMm");
            Assert.InRange(Number(names[0], "startMm") - (gap / 2), -0.01, 0.01);
            Assert.InRange(
                Number(round, "lengthMm") - Number(names[^1], "startMm") - Number(names[^1], "widthMm") - (gap / 2), -0.01, 0.01);
        }
    }
}

using NameBand.MachineLetters.Alphabets;
using NameBand.Output;
using NameBand.Output.Tracing;
using NameBand.Tests.House;
using NameBand.Tests.Outside;
using NameBand.Tests.WholeLine;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>What print makes for names that are keyed in or traced: what needs no needle path.</summary>
public sealed class OtherWaysPrintTests
{
    private static readonly string[] Sheets =
    [
        "name-finder-a4.pdf", "name-finder-letter.pdf", "name-finder.csv", "paper-rehearsal-a4.pdf", "paper-rehearsal-letter.pdf",
        "proof-reading-a4.pdf", "proof-reading-letter.pdf", "thanks-cards-a4.pdf", "thanks-cards-letter.pdf", "work-packet-a4.pdf",
        "work-packet-letter.pdf",
    ];

    [Fact]
    public void Keyed_names_have_proof_reading_sheets_a_name_finder_and_pictures_to_send()
    {
        using var folder = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "samples", "boat-banner")))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        var report = Bander.Print(folder.FullPath, wishes: new PrintWishes(Thanks: true, Playback: true));
        Assert.NotEqual(ExitStatus.CannotUse, report.Status);
        Assert.Equal(Sheets, Made(report, "sheets"));
        Assert.True(File.Exists(Path.Combine(report.OutFolder!, OutPaths.KeyIn("a4"))));
        Assert.Equal(report.Plan!.NameCount + 1, Made(report, "thanks").Length);
        Assert.False(Directory.Exists(Path.Combine(report.OutFolder!, "playback")));
        Assert.Contains(Printing.NoPlayback, report.Problems);
    }

    /// <summary>Two hundred letters, an edge with two ends, a script read from right to left: traced, so no field holds it back.</summary>
    [SkippableFact]
    public void A_traced_name_of_two_hundred_letters_is_on_every_sheet()
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        string name = string.Concat(Enumerable.Repeat("Wolkenschieberin ", 12))[..200].Trim();
        using var folder = new TemporaryFolder()
            .With("job.json",
                """{ "format": 1, "title": "Banner", "lists": ["crew.csv"], "way": "traced", "hem": { "length": "6 m", "closed": false }, "lettering": { "height": "8 mm" } }""")
            .With("crew.csv", $"Name\n{name}\nليلى النهري\nIda\n");
        var report = Bander.Print(folder.FullPath, wishes: new PrintWishes(Thanks: true));
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Equal(Sheets, Made(report, "sheets"));
        foreach (string sheet in new[] { "sheets/proof-reading-a4.pdf", "sheets/name-finder-letter.pdf", "template-a4.pdf" })
        {
            using var pdf = PdfDocument.Open(File.ReadAllBytes(Path.Combine(report.OutFolder!, sheet)));
            Assert.All(pdf.GetPages(), page =>
            {
                Assert.NotEmpty(page.Letters);
                Assert.All(page.Letters, l => Assert.InRange(l.BoundingBox.Right, 0, page.Width));
            });
        }

        // In the table of the name finder a very long name is cut short: there it is known by its number.
        PrintedNames.AreAllIn(Path.Combine(report.OutFolder!, "sheets/proof-reading-a4.pdf"), [name, "ليلى النهري", "Ida"]);
        PrintedNames.AreAllIn(Path.Combine(report.OutFolder!, "sheets/name-finder-letter.pdf"), [name[..30], "ليلى النهري", "Ida"]);

        string[] rows = File.ReadAllLines(Path.Combine(report.OutFolder!, OutPaths.NameFinder));
        Assert.Contains(rows, r => r.StartsWith(name, StringComparison.Ordinal) && r.Contains(",,,,", StringComparison.Ordinal));
    }

    /// <summary>What is keyed or traced is cut, trimmed, turned in and sewn down as any other strip is.</summary>
    [Theory]
    [InlineData("machineLetters")]
    [InlineData("traced")]
    public void Every_way_has_its_cut_list_and_its_finishing_sheet(string way)
    {
        using var folder = new TemporaryFolder()
            .With("job.json",
                $$"""{ "format": 1, "title": "Banner", "lists": ["crew.csv"], "way": "{{way}}", "hem": { "length": "900 mm", "closed": false }, "letters": { "sizes": ["9 mm"], "holds": "any" }, "lettering": { "height": "9 mm" } }""")
            .With("crew.csv", "Name\nTobin Marsh\nIda\nAda\n");
        var report = Bander.Print(folder.FullPath, wishes: new PrintWishes());
        Assert.True(File.Exists(Path.Combine(report.OutFolder!, OutPaths.CuttingPlan)));
        using var pdf = PdfDocument.Open(File.ReadAllBytes(Path.Combine(report.OutFolder!, OutPaths.WorkPacket("a4"))));
        string text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));

        // The cloth gets 1 % shorter under the stitches and not in the gaps, and there is half an inch more at each end.
        double sewnMm = report.Plan!.Rounds.SelectMany(r => r.Names).Sum(n => n.WidthMm);
        double cutMm = 25.4 + report.Plan.OnClothMm(900);
        Assert.Equal(25.4 + 900 + (0.01 * sewnMm), cutMm, 0.05);
        string cut = FormattableString.Invariant($"{Common.Thousandths.Tenths(cutMm):0.0} mm");
        Assert.Contains(
            $"With its ends it takes {cut} of the cloth, from 0.0 mm to {cut}: 12.7 mm before it to turn in, 12.7 mm after it to turn in.",
            text, StringComparison.Ordinal);
        Assert.Contains("1.0 % under the stitches are allowed for, and nothing in the gaps", text, StringComparison.Ordinal);
        Assert.Contains("spray starch 1 can of 400 ml", text, StringComparison.Ordinal);
        Assert.Contains("Starch the strip before you rule it", text, StringComparison.Ordinal);
        Assert.Contains(report.Estimate!.Work.Rows, r => r.Act == "stiffening the cloth" && r.EachMinutes > 3.5);
        Assert.Contains("The work by hand, in its order", text, StringComparison.Ordinal);
        Assert.Contains("round 1 925.4 mm in all", text, StringComparison.Ordinal);
        Assert.Contains("and 12.7 mm (1/2 in) at both ends", text, StringComparison.Ordinal);
        Assert.DoesNotContain("alignment marks", text, StringComparison.Ordinal);
        Assert.DoesNotContain("hooping", text, StringComparison.OrdinalIgnoreCase);

        // The template is the cloth as it is cut, and says where the finished strip ends on it.
        var strip = Assert.Single(TemplateStrip.OfCloths(report.Plan));
        Assert.Equal(0, strip.FromMm);
        Assert.Equal(cutMm, strip.ToMm, 0.01);
        Assert.Equal([12.7, Math.Round(cutMm - 12.7, 1)], strip.FinishedEndsMm.Select(e => Math.Round(e, 1)));
    }

    private static string[] Made(MakeReport report, string folder) =>
        [.. Directory.GetFiles(Path.Combine(report.OutFolder!, folder)).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];
}

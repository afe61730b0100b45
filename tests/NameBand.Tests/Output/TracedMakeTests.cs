using System.Text.Json;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.Outside;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>The whole line for names that are traced.</summary>
public class TracedMakeTests
{
    private static TemporaryFolder Folder(string traced = "") => new TemporaryFolder()
        .With("job.json",
            $$"""
            { "format": 1, "title": "Banner", "lists": ["crew.csv"], "hem": { "length": "700 mm", "closed": false }, "way": "traced",
              "lettering": { "face": "Routed Gothic", "height": "12 mm" }, "traced": { {{traced}} } }
            """)
        .With("crew.csv", "Name\nTobin Marsh\nIda\nAda\n");

    [Fact]
    public void A_template_is_made_for_both_papers_and_no_needle_paths()
    {
        using var folder = Folder();
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.True(File.ReadAllBytes(folder["out/template-a4.pdf"]).AsSpan().StartsWith("%PDF"u8));
        Assert.True(File.Exists(folder["out/template-letter.pdf"]));
        Assert.False(Directory.Exists(folder["out/needle-paths"]));
        using var plan = JsonDocument.Parse(File.ReadAllText(folder["out/plan.json"]));
        Assert.Equal(JsonValueKind.Null, plan.RootElement.GetProperty("hoopings")[0].GetProperty("needlePath").ValueKind);
    }

    [Fact]
    public void Hours_follow_the_length_of_line_and_the_pace()
    {
        using var folder = Folder("\"mmPerMinute\": 100");
        var slow = Bander.Make(folder.FullPath).Estimate!.MachineWork.Single(w => w.CountedFrom == "m of line");
        Assert.Equal(slow.Count * 1000 / 100, slow.Minutes.Likely, 6);

        // An I of a face of one stroke width is a bar as high as the letter, less its round ends.
        folder.With("crew.csv", "Name\nIII\nII\n");
        double fiveBars = Bander.Make(folder.FullPath).Estimate!.MachineWork.Single(w => w.CountedFrom == "m of line").Count;
        Assert.InRange(fiveBars, 5 * 0.0105, 5 * 0.0121);
        folder.With("crew.csv", "Name\nTobin Marsh\nIda\nAda\n");
        folder.With("job.json", File.ReadAllText(folder["job.json"]).Replace("\"mmPerMinute\": 100", "\"sewn\": \"byHand\""));
        var byHand = Bander.Make(folder.FullPath).Estimate!;
        Assert.Equal(0, byHand.MachineMinutes.Likely);
        Assert.Equal(slow.Count * 1000 / 25 * 1.1, byHand.HandWork.Single(w => w.CountedFrom == "m of line").Minutes.Likely, 6);
    }

    /// <summary>A face of one stroke width: its upright bars are as long as the letter is high, less the round ends.</summary>
    [Fact]
    public void Centre_lines_run_in_the_middle_of_strokes()
    {
        var shelf = new FaceShelf();
        var names = new NameList([], [new Name("l", new RowRef("x", 1))]);
        var bar = Letterer.Letter(names, shelf.Open("Routed Gothic", "").Value!, shelf).Value!.Names[0];
        var lines = Centrelines.Of(bar.Pieces[0].Piece, 10);
        var line = Assert.Single(lines);
        double middle = (bar.Pieces[0].Piece.Ink.LeftMm + bar.Pieces[0].Piece.Ink.RightMm) / 2 * 10;
        Assert.All(line, p => Assert.Equal(middle, p.XMm, 0.15));
        double length = line.Zip(line.Skip(1)).Sum(p => p.First.DistanceTo(p.Second));
        Assert.Equal(bar.Ink.HeightMm * 10, length, 1.5);
    }

    /// <summary>Poppler draws the page at 10 pixels a millimetre; the test square must be 500 pixels each way, within 2.</summary>
    [SkippableTheory]
    [InlineData("a4", 2970, 2100)]
    [InlineData("letter", 2794, 2159)]
    public void The_test_square_is_true_to_scale(string paper, int width, int height)
    {
        OutsideTool.Require("pdftoppm", "poppler-utils");
        using var folder = Folder();
        Bander.Make(folder.FullPath);
        OutsideTool.Run(
            "pdftoppm", ["-r", "254", "-f", "1", "-l", "1", "-png", "-singlefile", folder[$"out/template-{paper}.pdf"], folder["page"]]);
        using var page = Image.Load<L8>(File.ReadAllBytes(folder["page.png"]));
        Assert.InRange(page.Width, width - 2, width + 2);
        Assert.InRange(page.Height, height - 2, height + 2);

        // A level line through the square's upper half meets its two sides and nothing else.
        int y = 10 * 10 + 60;
        int[] dark = [.. Enumerable.Range(page.Width - 800, 800).Where(x => page[x, y].PackedValue < 128)];
        Assert.Equal(500, dark[^1] - dark[0], 4.0);
        int column = (dark[0] + dark[^1]) / 2 + 200;
        int[] down = [.. Enumerable.Range(50, 600).Where(row => page[column, row].PackedValue < 128)];
        Assert.Equal(500, down[^1] - down[0], 4.0);
    }

    [SkippableFact]
    public void Mirrored_it_is_the_mirror_image()
    {
        OutsideTool.Require("pdftoppm", "poppler-utils");
        using var plain = Folder();
        using var mirrored = Folder("\"mirrored\": true");
        var rows = new[] { plain, mirrored }.Select(folder =>
        {
            Bander.Make(folder.FullPath);
            OutsideTool.Run(
                "pdftoppm", ["-r", "100", "-f", "1", "-l", "1", "-png", "-singlefile", folder["out/template-a4.pdf"], folder["page"]]);
            return Image.Load<L8>(File.ReadAllBytes(folder["page.png"]));
        }).ToList();

        // The cut edge of the first row is the first line that goes nearly all across the page; its letters lie 22 to 32 mm below.
        int Edge(Image<L8> page) => Enumerable.Range(0, page.Height)
            .First(y => Enumerable.Range(0, page.Width).Count(x => page[x, y].PackedValue < 200) > 0.8 * page.Width);

        // Heavy ink column by column in the band of the first row's letters.
        bool[] Ink(Image<L8> page)
        {
            int top = Edge(page) + (int)(22.5 / 25.4 * 100);
            return [.. Enumerable.Range(48, page.Width - 96).Select(x => Enumerable.Range(top, 40).Any(y => page[x, y].PackedValue < 60))];
        }

        bool[] there = Ink(rows[0]);
        bool[] back = [.. Ink(rows[1]).Reverse()];
        Assert.True(there.Count(i => i) > 50);
        Assert.True(there.Zip(back).Count(p => p.First == p.Second) > 0.97 * there.Length);
        rows.ForEach(r => r.Dispose());
    }
}

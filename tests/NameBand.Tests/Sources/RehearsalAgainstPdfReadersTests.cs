using System.Globalization;
using System.Text.RegularExpressions;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using NameBand.Output.Rehearsal;
using NameBand.Output.Sheets;
using NameBand.Output.Tracing;
using NameBand.Tests.Outside;
using NameBand.Tests.StitchingRoom;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>The paper rehearsal measured as it comes out of the printer, by poppler's pdftotext and by PdfPig.</summary>
public partial class RehearsalAgainstPdfReadersTests
{
    private const double MmPerUnit = 25.4 / 72;

    /// <summary>Words stand so far beside their line.</summary>
    private const double BesideMm = 0.7;

    private static readonly string[] Crew =
        ["Hesper Quayle", "Tobin Marsh", "Ada Willowby", "Kit Farthing", "Una Thistlewood", "Fern Jessop"];

    public static TheoryData<string, bool> Sheets => new() { { "a4", true }, { "letter", true }, { "a4", false } };

    [SkippableTheory]
    [MemberData(nameof(Sheets))]
    public void Ten_centimetres_are_ten_centimetres_on_every_row(string paper, bool closed)
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        var plan = Plan(Job(1240, closed));
        using var file = new TemporaryFolder();
        int sheets = Write(plan, paper, file["rehearsal.pdf"]);
        var words = Words(file["rehearsal.pdf"]);
        var marks = words.Where(w => w.Text == "cm").Select(w => words[words.IndexOf(w) - 1]).ToList();
        Assert.Equal(Enumerable.Range(0, 13).Select(i => i * 10), marks.Select(m => Number(m.Text)).Distinct().Order());
        foreach (var row in marks.GroupBy(m => (m.Page, Math.Round(m.YMm))))
        {
            var first = row.First();
            Assert.All(row, m => Assert.Equal(10 * (Number(m.Text) - Number(first.Text)), m.LeftMm - first.LeftMm, 0.1));
        }

        // The same sign stands at the same place of the round on both rows that meet there; a short last row may have no figure.
        var joins = words.Where(w => Join().IsMatch(w.Text) && marks.Exists(m => m.Page == w.Page && Math.Abs(m.YMm - w.YMm) < 1))
            .GroupBy(w => w.Text).Where(g => g.Count() > 1).ToList();
        Assert.True(joins.Count > 2);
        foreach (var join in joins)
        {
            double[] places = [.. join.Select(w =>
            {
                var mark = marks.Where(m => m.Page == w.Page).MinBy(m => Math.Abs(m.YMm - w.YMm))!;
                return (10 * Number(mark.Text)) + w.RightMm + BesideMm - (mark.LeftMm - BesideMm);
            })];
            Assert.Equal(2, places.Length);
            Assert.Equal(places[0], places[1], 0.1);
        }

        Assert.Contains(
            words, w => w.Text == "sheets:" && words[words.IndexOf(w) - 1].Text == sheets.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(sheets, words.Max(w => w.Page));
    }

    [Theory]
    [InlineData("a4", 297)]
    [InlineData("letter", 279.4)]
    public void Every_sheet_has_bars_of_its_own(string word, double widthMm)
    {
        using var pdf = Open(Plan(Job(1240, true)), word);
        Assert.All(pdf.GetPages(), page =>
        {
            Assert.Equal(widthMm, page.Width * MmPerUnit, 0.02);
            var strokes = page.Paths.Where(p => p.IsStroked).SelectMany(p => p).Select(s => s.GetBoundingRectangle()!.Value)
                .Select(r => (Left: r.Left * MmPerUnit, Width: r.Width * MmPerUnit, Height: r.Height * MmPerUnit)).ToList();
            foreach (double bar in (double[])[100, 101.6])
            {
                // Whole on the sheet, with a tick at either end.
                var lies = Assert.Single(strokes, s => s.Height < 0.1 && Math.Abs(s.Width - bar) < 0.01);
                Assert.InRange(lies.Left, 5, widthMm - bar - 5);
                Assert.All((double[])[lies.Left, lies.Left + bar], end =>
                    Assert.Contains(strokes, s => s.Width < 0.1 && Math.Abs(s.Left - end) < 0.1));
            }
        });
    }

    /// <summary>The paper of a curved strip is the ring itself: circles through its cut lines have the radius and the length of
    /// the round.</summary>
    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public void A_curved_strip_is_cut_along_its_true_curve(string word)
    {
        var job = Job(1300, true);
        job = job with { Hem = job.Hem with { Turn = 0.75 }, Layout = job.Layout with { IsCurved = true } };
        var plan = Plan(job);
        using var pdf = Open(plan, word);
        var rows = pdf.GetPages().SelectMany(page => page.Paths.Where(p => p is { IsStroked: true, IsFilled: false }).SelectMany(p => p)
            .Select(s => s.Commands.Select(c => c switch
            {
                UglyToad.PdfPig.Core.PdfSubpath.Move m => m.Location,
                UglyToad.PdfPig.Core.PdfSubpath.Line l => l.To,
                _ => (UglyToad.PdfPig.Core.PdfPoint?)null,
            }).OfType<UglyToad.PdfPig.Core.PdfPoint>().Select(p => new Point(p.X * MmPerUnit, p.Y * MmPerUnit)).ToList())
            .Where(points => points.Count > 20)).ToList();
        double radius = plan.Hem.RadiusMm(1);
        double widthMm = pdf.GetPage(1).Width * MmPerUnit;
        double lowerMm = 0;
        Assert.All(rows, points =>
        {
            var lower = points.Skip(points.Count / 2).Take(points.Count / 2).ToList();
            Assert.Equal(radius, RadiusOf(lower[0], lower[lower.Count / 2], lower[^1]), 1.0);
            double length = lower.Zip(lower.Skip(1)).Sum(p => p.First.DistanceTo(p.Second));
            lowerMm += length;
            double upper = points.Take(points.Count / 2).Zip(points.Take(points.Count / 2).Skip(1)).Sum(p => p.First.DistanceTo(p.Second));
            Assert.True(upper < length);
            Assert.All(points, p => Assert.InRange(p.XMm, 11.9, widthMm - 11.9));
        });
        Assert.True(rows.Count > 4);
        Assert.Equal(plan.Rounds[0].LengthMm + (rows.Count * Template.OverlapMm), lowerMm, 1.0);
    }

    [Fact]
    public void The_middles_the_joins_and_the_ends_are_marked()
    {
        var job = Job(2400, true);
        job = job with
        {
            Layout = job.Layout with
            {
                CentreFront = Length.FromMm(1200),
                Piece = Length.FromMm(900),
                KeepClear = [new ClearPlace(Length.FromMm(600), Length.FromMm(30))],
            },
        };
        var plan = Plan(job);
        var marks = RehearsalMark.Of(plan, plan.Rounds[0]);
        Assert.Contains(marks, m => m.Word.English.Contains("centre front", StringComparison.Ordinal) && Math.Abs(m.AtMm - 1200) < 0.01);
        Assert.Contains(new RehearsalMark(585, "clear from here"), marks);
        Assert.Contains(new RehearsalMark(615, "to here"), marks);
        Assert.Contains(
            marks, m => m.AtMm == 0 && m.Word.English.Contains("start", StringComparison.Ordinal)
            && m.Word.English.Contains("centre back", StringComparison.Ordinal));
        double[] joins = [.. plan.Cloths.SelectMany(c => c.Pieces).Select(p => p.StartMm).Where(s => s > 0).Order()];
        Assert.NotEmpty(joins);
        Assert.Equal(joins, marks.Where(m => m.Word == "join").Select(m => m.AtMm));
    }

    private static BandJob Job(double hemMm, bool closed) => Sample.Job.WithHem(hemMm, closed).WithRounds(1).WithHeight(9);

    private static StripPlan Plan(BandJob job) => LayoutPlanner.Plan(
        job, HemPlanner.Plan(job).Value!, new LetteredList("Nunito Bold", [.. Shelf.Names("nunito-bold", Crew)], []),
        FabricTable.Find("quilting cotton")!).Value!;

    private static Paper Of(string word) => Paper.Both.Single(p => p.Word == word);

    private static int Write(StripPlan plan, string paper, string path)
    {
        using var stream = File.Create(path);
        return RehearsalSheet.Write(stream, Of(paper), "Lantern walk", plan, default);
    }

    private static PdfDocument Open(StripPlan plan, string word)
    {
        using var stream = new MemoryStream();
        RehearsalSheet.Write(stream, Of(word), "Lantern walk", plan, default);
        return PdfDocument.Open(stream.ToArray());
    }

    private static double RadiusOf(Point a, Point b, Point c)
    {
        double area = Math.Abs(((b.XMm - a.XMm) * (c.YMm - a.YMm)) - ((b.YMm - a.YMm) * (c.XMm - a.XMm))) / 2;
        return a.DistanceTo(b) * b.DistanceTo(c) * c.DistanceTo(a) / (4 * area);
    }

    private sealed record Word(int Page, string Text, double LeftMm, double RightMm, double YMm);

    private static List<Word> Words(string pdf)
    {
        var words = new List<Word>();
        int page = 0;
        foreach (string line in OutsideTool.Run("pdftotext", ["-bbox", "-enc", "UTF-8", pdf, "-"]).Split('\n'))
        {
            page += line.Contains("<page ", StringComparison.Ordinal) ? 1 : 0;
            if (BoxOfWord().Match(line) is { Success: true } box)
            {
                double At(int group) => double.Parse(box.Groups[group].Value, CultureInfo.InvariantCulture) * MmPerUnit;
                words.Add(new Word(page, box.Groups[5].Value, At(1), At(3), At(2)));
            }
        }

        return words;
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("""<word xMin="([-0-9.]+)" yMin="([-0-9.]+)" xMax="([-0-9.]+)" yMax="([-0-9.]+)">(.*)</word>""")]
    private static partial Regex BoxOfWord();

    [GeneratedRegex("^1[A-Z]$")]
    private static partial Regex Join();
}

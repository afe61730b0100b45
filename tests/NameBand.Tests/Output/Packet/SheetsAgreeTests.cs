using System.Text.Json;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>What the packet says is what the plan says: the grain, the verdict on the upper edge, and how a hooping lies.</summary>
public sealed class SheetsAgreeTests
{
    private static TemporaryFolder Job(string hem, string strip, params string[] names) => new TemporaryFolder()
        .With("job.json",
            $$"""{ "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": {{hem}}, "strip": {{strip}}, "lettering": { "height": "9 mm" } }""")
        .With("names.csv", "Name\n" + string.Join('\n', names) + "\n");

    private static string Packet(MakeReport report)
    {
        using var pdf = PdfDocument.Open(File.ReadAllBytes(Path.Combine(report.OutFolder!, OutPaths.WorkPacket("a4"))));
        return string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    [Theory]
    [InlineData("bias", "on the bias, at 45° to the selvedge", "along the selvedge.")]
    [InlineData("straight", "along the selvedge.", "bias")]
    public void The_packet_cuts_along_the_grain_that_was_asked_for(string grain, string said, string neverSaid)
    {
        using var folder = Job("""{ "length": "600 mm", "turn": 0 }""", $$"""{ "grain": "{{grain}}" }""", "Wenna Tregear", "Jo Marsh");
        string text = Packet(Bander.Print(folder.FullPath, wishes: new PrintWishes()));
        Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.DoesNotContain(neverSaid, text, StringComparison.Ordinal);
        Assert.DoesNotContain("along the cloth", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_upper_edge_that_cannot_be_eased_is_one_verdict_in_status_problems_plan_and_packet()
    {
        using var folder =
            Job("""{ "length": "900 mm", "turn": 0.75 }""", "{}", "Wenna Tregear", "Jo Marsh", "Ilse Varga-Quill", "Ottilie Marsh",
                "Bram Sedgewick", "Una Pell");
        var report = Bander.Print(folder.FullPath, wishes: new PrintWishes());
        string verdict = report.Plan!.Easing[0].InWords().English;
        Assert.Contains("more than can be eased", verdict, StringComparison.Ordinal);
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Contains(report.Problems, p => p.Severity == Severity.NeedsPerson && p.Found == verdict);
        string text = Packet(report);
        Assert.Contains(verdict, text, StringComparison.Ordinal);
        Assert.Contains("cannot be sewn down as planned", text, StringComparison.Ordinal);
        Assert.DoesNotContain("draw it up between the names", text, StringComparison.Ordinal);
        using var plan = JsonDocument.Parse(File.ReadAllText(Path.Combine(report.OutFolder!, "plan.json")));
        Assert.Equal("wantsShaping", plan.RootElement.GetProperty("rounds")[0].GetProperty("upperEdge").GetString());
    }

    [Fact]
    public void What_can_be_eased_is_a_note_with_the_same_words_in_the_packet()
    {
        using var folder =
            Job("""{ "length": "3 m", "turn": 0.25 }""", "{}", "Wenna Tregear", "Jo Marsh", "Ilse Varga-Quill", "Ottilie Marsh");
        var report = Bander.Print(folder.FullPath, wishes: new PrintWishes());
        string verdict = report.Plan!.Easing[0].InWords().English;
        Assert.Contains("it can be eased in", verdict, StringComparison.Ordinal);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Contains(report.Problems, p => p.Severity == Severity.Note && p.Found == verdict);
        Assert.Contains(verdict, Packet(report), StringComparison.Ordinal);
    }

    /// <summary>Two strips side by side: numbers of names stand where their names lie, the upper strip's above, and the words in
    /// that order.</summary>
    [Fact]
    public void A_hooping_is_drawn_whole_as_it_lies_and_says_which_strip_is_upper()
    {
        using var folder = Job(
            """{ "length": "500 mm", "turn": 0, "closed": false }""", """{ "rounds": 2, "lanes": 2 }""",
            "Wenna Tregear", "Jo Marsh", "Ilse Varga", "Bo Reed", "Ottilie Marsh", "Bram Sedgewick", "Una Pell", "Ada");
        var report = Bander.Print(folder.FullPath, wishes: new PrintWishes());
        using var pdf = PdfDocument.Open(File.ReadAllBytes(Path.Combine(report.OutFolder!, OutPaths.WorkPacket("a4"))));
        int seen = 0;
        foreach (var hooping in report.Plan!.Hoopings.Where(h => h.Segments.Length == 2))
        {
            var page = pdf.GetPages()
                .Single(p => p.GetWords().Zip(p.GetWords().Skip(1))
                .Any(w => w.First.Text == "Hooping" && w.Second.Text == $"{hooping.Number}"));
            var words = page.GetWords().ToList();
            double Heading(int number) =>
                words.Where((w, i) => w.Text == "Hooping" && words[i + 1].Text == $"{number}").Select(w => w.BoundingBox.Bottom)
                .DefaultIfEmpty(0).Max();
            double top = Heading(hooping.Number);
            double foot = Heading(hooping.Number + 1);
            var here = words.Where(w => w.BoundingBox.Bottom < top && w.BoundingBox.Bottom > foot).ToList();
            double upper = here.Where(w => w.Text == "upper").Max(w => w.BoundingBox.Bottom);
            double lower = here.Where(w => w.Text == "lower").Max(w => w.BoundingBox.Bottom);
            Assert.True(upper > lower, "The upper strip is said first.");
            var placed = hooping.Segments.SelectMany(s => s.Segment.Names.Select(n => (
                n.Order, Name: n.Lettered.Name.Text, s.YMm, IsUpper: s == hooping.Segments.MaxBy(o => o.YMm),
                XMm: s.XMm + report.Plan.OnClothMm(n.StartMm - s.Segment.StartMm) + (n.WidthMm / 2)))).ToList();
            var drawn = placed.Select(p => InType(here, p.Order, p.Name)).ToList();
            for (int i = 0; i < placed.Count; i++)
            {
                Assert.InRange(drawn[i].Y, placed[i].IsUpper ? upper : lower, placed[i].IsUpper ? top : upper);
                Assert.Equal(placed[i].XMm - placed[0].XMm, (drawn[i].X - drawn[0].X) / 72 * 25.4, 0.3);
                Assert.Equal(placed[i].YMm - placed[0].YMm, (drawn[i].Y - drawn[0].Y) / 72 * 25.4, 0.3);
            }

            seen++;
        }

        Assert.True(seen > 0);
    }

    /// <summary>Middle and base line, in points, of a name that stands in type with its number before it.</summary>
    private static (double X, double Y) InType(List<Word> words, int order, string name)
    {
        string[] of = [$"{order}", .. name.Split(' ')];
        int at = Enumerable.Range(0, words.Count - of.Length + 1)
            .First(i => words.Skip(i).Take(of.Length).SelectMany(w => w.Text.Split('\u00a0')).Take(of.Length).SequenceEqual(of));
        var last = words.Skip(at).First(w => w.Text.EndsWith(of[^1], StringComparison.Ordinal));
        return ((words[at].BoundingBox.Left + last.BoundingBox.Right) / 2, words[at].BoundingBox.Bottom);
    }
}

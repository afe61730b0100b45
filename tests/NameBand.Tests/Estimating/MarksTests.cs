using System.Text.Json;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Pipeline;
using NameBand.Reports;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.Estimating;

/// <summary>One job, its hoopings marked in each way: the places are the same, only the work and the words are others.</summary>
public sealed class MarksTests : IDisposable
{
    private readonly TemporaryFolder _job = new TemporaryFolder().With("names.csv", "Name\nOrla Penhale\nBram Sedgewick\nTuva Lind\n");

    public void Dispose() => _job.Dispose();

    [Fact]
    public void Drawn_and_paper_crosses_lie_where_sewn_ones_do_and_nothing_of_them_is_sewn()
    {
        var sewn = Laid("sewn");
        foreach (string marks in new[] { "drawn", "paper" })
        {
            var laid = Laid(marks);
            Assert.Equal(sewn.Plan.Hoopings.Length, laid.Plan.Hoopings.Length);
            foreach (var (a, b) in sewn.Plan.Hoopings.Zip(laid.Plan.Hoopings))
            {
                Assert.Equal(a.Segments.Select(sewn.Plan.CrossesOf), b.Segments.Select(laid.Plan.CrossesOf));
                var (left, right) = laid.Plan.CrossesOf(b.Segments[0]);
                Assert.True(right.XMm - left.XMm >= 90, $"{right.XMm - left.XMm}");

                // In the turn-in: beyond the finished width, within the cut one.
                double below = Math.Abs(left.YMm - b.Segments[0].YMm);
                Assert.InRange(below, laid.Plan.Hem.Strip.FinishedWidthMm / 2, laid.Plan.Hem.Strip.CutWidthMm / 2);
            }

            // All steps but the marks and the change of thread after them are those of the path with sewn marks.
            var with = new Stitcher(sewn.Fabric, sewn.Plan.LetterHeightMm).SewHooping(sewn.Plan, sewn.Plan.Hoopings[0]).Steps;
            var without = new Stitcher(laid.Fabric, laid.Plan.LetterHeightMm).SewHooping(laid.Plan, laid.Plan.Hoopings[0]).Steps;
            int stop = with.Select(s => s.Action).ToList().IndexOf(NeedleAction.Stop);
            Assert.True(stop > 0 && with[..stop].Any(s => s.Kind == StitchKind.Mark));
            Assert.Equal(with.Skip(stop + 1).ToArray(), without.ToArray());
        }
    }

    [Fact]
    public void Each_kind_of_marks_has_its_own_rows()
    {
        const double Rest = 1.1;
        Assert.Equal(["changing to the thread of the marks", "taking the marks out"], Acts("sewn"));
        Assert.Equal(["drawing two crosses, bringing them under the needle"], Acts("drawn"));
        Assert.Equal(["laying the template, its crosses under the needle"], Acts("paper"));
        var (sewn, drawn, paper) = (Rows("sewn"), Rows("drawn"), Rows("paper"));
        double count = sewn.First(r => r.Act == "taking the marks out").Count;
        Assert.Equal((count, 1 * Rest), Of(drawn, "drawing two crosses"));
        Assert.Equal((count, 2 * Rest), Of(paper, "laying the template"));
        Assert.Contains(sewn, r => r.Act == "changing the thread");
        Assert.DoesNotContain(drawn.Concat(paper), r => r.Act == "changing the thread");

        // With their thread and their unpicking sewn crosses take 3.5 and the stitches of the machine.
        double more = Sum(sewn) - Sum(drawn);
        Assert.True(more > count * 2.4, $"{more / count}");

        (double, double) Of(IReadOnlyList<WorkRow> rows, string act) =>
            rows.Where(r => r.Act.English.StartsWith(act, StringComparison.Ordinal))
                .Select(r => (r.Count, Math.Round(r.EachMinutes, 9))).Single();
    }

    [Fact]
    public void The_log_times_what_is_met_under_the_needle_with_the_hooping()
    {
        double Timed(string marks) => Estimated(marks).Hoopings.Sum(h => h.TimedHandMinutes);
        int hoopings = Estimated("sewn").Hoopings.Length;
        Assert.Equal(hoopings * 1.1, Timed("drawn") - Timed("sewn"), 6);
        Assert.Equal(hoopings * 2.2, Timed("paper") - Timed("sewn"), 6);
    }

    [Fact]
    public void Every_sheet_says_how_they_are_made()
    {
        Write("drawn", "\"hoop\": { \"hold\": \"clamp\" }, ");
        Assert.NotNull(Bander.Print(_job.FullPath).Estimate);
        using var plan = JsonDocument.Parse(File.ReadAllText(_job["out/plan.json"]));
        Assert.Equal(
            ("drawn", "clamp"), (plan.RootElement.GetProperty("marks").GetString(), plan.RootElement.GetProperty("hold").GetString()));
        string readMe = File.ReadAllText(_job["out/read-me-first.txt"]);
        Assert.Contains("Draw them in pencil, not in chalk", readMe, StringComparison.Ordinal);
        Assert.DoesNotContain("Take the marks out", readMe, StringComparison.Ordinal);
        string packet = Words("out/sheets/work-packet-a4.pdf");
        Assert.Contains("Draw both crosses of a hooping in pencil", packet, StringComparison.Ordinal);
        Assert.Contains("pencilled crosses lie in the turn-in", packet, StringComparison.Ordinal);
        Assert.DoesNotContain("alignment marks out", packet, StringComparison.Ordinal);
        Assert.DoesNotContain("stop", File.ReadAllText(_job["out/needle-paths/hooping-001.csv"]), StringComparison.Ordinal);
        byte[] drawn = File.ReadAllBytes(_job["out/proofs/hooping-001.png"]);
        string drawnMark = plan.RootElement.GetProperty("hoopings")[0].GetProperty("mark").GetString()!;

        // What was made with other marks is not taken over, and a sheet of them is an old one.
        Write("sewn");
        Bander.Make(_job.FullPath);
        Assert.Contains("stop", File.ReadAllText(_job["out/needle-paths/hooping-001.csv"]), StringComparison.Ordinal);
        Assert.NotEqual(drawn, File.ReadAllBytes(_job["out/proofs/hooping-001.png"]));
        using var after = JsonDocument.Parse(File.ReadAllText(_job["out/plan.json"]));
        Assert.NotEqual(drawnMark, after.RootElement.GetProperty("hoopings")[0].GetProperty("mark").GetString());
    }

    [Fact]
    public void Once_something_is_sewn_the_rest_goes_on_with_its_marks()
    {
        Write("drawn");
        Bander.Make(_job.FullPath);
        var said = Bander.Sewn(_job.FullPath, null, new SewingWord(1, SewingDeed.Sewn), () => { });
        Assert.Equal(ExitStatus.AllPlaced, said.Status);
        Write(null);
        Assert.Equal(MarkMethod.Drawn, new LayoutSession(_job.FullPath).Lay().Laid!.Plan.Marks);
        Write("sewn");
        var lay = new LayoutSession(_job.FullPath).Lay();
        Assert.Equal(MarkMethod.Drawn, lay.Laid!.Plan.Marks);
        Assert.Contains(lay.Problems, p => p.Where.Key == "marks" && p.Found.English.Contains("begun with \"drawn\"", StringComparison.Ordinal));
        Write("sewn", "\"sewing\": { \"restMayDiffer\": true }, ");
        Assert.Equal(MarkMethod.Sewn, new LayoutSession(_job.FullPath).Lay().Laid!.Plan.Marks);
    }

    private void Write(string? marks, string more = "") => _job.With(
        "job.json", "{ \"format\": 1, \"lists\": [\"names.csv\"], \"hem\": { \"length\": \"420 mm\", \"turn\": 0 }, " + more
            + (marks is null ? "" : $"\"marks\": \"{marks}\", ") + "\"lettering\": { \"height\": \"8 mm\" } }");

    private LaidOutJob Laid(string marks)
    {
        Write(marks);
        return new LayoutSession(_job.FullPath).Lay().Laid!;
    }

    private Estimate Estimated(string marks) => Laid(marks).Calculate().Estimate;

    private IReadOnlyList<WorkRow> Rows(string marks) => Estimated(marks).Work.Rows;

    private string[] Acts(string marks) => [.. Rows(marks)
        .Where(r => r.By == Doer.Hands
            && (r.Act.English.Contains("marks", StringComparison.Ordinal) || r.Act.English.Contains("crosses", StringComparison.Ordinal)))
        .Select(r => r.Act.English)];

    private static double Sum(IEnumerable<WorkRow> rows) => rows.Sum(r => r.Minutes.Likely);

    private string Words(string file)
    {
        using var pdf = PdfDocument.Open(_job[file]);
        return string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }
}

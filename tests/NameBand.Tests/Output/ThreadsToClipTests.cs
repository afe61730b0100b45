using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Lettering.Faces;
using NameBand.Output;
using NameBand.Stitching;
using NameBand.Tests.SewingOn;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>A machine that does not cut leaves threads: proof and sheet say which are to be clipped.</summary>
public class ThreadsToClipTests
{
    [Fact]
    public void Each_cut_between_two_stitches_is_a_thread_the_last_one_and_that_before_a_stop_are_not()
    {
        NeedleStep Step(NeedleAction action, double x) =>
            new(action, action == NeedleAction.Stitch ? StitchKind.Satin : StitchKind.None, new Point(x, 0));
        var path = new NeedlePath(
        [
            Step(NeedleAction.Jump, 0), Step(NeedleAction.Stitch, 0), Step(NeedleAction.Trim, 0), Step(NeedleAction.Stop, 0),
            Step(NeedleAction.Jump, 1), Step(NeedleAction.Stitch, 1), Step(NeedleAction.Stitch, 4), Step(NeedleAction.Trim, 4),
            Step(NeedleAction.Jump, 7), Step(NeedleAction.Jump, 9), Step(NeedleAction.Stitch, 9), Step(NeedleAction.Trim, 9),
            Step(NeedleAction.End, 9),
        ]);
        Assert.Equal([(new Point(4, 0), new Point(9, 0))], ThreadsToClip.Of(path).AsEnumerable());
        Assert.Equal(
            "clip the last thread and 1 more at both ends, at 104–109 mm on the cloth; shorter threads between letters stay",
            ThreadsToClip.InWords(path, 100));
    }

    [Fact]
    public void The_proof_tells_them_and_no_more_are_left_than_are_cut_by_a_machine_that_cuts()
    {
        using var job = new SewnJob("Tobiah Quill", "Wenna Tregear");
        int trims = Trims(job, cuts: true);
        Assert.DoesNotContain("clip the last thread", Encoding.UTF8.GetString(job.Proof(1)), StringComparison.Ordinal);
        int byHand = Trims(job, cuts: false);
        Assert.InRange(byHand, 1, trims);
        string proof = Encoding.UTF8.GetString(job.Proof(1));
        int threads = ThreadsToClip.Of(NeedlePathReading.Read(job.Path(1))!).Length;
        Assert.InRange(threads, 1, byHand);
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"clip the last thread and {threads} more at both ends"), proof,
            StringComparison.Ordinal);
    }

    /// <summary>Many places are more than one line of a caption holds: nothing of them goes past its end, nothing is lost.</summary>
    [Fact]
    public void A_long_part_of_a_caption_is_broken_at_its_blanks()
    {
        using var face = ProofPicture.Face();
        string places = string.Join(", ", Enumerable.Range(100, 30).Select(i => FormattableString.Invariant($"{i}–{i + 40}")));
        var lines = Output.Drawing.CaptionLines.Wrap(["hooping 2", "mark KLNE", places, "true size"], face, 20, 600);
        Assert.True(lines.Count > 3);
        Assert.All(lines, l => Assert.InRange(face.Measure(l, 20), 1, 600));
        Assert.Equal("hooping 2   ·   mark KLNE", lines[0]);
        Assert.Equal(places + "   ·   true size", string.Join(' ', lines.Skip(1)));
    }

    private static int Trims(SewnJob job, bool cuts)
    {
        File.WriteAllText(
            Path.Combine(job.Folder, "workshop.json"),
            $$"""{ "format": 1, "machines": [ { "name": "one", "takes": ["coordinates"], "cutsThread": {{(cuts ? "true" : "false")}} } ] }""");
        job.Make();
        return job.Plan().GetProperty("hoopings")[0].GetProperty("trims").GetInt32();
    }
}

using NameBand.MachineLetters.Alphabets;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Stitching.Strokes;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>How the satin flows where strokes meet.</summary>
public class FlowTests
{
    private const double HeightMm = 12;

    /// <summary>Letters that are the same from left and right are sewn so: none of their legs runs over the other at an apex.</summary>
    [Theory]
    [InlineData("nunito-bold", "A", 0.02)]
    [InlineData("nunito-bold", "V", 0.005)]
    [InlineData("nunito-bold", "W", 0.005)]
    [InlineData("nunito-bold", "M", 0.01)]
    [InlineData("lato-bold", "A", 0.02)] // Flat tips from here on.
    [InlineData("lato-bold", "V", 0.005)]
    [InlineData("lato-bold", "W", 0.005)]
    [InlineData("noto-sans-bold", "A", 0.01)]
    [InlineData("noto-sans-bold", "V", 0.005)]
    [InlineData("noto-sans-bold", "W", 0.005)]
    [InlineData("bebas-neue-bold", "A", 0.025)]
    [InlineData("bebas-neue-bold", "V", 0.005)]
    [InlineData("roboto-slab-bold", "A", 0.05)]
    [InlineData("roboto-slab-bold", "W", 0.025)]
    public void An_apex_is_sewn_alike_from_left_and_right(string face, string letter, double most)
    {
        double unlike = Flow(Trial(face, letter)).UnlikePart;
        Assert.True(unlike <= most, $"{100 * unlike:0.0} % of the ink of {letter} lies over 20° from its mirror image");
    }

    /// <summary>At an apex three columns end on one line: both legs and the tip.</summary>
    [Theory]
    [InlineData("V", 1)]
    [InlineData("W", 3)]
    public void Both_legs_and_the_tip_meet_on_one_line(string letter, int apexes)
    {
        var columns = Trial("nunito-bold", letter).Columns;
        Assert.Equal(3 * apexes, columns.Sum(c => (c.Stroke.Start == EndKind.Meet ? 1 : 0) + (c.Stroke.End == EndKind.Meet ? 1 : 0)));
        Assert.Equal((2 * apexes) + 1, columns.Count);
    }

    /// <summary>A stem that goes on into an arch is no apex, and neither is a fork with a stem below it.</summary>
    [Theory]
    [InlineData("nunito-bold")]
    [InlineData("lato-bold")]
    [InlineData("roboto-slab-bold")]
    public void Arches_and_forks_are_none(string face)
    {
        foreach (string letter in new[] { "n", "m", "h", "r", "Y", "K", "X" })
        {
            Assert.DoesNotContain(Trial(face, letter).Columns, c => c.Stroke.Start == EndKind.Meet || c.Stroke.End == EndKind.Meet);
        }
    }

    /// <summary>A corner at which a stroke cannot be parted, as where the serif of this N begins, hides none behind it: the right stem
    /// is a column from the line to its serif, and its crossings turn about no corner.</summary>
    [Fact]
    public void A_corner_that_is_none_hides_none_behind_it()
    {
        var trial = Trial("roboto-slab-bold", "N");
        var box = trial.Outline.Bounds();
        Assert.Contains(trial.Columns, c =>
            Math.Abs(c.MiddleAt(0).X - c.MiddleAt(c.Length).X) < 0.1
            && Math.Min(c.MiddleAt(0).Y, c.MiddleAt(c.Length).Y) < 0.1
            && c.MiddleAt(c.Length / 2).X > (box.LeftMm + box.RightMm) / 2 && c.Length > 0.8 * HeightMm);
        Assert.InRange(Flow(trial).Nicks, 0, 1);
    }

    /// <summary>Twelve letters of a face: what is reached is held. No thread lies across another column, the tuck aside.</summary>
    [Theory]
    [InlineData("nunito-bold", 1.8, 0.5, 2)]
    [InlineData("roboto-slab-bold", 5.3, 0.6, 2)]
    [InlineData("vollkorn-bold", 4.3, 0.7, 3)]
    [InlineData("bebas-neue-bold", 4, 0.5, 2)]
    public void Few_seams_and_nicks_are_left_and_no_laps(string face, double mostSeamMm, double mostNicks, int worstNicks)
    {
        var flows = "AMNWKRaegks8".Select(l => Flow(Trial(face, l.ToString()))).ToList();
        double seams = flows.Average(f => f.SeamMm);
        double nicks = flows.Average(f => f.Nicks);
        Assert.True(seams <= mostSeamMm, $"{seams:0.00} mm of seams a letter");
        Assert.True(nicks <= mostNicks, $"{nicks:0.00} nicks a letter");
        Assert.InRange(flows.Max(f => f.Nicks), 0, worstNicks);
        double laps = 1000.0 * flows.Sum(f => f.Lapping) / flows.Sum(f => f.Stitches);
        Assert.True(laps <= 1, $"{laps:0.0} of 1000 stitches lie across another column");
    }

    /// <summary>
    /// In a narrow crotch the holes of both strokes are moved together: none of them bares the edge, and the straight outer edges
    /// beside it stay where they are.
    /// </summary>
    [Fact]
    public void Narrow_crotches_keep_their_edges()
    {
        var trial = Trial("bebas-neue-bold", "M");
        Assert.InRange(Flow(trial).Nicks, 0, 1);
        var box = trial.Outline.Bounds();
        double middle = (box.BottomMm + box.TopMm) / 2;
        var holes = trial.Path.Steps.Where(s => s.Kind == StitchKind.Satin && Math.Abs(s.At.YMm - middle) < box.HeightMm / 4).ToList();
        foreach (double edge in new[] { box.LeftMm, box.RightMm })
        {
            var along = holes.Where(s => Math.Abs(s.At.XMm - edge) < 0.6).ToList();
            Assert.InRange(along.Count, 12, 40);
            Assert.All(along, s => Assert.InRange(Math.Abs(s.At.XMm - edge), 0.15, 0.3));
        }
    }

    private static FlowMeasure Flow(LetterTrial trial) => FlowMeasure.Of(trial.Outline, trial.Path, LetterTrial.Cotton.Thread.DiameterMm);

    private static LetterTrial Trial(string face, string letter) =>
        LetterTrial.Of(new Stitcher(LetterTrial.Cotton, HeightMm), Shelf.Names(face, [letter])[0].Pieces[0].Piece, HeightMm)!;
}

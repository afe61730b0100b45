using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>A machine's own letters are drawn filled, in every face that stands for one and at every size that machines have.</summary>
public class FilledLettersTests
{
    private const double ReachMm = 0.25;

    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")! with { PullCompensationMm = 0 };

    [Theory]
    [InlineData("nunito-bold", 9)]
    [InlineData("nunito-bold", 5)]
    [InlineData("noto-sans-bold", 5)]
    [InlineData("vollkorn-bold", 5)]
    [InlineData("roboto-slab-bold", 7)]
    [InlineData("grand-hotel", 5)]
    public void No_letter_is_hollow(string face, double heightMm)
    {
        var name = Shelf.Name(face, "Baege8o");
        var path = new FilledLetters(Cotton, heightMm).PathOf(name);
        Assert.InRange(Covered(name, path, heightMm), 0.9, 1);
        Assert.All(path.Steps, s => Assert.InRange(s.At.XMm, -ReachMm, (name.Ink.WidthMm * heightMm) + ReachMm));
    }

    /// <summary>Lines that cross cannot be read as strokes: the letter is filled row by row, and is not its edge alone.</summary>
    [Fact]
    public void An_outline_that_crosses_itself_is_filled_too()
    {
        var outline = new Outline([new Ring([new(0, 0), new(1, 0), new(0.2, 0.9), new(0.5, -0.4), new(0.9, 0.9)])]);
        var piece = new LetterPiece("tangled", "Test Face", "q", outline, outline.Bounds());
        var name = LetterTrial.NameOf("q", [new PlacedPiece(piece, new Point(0, 0))], piece.Ink);
        Assert.InRange(Covered(name, new FilledLetters(Cotton, 9).PathOf(name), 9), 0.9, 1);
    }

    [Fact]
    public void No_thread_runs_from_one_letter_to_the_next()
    {
        const double heightMm = 9;
        var name = Shelf.Name("nunito-bold", "Nell");
        var path = new FilledLetters(Cotton, heightMm).PathOf(name);
        for (int i = 1; i < path.Steps.Length; i++)
        {
            if (path.Steps[i].Action == NeedleAction.Stitch)
            {
                Assert.InRange(path.Steps[i].At.DistanceTo(path.Steps[i - 1].At), 0, 0.6 * heightMm);
                Assert.Equal(LetterAt(name, path.Steps[i].At, heightMm), LetterAt(name, path.Steps[i - 1].At, heightMm));
            }
        }
    }

    private static int LetterAt(LetteredName name, Point at, double heightMm)
    {
        double x = (at.XMm / heightMm) + name.Ink.LeftMm;
        return Enumerable.Range(0, name.Pieces.Length).MinBy(i => name.Pieces[i].Piece.Ink.Moved(name.Pieces[i].At) is var box
            ? Math.Max(0, Math.Max(box.LeftMm - x, x - box.RightMm)) : 0);
    }

    /// <summary>Part of the outlines' ground that thread covers, by a grid of points.</summary>
    private static double Covered(LetteredName name, NeedlePath path, double heightMm)
    {
        const double gridMm = 0.15;
        var rings = name.Pieces.SelectMany(p => p.Piece.Outline.Rings.Select(
            r => r.Points.Select(q => (q + p.At - new Point(name.Ink.LeftMm, 0)) * heightMm).ToArray())).ToList();
        var thread = path.Steps.Zip(path.Steps.Skip(1))
            .Where(s => s.Second.Action == NeedleAction.Stitch && s.First.Action == NeedleAction.Stitch)
            .Select(s => (A: s.First.At, B: s.Second.At)).ToList();
        int inside = 0, covered = 0;
        for (double x = 0; x < name.Ink.WidthMm * heightMm; x += gridMm)
        {
            var near = thread.Where(t => Math.Min(t.A.XMm, t.B.XMm) - ReachMm <= x && Math.Max(t.A.XMm, t.B.XMm) + ReachMm >= x).ToList();
            for (double y = name.Ink.BottomMm * heightMm; y < name.Ink.TopMm * heightMm; y += gridMm)
            {
                var at = new Point(x, y);
                if (IsInside(rings, at))
                {
                    inside++;
                    covered += near.Exists(t => Distance(t.A, t.B, at) <= ReachMm) ? 1 : 0;
                }
            }
        }

        return (double)covered / inside;
    }

    private static bool IsInside(List<Point[]> rings, Point at)
    {
        bool isInside = false;
        foreach (var ring in rings)
        {
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                isInside ^= ring[i].YMm <= at.YMm != ring[j].YMm <= at.YMm
                    && at.XMm < ring[i].XMm + ((at.YMm - ring[i].YMm) / (ring[j].YMm - ring[i].YMm) * (ring[j].XMm - ring[i].XMm));
            }
        }

        return isInside;
    }

    private static double Distance(Point a, Point b, Point at)
    {
        var (along, to) = (b - a, at - a);
        double length = (along.XMm * along.XMm) + (along.YMm * along.YMm);
        double part = length <= 0 ? 0 : Math.Clamp(((to.XMm * along.XMm) + (to.YMm * along.YMm)) / length, 0, 1);
        return at.DistanceTo(a + (along * part));
    }
}

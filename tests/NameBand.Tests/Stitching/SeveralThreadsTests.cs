using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>What one name taught of a letter's ways must not change the next one's: they are sewn in any order, and at once.</summary>
public class SeveralThreadsTests
{
    [Fact]
    public void Names_are_sewn_alike_whatever_was_sewn_before_or_beside_them()
    {
        var names = Shelf.Names("lato-bold", TrialNames.All.Take(10)).ToArray();
        string[] alone = [.. names.Select(n => Steps(new Stitcher(LetterTrial.Cotton, 8), n))];
        var backwards = new Stitcher(LetterTrial.Cotton, 8);
        Assert.All(Enumerable.Range(0, names.Length).Reverse(), i => Assert.Equal(alone[i], Steps(backwards, names[i])));
        for (int time = 0; time < 2; time++)
        {
            var together = new Stitcher(LetterTrial.Cotton, 8);
            string[] sewn = new string[names.Length];
            Parallel.For(0, names.Length, new ParallelOptions { MaxDegreeOfParallelism = 8 }, i => sewn[i] = Steps(together, names[i]));
            Assert.Equal(alone, sewn);
        }
    }

    /// <summary>What a way out costs comes to be known after the way was sought by it and before that is looked at: as if by
    /// another thread.</summary>
    [Fact]
    public void A_way_is_sought_again_when_it_was_found_with_less_than_is_known_now()
    {
        var letter = Shelf.Names("nunito-bold", ["I"]).Single().Pieces[0].Piece;
        var columns = new PieceSewer(LetterTrial.Cotton, 8).Read(letter).Parts[0].Columns!;
        NeedleStep[] run = [.. Enumerable.Range(0, 8).Select(i => new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, new Point(i, 0)))];
        var second = SewnPart.Fixed(run);
        Assert.Equal(2, second.Exits.Length);
        var first = SewnPart.Run(columns, _ =>
        {
            second.SetOverSatin(0, 50);
            return run;
        });
        var route = new NameRoute(new SewingSettings(), new JoinShelf(new SewingSettings(), 8, 0.4));
        route.Add(new SewnPiece([first], [], true, null), new Placing(new Point(0, 0), 0));
        route.Add(new SewnPiece([second], [], true, null), new Placing(new Point(20, 0), 0));

        Assert.Equal(1, route.Best()[1].Exit);
    }

    private static string Steps(Stitcher stitcher, LetteredName name) =>
        string.Join(
            '\n', stitcher.SewName(name).Steps.Select(s => FormattableString.Invariant($"{s.At.XMm:R} {s.At.YMm:R} {s.Action} {s.Kind}")));
}

using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>What one name taught of a letter's ways must not change the next one's: they are sewn in any order, and at once.</summary>
public class SeveralThreadsTests
{
    [Fact]
    public void Names_are_sewn_alike_whatever_was_sewn_before_or_beside_them()
    {
        var names = Shelf.Names("lato-bold", TrialNames.All).ToArray();
        string[] alone = [.. names.Select(n => Steps(new Stitcher(LetterTrial.Cotton, 8), n))];
        var backwards = new Stitcher(LetterTrial.Cotton, 8);
        Assert.All(Enumerable.Range(0, names.Length).Reverse(), i => Assert.Equal(alone[i], Steps(backwards, names[i])));
        for (int time = 0; time < 5; time++)
        {
            var together = new Stitcher(LetterTrial.Cotton, 8);
            string[] sewn = new string[names.Length];
            Parallel.For(0, names.Length, new ParallelOptions { MaxDegreeOfParallelism = 8 }, i => sewn[i] = Steps(together, names[i]));
            Assert.Equal(alone, sewn);
        }
    }

    private static string Steps(Stitcher stitcher, LetteredName name) =>
        string.Join('\n', stitcher.SewName(name).Steps.Select(s => FormattableString.Invariant($"{s.At.XMm:R} {s.At.YMm:R} {s.Action} {s.Kind}")));
}

using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;
using Xunit.Abstractions;

namespace NameBand.Tests.StitchingRoom;

/// <summary>
/// How a name is gone through: gaps that a short stitch may bridge are joined, and every other one is locked at both ends
/// and cut. No thread hangs loose.
/// </summary>
public class JumpAndTrimTests(ITestOutputHelper output)
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    internal static readonly string[] Invented =
    [
        "Maren Aldous", "Quillon Tavish", "Bryony Sedgwick", "Ottoline Farrow", "Iji Fjæreide", "Łucja d’Aubigné", "Émile-Noël Ça",
        "Őrsi Ågren",
    ];

    public static TheoryData<string, double> Cases => new()
    {
        { "nunito-bold", 8 }, { "nunito-bold", 10 }, { "vollkorn-bold", 10 }, { "roboto-slab-bold", 12 }, { "pacifico", 10 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void No_jump_is_left_uncut_and_none_parts_a_piece_of_outline(string face, double height)
    {
        var stitcher = new Stitcher(Cotton, height);
        foreach (var name in Shelf.Names(face, Invented))
        {
            var path = stitcher.SewName(name);
            Assert.Equal(path.Trims - 1, path.Jumps);

            // Outer rings run the other way round than holes.
            int pieces = name.Pieces.Sum(p => p.Piece.Outline.Rings.Count(r => r.SignedAreaMm2() > 0));
            Assert.InRange(path.Jumps, 0, pieces - 1);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_cut_thread_is_locked_at_both_ends_with_stitches_that_hold(string face, double height)
    {
        foreach (double longest in new[] { 0, SewingSettings.UsualLongestJoinMm })
        {
            var stitcher = new Stitcher(Cotton, height, new SewingSettings(longest));
            foreach (var name in Shelf.Names(face, Invented))
            {
                var steps = stitcher.SewName(name).Steps;
                Assert.Equal(NeedleAction.Trim, steps[^1].Action);
                for (int i = 0; i < steps.Length; i++)
                {
                    if (steps[i].Action == NeedleAction.Jump)
                    {
                        Assert.True(i == 0 || steps[i - 1].Action == NeedleAction.Trim, "a thread hangs loose");
                        Assert.True(IsLockedAfter(steps, i), $"{name.Name.Text}: no lock after step {i}");
                    }
                    else if (steps[i].Action == NeedleAction.Trim)
                    {
                        Assert.True(
                            steps[i - 1].Kind == StitchKind.Lock && steps[i - 2].Kind == StitchKind.Lock,
                            $"{name.Name.Text}: no lock before step {i}");
                    }
                    else if (steps[i].Kind == StitchKind.Lock)
                    {
                        Assert.InRange(steps[i - 1].At.DistanceTo(steps[i].At), 0.4 - 1e-9, 3);
                    }
                }
            }
        }
    }

    /// <summary>Whether two lock stitches lie in the first 8 mm of thread after a jump, and before any satin: under it.</summary>
    private static bool IsLockedAfter(ImmutableArray<NeedleStep> steps, int jump)
    {
        double gone = 0;
        for (int i = jump + 2; gone < 8 && steps[i].Kind != StitchKind.Satin; i++)
        {
            if (steps[i].Kind == StitchKind.Lock)
            {
                return steps[i + 1].Kind == StitchKind.Lock;
            }

            gone += steps[i - 1].At.DistanceTo(steps[i].At);
        }

        return false;
    }

    [Fact]
    public void With_no_join_allowed_every_gap_is_cut()
    {
        var stitcher = new Stitcher(Cotton, 10, new SewingSettings(0));
        foreach (var name in Shelf.Names("nunito-bold", ["Maren Aldous", "Quillon"]))
        {
            Assert.Equal(name.Pieces.Sum(p => stitcher.Sewn(p.Piece).Parts.Length), stitcher.SewName(name).Trims);
        }
    }

    /// <summary>
    /// The least number of cuts for letters sewn in reading order, whatever their stitches: every outline may be come to
    /// and left anywhere, the parts of one letter may be sewn in any order, and outlines within 2.4 mm may be joined. Satin
    /// goes past the outline, so that a few that are a hair farther apart are joined too.
    /// </summary>
    [Theory]
    [InlineData("nunito-bold", 8)]
    [InlineData("nunito-bold", 10)]
    [InlineData("nunito-bold", 12)]
    [InlineData("vollkorn-bold", 10)]
    [InlineData("roboto-slab-bold", 12)]
    [InlineData("pacifico", 10)]
    public void Cuts_are_hardly_more_than_the_outlines_ask_for(string face, double height)
    {
        const double NearMm = 2.4;
        double hairMm = SewingSettings.UsualLongestJoinMm + (2 * Cotton.PullCompensationMm) + 0.1;
        var stitcher = new Stitcher(Cotton, height);
        var names = Shelf.Names(face, Invented);
        int cuts = names.Sum(n => stitcher.SewName(n).Trims - 1);
        int least = names.Sum(n => CutBound.Of(n, height, NearMm));
        output.WriteLine($"{face} at {height} mm: {cuts} cuts, at least {least}");
        Assert.InRange(cuts, names.Sum(n => CutBound.Of(n, height, hairMm)), least + (0.3 * names.Count));
    }

    /// <summary>A machine that does not cut has every cut done by hand: no more of them than with one that cuts.</summary>
    [Fact]
    public void Cuts_by_hand_are_no_more()
    {
        var names = Shelf.Names("roboto-slab-bold", Invented);
        int Cuts(SewingSettings settings) => names.Sum(n => new Stitcher(Cotton, 12, settings).SewName(n).Trims);
        Assert.InRange(Cuts(new SewingSettings(CutWorthMm: SewingSettings.CutByHandWorthMm)), names.Count, Cuts(new SewingSettings()));
    }

    /// <summary>Names that run from right to left are sewn from right to left: letter by letter as they are read.</summary>
    [Theory]
    [InlineData("noto-sans-hebrew-bold", "נעמי ברק")]
    [InlineData("noto-sans-arabic-bold", "رامي دار")]
    public void Names_from_right_to_left_are_sewn_in_reading_order(string face, string text)
    {
        var name = Shelf.Name(face, text);
        var steps = new Stitcher(Cotton, 12).SewName(name).Steps;
        double left = name.Pieces.Min(p => p.Piece.Ink.LeftMm + p.At.XMm);
        double first = steps[0].At.XMm;
        double last = steps[^1].At.XMm;
        Assert.True(first > last + (0.5 * 12 * (name.Ink.RightMm - left)), $"sewn from {first} to {last}");
    }
}

using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Lettering;
using NameBand.Stitching;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>
/// Jumps and trims of a name. Pieces of outline that do not touch cannot be sewn without moving between them, and two
/// that do touch need no move: connected pieces less one is the least number of jumps there is, and what is sewn.
/// </summary>
public class JumpAndTrimTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    internal static readonly string[] Invented =
    [
        "Maren Aldous", "Quillon Tavish", "Bryony Sedgwick", "Ottoline Farrow", "Iji Fjæreide", "Łucja d’Aubigné", "Émile-Noël Ça", "Őrsi Ågren",
    ];

    public static TheoryData<string, double> Cases => new()
    {
        { "nunito-bold", 8 }, { "nunito-bold", 10 }, { "vollkorn-bold", 10 }, { "roboto-slab-bold", 12 }, { "pacifico", 10 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_name_has_as_many_jumps_as_pieces_of_outline_less_one(string face, double height)
    {
        var stitcher = new Stitcher(Cotton, height);
        foreach (var name in Shelf.Names(face, Invented))
        {
            // Outer rings run the other way round than holes.
            int pieces = name.Pieces.Sum(p => p.Piece.Outline.Rings.Count(r => r.SignedAreaMm2() > 0));
            Assert.Equal(pieces - 1, stitcher.SewName(name).Jumps);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_thread_is_cut_exactly_where_a_hop_is_longer_than_stated_and_locked_between_letters(string face, double height)
    {
        foreach (double longest in new[] { 0, SewingSettings.UsualLongestUntrimmedMm, 1000 })
        {
            var stitcher = new Stitcher(Cotton, height, new SewingSettings(longest));
            foreach (var name in Shelf.Names(face, Invented))
            {
                var steps = stitcher.SewName(name).Steps;
                Assert.Equal(NeedleAction.Trim, steps[^1].Action);
                for (int i = 1; i < steps.Length; i++)
                {
                    if (steps[i].Action != NeedleAction.Jump)
                    {
                        continue;
                    }

                    bool isCut = steps[i - 1].Action == NeedleAction.Trim;
                    Assert.Equal(steps[i - 1].At.DistanceTo(steps[i].At) > longest, isCut);

                    // Both ends are locked, or neither: an uncut thread between a letter and its own dot or accent is not.
                    bool isLocked = steps[isCut ? i - 2 : i - 1].Kind == StitchKind.Lock;
                    Assert.Equal(isLocked, IsLockedAfter(steps, i));
                    Assert.True(isLocked || (!isCut && name.Pieces.Any(p => stitcher.Sewn(p.Piece).Parts.Length > 1)));
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

    /// <summary>Held against the same names with every letter begun where its own strokes would have it, in the order given.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Hops_are_shorter_and_cut_less_often_than_when_no_letter_knows_the_next(string face, double height)
    {
        var stitcher = new Stitcher(Cotton, height);
        var (length, cuts) = (0.0, 0);
        var (plainLength, plainCuts) = (0.0, 0);
        foreach (var name in Shelf.Names(face, Invented))
        {
            var steps = stitcher.SewName(name).Steps;
            for (int i = 1; i < steps.Length; i++)
            {
                if (steps[i].Action == NeedleAction.Jump)
                {
                    length += steps[i - 1].At.DistanceTo(steps[i].At);
                    cuts += steps[i - 1].Action == NeedleAction.Trim ? 1 : 0;
                }
            }

            var runs = name.Pieces.SelectMany(p => stitcher.Sewn(p.Piece).Parts.Select(part => (part.Alone, At: p.At * height))).ToList();
            for (int i = 1; i < runs.Count; i++)
            {
                double hop = (runs[i - 1].Alone[^1].At + runs[i - 1].At).DistanceTo(runs[i].Alone[0].At + runs[i].At);
                plainLength += hop;
                plainCuts += hop > SewingSettings.UsualLongestUntrimmedMm ? 1 : 0;
            }
        }

        Assert.True(length <= plainLength, $"{length} mm of hops, {plainLength} before");
        Assert.True(cuts < 0.7 * plainCuts, $"{cuts} hops cut, {plainCuts} before");
    }

    /// <summary>
    /// A hop between two pieces of outline that come nowhere nearer to each other than the longest uncut thread has to be
    /// cut, whatever the order of the strokes: the least number of cuts for letters sewn in reading order.
    /// </summary>
    /// <remarks>It is a weak bound: a letter whose last stroke ends far from its neighbour is not reckoned with. What is reached is held.</remarks>
    [Theory]
    [InlineData("nunito-bold", 8, 35)]
    [InlineData("nunito-bold", 10, 41)]
    [InlineData("vollkorn-bold", 10, 36)]
    [InlineData("roboto-slab-bold", 12, 50)]
    [InlineData("pacifico", 10, 23)]
    public void Cuts_lie_between_what_the_gaps_between_letters_ask_for_and_what_is_reached(string face, double height, int reached)
    {
        var stitcher = new Stitcher(Cotton, height);
        int cuts = 0;
        int least = 0;
        foreach (var name in Shelf.Names(face, Invented))
        {
            cuts += stitcher.SewName(name).Trims - 1;
            for (int i = 1; i < name.Pieces.Length; i++)
            {
                least += Distance(name.Pieces[i - 1], name.Pieces[i], height) > SewingSettings.UsualLongestUntrimmedMm ? 1 : 0;
            }
        }

        Assert.InRange(cuts, least, reached);
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

    private static double Distance(PlacedPiece a, PlacedPiece b, double height)
    {
        double least = double.PositiveInfinity;
        foreach (var p in a.Piece.Outline.Rings.SelectMany(r => r.Points))
        {
            foreach (var q in b.Piece.Outline.Rings.SelectMany(r => r.Points))
            {
                least = Math.Min(least, (p + a.At).DistanceTo(q + b.At));
            }
        }

        return least * height;
    }
}

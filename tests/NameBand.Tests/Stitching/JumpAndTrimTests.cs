using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching;
using Xunit;
using Xunit.Abstractions;

namespace NameBand.Tests.StitchingRoom;

/// <summary>
/// Jumps and trims of a name. Pieces of outline that do not touch cannot be sewn without moving between them, and two
/// that do touch need no move: connected pieces less one is the least number of jumps there is, and what is sewn.
/// </summary>
public class JumpAndTrimTests(ITestOutputHelper output)
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
    /// The least number of cuts for letters sewn in reading order, whatever their stitches: every outline may be come to
    /// and left anywhere, the parts of one letter may be sewn in any order, and a hop between two outlines that come
    /// nowhere nearer to each other than the longest uncut thread has to be cut.
    /// </summary>
    /// <remarks>
    /// The bound does not reckon with letters that are entered at one end and left at the other, so it may be out of reach.
    /// What is reached is held.
    /// </remarks>
    [Theory]
    [InlineData("nunito-bold", 8, 16)]
    [InlineData("nunito-bold", 10, 19)]
    [InlineData("vollkorn-bold", 10, 20)]
    [InlineData("roboto-slab-bold", 12, 27)]
    [InlineData("pacifico", 10, 21)]
    public void Cuts_lie_between_what_the_outlines_ask_for_and_what_is_reached(string face, double height, int reached)
    {
        var stitcher = new Stitcher(Cotton, height);
        int cuts = 0;
        int least = 0;
        foreach (var name in Shelf.Names(face, Invented))
        {
            cuts += stitcher.SewName(name).Trims - 1;
            least += LeastCuts(name, height);
        }

        output.WriteLine($"{face} at {height} mm: {cuts} cuts, at least {least}");
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

    /// <summary>Fewest cuts on a way through all outer rings, letter by letter, each letter's rings in the best order.</summary>
    private static int LeastCuts(LetteredName name, double height)
    {
        List<(Point[] Ring, int Cuts)> before = [];
        foreach (var placed in name.Pieces)
        {
            var rings = placed.Piece.Outline.Rings.Where(r => r.SignedAreaMm2() > 0)
                .Select(r => r.Points.Select(p => (p + placed.At) * height).ToArray()).ToList();
            if (rings.Count == 0)
            {
                continue;
            }

            // For every set of rings already sewn, and the last of them, the fewest cuts.
            var fewest = new int[1 << rings.Count, rings.Count];
            for (int set = 1; set < 1 << rings.Count; set++)
            {
                for (int last = 0; last < rings.Count; last++)
                {
                    int others = set & ~(1 << last);
                    fewest[set, last] = (set >> last & 1) == 0 ? int.MaxValue
                        : others > 0 ? Enumerable.Range(0, rings.Count).Where(i => (others >> i & 1) == 1).Min(i => fewest[others, i] + Cut(rings[i], rings[last]))
                        : before.Count == 0 ? 0 : before.Min(b => b.Cuts + Cut(b.Ring, rings[last]));
                }
            }

            before = [.. rings.Select((r, i) => (r, fewest[(1 << rings.Count) - 1, i]))];
        }

        return before.Min(b => b.Cuts);
    }

    /// <summary>1 when no needle points of the two, each as far outside its outline as pull compensation goes, are near enough.</summary>
    private static int Cut(Point[] a, Point[] b) =>
        a.Min(p => b.Min(q => p.DistanceTo(q))) > SewingSettings.UsualLongestUntrimmedMm + (2 * Cotton.PullCompensationMm) ? 1 : 0;
}

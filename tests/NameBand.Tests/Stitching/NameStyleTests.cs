using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.Outside;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>A name is sewn in one style: running stitch never stands beside satin.</summary>
public class NameStyleTests
{
    private static readonly Fabric Cotton = LetterTrial.Cotton;

    [Theory]
    [InlineData("bebas-neue-bold", 6)]
    [InlineData("bebas-neue-bold", 3)]
    [InlineData("routed-gothic", 3.2)]
    [InlineData("vollkorn-bold", 4)]
    [InlineData("grand-hotel", 5)]
    [InlineData("roboto-slab-bold", 3)]
    public void Letters_of_a_name_are_never_run_beside_satin(string face, double height)
    {
        var stitcher = new Stitcher(Cotton, height);
        foreach (var name in Shelf.Names(face, ["Harriet Ødegård", "Øyvind", "Wyman & Køpke", "St. Ælfgifu-Rø"]))
        {
            AssertOneStyle(stitcher, name);
        }
    }

    /// <summary>A face with hairlines that is on no shelf. DejaVu (Debian fonts-dejavu-core): free licence of Bitstream Vera,
    /// changes in the public domain.</summary>
    [SkippableTheory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(8)]
    public void Nor_are_those_of_a_light_serif(double height)
    {
        const string File = "/usr/share/fonts/truetype/dejavu/DejaVuSerif.ttf";
        OutsideTool.RequireFile(File, "fonts-dejavu-core");
        using var reader = new FaceFileReader(File);
        var stitcher = new Stitcher(Cotton, height);
        AssertOneStyle(stitcher, Row([.. "Harriet".Select(c => reader.Piece(c.ToString()))]));
    }

    private static void AssertOneStyle(Stitcher stitcher, LetteredName name)
    {
        var kinds = stitcher.SewName(name).Steps.Select(s => s.Kind).Where(k => k is StitchKind.Satin or StitchKind.Running).Distinct()
            .ToList();
        Assert.Equal([stitcher.StyleOf(name) == NameStyle.Run ? StitchKind.Running : StitchKind.Satin], kinds);
    }

    /// <summary>At 10 mm a stem of 0.35 mm is just too thin for satin by itself; beside a bold one it is widened, and nobody is
    /// asked.</summary>
    [Fact]
    public void A_stroke_just_under_the_limit_is_widened_beside_satin()
    {
        var (bold, thin) = (Stem("B", 0.1), Stem("t", 0.035));
        var stitcher = new Stitcher(Cotton, 10);
        Assert.Equal(NameStyle.Run, stitcher.StyleOf(Row(thin, thin)));
        var name = Row(bold, thin);
        AssertOneStyle(stitcher, name);
        Assert.Empty(stitcher.StyleProblems);
        Assert.True(stitcher.IsRead(name));

        // The needle holes of the second letter reach 0.8 mm across, but for what lies past the ink and the pull compensation.
        var holes = stitcher.SewName(name).Steps.Where(s => s.Kind == StitchKind.Satin).Select(s => s.At.XMm).ToList();
        double right = holes.Max();
        Assert.InRange(right - holes.Where(x => x > right - 1.2).Min(), 0.74, 0.81);
    }

    [Fact]
    public void A_hairline_beside_satin_is_asked_about_with_letter_height_and_what_to_do()
    {
        var stitcher = new Stitcher(Cotton, 8);
        var name = Row(Stem("B", 0.1), Stem("r", 0.012));
        AssertOneStyle(stitcher, name);
        var problem = Assert.Single(stitcher.StyleProblems);
        Assert.Equal(Severity.NeedsPerson, problem.Severity);
        Assert.Contains(
            "“r” in the face Trial has strokes 0.10 mm wide at a letter height of 8.0 mm", problem.Found.English, StringComparison.Ordinal);
        Assert.Contains("“Br”", problem.Found.English, StringComparison.Ordinal);
        Assert.Contains("Letters from 16.7 mm up", problem.Mend.English, StringComparison.Ordinal);
        Assert.Contains("bolder face", problem.Mend.English, StringComparison.Ordinal);
        Assert.Equal(VerdictKind.NeedsAPerson, problem.Judged?.Kind);
        Assert.False(stitcher.IsRead(name));
    }

    /// <summary>Whichever names came before, and in which order.</summary>
    [Fact]
    public void The_same_letter_is_run_in_one_name_and_satin_in_another()
    {
        var (bold, thin) = (Stem("B", 0.1), Stem("t", 0.035));
        var stitcher = new Stitcher(Cotton, 10);
        foreach (var name in new[] { Row(thin, thin), Row(bold, thin), Row(thin, thin), Row(bold, bold) })
        {
            AssertOneStyle(stitcher, name);
            Assert.Equal(new Stitcher(Cotton, 10).SewName(name).Steps.AsEnumerable(), stitcher.SewName(name).Steps.AsEnumerable());
        }
    }

    private static LetterPiece Stem(string text, double width)
    {
        var ring = new Ring([new Point(0, 0), new Point(width, 0), new Point(width, 1), new Point(0, 1)]);
        return new LetterPiece($"trial {text} {width}", "Trial", text, new Outline([ring]), new Box(0, 0, width, 1));
    }

    private static LetteredName Row(params ImmutableArray<LetterPiece> letters)
    {
        var pieces = ImmutableArray.CreateBuilder<PlacedPiece>();
        var ink = Box.Empty;
        double x = 0;
        foreach (var letter in letters)
        {
            var at = new Point(x - letter.Ink.LeftMm, 0);
            pieces.Add(new PlacedPiece(letter, at));
            ink = ink.Include(new Point(x, letter.Ink.BottomMm)).Include(new Point(x + letter.Ink.WidthMm, letter.Ink.TopMm));
            x += letter.Ink.WidthMm + 0.15;
        }

        return LetterTrial.NameOf(string.Concat(letters.Select(l => l.Text)), pieces.ToImmutable(), ink);
    }
}

using System.Globalization;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using Xunit;

namespace NameBand.Tests.Lettering;

public class LettererTests
{
    [Fact]
    public void The_same_letter_is_the_same_object_in_every_name()
    {
        var list = LetteringRig.Letter("Nunito Bold", "Anna", "Hannah", "מאיה", "אמא", "क्षमा", "क्षत्र");
        LetterPiece[] pieces = [.. list.Names.SelectMany(n => n.Pieces).Select(p => p.Piece)];
        foreach (var group in pieces.GroupBy(p => p.Key))
        {
            Assert.All(group, p => Assert.Same(group.First(), p));
        }

        Assert.Equal(3, pieces.Take(10).Distinct().Count(p => p.Text is "a" or "n" or "A"));
        Assert.Equal(4, pieces.Count(p => p.Text == "n"));
    }

    [Fact]
    public void Letters_stand_on_the_base_line_at_a_letter_height_of_1_mm()
    {
        var name = LetteringRig.LetterOne("HI");
        Assert.Equal(1, name.Ink.TopMm, 0.02);
        Assert.Equal(0, name.Ink.BottomMm, 0.02);
        Assert.True(LetteringRig.LetterOne("Ağ").Ink is { BottomMm: < -0.2, TopMm: > 0.95 });
        Assert.True(LetteringRig.LetterOne("Ễ").Ink.TopMm > 1.3, "accents belong to the ink");
    }

    [Fact]
    public void Rings_are_turned_as_outlines_promise()
    {
        foreach (string face in new[] { "Nunito Bold", "Roboto Slab Bold", "Vollkorn Bold" })
        {
            var outline = Assert.Single(LetteringRig.LetterOne("B", face).Pieces).Piece.Outline;
            Assert.Equal(3, outline.Rings.Length);
            Assert.Equal(2, outline.Rings.Count(r => r.SignedAreaMm2() < 0));
            Assert.True(outline.AreaMm2() > 0);
        }
    }

    [Fact]
    public void Right_to_left_names_run_right_to_left()
    {
        var name = LetteringRig.LetterOne("אבג");
        Assert.Equal(["א", "ב", "ג"], name.Pieces.Select(p => p.Piece.Text));
        Assert.True(name.Pieces[0].At.XMm > name.Pieces[1].At.XMm && name.Pieces[1].At.XMm > name.Pieces[2].At.XMm);
    }

    [Fact]
    public void Mixed_directions_stand_as_UAX_9_orders_them()
    {
        // A left-to-right name with Hebrew in brackets: the brackets stay outside and open the right way.
        var name = LetteringRig.LetterOne("Ana (נועה) 3");
        Assert.Equal("Ana(העונ)3", FromLeft(name));

        // The first strong letter is Hebrew, so the name begins at the right; digits keep their order.
        Assert.Equal("12בא", FromLeft(LetteringRig.LetterOne("אב 12")));
        Assert.Equal("Ana12בא", FromLeft(LetteringRig.LetterOne("אב Ana 12")));
    }

    [Fact]
    public void Joined_scripts_make_few_pieces_and_separate_letters_one_each()
    {
        Assert.Equal(6, LetteringRig.LetterOne("Marina").Pieces.Length);
        Assert.Single(LetteringRig.LetterOne("marina", "Pacifico").Pieces);
        Assert.Single(LetteringRig.LetterOne("نهي").Pieces);
        Assert.Single(LetteringRig.LetterOne("मकान").Pieces);
    }

    [Fact]
    public void Arabic_letters_take_their_joined_forms()
    {
        // Two behs joined are narrower than two alone, and one piece with two dots.
        var joined = LetteringRig.LetterOne("بب");
        Assert.Single(joined.Pieces);
        Assert.Equal(3, joined.Pieces[0].Piece.Outline.Rings.Length);
        Assert.True(joined.Ink.WidthMm < 2 * LetteringRig.LetterOne("ب").Ink.WidthMm);
    }

    [Fact]
    public void Devanagari_conjuncts_are_formed_and_vowel_signs_move()
    {
        Assert.True(LetteringRig.LetterOne("क्ष").Ink.WidthMm < LetteringRig.LetterOne("कष").Ink.WidthMm, "ksha is one conjunct");
        var ki = LetteringRig.LetterOne("कि");
        Assert.Single(ki.Pieces);
    }

    [Fact]
    public void Marks_without_a_composed_letter_sit_on_their_base_in_one_piece()
    {
        // x with caron and m with tilde exist in no code page; ẹ́ is spelt with two marks.
        foreach (string letter in new[] { "x\u030C", "M\u0303", "e\u0323\u0301" })
        {
            var name = LetteringRig.LetterOne(letter);
            var piece = Assert.Single(name.Pieces).Piece;
            Assert.True(piece.Outline.Rings.Length >= 2, letter);
            Assert.True(name.Ink.TopMm > LetteringRig.LetterOne(letter[..1]).Ink.TopMm + 0.1, letter);
        }

        Assert.Equal(LetteringRig.LetterOne("é").Ink, LetteringRig.LetterOne("e\u0301").Ink);
    }

    [Fact]
    public void Ligatures_and_kerning_are_used()
    {
        var shaped = LetteringRig.Shape("fi", LetteringRig.Face("Lato Bold"));
        Assert.Single(shaped.Glyphs);
        double together = LetteringRig.Shape("AV", LetteringRig.Face()).AdvanceMm;
        double apart = LetteringRig.Shape("A", LetteringRig.Face()).AdvanceMm + LetteringRig.Shape("V", LetteringRig.Face()).AdvanceMm;
        Assert.True(together < apart - 0.03, $"AV is {together}, A and V are {apart}");
    }

    [Fact]
    public void Missing_letters_come_from_another_face_at_the_same_cap_height()
    {
        // Grand Hotel has no Cyrillic; its own capitals and the borrowed ones are equally tall.
        var name = LetteringRig.LetterOne("H Н", "Grand Hotel");
        Assert.Equal("Grand Hotel", name.Pieces[0].Piece.Face);
        Assert.Equal("Noto Sans Bold", name.Pieces[1].Piece.Face);
        Assert.Equal(1, name.Pieces[1].Piece.Ink.HeightMm, 0.01);
    }

    [Fact]
    public void A_face_that_has_only_signs_of_a_script_does_not_patch_a_name()
    {
        // Nunito has µ, π and Ω but not the Greek alphabet.
        var name = LetteringRig.LetterOne("Λυμπέρη");
        Assert.All(name.Pieces, p => Assert.Equal("Noto Sans Bold", p.Piece.Face));
    }

    [Fact]
    public void A_grapheme_cluster_stays_in_one_face()
    {
        var shaped = LetteringRig.Shape("n\u0320o", LetteringRig.Face("Bebas Neue Bold")); // minus sign below: not in Bebas Neue
        Assert.Single(shaped.Glyphs.Where(g => g.Cluster == 0).Select(g => g.Face).Distinct());
        Assert.Equal("Noto Sans Bold", shaped.Glyphs.First(g => g.Cluster == 0).Face.Name);
        Assert.Equal("Bebas Neue Bold", shaped.Glyphs.Single(g => g.Cluster == 2).Face.Name);
    }

    [Fact]
    public void Joiners_that_scripts_need_are_obeyed_and_leave_no_ink()
    {
        Assert.Single(LetteringRig.LetterOne("نه").Pieces);
        Assert.Equal(2, LetteringRig.LetterOne("ن\u200Cه").Pieces.Length);
        Assert.Equal(LetteringRig.LetterOne("Ana").Ink, LetteringRig.LetterOne("A\u200Dna").Ink);
    }

    [Theory]
    [InlineData("Pia Tarn ★", "the picture sign ★ (U+2605) is not a letter and cannot be stitched as one; without it: “Pia Tarn”")]
    [InlineData(
        "Bo 🎉 Lind ❤️",
        "the picture signs 🎉 (U+1F389) and ❤️ (U+2764 U+FE0F) are not letters and cannot be stitched as such; without them: “Bo Lind”")]
    [InlineData("Ida ᚠ Holm", "no face here has the letter ᚠ (U+16A0); ask its owner how to write it")]
    [InlineData("𐍈𐍉", "no face here has the letters 𐍈 (U+10348) and 𐍉 (U+10349); ask its owner how to write it")]
    [InlineData("Ida ᚠ ⟴ Holm", "no face here has the signs ᚠ (U+16A0) and ⟴ (U+27F4); ask its owner how to write it")]
    [InlineData("Ida ก\u05B8 Holm", "no face here has the letter ก\u05B8 (U+0E01 U+05B8); ask its owner how to write it")]
    [InlineData("Ida ⟴ Holm", "no face here has the sign ⟴ (U+27F4); without it: “Ida Holm”")]
    [InlineData(
        "👩‍👩‍👧", "the picture sign 👩‍👩‍👧 (U+1F469 U+200D U+1F469 U+200D U+1F467) is not a letter and cannot be stitched as one; without it nothing is left")]
    [InlineData("Zo\uFFFD Holm", "no face here has the sign \uFFFD (U+FFFD); ask its owner how to write it")]
    [InlineData("\u200D", "there is nothing to sew in this name")]
    public void What_cannot_be_lettered_is_held_and_named(string name, string reason) =>
        Assert.Equal(reason, LetteringRig.HeldReason(name));

    [Fact]
    public void Half_a_character_is_held_and_does_not_throw() =>
        Assert.Equal(
            "no face here has the sign \uFFFD (U+FFFD); ask its owner how to write it", LetteringRig.HeldReason("Ana \uD83C Holm"));

    [Fact]
    public void Held_names_keep_their_row_and_the_others_their_order()
    {
        var list = LetteringRig.Letter("Nunito Bold", "Ana", "★", "Bo");
        Assert.Equal(["Ana", "Bo"], list.Names.Select(n => n.Name.Text));
        Assert.Equal(new RowRef("names.csv", 3), Assert.Single(list.Held).Row);
    }

    [Fact]
    public void The_result_does_not_depend_on_culture_or_on_what_was_lettered_before()
    {
        string[] names = ["Łucja Brzoza", "İpek ıI", "ليلى النهري", "नदी माथुर", "Ana (נועה) 3", "강나루"];
        string first = Described(LetteringRig.Letter("Pacifico", names));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = new CultureInfo("tr-TR");
            var fresh = new FaceShelf();
            var list = Letterer.Letter(LetteringRig.ListOf(names), fresh.Open("Pacifico", "/").Value!, fresh).Value!;
            Assert.Equal(first, Described(list));
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void Work_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            Letterer.Letter(LetteringRig.ListOf("Ana"), LetteringRig.Face(), LetteringRig.Shelf, stop.Token));
    }

    private static string FromLeft(LetteredName name) =>
        string.Concat(name.Pieces.OrderBy(p => p.At.XMm + p.Piece.Ink.LeftMm).Select(p => p.Piece.Text));

    private static string Described(LetteredList list) => string.Join(
        '\n',
        list.Names.SelectMany(n => n.Pieces).Select(p => string.Create(
            CultureInfo.InvariantCulture,
            $"{p.Piece.Key} {p.Piece.Text} {p.At.XMm:R} {p.At.YMm:R} {string.Join(' ', p.Piece.Outline.Rings.SelectMany(r => r.Points).Select(q => $"{q.XMm.ToString("R", CultureInfo.InvariantCulture)},{q.YMm.ToString("R", CultureInfo.InvariantCulture)}"))}")));
}

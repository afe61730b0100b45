using System.Text;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Lettering.Faces;
using NameBand.Output.Sheets;
using NameBand.Tests.Lettering;
using SkiaSharp;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>What a sheet carries of a face: the letters that are set in it, drawn as the whole face draws them.</summary>
public sealed partial class SheetLettersTests
{
    public static TheoryData<string> Faces => new(LetteringRig.Shelf.Cards.Concat(LetteringRig.Shelf.SheetCards).Select(c => c.Name));

    [Theory]
    [MemberData(nameof(Faces))]
    public void A_letter_of_a_part_is_drawn_as_in_the_whole_face(string name)
    {
        var face = Open(name);
        string text = string.Concat(ScriptSample.All.SelectMany(s => s.Letters).Where(c => face.Has(c)).Take(40));
        uint[] glyphs = [.. text.Select(c => face.GlyphOf(c))];
        Assert.True(glyphs.Length > 20);
        using var whole = face.OpenForPaper();
        using var letters = new SheetLetters(face, null);
        var part = letters.With(glyphs);
        using var drawn = new SKFont(part, 100) { Hinting = SKFontHinting.None };
        using var asked = new SKFont(whole, 100) { Hinting = SKFontHinting.None };
        Assert.All(glyphs, glyph =>
        {
            using var one = drawn.GetGlyphPath((ushort)glyph);
            using var other = asked.GetGlyphPath((ushort)glyph);
            Assert.True(other.PointCount > 2);
            Assert.Equal(other.ToSvgPathData(), one.ToSvgPathData());
        });
        Assert.Equal(asked.GetGlyphWidths([.. glyphs.Select(g => (ushort)g)]), drawn.GetGlyphWidths([.. glyphs.Select(g => (ushort)g)]));
    }

    [Fact]
    public void What_comes_later_is_carried_besides_and_after_a_few_the_whole_face()
    {
        var face = Open("Andika");
        using var letters = new SheetLetters(face, []);
        SKTypeface With(string text) => letters.With(text.Select(c => face.GlyphOf(c)));

        var first = With("Ada");
        Assert.Same(first, With("Ottilie Žofie – 12 ½"));
        var second = With("Ваня");
        Assert.NotSame(first, second);
        Assert.Same(second, With("няВа"));
        Assert.Same(first, With("Bo"));
        var third = With("Δάφνη");
        Assert.Same(third, With("Δάφνη"));
        using var both = new SKFont(third, 100);
        using var path = both.GetGlyphPath((ushort)face.GlyphOf('В'));
        Assert.True(path.PointCount > 2, "what came before comes with what is new");
        foreach (char sign in "гдежзийклмно")
        {
            With(sign.ToString());
        }

        Assert.Same(letters.Whole, With("щ"));
        Assert.Same(first, With("Ada"));
    }

    /// <summary>The text is read from the file by PdfPig, a reader made by others.</summary>
    [Theory]
    [InlineData("Ada Penhale", 1, 21)]
    [InlineData("the first office, fitted and flat", 1, 21)]
    [InlineData("Ottilie, 王小明, שרה, Ваня", 4, 45)]
    public void A_sheet_carries_little_more_than_its_letters(string text, int fonts, int mostKb)
    {
        using var file = new MemoryStream();
        using (var face = SheetFace.Open(SheetFace.PlainName))
        using (var pages = new SheetPages(file, Paper.A4, "Lantern walk", "", face))
        {
            pages.Begin();
            pages.Put(15, 20, text, 5);
        }

        byte[] pdf = file.ToArray();
        Assert.Equal(fonts, Carried().Count(Encoding.Latin1.GetString(pdf)));
        Assert.InRange(pdf.Length, 1_000, mostKb * 1000);
        using var document = PdfDocument.Open(pdf);
        string read = string.Concat(document.GetPage(1).Letters.Select(l => l.Value));
        Assert.All(text.Where(c => c is < '\u0590' or > '\u05ff'), c => Assert.Contains(c, read));
    }

    private static Face Open(string name) =>
        LetteringRig.Shelf.Open(LetteringRig.Shelf.Cards.Concat(LetteringRig.Shelf.SheetCards).Single(c => c.Name == name)).Value!;

    [GeneratedRegex("/Subtype /Type0")]
    private static partial Regex Carried();
}

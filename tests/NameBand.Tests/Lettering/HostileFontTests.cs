using System.Text;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Fonts;
using NameBand.Tests.Hostile;
using Xunit;

namespace NameBand.Tests.Lettering;

/// <summary>
/// A stranger's font file never ends the program: it is refused with a reason, or the letters it cannot draw are.
/// A crash of native code here would end the test run itself.
/// </summary>
public sealed class HostileFontTests : IDisposable
{
    private const int SeedsPerFace = 60;

    private readonly string _folder = Directory.CreateTempSubdirectory("hostile-").FullName;

    public static TheoryData<string> Faces() =>
        new("Nunito Bold", "Roboto Slab Bold", "Vollkorn Bold", "Routed Gothic", "Bebas Neue Bold", "Noto Sans Arabic Bold",
            "Noto Sans Devanagari Bold", "Grand Hotel");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("", "it is empty")]
    [InlineData("\0\u0001\0\0", "it is too short to be a font")]
    [InlineData("<!DOCTYPE html><html><body>Not found</body></html>", "it is a web page, not a font")]
    [InlineData("wOFF aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", "it is a web font (WOFF)")]
    [InlineData("ttcf aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", "it is a collection of several faces")]
    [InlineData("PK\u0003\u0004aaaaaaaaaaaaaaaaaaaaaaaaaaa", "it is a ZIP archive")]
    [InlineData("name,mail\r\nAna,ana@lantern.example\r\n", "it is not a TTF or OTF font")]
    public void What_is_not_a_font_is_refused_with_a_reason(string content, string reason)
    {
        File.WriteAllBytes(Path.Combine(_folder, "face.ttf"), Encoding.Latin1.GetBytes(content));
        var problem = Refusal();
        Assert.Equal(Severity.CannotUse, problem.Severity);
        Assert.StartsWith($"The font file “face.ttf” cannot be used: {reason}", problem.Found.English, StringComparison.Ordinal);
        Assert.NotEqual("", problem.Mend);
    }

    [Fact]
    public void A_file_over_30_MB_is_refused_unread()
    {
        using (var file = File.Create(Path.Combine(_folder, "face.ttf")))
        {
            file.SetLength(31 * 1024 * 1024);
        }

        Assert.Contains("larger than 30 MB", Refusal().Found.English, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Faces))]
    public void A_file_cut_off_anywhere_is_refused_or_its_letters_are_held(string faceName)
    {
        byte[] whole = File.ReadAllBytes(LetteringRig.PathOf(faceName));
        int refused = 0;
        for (int part = 0; part < 20; part++)
        {
            refused += Try(whole[..(whole.Length * part / 20)]) ? 0 : 1;
        }

        Assert.True(refused >= 18, $"only {refused} of 20 cut files were refused");
    }

    [Theory]
    [MemberData(nameof(Faces))]
    public void Bytes_changed_at_random_never_crash(string faceName)
    {
        byte[] whole = File.ReadAllBytes(LetteringRig.PathOf(faceName));
        int usable = 0;
        for (int seed = 0; seed < SeedsPerFace; seed++)
        {
            usable += Try(Mutator.Binary(whole, new Random(seed))) ? 1 : 0;
        }

        Assert.True(
            usable is > 0 and < SeedsPerFace, $"{usable} of {SeedsPerFace} could still be used: the test tries too little or too much");
    }

    [Fact]
    public void A_glyph_put_together_of_itself_is_held_not_followed_for_ever()
    {
        byte[] font = File.ReadAllBytes(LetteringRig.PathOf("Routed Gothic"));
        int glyph = (int)LetteringRig.Face("Routed Gothic").GlyphOf('A');
        int at = GlyphOffset(font, glyph);

        // numberOfContours -1, box, then a component that is the glyph itself, with MORE_COMPONENTS set, over and over.
        font[at] = font[at + 1] = 0xFF;
        for (int component = 0; component < 4; component++)
        {
            byte[] self = [0, component < 3 ? (byte)0x22 : (byte)0x02, (byte)(glyph >> 8), (byte)glyph, 0, 0];
            self.CopyTo(font, at + 10 + (6 * component));
        }

        var face = Face.FromBytes("x", "Ring", "ring.ttf", Pinned(font));
        var list = Letterer.Letter(LetteringRig.ListOf("A", "B"), face, LetteringRig.Shelf).Value!;
        Assert.Equal("B", Assert.Single(list.Names).Name.Text);
        Assert.Contains("the face Ring", Assert.Single(list.Held).Reason.English, StringComparison.Ordinal);
        Assert.Contains("A (U+0041)", list.Held[0].Reason.English, StringComparison.Ordinal);
    }

    /// <summary>
    /// Every glyph is made of two others, and those of two more: thousands of lines over one another, which kept the
    /// geometry kernel busy for minutes before they were counted first.
    /// </summary>
    [Fact]
    public void A_glyph_that_lies_over_itself_many_times_is_held()
    {
        byte[] font = File.ReadAllBytes(LetteringRig.PathOf("Routed Gothic"));
        byte[] whole = [.. font];
        int first = (int)LetteringRig.Face("Routed Gothic").GlyphOf('A');
        int last = (int)LetteringRig.Face("Routed Gothic").GlyphOf('I');
        for (int glyph = first; glyph < last; glyph++)
        {
            int at = GlyphOffset(font, glyph);
            byte[] halves =
                [0xFF, 0xFF, .. whole[(at + 2)..(at + 10)], 0, 0x22, 0, (byte)(glyph + 1), 0, 0, 0, 0x02, 0, (byte)(glyph + 1), 1, 0];
            halves.CopyTo(font, at);
        }

        Assert.Equal(first + 8, last);
        var face = Face.FromBytes("x", "Heap", "heap.ttf", Pinned(font));
        var list = Letterer.Letter(LetteringRig.ListOf("A", "I"), face, LetteringRig.Shelf).Value!;
        Assert.Equal("I", Assert.Single(list.Names).Name.Text);
        Assert.Contains("lies over itself too many times", Assert.Single(list.Held).Reason.English, StringComparison.Ordinal);
    }

    /// <summary>All letters stand on one spot: each is sound, together they are one heap.</summary>
    [Fact]
    public void Letters_without_width_that_pile_up_are_held()
    {
        byte[] font = File.ReadAllBytes(LetteringRig.PathOf("Vollkorn Bold"));
        font.AsSpan(TableOffset(font, "hmtx"), 4 * LetteringRig.Face("Vollkorn Bold").GlyphCount).Clear();
        string pile = string.Concat(Enumerable.Repeat("ÅÑǾŴĢ&@", 40));
        var face = Face.FromBytes("x", "Pile", "pile.ttf", Pinned(font));
        var list = Letterer.Letter(LetteringRig.ListOf(pile, "O"), face, LetteringRig.Shelf).Value!;
        Assert.Equal("O", Assert.Single(list.Names).Name.Text);
        Assert.Contains("sets these letters over one another too many times", Assert.Single(list.Held).Reason.English, StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_that_reaches_absurdly_far_is_held()
    {
        byte[] font = File.ReadAllBytes(LetteringRig.PathOf("Routed Gothic"));
        WriteUnitsPerEm(font, 16);
        var list = Letterer.Letter(
            LetteringRig.ListOf("A"), Face.FromBytes("x", "Tiny em", "t.ttf", Pinned(font)), LetteringRig.Shelf).Value!;
        Assert.Contains("reaches more than 20 times the size of the letters", Assert.Single(list.Held).Reason.English, StringComparison.Ordinal);
    }

    /// <summary>Whether the font could be opened; whatever it draws is looked at.</summary>
    private static bool Try(byte[] font)
    {
        Face face;
        try
        {
            face = Face.FromBytes("x", "Mutant", "mutant.ttf", Pinned(font));
        }
        catch (FontFault fault)
        {
            Assert.NotEqual("", fault.Message);
            return false;
        }

        string[] names = ["Ana AVATAR fi", "Łucja Őrsi x\u030C", "ليلى مُحَمَّد", "क्षत्रिय माथुर", "Rafe & Co. 1234567890"];
        var list = Letterer.Letter(LetteringRig.ListOf(names), face, LetteringRig.Shelf).Value!;
        Assert.Equal(names.Length, list.Names.Length + list.Held.Length);
        Assert.All(list.Held, h => Assert.NotEqual("", h.Reason));
        Assert.All(list.Names, n => Assert.True(double.IsFinite(n.Ink.WidthMm) && n.Ink.WidthMm > 0));
        return true;
    }

    private static byte[] Pinned(byte[] bytes)
    {
        byte[] pinned = GC.AllocateUninitializedArray<byte>(bytes.Length, pinned: true);
        bytes.CopyTo(pinned, 0);
        return pinned;
    }

    private static int GlyphOffset(byte[] font, int glyph)
    {
        bool isLong = font[TableOffset(font, "head") + 51] == 1;
        int loca = TableOffset(font, "loca");
        int offset = isLong
            ? System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(font.AsSpan(loca + (4 * glyph)))
            : 2 * System.Buffers.Binary.BinaryPrimitives.ReadUInt16BigEndian(font.AsSpan(loca + (2 * glyph)));
        return TableOffset(font, "glyf") + offset;
    }

    private static void WriteUnitsPerEm(byte[] font, ushort units) =>
        System.Buffers.Binary.BinaryPrimitives.WriteUInt16BigEndian(font.AsSpan(TableOffset(font, "head") + 18), units);

    private static int TableOffset(byte[] font, string tag)
    {
        int record = font.AsSpan(0, 600).IndexOf(Encoding.Latin1.GetBytes(tag));
        return System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(font.AsSpan(record + 8));
    }

    private Problem Refusal()
    {
        var opened = LetteringRig.Shelf.Open("face.ttf", _folder);
        Assert.Null(opened.Value);
        return Assert.Single(opened.Problems);
    }
}

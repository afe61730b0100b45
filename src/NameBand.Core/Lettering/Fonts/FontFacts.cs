using System.Text;

namespace NameBand.Lettering.Fonts;

/// <summary>What is read of a font file before any native code sees it.</summary>
/// <param name="FullName">From the name table; empty when there is none.</param>
/// <param name="CapHeight">OS/2 sCapHeight in font units, or 0 where the font has none.</param>
internal sealed record FontFacts(string FullName, int UnitsPerEm, int GlyphCount, int CapHeight)
{
    private const uint HeadMagic = 0x5F0F3CF5; // magicNumber of the head table (OpenType).
    private const int LongestNameCharacters = 80; // Characters: the name stands on cards and in messages of one line.

    /// <summary>Checks that the file is whole and has what the program needs; the tables' insides are HarfBuzz's to check.</summary>
    /// <exception cref="FontFault">The file cannot be used.</exception>
    public static FontFacts Read(ReadOnlyMemory<byte> file)
    {
        var tables = FontTables.Read(file);
        var head = tables.Need("head");
        int unitsPerEm = head.U16(18);
        if (head.Length < 54 || head.U32(12) != HeadMagic || unitsPerEm is < 16 or > 16384)
        {
            throw new FontFault("its head table is damaged");
        }

        int glyphCount = tables.Need("maxp").U16(4);
        if (glyphCount == 0)
        {
            throw new FontFault("it has no glyphs");
        }

        CheckAdvances(tables, glyphCount);
        CheckCharacterMap(tables.Need("cmap"));
        CheckOutlines(tables, head, glyphCount);
        return new FontFacts(FullNameOf(tables), unitsPerEm, glyphCount, CapHeightOf(tables, unitsPerEm));
    }

    private static void CheckOutlines(FontTables tables, FontBytes head, int glyphCount)
    {
        if (tables.Find("glyf") is { } glyf && tables.Find("loca") is { } loca)
        {
            int size = head.I16(50) == 0 ? 2 : 4;
            if (loca.Length < (glyphCount + 1) * size || loca.Unsigned(glyphCount * size, size) * (size == 2 ? 2 : 1) > glyf.Length)
            {
                throw new FontFault("its outlines are cut off");
            }
        }
        else if (!tables.Has("CFF ") && !tables.Has("CFF2"))
        {
            throw new FontFault("it has no outlines (a font of pictures only cannot be stitched)");
        }
    }

    private static void CheckAdvances(FontTables tables, int glyphCount)
    {
        int metrics = tables.Need("hhea").U16(34);
        if (metrics == 0 || metrics > glyphCount || tables.Need("hmtx").Length < 4 * metrics)
        {
            throw new FontFault("its table of letter widths is damaged");
        }
    }

    private static void CheckCharacterMap(FontBytes cmap)
    {
        int count = cmap.U16(2);
        if (count == 0)
        {
            throw new FontFault("it maps no characters to letters");
        }

        for (int i = 0; i < count; i++)
        {
            uint offset = cmap.U32(4 + (8 * i) + 4);
            var subtable = cmap.Slice(offset, cmap.Length - offset);
            int format = subtable.U16(0);
            long length = format >= 8 ? (format == 14 ? subtable.U32(2) : subtable.U32(4)) : subtable.U16(2);
            bool longerThanSaid = format == 4; // many sound fonts state a wrapped 16-bit length here
            if (!longerThanSaid && length > subtable.Length)
            {
                throw new FontFault("its table of characters is cut off");
            }
        }
    }

    private static int CapHeightOf(FontTables tables, int unitsPerEm)
    {
        if (tables.Find("OS/2") is not { } os2 || os2.Length < 90 || os2.U16(0) < 2)
        {
            return 0;
        }

        int height = os2.I16(88);
        return height > 0.1 * unitsPerEm && height < 2 * unitsPerEm ? height : 0;
    }

    private static string FullNameOf(FontTables tables)
    {
        try
        {
            return tables.Find("name") is { } name ? FullNameOf(name) : "";
        }
        catch (FontFault)
        {
            return ""; // a face without a readable name is called by its file
        }
    }

    private static string FullNameOf(FontBytes name)
    {
        int count = name.U16(2), strings = name.U16(4);
        for (int i = 0; i < count; i++)
        {
            int record = 6 + (12 * i);
            if (name.U16(record) == 3 && name.U16(record + 6) == 4)
            {
                var bytes = name.Slice(strings + name.U16(record + 10), name.U16(record + 8));
                string text = Encoding.BigEndianUnicode.GetString(bytes.Span);
                text = new string([.. text.Where(c => !char.IsControl(c) && !char.IsSurrogate(c))]).Trim();
                return text.Length > LongestNameCharacters ? text[..LongestNameCharacters] : text;
            }
        }

        return "";
    }
}

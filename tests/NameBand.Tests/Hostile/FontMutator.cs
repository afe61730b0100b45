using System.Buffers.Binary;
using System.Text;

namespace NameBand.Tests.Hostile;

/// <summary>Spoils a font the way a file made to do harm would be: its tables, their places and counts, its composite glyphs.</summary>
internal static class FontMutator
{
    private const int RecordsStart = 12;
    private const int RecordSize = 16;

    private static readonly byte[][] Extremes = [[0, 0], [0xFF, 0xFF], [0x7F, 0xFF], [0x80, 0x00], [0x00, 0x01], [0xFF, 0xFE]];

    public static byte[] Spoil(byte[] whole, byte[] other, Random random)
    {
        byte[] font = [.. whole];
        switch (random.Next(9))
        {
            case 0:
                return font[..random.Next(font.Length)];
            case 1:
                ExchangeTables(font, random);
                return font;
            case 2:
                LieAboutATable(font, random);
                return font;
            case 3:
                return Graft(font, other, random);
            case 4:
                PutTogetherOfOthers(font, random);
                return font;
            case 5 or 6:
                var table = Table(font, random.Next(TableCount(font)));
                PutExtremes(font.AsSpan(table.From, table.Length), random);
                return font;
            case 7:
                // The counts of glyphs and widths that all other tables are read by.
                PutExtremes(Of(font, random.Next(2) == 0 ? "maxp" : "hhea"), random);
                return font;
            default:
                return Mutator.Binary(font, random);
        }
    }

    /// <summary>Makes every glyph that has room for it one of two others, in chains that meet themselves again.</summary>
    private static void PutTogetherOfOthers(byte[] font, Random random)
    {
        var loca = Of(font, "loca");
        var glyf = Of(font, "glyf");
        bool isLong = Of(font, "head") is { Length: >= 54 } head && head[51] == 1;
        int glyphs = (loca.Length / (isLong ? 4 : 2)) - 1;
        int step = random.Next(3) == 0 ? 0 : 1 + random.Next(20);
        for (int glyph = 0; glyph < glyphs; glyph++)
        {
            int at = Offset(loca, glyph, isLong);
            if (random.Next(4) == 0 || at < 0 || Offset(loca, glyph + 1, isLong) - at < 24 || at + 24 > glyf.Length)
            {
                continue;
            }

            // A glyph without contours of its own, then two components; the first says that one more follows.
            BinaryPrimitives.WriteInt16BigEndian(glyf[at..], -1);
            for (int component = 0; component < 2; component++)
            {
                int other = (glyph + (step * (component + 1))) % glyphs;
                byte[] said = [0, component == 0 ? (byte)0x22 : (byte)0x02, (byte)(other >> 8), (byte)other, 1, 1];
                said.CopyTo(glyf[(at + 10 + (6 * component))..]);
            }
        }
    }

    private static int Offset(ReadOnlySpan<byte> loca, int glyph, bool isLong) => isLong
        ? BinaryPrimitives.ReadInt32BigEndian(loca[(4 * glyph)..])
        : 2 * BinaryPrimitives.ReadUInt16BigEndian(loca[(2 * glyph)..]);

    private static void ExchangeTables(byte[] font, Random random)
    {
        int one = RecordsStart + (RecordSize * random.Next(TableCount(font)));
        int two = RecordsStart + (RecordSize * random.Next(TableCount(font)));
        byte[] kept = font[(one + 8)..(one + 16)];
        font.AsSpan(two + 8, 8).CopyTo(font.AsSpan(one + 8));
        kept.CopyTo(font, two + 8);
    }

    private static void LieAboutATable(byte[] font, Random random)
    {
        int record = RecordsStart + (RecordSize * random.Next(TableCount(font)));
        var field = font.AsSpan(record + (random.Next(2) == 0 ? 8 : 12), 4);
        uint said = BinaryPrimitives.ReadUInt32BigEndian(field);
        BinaryPrimitives.WriteUInt32BigEndian(field, random.Next(5) switch
        {
            0 => 0,
            1 => uint.MaxValue,
            2 => (uint)font.Length - 1,
            3 => said - (uint)random.Next(64),
            _ => said / 2,
        });
    }

    /// <summary>A table of another font in the place of this one's, at the end of the file.</summary>
    private static byte[] Graft(byte[] font, byte[] other, Random random)
    {
        int record = RecordsStart + (RecordSize * random.Next(TableCount(font)));
        string tag = Encoding.Latin1.GetString(font, record, 4);
        byte[] table = Of(other, tag).ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(font.AsSpan(record + 8), (uint)font.Length);
        BinaryPrimitives.WriteUInt32BigEndian(font.AsSpan(record + 12), (uint)table.Length);
        return [.. font, .. table];
    }

    private static void PutExtremes(Span<byte> table, Random random)
    {
        int front = random.Next(2) == 0 ? Math.Min(table.Length, 80) : table.Length;
        for (int change = 1 << random.Next(7); change > 0 && front > 4; change--)
        {
            Extremes[random.Next(Extremes.Length)].CopyTo(table[(2 * random.Next((front - 2) / 2))..]);
        }
    }

    private static int TableCount(ReadOnlySpan<byte> font) => BinaryPrimitives.ReadUInt16BigEndian(font[4..]);

    private static (int From, int Length) Table(ReadOnlySpan<byte> font, int index)
    {
        var record = font.Slice(RecordsStart + (RecordSize * index), RecordSize);
        return (BinaryPrimitives.ReadInt32BigEndian(record[8..]), BinaryPrimitives.ReadInt32BigEndian(record[12..]));
    }

    /// <summary>Empty where the font has no such table.</summary>
    private static Span<byte> Of(byte[] font, string tag)
    {
        for (int i = 0; i < TableCount(font); i++)
        {
            if (Encoding.Latin1.GetString(font, RecordsStart + (RecordSize * i), 4) == tag)
            {
                var (from, length) = Table(font, i);
                return font.AsSpan(from, length);
            }
        }

        return [];
    }
}

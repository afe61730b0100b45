using System.Buffers.Binary;
using System.Text;
using NameBand.Lettering.Faces;

namespace NameBand.Tests.Hostile;

/// <summary>
/// Writes a small TrueType face (ISO/IEC 14496-22) whose letters have the contours given: straight lines, in units of
/// which 1000 are an em and 700 the cap height.
/// </summary>
internal sealed class FaceMaker(string family)
{
    private const int Em = 1000;
    private const int CapHeight = 700;

    private readonly SortedDictionary<char, ((int X, int Y)[][] Contours, int Advance)> _letters = [];

    public FaceMaker With(char letter, int advance, params (int X, int Y)[][] contours)
    {
        _letters[letter] = (contours, advance);
        return this;
    }

    public byte[] ToBytes()
    {
        List<byte[]> glyphs = [Glyph([[(50, 0), (450, 0), (450, 700), (50, 700)]]), .. _letters.Values.Select(l => Glyph(l.Contours))];
        List<int> advances = [500, .. _letters.Values.Select(l => l.Advance)];
        int mostPoints = _letters.Values.Max(l => l.Contours.Sum(c => c.Length));
        int mostContours = _letters.Values.Max(l => l.Contours.Length);
        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal)
        {
            ["OS/2"] = Os2(),
            ["cmap"] = Cmap(),
            ["glyf"] = [.. glyphs.SelectMany(g => g)],
            ["head"] = Head(),
            ["hhea"] = Words(0x0001, 0x0000, 800, -200, 0, 60000, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, glyphs.Count),
            ["hmtx"] = Words([.. advances.SelectMany(a => new[] { a, 0 })]),
            ["loca"] = Loca(glyphs),
            ["maxp"] = Words(
                0x0001, 0x0000, glyphs.Count, Math.Min(mostPoints, 65535), Math.Min(mostContours, 65535), 0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 0),
            ["name"] = NameTable(),
            ["post"] = [.. Words(0x0003, 0x0000, 0, 0, 0, 0, 0, 0), .. new byte[16]],
        };
        return File(tables);
    }

    private static byte[] File(SortedDictionary<string, byte[]> tables)
    {
        int at = 12 + (16 * tables.Count);
        int power = 1 << (int)Math.Log2(tables.Count);
        List<byte> head = [.. Words(0x0001, 0x0000, tables.Count, 16 * power, (int)Math.Log2(power), 16 * (tables.Count - power))];
        var body = new List<byte>();
        foreach (var (tag, table) in tables)
        {
            byte[] padded = [.. table, .. new byte[(4 - (table.Length % 4)) % 4]];
            uint sum = 0;
            for (int i = 0; i < padded.Length; i += 4)
            {
                sum += BinaryPrimitives.ReadUInt32BigEndian(padded.AsSpan(i));
            }

            head.AddRange([.. Encoding.ASCII.GetBytes(tag), .. Long((int)sum), .. Long(at + body.Count), .. Long(table.Length)]);
            body.AddRange(padded);
        }

        return [.. head, .. body];
    }

    private static byte[] Glyph((int X, int Y)[][] contours)
    {
        var points = contours.SelectMany(c => c).ToList();
        if (points.Count == 0)
        {
            return [];
        }

        var bytes = new List<byte>(Words(
            contours.Length, points.Min(p => p.X), points.Min(p => p.Y), points.Max(p => p.X), points.Max(p => p.Y)));
        int last = -1;
        foreach (var contour in contours)
        {
            last += contour.Length;
            bytes.AddRange(Words(last));
        }

        bytes.AddRange(Words(0)); // no instructions
        bytes.AddRange(Enumerable.Repeat((byte)1, points.Count)); // on the curve, both steps as words
        bytes.AddRange(Words([.. Steps(points.Select(p => p.X))]));
        bytes.AddRange(Words([.. Steps(points.Select(p => p.Y))]));
        return bytes.Count % 4 == 0 ? [.. bytes] : [.. bytes, .. new byte[4 - (bytes.Count % 4)]];
    }

    private static IEnumerable<int> Steps(IEnumerable<int> values)
    {
        int before = 0;
        foreach (int value in values)
        {
            yield return value - before;
            before = value;
        }
    }

    private byte[] Cmap()
    {
        List<char> letters = [.. _letters.Keys];
        int segments = letters.Count + 1;
        List<int> words = [4, 16 + (8 * segments), 0, 2 * segments, 0, 0, 0];
        words.AddRange([.. letters.Select(c => (int)c), 0xFFFF, 0, .. letters.Select(c => (int)c), 0xFFFF]);
        words.AddRange([.. letters.Select((c, i) => i + 1 - c), 1]);
        words.AddRange(Enumerable.Repeat(0, segments));
        return [.. Words(0, 1, 3, 1), .. Long(12), .. Words([.. words])];
    }

    private static byte[] Loca(List<byte[]> glyphs)
    {
        List<byte> bytes = [.. Long(0)];
        int at = 0;
        foreach (byte[] glyph in glyphs)
        {
            at += glyph.Length;
            bytes.AddRange(Long(at));
        }

        return [.. bytes];
    }

    private static byte[] Head() =>
        [.. Words(1, 0, 1, 0, 0, 0, 0x5F0F, 0x3CF5, 0, Em, 0, 0, 0, 0, 0, 0, 0, 0, -32000, -32000, 32000, 32000, 0, 8, 2, 1, 0)];

    private static byte[] Os2() =>
    [
        .. Words(4, 500, 700, 5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0), .. new byte[10], .. new byte[16], .. Encoding.ASCII.GetBytes("TEST"),
        .. Words(0x40, 0x20, 0xFFFF, 800, -200, 0, 900, 300, 0, 0, 0, 0, 500, CapHeight, 0, 0x20, 1),
    ];

    private byte[] NameTable()
    {
        byte[] text = Encoding.BigEndianUnicode.GetBytes(family);
        int[] ids = [1, 4, 6];
        return [.. Words(0, ids.Length, 6 + (12 * ids.Length)), .. ids.SelectMany(id => Words(3, 1, 0x409, id, text.Length, 0)), .. text];
    }

    private static byte[] Words(params int[] values)
    {
        byte[] bytes = new byte[2 * values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(2 * i), (ushort)values[i]);
        }

        return bytes;
    }

    private static byte[] Long(int value) => Words(value >> 16, value);
}

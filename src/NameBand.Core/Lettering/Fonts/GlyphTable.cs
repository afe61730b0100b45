namespace NameBand.Lettering.Fonts;

/// <summary>
/// The TrueType outlines of a font, checked glyph by glyph before a rasteriser is handed one: offsets, point
/// counts, and composites that call each other.
/// </summary>
internal sealed class GlyphTable
{
    /// <summary>More points than the most ornate letter has; above it neither the check of overlaps nor the stitching ends in good time.</summary>
    public const int MostPoints = 8000;

    private const int MostParts = 256;
    private const int DeepestNesting = 6;

    private readonly FontBytes _glyf;
    private readonly FontBytes _loca;
    private readonly bool _longOffsets;
    private readonly int _count;

    private GlyphTable(FontBytes glyf, FontBytes loca, bool longOffsets, int count)
    {
        _glyf = glyf;
        _loca = loca;
        _longOffsets = longOffsets;
        _count = count;
    }

    /// <exception cref="FontFault">An offset points outside the glyf table.</exception>
    public static GlyphTable Read(FontBytes glyf, FontBytes loca, int locaFormat, int count)
    {
        if (locaFormat is not (0 or 1) || loca.Length < (count + 1) * (locaFormat == 1 ? 4 : 2))
        {
            throw new FontFault("its table of outlines is cut off");
        }

        var table = new GlyphTable(glyf, loca, locaFormat == 1, count);
        long before = 0;
        for (int i = 0; i <= count; i++)
        {
            long offset = table.Offset(i);
            if (offset < before || offset > glyf.Length)
            {
                throw new FontFault("its table of outlines is damaged");
            }

            before = offset;
        }

        return table;
    }

    /// <summary>Looks through one glyph and the parts it is put together from.</summary>
    /// <exception cref="FontFault">It is damaged or absurdly large.</exception>
    public void CheckGlyph(int glyph)
    {
        int points = 0, parts = 0;
        CheckGlyph(glyph, 0, ref points, ref parts);
    }

    private long Offset(int glyph) => _longOffsets ? _loca.U32(4 * glyph) : 2L * _loca.U16(2 * glyph);

    private void CheckGlyph(int glyph, int depth, ref int points, ref int parts)
    {
        if (glyph >= _count || depth > DeepestNesting || ++parts > MostParts)
        {
            throw new FontFault("its outline is put together without end");
        }

        long from = Offset(glyph), to = Offset(glyph + 1);
        if (to == from)
        {
            return;
        }

        var data = _glyf.Slice(from, to - from);
        int contours = data.I16(0);
        if (contours >= 0)
        {
            points += CheckSimple(data, contours);
            if (points > MostPoints)
            {
                throw new FontFault($"its outline has more than {MostPoints} points");
            }

            return;
        }

        const int ArgumentsAreWords = 1, HasScale = 8, MoreParts = 0x20, HasTwoScales = 0x40, HasMatrix = 0x80;
        int at = 10, flags;
        do
        {
            flags = data.U16(at);
            CheckGlyph(data.U16(at + 2), depth + 1, ref points, ref parts);
            at += 4 + ((flags & ArgumentsAreWords) != 0 ? 4 : 2);
            at += (flags & HasScale) != 0 ? 2 : (flags & HasTwoScales) != 0 ? 4 : (flags & HasMatrix) != 0 ? 8 : 0;
        }
        while ((flags & MoreParts) != 0);
    }

    private static int CheckSimple(FontBytes data, int contours)
    {
        if (contours == 0)
        {
            return 0;
        }

        int last = -1;
        for (int i = 0; i < contours; i++)
        {
            int end = data.U16(10 + (2 * i));
            if (end < last || end > MostPoints)
            {
                throw new FontFault(end > MostPoints ? $"its outline has more than {MostPoints} points" : "its outline is damaged");
            }

            last = end;
        }

        int at = 10 + (2 * contours);
        at += 2 + data.U16(at);
        return CheckPoints(data, at, last + 1);
    }

    private static int CheckPoints(FontBytes data, int at, int points)
    {
        const int XIsByte = 2, YIsByte = 4, Repeats = 8, XSameOrPositive = 16, YSameOrPositive = 32;
        int coordinates = 0;
        for (int i = 0; i < points;)
        {
            int flag = data.U8(at++);
            int repeat = (flag & Repeats) != 0 ? data.U8(at++) + 1 : 1;
            int size = (flag & XIsByte) != 0 ? 1 : (flag & XSameOrPositive) != 0 ? 0 : 2;
            size += (flag & YIsByte) != 0 ? 1 : (flag & YSameOrPositive) != 0 ? 0 : 2;
            coordinates += size * Math.Min(repeat, points - i);
            i += repeat;
        }

        _ = data.Slice(at, coordinates);
        return points;
    }
}

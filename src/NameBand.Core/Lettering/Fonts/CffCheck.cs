namespace NameBand.Lettering.Fonts;

/// <summary>The bounds of a CFF table (Adobe Technical Note 5176): its header and the INDEXes that follow it.</summary>
internal static class CffCheck
{
    private const int LongestCharString = 65535;
    private const int CharStringsOperator = 17;

    /// <exception cref="FontFault">A part of it points outside the table.</exception>
    public static void Check(FontBytes cff, int glyphCount)
    {
        if (cff.U8(0) != 1 || cff.U8(2) < 4)
        {
            throw new FontFault("its outlines (CFF) are damaged");
        }

        int at = cff.U8(2);
        at = SkipIndex(cff, at, out int names);
        int topDicts = at;
        at = SkipIndex(cff, at, out int dicts);
        at = SkipIndex(cff, at, out _);
        _ = SkipIndex(cff, at, out _);
        if (names != 1 || dicts != 1)
        {
            throw new FontFault("its outlines (CFF) hold more than one face");
        }

        int charStrings = CharStringsOffset(Item(cff, topDicts, 0));
        _ = SkipIndex(cff, charStrings, out int glyphs, LongestCharString);
        if (glyphs < glyphCount)
        {
            throw new FontFault("its outlines (CFF) are fewer than it says");
        }
    }

    private static int SkipIndex(FontBytes cff, int at, out int count, int longest = int.MaxValue)
    {
        count = cff.U16(at);
        if (count == 0)
        {
            return at + 2;
        }

        int size = cff.U8(at + 2);
        if (size is < 1 or > 4)
        {
            throw new FontFault("its outlines (CFF) are damaged");
        }

        long before = 1;
        long data = at + 2L + ((count + 1L) * size);
        for (int i = 0; i <= count; i++)
        {
            long offset = cff.Unsigned(at + 3 + (i * size), size);
            if (offset < before || offset - before > longest || data + offset > cff.Length)
            {
                throw new FontFault("its outlines (CFF) are damaged");
            }

            before = offset;
        }

        return (int)(data + before);
    }

    private static FontBytes Item(FontBytes cff, int index, int item)
    {
        int count = cff.U16(index), size = cff.U8(index + 2);
        long start = cff.Unsigned(index + 3 + (item * size), size);
        long end = cff.Unsigned(index + 3 + ((item + 1) * size), size);
        return cff.Slice(index + 2L + ((count + 1L) * size) + start, end - start);
    }

    private static int CharStringsOffset(FontBytes dict)
    {
        long operand = 0;
        for (int at = 0; at < dict.Length;)
        {
            int b = dict.U8(at++);
            switch (b)
            {
                case CharStringsOperator:
                    return operand is > 0 and < int.MaxValue ? (int)operand : throw new FontFault("its outlines (CFF) are damaged");
                case 12:
                    at++;
                    break;
                case < 22:
                    break;
                case 28:
                    operand = dict.I16(at);
                    at += 2;
                    break;
                case 29:
                    operand = (int)dict.U32(at);
                    at += 4;
                    break;
                case 30:
                    while ((dict.U8(at) & 0xF) != 0xF && dict.U8(at) >> 4 != 0xF)
                    {
                        at++;
                    }

                    at++;
                    break;
                case <= 246:
                    operand = b - 139;
                    break;
                case <= 250:
                    operand = ((b - 247) * 256) + dict.U8(at++) + 108;
                    break;
                default:
                    operand = (-(b - 251) * 256) - dict.U8(at++) - 108;
                    break;
            }
        }

        throw new FontFault("its outlines (CFF) are missing");
    }
}

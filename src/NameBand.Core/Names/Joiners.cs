using System.Globalization;

namespace NameBand.Names;

/// <summary>
/// Whether a zero width joiner or non-joiner changes how a name looks. Non-joiner: the contextual rule of RFC 5892,
/// appendix A.1. Joiner: appendix A.2, and next to a letter of a joined script, before a virama (Bengali), and
/// between pictographs.
/// </summary>
internal static class Joiners
{
    // Code points of Unicode: ZWNJ and ZWJ.
    public const int NonJoiner = 0x200C;
    public const int Joiner = 0x200D;

    public static bool IsNeeded(IReadOnlyList<int> text, int i)
    {
        if (i > 0 && TypeOf(text[i - 1]) == 'V')
        {
            return true;
        }

        int before = Neighbour(text, i, -1);
        int after = Neighbour(text, i, 1);
        bool joinsBefore = before >= 0 && TypeOf(text[before]) is 'L' or 'D';
        bool joinsAfter = after >= 0 && TypeOf(text[after]) is 'R' or 'D';
        if (text[i] == NonJoiner)
        {
            return joinsBefore && joinsAfter;
        }

        return joinsBefore || joinsAfter
            || (i > 0 && i + 1 < text.Count && TypeOf(text[i + 1]) == 'V')
            || (before >= 0 && after >= 0 && IsPictograph(text[before]) && IsPictograph(text[after]));
    }

    /// <summary>Symbols, which is what pictographs are in Unicode's categories.</summary>
    public static bool IsPictograph(int code) =>
        CharUnicodeInfo.GetUnicodeCategory(code) == UnicodeCategory.OtherSymbol;

    /// <summary>The nearest character that is not transparent to joining, or -1.</summary>
    private static int Neighbour(IReadOnlyList<int> text, int i, int step)
    {
        int at = i + step;
        while (at >= 0 && at < text.Count && (TypeOf(text[at]) == 'T' || text[at] is >= 0x1F3FB and <= 0x1F3FF))
        {
            at += step;
        }

        return at >= 0 && at < text.Count ? at : -1;
    }

    private static char TypeOf(int code)
    {
        if (UnicodeTables.Joining.TryGetValue(code, out char type))
        {
            return type;
        }

        return code is not (NonJoiner or Joiner) && CharUnicodeInfo.GetUnicodeCategory(code)
            is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format ? 'T' : 'U';
    }
}

using NameBand.Common;

namespace NameBand.Lettering.Bidi;

/// <summary>Bidi classes and paired brackets of Unicode 15.0.0; docs/data-sources.md says where they come from.</summary>
internal static class BidiData
{
    private static readonly Lazy<(CodePointRanges Ranges, BidiClass[] Values)> Classes = new(ReadClasses);

    private static readonly Lazy<Dictionary<int, int>> Brackets = new(ReadBrackets);

    public static BidiClass ClassOf(int codePoint)
    {
        var (ranges, values) = Classes.Value;
        int at = ranges.Find(codePoint);
        return at < 0 ? BidiClass.L : values[at];
    }

    /// <summary>
    /// What a code point is among the paired brackets: 0 for none, the opening bracket's own code point for an
    /// opening one, that of its partner with a minus sign for a closing one. The two pairs of angle brackets that
    /// are canonically the same (U+2329 and U+3008) give the same number, as BD16 asks.
    /// </summary>
    public static int BracketOf(int codePoint) => Brackets.Value.GetValueOrDefault(codePoint);

    private static (CodePointRanges, BidiClass[]) ReadClasses()
    {
        var ranges = CodePointRanges.Read("bidi-classes.txt");
        var values = new BidiClass[ranges.Count];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = Enum.Parse<BidiClass>(ranges[i].Value);
        }

        return (ranges, values);
    }

    private static Dictionary<int, int> ReadBrackets()
    {
        var ranges = CodePointRanges.Read("bidi-brackets.txt");
        var brackets = new Dictionary<int, int>(2 * ranges.Count);
        for (int i = 0; i < ranges.Count; i++)
        {
            int pair = ranges[i].From == 0x2329 ? 0x3008 : ranges[i].From;
            brackets[ranges[i].From] = pair;
            brackets[CodePointRanges.Hex(ranges[i].Value)] = -pair;
        }

        return brackets;
    }
}

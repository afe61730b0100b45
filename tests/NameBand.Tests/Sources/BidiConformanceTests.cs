using System.Globalization;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Bidi;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// Every case of BidiTest.txt and BidiCharacterTest.txt, Unicode 15.0.0, as the Unicode Consortium publishes
/// them with UAX 9; and our table of classes against UnicodeData.txt.
/// </summary>
public class BidiConformanceTests
{
    private const int Removed = -1;

    [SkippableFact]
    public void Every_case_of_BidiTest_agrees()
    {
        int[] levels = [], order = [];
        int cases = 0;
        foreach (string line in UnicodeFile.Lines("BidiTest.txt"))
        {
            if (line.StartsWith("@Levels:", StringComparison.Ordinal))
            {
                levels = Numbers(line[8..]);
            }
            else if (line.StartsWith("@Reorder:", StringComparison.Ordinal))
            {
                order = Numbers(line[9..]);
            }
            else if (line.Length > 0 && line[0] is not ('#' or '@'))
            {
                string[] parts = line.Split(';');
                BidiClass[] classes = [.. Words(parts[0]).Select(Enum.Parse<BidiClass>)];
                int directions =
                    int.Parse(parts[1], NumberStyles.AllowHexSpecifier | NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture);
                foreach (int paragraph in new[] { BidiLevels.AutoParagraph, 0, 1 }.Where(p => (directions & (1 << (p + 1))) != 0))
                {
                    Check(line, classes, new int[classes.Length], paragraph, levels, order, null);
                    cases++;
                }
            }
        }

        Assert.True(cases > 700_000, $"only {cases} cases were read");
    }

    [SkippableFact]
    public void Every_case_of_BidiCharacterTest_agrees()
    {
        int cases = 0;
        foreach (string line in UnicodeFile.Lines("BidiCharacterTest.txt"))
        {
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            string[] parts = line.Split(';');
            int[] codePoints = [.. Words(parts[0]).Select(w => CodePointRanges.Hex(w))];
            BidiClass[] classes = [.. codePoints.Select(BidiData.ClassOf)];
            int given = int.Parse(parts[1], CultureInfo.InvariantCulture);
            Check(
                line, classes, [.. codePoints.Select(BidiData.BracketOf)], given == 2 ? BidiLevels.AutoParagraph : given,
                Numbers(parts[3]), Numbers(parts[4]), int.Parse(parts[2], CultureInfo.InvariantCulture));
            cases++;
        }

        Assert.True(cases > 91_000, $"only {cases} cases were read");
    }

    [SkippableFact]
    public void The_table_of_classes_is_that_of_UnicodeData()
    {
        int firstOfRange = 0, seen = 0;
        foreach (string line in UnicodeFile.Lines("UnicodeData.txt"))
        {
            string[] fields = line.Split(';');
            int code = CodePointRanges.Hex(fields[0]);
            if (fields[1].EndsWith("First>", StringComparison.Ordinal))
            {
                firstOfRange = code;
                continue;
            }

            int from = fields[1].EndsWith("Last>", StringComparison.Ordinal) ? firstOfRange : code;
            for (int c = from; c <= code; c++)
            {
                Assert.True(
                    BidiData.ClassOf(c) == Enum.Parse<BidiClass>(fields[4]), $"U+{c:X4} is {fields[4]}, ours {BidiData.ClassOf(c)}");
                seen++;
            }
        }

        Assert.True(seen > 280_000, $"only {seen} characters were read");
    }

    private static void Check(
        string line, BidiClass[] classes, int[] brackets, int paragraph, int[] levels, int[] order, int? paragraphLevel)
    {
        byte[] found = BidiLevels.Resolve(classes, brackets, paragraph, out int foundParagraph);
        int[] shown = [.. Enumerable.Range(0, found.Length).Where(i => levels[i] != Removed)];
        bool right = shown.All(i => found[i] == levels[i]) && (paragraphLevel is null || paragraphLevel == foundParagraph);
        int[] visual = BidiLevels.VisualOrder([.. shown.Select(i => found[i])]);
        right &= visual.Select(v => shown[v]).SequenceEqual(order);
        Assert.True(right, $"{line}\nparagraph {paragraph}: wanted {string.Join(' ', levels)}, found {string.Join(' ', found)}");
    }

    private static int[] Numbers(string text) =>
        [.. Words(text).Select(w => w == "x" ? Removed : int.Parse(w, CultureInfo.InvariantCulture))];

    private static string[] Words(string text) => text.Split((char[])[' ', '\t'], StringSplitOptions.RemoveEmptyEntries);
}

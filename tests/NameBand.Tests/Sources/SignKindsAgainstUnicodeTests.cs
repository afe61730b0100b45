using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Shaping;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Our tables of picture signs and of ignorable characters against Unicode 15.0's emoji-data.txt and
/// DerivedCoreProperties.txt.</summary>
public class SignKindsAgainstUnicodeTests
{
    [SkippableFact]
    public void Picture_signs_are_those_of_Unicode()
    {
        HashSet<int> wanted =
            [.. Property("emoji/emoji-data.txt", "Extended_Pictographic"), .. Property("emoji/emoji-data.txt", "Emoji_Presentation")];
        wanted.ExceptWith(['©', '®', '™']);
        for (int c = 0; c <= 0x10FFFF; c++)
        {
            bool ours = c is < 0xD800 or > 0xDFFF && c != 0xFE0F && SignKinds.IsPicture(char.ConvertFromUtf32(c));
            Assert.True(ours == wanted.Contains(c), $"U+{c:X4}");
        }
    }

    [SkippableFact]
    public void Ignorable_characters_are_those_of_Unicode()
    {
        HashSet<int> wanted = [.. Property("DerivedCoreProperties.txt", "Default_Ignorable_Code_Point")];
        for (int c = 0; c <= 0x10FFFF; c++)
        {
            Assert.True(SignKinds.IsIgnorable(c) == wanted.Contains(c), $"U+{c:X4}");
        }
    }

    private static IEnumerable<int> Property(string file, string property)
    {
        foreach (string line in UnicodeFile.Lines(file))
        {
            string[] fields = line.Split('#')[0].Split(';');
            if (fields.Length == 2 && fields[1].Trim() == property)
            {
                string[] range = fields[0].Trim().Split("..");
                int from = CodePointRanges.Hex(range[0]), to = CodePointRanges.Hex(range[^1]);
                for (int c = from; c <= to; c++)
                {
                    yield return c;
                }
            }
        }
    }
}

using System.Globalization;
using NameBand.Names;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// Source: NormalizationTest.txt of the Unicode Character Database, as Debian's package unicode-data ships it.
/// Columns: source; NFC; NFD; NFKC; NFKD.
/// </summary>
public class NormalizationSourcesTests
{
    private const string File = "/usr/share/unicode/NormalizationTest.txt.bz2";

    [SkippableFact]
    public void A_name_is_the_NFC_of_what_its_owner_wrote()
    {
        OutsideTool.RequireFile(File, "unicode-data");
        OutsideTool.Require("bzcat", "bzip2");
        int checkedLines = 0;
        foreach (string line in OutsideTool.Run("bzcat", [File]).Split('\n'))
        {
            string[] columns = line.Split('#')[0].Split(';');
            if (line.StartsWith('@') || columns.Length < 5)
            {
                continue;
            }

            string source = Text(columns[0]);
            string nfc = Text(columns[1]);

            // Characters that a name never keeps are checked elsewhere; here letters stand round the case so that
            // no rule about the edges or blanks of a name takes part.
            if (source.EnumerateRunes()
                .Any(r => Invisible.IsBlank(r.Value) || Invisible.IsAlways(r.Value) || r.Value is 0x034F or 0x200C or 0x200D)
                || nfc.EnumerateRunes().Any(r => Invisible.IsBlank(r.Value) || Invisible.IsAlways(r.Value)))
            {
                continue;
            }

            Assert.True(NameText.Clean("x" + source + "x").Text == ("x" + nfc + "x").Normalize(), line);
            Assert.True(NameText.Clean("|" + source).Text == "|" + nfc, line);
            checkedLines++;
        }

        Assert.True(checkedLines > 18_000, $"only {checkedLines} lines were checked");
    }

    private static string Text(string codes) =>
        string.Concat(codes.Trim().Split(' ')
            .Select(c => char.ConvertFromUtf32(int.Parse(c, NumberStyles.HexNumber, CultureInfo.InvariantCulture))));
}

using System.Text;
using System.Text.RegularExpressions;

namespace NameBand.Tests.Hostile;

/// <summary>Spoils a real file in one of many ways, always in the same way for the same seed.</summary>
internal static partial class Mutator
{
    private const int MostChanges = 10;
    private const int LargestText = 200_000;
    private const int MostWords = 150;

    private static readonly string[] Oddities =
    [
        "\"", "\"\"", ",", ";", "\t", "\r", "\n", "\r\n", "\0", "\uFEFF", "\u202E", "\u2066", "\u0301\u0301\u0301", "💡", "\uFFFD", "null",
        "true", "{}", "[", "]", "{",
        "}", "[[[[[[[[", "{\"a\":", "-", "-1", "0", "1e308", "-1e-308", "1e999", "NaN", "Infinity", "99999999999999999999", "2147483648",
        "0.1 mm", "1/0 in", "2 in",
        "3 furlong", "½ in", "٣", "=1+1", "@SUM(A1)", "../../names.csv", "C:\\names.csv", "/", "\\u0000", "\\ud800", "//", "/*", "<script>",
        "%s%n", "\u2028", "\u0085", "\uFFFE", "\uFFFF",
    ];

    private static readonly byte[][] OddBytes =
        [[0xFF, 0xFE], [0xEF, 0xBB, 0xBF], [0xC3], [0xED, 0xA0, 0x80], [0xF8, 0x88], [0x80], [0x1B, 0x24], [0x00, 0x00, 0xFE, 0xFF]];

    /// <summary>Words and signs to put into files of a kind: what stands in real ones, and what is odd everywhere.</summary>
    public static IEnumerable<byte[]> Words(IEnumerable<byte[]> files)
    {
        var words = files.SelectMany(f => WordsOf(Encoding.Latin1.GetString(f))).Distinct(StringComparer.Ordinal).Take(MostWords)
            .Select(Encoding.Latin1.GetBytes);
        return words.Concat(Oddities.Select(Encoding.UTF8.GetBytes)).Concat(OddBytes);

        static IEnumerable<string> WordsOf(string text) => Word().Matches(text).Select(m => m.Value);
    }

    /// <summary>A text file (CSV or JSON) with up to ten things done to it, now and then joined with another file.</summary>
    public static byte[] Text(byte[] whole, byte[] other, Random random)
    {
        var text = new List<byte>(whole);
        for (int change = 1 + random.Next(1 + random.Next(MostChanges)); change > 0; change--)
        {
            ChangeText(text, other, random);
        }

        return [.. text.Count > LargestText ? text.GetRange(0, LargestText) : text];
    }

    /// <summary>A binary file with up to 512 bytes changed, more often near its front, where the tables are listed.</summary>
    public static byte[] Binary(byte[] whole, Random random)
    {
        byte[] spoilt = [.. whole];
        bool atTheFront = random.Next(3) == 0;
        for (int change = 1 << random.Next(10); change > 0; change--)
        {
            int at = random.Next(atTheFront ? Math.Min(400, spoilt.Length) : spoilt.Length);
            spoilt[at] = random.Next(4) switch
            {
                0 => 0,
                1 => 0xFF,
                2 => (byte)(spoilt[at] ^ (1 << random.Next(8))),
                _ => (byte)random.Next(256)
            };
        }

        return random.Next(20) == 0 ? spoilt[..random.Next(spoilt.Length)] : spoilt;
    }

    private static void ChangeText(List<byte> text, byte[] other, Random random)
    {
        int at = random.Next(text.Count + 1);
        int length = Math.Min(text.Count - at, 1 + random.Next(1 << random.Next(8)));
        switch (random.Next(9))
        {
            case 0 when at < text.Count:
                text[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1:
                text.RemoveRange(at, length);
                break;
            case 2:
                text.InsertRange(random.Next(text.Count + 1), text.GetRange(at, length));
                break;
            case 3 when length > 0:
                byte[] piece = [.. text.GetRange(at, length)];
                text.InsertRange(at, Enumerable.Repeat(piece, random.Next(1, 60)).SelectMany(p => p));
                break;
            case 4:
                text.RemoveRange(at, random.Next(8) == 0 ? text.Count - at : 0);
                break;
            case 5 when other.Length > 0:
                int from = random.Next(other.Length);
                text.InsertRange(at, other[from..Math.Min(other.Length, from + 200)]);
                break;
            case 6:
                text.InsertRange(at, OddBytes[random.Next(OddBytes.Length)]);
                break;
            case 7 when random.Next(10) == 0:
                text.InsertRange(at, Enumerable.Repeat((byte)random.Next(32, 127), 1 << random.Next(14)));
                break;
            default:
                text.InsertRange(at, Encoding.UTF8.GetBytes(Oddities[random.Next(Oddities.Length)]));
                break;
        }
    }

    [GeneratedRegex("[A-Za-z_][A-Za-z0-9_.-]{1,30}")]
    private static partial Regex Word();
}

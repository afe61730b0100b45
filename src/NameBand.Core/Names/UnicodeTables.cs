using System.Collections.Frozen;
using System.Globalization;

namespace NameBand.Names;

/// <summary>Reads the Unicode tables shipped with the program (version and licence in each; see docs/data-sources.md).</summary>
internal static class UnicodeTables
{
    /// <summary>Look-alike characters and the text that stands for all that look like it (UTS 39 prototypes).</summary>
    public static FrozenDictionary<int, string> Prototypes { get; } = Lines("confusables.txt")
        .Select(f => (Code: Hex(f[0]), Text: string.Concat(f[1].Split(' ').Select(h => char.ConvertFromUtf32(Hex(h))))))
        .ToFrozenDictionary(x => x.Code, x => x.Text);

    /// <summary>Joining types L, D, R and T, and V for a virama, by character.</summary>
    public static FrozenDictionary<int, char> Joining { get; } = Lines("joining.txt")
        .SelectMany(f =>
        {
            string[] ends = f[1].Split("..");
            int first = Hex(ends[0]);
            return Enumerable.Range(first, Hex(ends[1]) - first + 1).Select(c => (Code: c, Type: f[0][0]));
        })
        .ToFrozenDictionary(x => x.Code, x => x.Type);

    private static IEnumerable<string[]> Lines(string file)
    {
        using var stream = typeof(UnicodeTables).Assembly.GetManifestResourceStream("NameBand.Names." + file)
            ?? throw new InvalidOperationException($"The table {file} is missing from the program.");
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (line.Length > 0 && line[0] != '#')
            {
                yield return line.Split(';');
            }
        }
    }

    private static int Hex(string digits) => int.Parse(digits, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
}

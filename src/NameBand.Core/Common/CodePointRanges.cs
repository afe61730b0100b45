using System.Globalization;
using System.Reflection;

namespace NameBand.Common;

/// <summary>
/// Ranges of code points with a value each, read from a table embedded in the program. A line is
/// <c>FROM-TO VALUE</c> or <c>FROM VALUE</c> in hexadecimal; lines that begin with # are remarks.
/// </summary>
internal sealed class CodePointRanges
{
    private readonly int[] _from;
    private readonly int[] _to;
    private readonly string[] _value;

    private CodePointRanges(int[] from, int[] to, string[] value)
    {
        _from = from;
        _to = to;
        _value = value;
    }

    public int Count => _from.Length;

    public (int From, int To, string Value) this[int index] => (_from[index], _to[index], _value[index]);

    public static CodePointRanges Read(string resource)
    {
        var from = new List<int>();
        var to = new List<int>();
        var value = new List<string>();
        foreach (string line in Lines(resource))
        {
            int space = line.IndexOf(' ', StringComparison.Ordinal);
            var range = space < 0 ? line.AsSpan() : line.AsSpan(0, space);
            int dash = range.IndexOf('-');
            from.Add(Hex(dash < 0 ? range : range[..dash]));
            to.Add(Hex(dash < 0 ? range : range[(dash + 1)..]));
            value.Add(space < 0 ? "" : line[(space + 1)..]);
        }

        return new CodePointRanges([.. from], [.. to], [.. value]);
    }

    /// <summary>Index of the range that holds a code point, or -1.</summary>
    public int Find(int codePoint)
    {
        int at = Array.BinarySearch(_from, codePoint);
        if (at >= 0)
        {
            return at;
        }

        at = ~at - 1;
        return at >= 0 && codePoint <= _to[at] ? at : -1;
    }

    public static int Hex(ReadOnlySpan<char> digits) =>
        int.Parse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);

    private static IEnumerable<string> Lines(string resource)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("NameBand.Lettering." + resource)
            ?? throw new InvalidOperationException($"The program was built without its table {resource}.");
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (line.Length > 0 && line[0] != '#')
            {
                yield return line;
            }
        }
    }
}

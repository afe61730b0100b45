using System.Collections.Immutable;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters;

/// <summary>Collects the rows of one size while an alphabet's file is read.</summary>
internal sealed class AlphabetMaker(double heightMm, double assumedHalfRangeMm)
{
    private readonly Dictionary<string, int> _lines = new(StringComparer.Ordinal);
    private MachineLetter? _gap;

    public double HeightMm => heightMm;

    public SortedDictionary<string, MachineLetter> Letters { get; } = new(StringComparer.Ordinal);

    public SortedSet<string> Lacking { get; } = new(StringComparer.Ordinal);

    public double StartSeconds { get; set; }

    public int? Line(string letter) => _lines.TryGetValue(letter, out int line) ? line : null;

    public void Saw(string letter, int line) => _lines[letter] = line;

    /// <param name="letter">Empty for the gap.</param>
    public void Add(string letter, double widthMm, double? lowMm, double? highMm, double? seconds, WidthOrigin origin)
    {
        double low = lowMm is { } l && l <= widthMm ? l : Math.Max(0, widthMm - assumedHalfRangeMm);
        double high = highMm is { } h && h >= widthMm ? h : widthMm + assumedHalfRangeMm;
        var made = new MachineLetter(letter, widthMm, low, high, seconds, origin);
        if (letter.Length == 0)
        {
            _gap = made;
        }
        else
        {
            Letters[letter] = made;
        }
    }

    /// <param name="gapMm">The gap by job.json, which goes before the file's.</param>
    public Alphabet Made(double? gapMm)
    {
        var gap = gapMm is { } given
            ? new MachineLetter("", given, given, given, null, WidthOrigin.Measured)
            : _gap ?? new MachineLetter("", 0.1 * heightMm, 0, 0.2 * heightMm, null, WidthOrigin.Estimated);
        return new Alphabet(
            heightMm, gap, Letters.ToImmutableSortedDictionary(StringComparer.Ordinal), [.. Lacking], StartSeconds);
    }
}

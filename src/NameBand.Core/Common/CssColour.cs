using System.Collections.Frozen;
using System.Globalization;

namespace NameBand.Common;

/// <summary>A colour in sRGB, as CSS writes it.</summary>
public readonly record struct CssColour(byte Red, byte Green, byte Blue)
{
    private static readonly FrozenDictionary<string, CssColour> Named = Words().Select(l => l.Split(' '))
        .ToFrozenDictionary(
            p => p[0], p => Of(int.Parse(p[1], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture)),
            StringComparer.OrdinalIgnoreCase);

    /// <summary>All words there are, in the order of the alphabet.</summary>
    public static IEnumerable<string> KnownWords => Named.Keys.Order(StringComparer.Ordinal);

    /// <summary>Red, green and blue in one number, as <c>0xRRGGBB</c>.</summary>
    public int Number => (Red << 16) | (Green << 8) | Blue;

    public static CssColour Of(int number) => new((byte)(number >> 16), (byte)(number >> 8), (byte)number);

    /// <summary>Reads <c>#rrggbb</c> or a colour word of CSS.</summary>
    public static bool TryParse(string text, out CssColour colour)
    {
        string word = text.Trim();
        if (Named.TryGetValue(word, out colour))
        {
            return true;
        }

        bool isNumber = word.Length == 7 && word[0] == '#' && word.Skip(1).All(char.IsAsciiHexDigit);
        colour = isNumber ? Of(int.Parse(word.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture)) : default;
        return isNumber;
    }

    /// <summary>Such as <c>#2e4c8e</c>.</summary>
    public override string ToString() => "#" + Number.ToString("x6", CultureInfo.InvariantCulture);

    /// <summary>Such as <c>darkred (#8b0000)</c>, or <c>near darkred (#8a0505)</c>: what one can ask for in a shop.</summary>
    public Said InWords
    {
        get
        {
            var own = this;
            string near = KnownWords.MinBy(w => own.ApartFrom(Named[w]))!;
            return own.ApartFrom(Named[near]) == 0 ? (Said)$"{near} ({ToString()})" : $"near {near} ({ToString()})";
        }
    }

    /// <summary>Each with its number: they are the words of CSS, and in no language.</summary>
    private static IEnumerable<string> Words()
    {
        using var stream = typeof(CssColour).Assembly.GetManifestResourceStream("NameBand.Common.css-colours.txt")!;
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (line[0] != '#')
            {
                yield return line;
            }
        }
    }

    private int ApartFrom(CssColour other) =>
        (2 * Square(Red - other.Red)) + (4 * Square(Green - other.Green)) + (3 * Square(Blue - other.Blue));

    private static int Square(int number) => number * number;

    /// <summary>
    /// Contrast of two colours, 1 to 21: WCAG 2.2, “contrast ratio”, (L1 + 0.05) / (L2 + 0.05) of the relative luminances.
    /// </summary>
    public double ContrastRatio(CssColour other)
    {
        double one = Luminance;
        double two = other.Luminance;
        return (Math.Max(one, two) + 0.05) / (Math.Min(one, two) + 0.05);
    }

    /// <summary>WCAG 2.2, “relative luminance”.</summary>
    private double Luminance => (0.2126 * Linear(Red)) + (0.7152 * Linear(Green)) + (0.0722 * Linear(Blue));

    private static double Linear(byte channel)
    {
        double part = channel / 255.0;
        return part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4);
    }
}

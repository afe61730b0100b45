namespace NameBand.Common;

/// <summary>A unit of length in millimetres. Inch, foot and yard are the international ones of 1959: 25.4, 304.8 and 914.4 mm.</summary>
internal sealed record LengthUnit(decimal Mm, bool IsMetric, params string[] Words)
{
    private static readonly LengthUnit[] All =
    [
        new(1m, true, "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
        new(10m, true, "cm", "centimetre", "centimetres", "centimeter", "centimeters"),
        new(1000m, true, "m", "metre", "metres", "meter", "meters"),
        new(25.4m, false, "in", "in.", "inch", "inches", "\""),
        new(304.8m, false, "ft", "ft.", "foot", "feet", "'"),
        new(914.4m, false, "yd", "yd.", "yard", "yards"),
    ];

    public static LengthUnit? Find(string word) =>
        All.FirstOrDefault(u => u.Words.Contains(word, StringComparer.OrdinalIgnoreCase));
}

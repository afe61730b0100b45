using System.Collections.Immutable;
using System.Globalization;

namespace NameBand.Web.Table;

/// <summary>A length as it is typed: a number, and the unit that stands beside it unless it was typed too.</summary>
internal static class MeasureText
{
    public static ImmutableArray<string> Units { get; } = ["cm", "mm", "m", "in"];

    /// <summary>What to begin with where nothing was written yet: as this computer's region measures.</summary>
    public static string UsualUnit(bool isInInches) => isInInches || !RegionInfo.CurrentRegion.IsMetric ? "in" : Units[0];

    /// <summary>The number and the unit of what was written; what has another form keeps it, and <paramref name="usual"/> beside
    /// it.</summary>
    public static (string Number, string Unit) Parted(string written, string usual)
    {
        string text = written.Trim();
        string? unit = Units.Where(u => text.EndsWith(u, StringComparison.OrdinalIgnoreCase)).MaxBy(u => u.Length);
        string number = unit is null ? text : text[..^unit.Length].TrimEnd();
        return unit is not null && IsNumber(number) ? (number, unit) : (text, usual);
    }

    /// <summary>As it is written into the job: with its unit once.</summary>
    public static string Whole(string number, string unit) => IsNumber(number.Trim()) ? $"{number.Trim()} {unit}" : number.Trim();

    /// <summary>Digits, with a point, or a fraction such as <c>27 1/2</c>: nothing that could be a unit.</summary>
    private static bool IsNumber(string text) =>
        text.Length > 0 && text.All(c => char.IsAsciiDigit(c) || c is '.' or ',' or '/' or ' ' or '½' or '¼' or '¾');
}

using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>The strips of a hooping in the order in which they lie, and what each is called.</summary>
public static class StripWords
{
    /// <summary>From the upper one down, as everything that shows a hooping shows them.</summary>
    public static IReadOnlyList<HoopedSegment> FromAbove(Hooping hooping) =>
        [.. hooping.Segments.OrderByDescending(s => s.YMm).ThenBy(s => s.XMm)];

    /// <summary>Empty where there is only one.</summary>
    public static Said Of(int fromAbove, int count) => count < 2 ? (Said)""
        : fromAbove == 0 ? "upper strip"
        : fromAbove == count - 1 ? "lower strip"
        : (Said)$"strip {fromAbove + 1} from above";

    /// <summary>Which of the two lines of its strip a name stands on; empty where a strip has one.</summary>
    public static Said LineOf(PlacedName name) => LineOf(name.Line);

    /// <inheritdoc cref="LineOf(PlacedName)"/>
    public static Said LineOf(int line) => line switch
    {
        1 => "upper line",
        2 => "lower line",
        _ => "",
    };
}

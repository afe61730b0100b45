using System.Globalization;

namespace NameBand.Output;

/// <summary>What a strip of a hooping is called, counted from above.</summary>
internal static class StripWords
{
    /// <summary>Empty where there is only one.</summary>
    public static string Of(int fromAbove, int count) => count < 2 ? ""
        : fromAbove == 0 ? "upper strip"
        : fromAbove == count - 1 ? "lower strip"
        : string.Create(CultureInfo.InvariantCulture, $"strip {fromAbove + 1} from above");
}

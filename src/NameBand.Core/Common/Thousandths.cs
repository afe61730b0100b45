namespace NameBand.Common;

/// <summary>Rounding as every file of ours does it, so that figures in different files agree to the last digit.</summary>
internal static class Thousandths
{
    /// <summary>A length in mm as a whole number of thousandths, ties to even.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or beyond a million kilometres: a bug upstream.</exception>
    public static long Of(double mm)
    {
        double scaled = Math.Round(mm * 1000);
        return Math.Abs(scaled) < 1e15 // false for NaN too
            ? (long)scaled
            : throw new ArgumentOutOfRangeException(nameof(mm), mm, "A length in a file is a finite number of millimetres.");
    }

    /// <summary>A length in mm rounded to 0.001 mm, exactly.</summary>
    public static decimal Mm(double mm) => new decimal(Of(mm)) / 1000;

    /// <summary>Minutes or metres rounded to a tenth, exactly.</summary>
    public static decimal Tenths(double value) => new decimal((long)Math.Round(Math.Clamp(value, -1e15, 1e15) * 10)) / 10;
}

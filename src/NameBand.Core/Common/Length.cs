namespace NameBand.Common;

/// <summary>A length. Held in millimetres; read and printed with its unit. Room for the parser: see LengthText.</summary>
public readonly record struct Length : IComparable<Length>
{
    private readonly double _mm;

    private Length(double mm) => _mm = mm;

    public const double MmPerInch = 25.4;

    public double Mm => _mm;

    public double Inches => _mm / MmPerInch;

    public static Length FromMm(double mm) => new(Checked(mm));

    public static Length FromInches(double inches) => new(Checked(inches * MmPerInch));

    public int CompareTo(Length other) => _mm.CompareTo(other._mm);

    private static double Checked(double mm) => double.IsFinite(mm)
        ? mm
        : throw new ArgumentOutOfRangeException(nameof(mm), mm, "A length is a finite number of millimetres.");
}

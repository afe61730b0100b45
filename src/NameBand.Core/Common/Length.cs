using System.Diagnostics.CodeAnalysis;

namespace NameBand.Common;

/// <summary>A length. Held in millimetres; read and printed with its unit.</summary>
public readonly record struct Length : IComparable<Length>
{
    private readonly double _mm;

    private Length(double mm) => _mm = mm;

    public const double MmPerInch = 25.4; // Exact: the international inch of 1959.

    /// <summary>The longest length a person's file may give, 10 km: beyond it a unit was mistaken.</summary>
    public const double LongestReadMm = 10_000_000;

    public double Mm => _mm;

    public double Inches => _mm / MmPerInch;

    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public static Length FromMm(double mm) => new(Checked(mm));

    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public static Length FromInches(double inches) => new(Checked(inches * MmPerInch));

    /// <summary>
    /// Reads a length as a person writes it: <c>2 in</c>, <c>1 1/2 in</c>, <c>3/4"</c>, <c>1½"</c>, <c>50 mm</c>,
    /// <c>12 cm</c>, <c>3.66 m</c>, <c>12 ft 3 in</c>, <c>4 yd</c>. The unit must be there and the decimal mark is a
    /// point, whatever the machine's culture. Zero is a length; a negative one and one over 10 km are not.
    /// </summary>
    /// <param name="why">When it cannot be read: what is wrong and what to write instead, in whole sentences.</param>
    public static bool TryParse([NotNullWhen(true)] string? text, out Length length, out Said why)
    {
        bool isRead = LengthReading.TryRead(text, out length, out LengthFault fault);
        why = isRead ? Said.Nothing : $"{fault.Found} {fault.Mend}";
        return isRead;
    }

    /// <summary>In millimetres to the nearest tenth, such as <c>50.8 mm</c>.</summary>
    public Said InMillimetres() => LengthPrinting.Millimetres(_mm);

    /// <summary>In metres to the nearest millimetre, such as <c>3.66 m</c>.</summary>
    public Said InMetres() => LengthPrinting.Metres(_mm);

    /// <summary>In inches to the nearest sixteenth, as a tape measure shows them, such as <c>1 1/2 in</c>.</summary>
    public Said InInches() => LengthPrinting.Inches(_mm);

    /// <summary>In millimetres to the nearest millionth; <see cref="TryParse(string, out Length, out Said)"/> reads it back.</summary>
    public override string ToString() => LengthPrinting.Exact(_mm);

    public int CompareTo(Length other) => _mm.CompareTo(other._mm);

    private static double Checked(double mm) => double.IsFinite(mm)
        ? mm
        : throw new ArgumentOutOfRangeException(nameof(mm), mm, "A length is a finite number of millimetres.");
}

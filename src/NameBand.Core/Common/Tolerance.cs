namespace NameBand.Common;

/// <summary>By how much two numbers may differ and still count as the same: one member for each reason why they would.</summary>
internal static class Tolerance
{
    /// <summary>
    /// What rounding leaves in a sum of minutes, work, parts or angles, or of lengths where letters are 1 mm high. A number holds 53 bits
    /// (IEEE 754), so a thousand additions that come to 1000 stray by 1e-10 at most; nothing that is decided here hangs on a billionth.
    /// </summary>
    public const double Rounding = 1e-9;

    /// <summary>
    /// The same for lengths along cloth, in mm: a thousand additions that come to a kilometre stray by 1e-7 at most, and a millionth of a
    /// millimetre nobody can see or sew.
    /// </summary>
    public const double RoundingMm = 1e-6;

    /// <summary>Places are the same to the last digit that plan.json keeps of them, a thousandth of a millimetre.</summary>
    public const double KeptMm = 0.001;

    /// <summary>
    /// What is read back from a plan stands on thousandths of a millimetre, and so does what it is held against: each may be half a
    /// thousandth off, and the difference of two such lengths twice that.
    /// </summary>
    public const double ReadBackMm = 0.002;

    /// <summary>A fortieth of a thread's width, and ten times what a file rounds off: nobody sees it, no rounding comes to it.</summary>
    public const double UnseenMm = 0.01;

    /// <summary>Letter heights go by tenths of a millimetre: two that differ by less than half a tenth are one.</summary>
    public const double HeightMm = 0.05;
}

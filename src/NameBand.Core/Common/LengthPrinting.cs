using System.Globalization;

namespace NameBand.Common;

/// <summary>Lengths as text, by the reader's language.</summary>
internal static class LengthPrinting
{
    // A sixteenth, 1.6 mm, is the smallest mark of usual rulers and tapes in inches (common practice, no source).
    private const int SixteenthsPerInch = 16;

    public static Said Millimetres(double mm) => $"{Signed(mm, "0.#"):0.#} mm";

    public static Said Metres(double mm) => $"{Signed(mm / 1000, "0.###"):0.###} m";

    public static string Exact(double mm) => $"{Rounded(mm, "0.######")} mm";

    public static Said Inches(double mm)
    {
        long sixteenths = (long)Math.Round(Math.Abs(mm) / Length.MmPerInch * SixteenthsPerInch, MidpointRounding.AwayFromZero);
        long whole = sixteenths / SixteenthsPerInch;
        long top = sixteenths % SixteenthsPerInch;
        long bottom = SixteenthsPerInch;
        while (top > 0 && top % 2 == 0)
        {
            top /= 2;
            bottom /= 2;
        }

        string sign = mm < 0 && sixteenths > 0 ? "-" : "";
        string fraction = top > 0 ? string.Create(CultureInfo.InvariantCulture, $"{top}/{bottom}") : "";
        Said number = (whole, fraction) switch
        {
            (0, "") => "0",
            (0, _) => Said.Plain(fraction),
            (_, "") => $"{whole}",
            _ => ((Said)$"{whole} {fraction}").InOrder(),
        };
        return $"{sign}{number} in";
    }

    private static string Rounded(double value, string format) =>
        Signed(value, format).ToString(format, CultureInfo.InvariantCulture);

    /// <summary>What is printed as nothing has no minus.</summary>
    private static double Signed(double value, string format) =>
        value.ToString(format, CultureInfo.InvariantCulture) == "-0" ? 0 : value;
}

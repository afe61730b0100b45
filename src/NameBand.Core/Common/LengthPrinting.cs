using System.Globalization;

namespace NameBand.Common;

/// <summary>Lengths as text, the same in every culture.</summary>
internal static class LengthPrinting
{
    // A sixteenth, 1.6 mm, is the smallest mark of usual rulers and tapes in inches (common practice, no source).
    private const int SixteenthsPerInch = 16;

    public static string Millimetres(double mm) => $"{Rounded(mm, "0.#")} mm";

    public static string Metres(double mm) => $"{Rounded(mm / 1000, "0.###")} m";

    public static string Exact(double mm) => $"{Rounded(mm, "0.######")} mm";

    public static string Inches(double mm)
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
        string number = (whole, fraction) switch
        {
            (0, "") => "0",
            (0, _) => fraction,
            (_, "") => whole.ToString(CultureInfo.InvariantCulture),
            _ => string.Create(CultureInfo.InvariantCulture, $"{whole} {fraction}"),
        };
        return $"{sign}{number} in";
    }

    private static string Rounded(double value, string format)
    {
        string text = value.ToString(format, CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}

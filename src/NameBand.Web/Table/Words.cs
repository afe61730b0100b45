using System.Globalization;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Web.Table;

/// <summary>Figures in a maker's words.</summary>
internal static class Words
{
    private static readonly string[] Small = ["no", "one", "two", "three", "four", "five", "six"];

    public static Said Time(double minutes) => NameBand.Common.Duration.InWords(minutes);

    public static string Count(int n, string one, string many) => Said.Counted(n, "#,0", one, many).ToString();

    public static string Rounds(int n) => n == 1 ? "one round" : $"{Few(n)} rounds";

    public static string Kinds(int n) => n == 1 ? "one kind" : $"{Few(n)} kinds";

    /// <summary>Small numbers as words.</summary>
    public static string Few(int n) => n < Small.Length ? Small[n] : Number(n);

    public static string Number(double n) => n.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>Tens of metres, and where it is little, metres; there is never none.</summary>
    public static string Thread(double metres) =>
        $"{Number(metres < 100 ? Math.Max(1, Math.Round(metres)) : Math.Round(metres / 10) * 10)} m";

    public static string Metres(double mm) => (mm / 1000).ToString("0.##", CultureInfo.InvariantCulture);

    public static string Mm(double mm) => mm.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>Such as <c>Tuesday 1 December</c>.</summary>
    public static string Day(DateOnly day) => day.ToString("dddd d MMMM", CultureInfo.InvariantCulture);

    /// <summary>Which evening it is that comes next.</summary>
    public static string Evening(Estimating.Tonight tonight, bool isBegun) =>
        tonight.Day is not { } day ? isBegun ? "The next evening" : "The first evening"
        : day == DateOnly.FromDateTime(DateTime.Now) ? "Tonight" : Day(day);

    public static string Outcome(RowOutcome outcome) => outcome switch
    {
        RowOutcome.Placed => "placed",
        RowOutcome.Merged => "merged",
        RowOutcome.Held => "held",
        _ => "left out",
    };
}

using NameBand.Common;
using NameBand.Names;

namespace NameBand.Web.Table;

/// <summary>Figures in a maker's words.</summary>
internal static class Words
{
    private static readonly Said[] Small = ["no", "one", "two", "three", "four", "five", "six"];

    public static Said Time(double minutes) => NameBand.Common.Duration.InTiedWords(minutes);

    public static Said Count(int n, string one, string many) => Said.Counted(n, "#,0", one, many);

    public static Said Rounds(int n) => Said.Plural(n, "one round", $"{Few(n)} rounds");

    public static Said Kinds(int n) => Said.Plural(n, "one kind", $"{Few(n)} kinds");

    /// <summary>Small numbers as words.</summary>
    public static Said Few(int n) => n < Small.Length ? Small[n] : Number(n);

    public static Said Number(double n) => $"{n:#,0}";

    /// <summary>Tens of metres, and where it is little, metres; there is never none.</summary>
    public static Said Thread(double metres) =>
        $"{Number(metres < 100 ? Math.Max(1, Math.Round(metres)) : Math.Round(metres / 10) * 10)} m";

    public static Said Metres(double mm) => $"{mm / 1000:0.##}";

    public static Said Mm(double mm) => $"{mm:0.#}";

    /// <summary>Such as <c>Tuesday 1 December</c>.</summary>
    public static Said Day(DateOnly day) => $"{day:dddd d MMMM}";

    /// <summary>Which evening it is that comes next.</summary>
    public static Said Evening(Estimating.Tonight tonight, bool isBegun) =>
        tonight.Day is not { } day ? isBegun ? "The next evening" : "The first evening"
        : day == DateOnly.FromDateTime(DateTime.Now) ? "Tonight" : Day(day);

    public static Said Outcome(RowOutcome outcome) => outcome switch
    {
        RowOutcome.Placed => "placed",
        RowOutcome.Merged => "merged",
        RowOutcome.Held => "held",
        _ => "left out",
    };
}

using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Terminal;

/// <summary>Numbers as a person says them. A number and its unit are tied, so that no line breaks between them.</summary>
internal static class Words
{
    /// <summary>A blank at which no line is broken.</summary>
    public const char Tie = '\u00a0';

    public static Said Count(long number, string one, string? many = null) =>
        Said.Counted(number, "#,0", one, many ?? one + "s").Changed(
            (text, _) => string.Concat(text.Select((c, i) => c == ' ' && IsBesideDigit(text, i) ? Tie : c)));

    public static Said Duration(double minutes) => NameBand.Common.Duration.InTiedWords(minutes);

    public static Said Duration(ToldFigure minutes)
    {
        var likely = Duration(minutes.Likely);
        var low = Duration(minutes.Low);
        var high = Duration(minutes.High);
        return low == likely && high == likely ? likely : (Said)$"about {likely} ({low} to {high})";
    }

    /// <summary>Such as <c>3.646 m (143 9/16 in)</c>, in millimetres when shorter than half a metre.</summary>
    public static Said Both(double mm)
    {
        var length = Length.FromMm(mm);
        return $"{Tied(Math.Abs(mm) < 500 ? length.InMillimetres() : length.InMetres())} ({Tied(length.InInches())})";
    }

    public static Said Metres(double metres) =>
        Tied($"{(metres < 10 ? Math.Round(metres, 1) : Math.Ceiling(metres)):#,0.#} m");

    private static bool IsBesideDigit(string text, int at) =>
        (at > 0 && char.IsDigit(text[at - 1])) || (at + 1 < text.Length && char.IsDigit(text[at + 1]));

    public static Said Tied(Said said) => said.Changed((text, _) => text.Replace(' ', Tie));
}

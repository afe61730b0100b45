using System.Globalization;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Terminal;

/// <summary>Numbers as a person says them. A number and its unit are tied, so that no line breaks between them.</summary>
internal static class Words
{
    /// <summary>A blank at which no line is broken.</summary>
    public const char Tie = '\u00a0';

    public static string Count(long number, string one, string? many = null) =>
        string.Create(CultureInfo.InvariantCulture, $"{number:#,0}{Tie}{(number == 1 ? one : many ?? one + "s")}");

    public static string Duration(double minutes) => Tied(NameBand.Common.Duration.InWords(minutes));

    public static string Duration(ToldFigure minutes)
    {
        string likely = Duration(minutes.Likely);
        string low = Duration(minutes.Low);
        string high = Duration(minutes.High);
        return low == likely && high == likely ? likely : $"about {likely} ({low} to {high})";
    }

    /// <summary>Such as <c>3.646 m (143 9/16 in)</c>, in millimetres when shorter than half a metre.</summary>
    public static string Both(double mm)
    {
        var length = Length.FromMm(mm);
        return $"{Tied(Math.Abs(mm) < 500 ? length.InMillimetres() : length.InMetres())} ({Tied(length.InInches())})";
    }

    public static string Metres(double metres) =>
        string.Create(CultureInfo.InvariantCulture, $"{(metres < 10 ? Math.Round(metres, 1) : Math.Ceiling(metres)):#,0.#}{Tie}m");

    public static string Tied(string text) => text.Replace(' ', Tie);
}

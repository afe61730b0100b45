using System.Globalization;

namespace NameBand.Common;

/// <summary>Reads and prints spans of time as people write them: <c>2h</c>, <c>1 h 30 min</c>, <c>90 min</c>, <c>2.5 h</c>.</summary>
public static class Duration
{
    /// <summary>Nobody sits at one piece of work for longer than a day: beyond it a unit was mistaken.</summary>
    public const double MinutesPerDay = 24 * 60;

    /// <summary>Reads a span over 0 and up to a day; the unit must be there and the decimal mark is a point.</summary>
    /// <param name="why">When it cannot be read: what is wrong, a whole sentence.</param>
    public static bool TryParseMinutes(string text, out double minutes, out Said why)
    {
        minutes = 0;
        why = $"“{PlainText.Short(text, 40)}” is not a time as NameBand reads it.";
        string rest = text.Trim();
        bool any = false;
        double lastUnit = double.PositiveInfinity;
        while (rest.Length > 0)
        {
            int digits = rest.TakeWhile(c => char.IsAsciiDigit(c) || c == '.').Count();
            string afterNumber = rest[digits..].TrimStart();
            int letters = afterNumber.TakeWhile(char.IsAsciiLetter).Count();
            double unit = UnitMinutes(afterNumber[..letters]);
            bool isNumber =
                double.TryParse(rest[..digits], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number);
            if (!isNumber || unit <= 0 || unit >= lastUnit)
            {
                return false;
            }

            minutes += number * unit;
            lastUnit = unit;
            any = true;
            rest = afterNumber[letters..].TrimStart();
        }

        if (any && minutes is > 0 and <= MinutesPerDay)
        {
            why = Said.Nothing;
            return true;
        }

        why = $"“{PlainText.Short(text, 40)}” is not a time over 0 and up to 24 hours.";
        return false;
    }

    /// <summary>
    /// Such as <c>4 h 5 min</c>, <c>4 h</c> or <c>35 min</c>: from an hour on to the nearest five minutes, for more would be false
    /// precision, and below to the next whole one, so that what takes time never takes none.
    /// </summary>
    public static Said InWords(double minutes)
    {
        long whole = minutes < 60 ? (long)Math.Ceiling(Math.Max(0, minutes) - 1e-6) : (long)Math.Round(minutes / 5) * 5;
        return whole < 60 ? $"{whole} min" : whole % 60 == 0 ? (Said)$"{whole / 60} h" : $"{whole / 60} h {whole % 60} min";
    }

    /// <summary>The same with blanks at which no line is broken.</summary>
    public static Said InTiedWords(double minutes) => InWords(minutes).Changed((text, _) => text.Replace(' ', '\u00a0'));

    private static double UnitMinutes(string word) => word.ToUpperInvariant() switch
    {
        "H" or "HOUR" or "HOURS" => 60,
        "MIN" or "M" or "MINUTE" or "MINUTES" => 1,
        _ => 0,
    };
}

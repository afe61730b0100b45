using System.Globalization;

namespace NameBand.Common;

/// <summary>The number of a length: <c>2</c>, <c>3.66</c>, <c>3/4</c>, <c>1 1/2</c> or <c>1-1/2</c>.</summary>
internal static class LengthNumber
{
    /// <param name="isHuge">True when it is a number, but far beyond any length.</param>
    public static bool TryRead(string text, out decimal value, out bool isHuge)
    {
        value = 0;
        isHuge = false;
        string[] parts = text.Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries);
        switch (parts)
        {
            case [var only] when text.Trim().Length == only.Length:
                return only.Contains('/') ? TryFraction(only, out value) : TryPlain(only, out value, out isHuge);
            case [var whole, var fraction] when IsDigits(whole) && fraction.Contains('/'):
                bool isRead = TryPlain(whole, out decimal wholes, out isHuge) & TryFraction(fraction, out decimal part);
                value = isRead ? wholes + part : 0;
                return isRead;
            default:
                return false;
        }
    }

    private static bool TryPlain(string text, out decimal value, out bool isHuge)
    {
        isHuge = false;
        value = 0;
        if (text.Any(c => !char.IsAsciiDigit(c) && c != '.'))
        {
            return false;
        }

        if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value))
        {
            return true;
        }

        isHuge = text.Any(char.IsAsciiDigit) && text.Count(c => c == '.') <= 1;
        return false;
    }

    private static bool TryFraction(string text, out decimal value)
    {
        value = 0;
        string[] sides = text.Split('/');
        if (sides.Length != 2 || !IsDigits(sides[0]) || !IsDigits(sides[1]) || sides[0].Length > 9 || sides[1].Length > 9)
        {
            return false;
        }

        decimal bottom = decimal.Parse(sides[1], CultureInfo.InvariantCulture);
        if (bottom == 0)
        {
            return false;
        }

        value = decimal.Parse(sides[0], CultureInfo.InvariantCulture) / bottom;
        return true;
    }

    private static bool IsDigits(string text) => text.Length > 0 && text.All(char.IsAsciiDigit);
}

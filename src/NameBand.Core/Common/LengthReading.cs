using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace NameBand.Common;

/// <summary>
/// Lengths from text: one or more numbers with units of one system, the larger unit first. Worked in decimal
/// arithmetic, so that <c>3.66 m</c> is exactly 3660 mm.
/// </summary>
internal static class LengthReading
{
    private const int LongestTextCharacters = 80; // Characters: any length people write is far shorter, and a hostile text is not worked through.
    private static readonly Said Examples = "Write a number and a unit, such as \"2 in\", \"1 1/2 in\", \"50 mm\" or \"3.66 m\".";

    public static bool TryRead([NotNullWhen(true)] string? text, out Length length, out LengthFault fault)
    {
        length = default;
        if (string.IsNullOrWhiteSpace(text))
        {
            fault = new LengthFault("There is no length here.", Examples);
            return false;
        }

        string shown = Shown(text);
        if (text.Length > LongestTextCharacters)
        {
            fault = new LengthFault($"“{shown}” is too long to be a length.", Examples);
            return false;
        }

        string plain = Plain(text);
        if (plain.Contains(','))
        {
            fault = new LengthFault(
                $"“{shown}” has a comma, which can mean a decimal mark or thousands.",
                "Write a point before decimals and nothing between thousands, such as \"3.66 m\" or \"3660 mm\".");
            return false;
        }

        if (plain.StartsWith('-'))
        {
            fault = Negative(shown);
            return false;
        }

        if (!TrySum(plain, shown, out decimal mm, out fault))
        {
            return false;
        }

        return TryCheck((double)mm, shown, out length, out fault);
    }

    /// <summary>Checks a bare number of millimetres.</summary>
    /// <param name="shown">The number as it was written, for messages.</param>
    public static bool TryCheck(double mm, string shown, out Length length, out LengthFault fault)
    {
        length = default;
        fault = default;
        if (double.IsNaN(mm))
        {
            fault = new LengthFault("This is not a number.", Examples);
        }
        else if (mm < 0)
        {
            fault = Negative(shown);
        }
        else if (mm > Length.LongestReadMm)
        {
            fault = TooLong(shown);
        }
        else
        {
            length = Length.FromMm(mm);
            return true;
        }

        return false;
    }

    private static bool TrySum(string plain, string shown, out decimal mm, out LengthFault fault)
    {
        mm = 0;
        LengthUnit? before = null;
        int at = 0;
        while (at < plain.Length)
        {
            int unitAt = UnitStart(plain, at);
            int next = NumberStart(plain, unitAt);
            string number = plain[at..unitAt].Trim();
            string unitText = plain[unitAt..next].Trim();
            if (number.Length == 0)
            {
                fault = new LengthFault($"“{shown}” is not a length.", Examples);
                return false;
            }

            if (!LengthNumber.TryRead(number, out decimal value, out bool isHuge))
            {
                fault = isHuge
                    ? TooLong(shown) : new LengthFault($"“{Shown(number)}” in “{shown}” is not a number NameBand can read.", Examples);
                return false;
            }

            if (unitText.Length == 0)
            {
                fault = new LengthFault(
                    $"“{shown}” has no unit.", $"Add one, such as \"{number} mm\", \"{number} cm\" or \"{number} in\".");
                return false;
            }

            if (LengthUnit.Find(unitText) is not { } unit)
            {
                fault = new LengthFault(
                    $"“{Shown(unitText)}” is not a unit of length NameBand knows.", "The units are mm, cm, m, in, ft and yd.");
                return false;
            }

            if (before is not null && (before.IsMetric != unit.IsMetric || before.Mm <= unit.Mm))
            {
                fault = new LengthFault(
                    $"“{shown}” puts units together in a way that is not clear.",
                    "Write one unit, or the larger one first, such as \"12 ft 3 in\".");
                return false;
            }

            if (value > (decimal)Length.LongestReadMm)
            {
                fault = TooLong(shown);
                return false;
            }

            mm += value * unit.Mm;
            before = unit;
            at = next;
        }

        fault = default;
        return true;
    }

    private static int UnitStart(string plain, int at)
    {
        while (at < plain.Length && (char.IsAsciiDigit(plain[at]) || plain[at] is ' ' or '.' or '/' or '-' || IsExponent(plain, at)))
        {
            at++;
        }

        return at;
    }

    /// <summary>The e of <c>1e3</c> belongs to the number, so that the number is refused and not its unit.</summary>
    private static bool IsExponent(string plain, int at) =>
        plain[at] is 'e' or 'E' && at > 0 && char.IsAsciiDigit(plain[at - 1])
        && at + 1 < plain.Length && (char.IsAsciiDigit(plain[at + 1]) || plain[at + 1] is '+' or '-');

    private static int NumberStart(string plain, int at)
    {
        while (at < plain.Length && !char.IsAsciiDigit(plain[at])
            && !(plain[at] == '.' && at + 1 < plain.Length && char.IsAsciiDigit(plain[at + 1])))
        {
            at++;
        }

        return at;
    }

    /// <summary>Fraction signs spelt out, full-width and squared forms made plain, one kind of blank, minus and inch mark.</summary>
    private static string Plain(string text)
    {
        var spelt = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            string form = char.GetUnicodeCategory(c) == UnicodeCategory.OtherNumber ? c.ToString().Normalize(NormalizationForm.FormKC) : "";
            spelt.Append(form.Contains('\u2044') ? " " + form : c.ToString());
        }

        string plain = PlainText.Normal(spelt.ToString(), NormalizationForm.FormKC)
            .Replace('\u2044', '/').Replace('\u2212', '-').Replace('\u2010', '-').Replace('\u2011', '-')
            .Replace('\u2032', '\'').Replace('\u2019', '\'').Replace('\u201d', '"').Replace('\u201c', '"')
            .Replace("''", "\"", StringComparison.Ordinal).Replace('\t', ' ');
        return plain.Trim();
    }

    private static string Shown(string text)
    {
        string line = string.Concat(text.Trim().Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= 30 ? line : line[..30] + "…";
    }

    private static LengthFault Negative(string shown) =>
        new($"“{shown}” is negative.", "A length is 0 or more; remove the minus sign.");

    private static LengthFault TooLong(string shown) =>
        new($"“{shown}” is more than 10 km.", "Check the number and its unit.");
}

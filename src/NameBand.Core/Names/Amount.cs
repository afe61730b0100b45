using System.Globalization;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>A number as people write sums into lists: “50”, “€ 1.250,00”, “1 250.00 kr”.</summary>
internal static class Amount
{
    /// <returns>False where it is no number, or where a point or comma could be either mark, as in “1,250”.</returns>
    public static bool TryRead(string cell, out double amount)
    {
        amount = 0;
        string text = Bare(cell);
        int points = text.Count(c => c == '.');
        int commas = text.Count(c => c == ',');
        char? mark = null;
        if (points > 0 && commas > 0)
        {
            mark = text.LastIndexOf('.') > text.LastIndexOf(',') ? '.' : ',';
        }
        else if (points + commas == 1)
        {
            mark = points == 1 ? '.' : ',';
            if (text.Length - text.IndexOf(mark.Value, StringComparison.Ordinal) - 1 == 3)
            {
                return false;
            }
        }

        if (mark is { } m && text.Count(c => c == m) > 1)
        {
            return false;
        }

        string[] parts = mark is { } at ? text.Split(at) : [text];
        return AreThousands(parts[0]) && (parts.Length == 1 || parts[1].All(char.IsAsciiDigit))
            && double.TryParse(
                new string([.. parts[0].Where(char.IsAsciiDigit)]) + (parts.Length == 2 ? "." + parts[1] : ""),
                NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out amount)
            && double.IsFinite(amount);
    }

    /// <summary>Without the currency around it; digits of other scripts as those of Latin script.</summary>
    private static string Bare(string cell)
    {
        string text = PlainText.Normal(cell, System.Text.NormalizationForm.FormKC).Trim();
        string folded = new([.. text.Select(c => char.IsDigit(c) ? (char)('0' + (int)char.GetNumericValue(c)) : c)]);
        int first = folded.AsSpan().IndexOfAnyInRange('0', '9');
        int last = folded.AsSpan().LastIndexOfAnyInRange('0', '9');
        if (first < 0)
        {
            return "";
        }

        string around = folded[..first] + folded[(last + 1)..];
        bool isCurrency = around.Length <= 12
            && around.All(c =>
                char.IsLetter(c) || char.IsWhiteSpace(c) || char.GetUnicodeCategory(c) == UnicodeCategory.CurrencySymbol || c == '.')
            || around is ",-" or ".-";
        return isCurrency ? folded[first..(last + 1)] : "";
    }

    /// <summary>Digits, alone or in groups of three parted by a blank, a point, a comma or an apostrophe.</summary>
    private static bool AreThousands(string whole)
    {
        string[] groups = whole.Split(' ', '\u00A0', '\u202F', '.', ',', '\'', '’');
        return groups.All(g => g.Length > 0 && g.All(char.IsAsciiDigit))
            && (groups.Length == 1 || (groups[0].Length <= 3 && groups.Skip(1).All(g => g.Length == 3)));
    }
}

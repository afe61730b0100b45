using System.Globalization;
using System.Text;
using AnyAscii;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Spelling;

/// <summary>
/// The spelling nearest to a name that a machine can sew. It is only ever offered: whether a name may be written so is
/// for its owner to say.
/// </summary>
internal static class NearestSpelling
{
    /// <summary>Letters of the name that the machine lacks, each once, in the order in which they come.</summary>
    public static IReadOnlyList<string> Lacking(string name, Func<string, bool> has) =>
        [.. Letters.Of(name).Where(l => !has(l)).Distinct(StringComparer.Ordinal)];

    /// <summary>The name with each lacking letter replaced; null when a letter has no nearest one the machine has.</summary>
    public static string? Find(string name, Func<string, bool> has)
    {
        var spelled = new StringBuilder();
        foreach (string letter in Letters.Of(name))
        {
            if (has(letter))
            {
                spelled.Append(letter);
            }
            else if (Nearest(letter, has) is { } nearest)
            {
                spelled.Append(nearest);
            }
            else
            {
                return null;
            }
        }

        string found = spelled.ToString().Trim();
        return found.Length == 0 ? null : found;
    }

    private static string? Nearest(string letter, Func<string, bool> has)
    {
        // Accents dropped one after the other, the last first: ấ gives â before a.
        string apart = letter.Normalize(NormalizationForm.FormD);
        for (int keep = apart.Length - 1; keep > 0; keep--)
        {
            if (CharUnicodeInfo.GetUnicodeCategory(apart, keep) != UnicodeCategory.NonSpacingMark)
            {
                break;
            }

            string fewer = apart[..keep].Normalize(NormalizationForm.FormC);
            if (has(fewer))
            {
                return fewer;
            }
        }

        return Usable(letter.Normalize(NormalizationForm.FormKC), has)
            ?? Usable(letter.Transliterate(), has)
            ?? Usable(letter.Transliterate().ToUpperInvariant(), has);
    }

    private static string? Usable(string text, Func<string, bool> has) =>
        text.Trim().Length > 0 && Letters.Of(text).All(has) ? text : null;
}

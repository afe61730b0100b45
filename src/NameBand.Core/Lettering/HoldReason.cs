using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Lettering.Shaping;

namespace NameBand.Lettering;

/// <summary>The words with which names are held back for a person's decision.</summary>
internal static class HoldReason
{
    public static readonly Said NoInk = "there is nothing to sew in this name";

    /// <summary>Such as: no face here has the sign ★ (U+2605); without it: “Pia Tarn”.</summary>
    public static Said ForSigns(string text, IReadOnlyList<UnshownSign> signs)
    {
        var parts = new List<Said>(3);
        var lacking = signs.Where(s => !s.IsPicture).ToList();
        var pictures = signs.Where(s => s.IsPicture).ToList();
        if (lacking.Count > 0)
        {
            var (count, named) = Named(lacking);
            parts.Add(lacking.All(s => s.Text.EnumerateRunes().Any(Rune.IsLetter))
                ? Said.Plural(count, $"no face here has the letter {named}", $"no face here has the letters {named}")
                : Said.Plural(count, $"no face here has the sign {named}", $"no face here has the signs {named}"));
        }

        if (pictures.Count > 0)
        {
            var (count, named) = Named(pictures);
            parts.Add(Said.Plural(
                count, $"the picture sign {named} is not a letter and cannot be stitched as one",
                $"the picture signs {named} are not letters and cannot be stitched as such"));
        }

        if (signs.Any(IsLetter))
        {
            parts.Add("ask its owner how to write it");
            return Said.Join("; ", parts);
        }

        string without = Without(text, signs);
        int all = Named(signs).Count;
        parts.Add(without.Length > 0 ? Said.Plural(all, $"without it: “{without}”", $"without them: “{without}”")
            : Said.Plural(all, "without it nothing is left", "without them nothing is left"));
        return Said.Join("; ", parts);
    }

    public static Said Damaged(string face, string characters, Said fault) =>
        $"the face {face} cannot draw {Shown(characters)}: {fault}; choose another face";

    public static Said Blank(string face, string characters) =>
        $"the face {face} has {Shown(characters)} but draws nothing for it; choose another face";

    public static Said TooFarApart(string face) =>
        $"the face {face} sets these letters absurdly far apart: its file is damaged; choose another face";

    public static Said Tangled(string face) =>
        $"the face {face} sets these letters over one another too many times to be drawn: its file is damaged; choose another face";

    private static (int Count, Said Named) Named(IEnumerable<UnshownSign> signs)
    {
        string[] shown = [.. signs.Select(s => s.Text).Distinct().Select(Shown)];
        return (shown.Length, Wording.List(shown));
    }

    /// <summary>The characters with their code points; marks stand on a dotted circle, invisible ones are not shown.</summary>
    private static string Shown(string text)
    {
        string characters = string.Concat(text.EnumerateRunes()); // half a character becomes U+FFFD
        string codes =
            string.Join(" ", characters.EnumerateRunes().Select(r => $"U+{r.Value.ToString("X4", CultureInfo.InvariantCulture)}"));
        var first = characters.EnumerateRunes().First();
        bool mark = Rune.GetUnicodeCategory(first) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark
            or UnicodeCategory.EnclosingMark;
        bool visible = characters.EnumerateRunes().Any(SignKinds.IsVisible);
        return visible ? $"{(mark ? "\u25CC" : "")}{characters} ({codes})" : codes;
    }

    /// <summary>A name without its pictures and signs, to be offered; empty: nothing is left, or a letter would be lost.</summary>
    public static string OfferWithout(string text, IReadOnlyList<UnshownSign> signs) => signs.Any(IsLetter) ? "" : Without(text, signs);

    /// <summary>A letter, a mark on one, a digit, or what stands for a character that could not be read.</summary>
    private static bool IsLetter(UnshownSign sign) => !sign.IsPicture && string.Concat(sign.Text.EnumerateRunes()).EnumerateRunes().Any(r =>
        Rune.IsLetterOrDigit(r) || r == Rune.ReplacementChar || Rune.GetUnicodeCategory(r)
            is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.EnclosingMark
                or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned);

    private static string Without(string text, IReadOnlyList<UnshownSign> signs)
    {
        var left = new StringBuilder(text);
        foreach (var sign in signs.OrderByDescending(s => s.Start))
        {
            left.Remove(sign.Start, sign.Text.Length);
        }

        return string.Join(' ', left.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }
}

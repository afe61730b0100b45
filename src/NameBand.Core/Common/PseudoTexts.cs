using System.Globalization;
using System.Text;
using Microsoft.Extensions.Localization;

namespace NameBand.Common;

/// <summary>
/// Two languages that nobody speaks, by the names that CLDR gives such: every text in them is the English one with other letters, a
/// third longer and between marks, so that what was left untranslated, is cut off or has no room is seen. The second runs from right
/// to left, with the letters as they are.
/// </summary>
internal sealed class PseudoTexts : IStringLocalizer
{
    public const string Accented = "en-XA";
    public const string Mirrored = "ar-XB";

    /// <summary>What is added breaks into lines as words of the usual length do. Our assumption.</summary>
    private const int WordLength = 6;
    private const string Plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
    private const string Marked = "åbçđéfĝĥîĵķļmñôpqŕšţûvŵxýžÅBÇĐÉFĜĤÎĴĶĻMÑÔPQŔŠŢÛVŴXÝŽ";

    private static readonly PseudoTexts Only = new();

    public LocalizedString this[string name] => new(name, Made(SaidTemplate.OfKey(name)));

    public LocalizedString this[string name, params object[] arguments] => this[name];

    /// <summary>The texts of a culture that is one of the two; else null.</summary>
    public static PseudoTexts? Of(string culture) => culture is Accented or Mirrored ? Only : null;

    /// <summary>Numbers as half of Europe writes them, so that one that does not follow the language is seen.</summary>
    public static CultureInfo CultureOf(string name)
    {
        var culture = (CultureInfo)CultureInfo.GetCultureInfo(name).Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = "\u00a0";
        return culture;
    }

    public IEnumerable<LocalizedString> GetAllStrings(bool includeParentCultures) => [];

    private static string Made(string template)
    {
        var made = new StringBuilder("«").Append(SaidTemplate.Map(template, Accent));
        int longer = template.Count(char.IsLetter) / 3;
        for (int i = 0; i < longer; i++)
        {
            made.Append(i % WordLength == 0 ? " ~" : "~");
        }

        return made.Append('»').ToString();
    }

    private static string Accent(string words) => string.Concat(words.Select(c =>
        Plain.IndexOf(c, StringComparison.Ordinal) is >= 0 and var at ? Marked[at] : c));
}

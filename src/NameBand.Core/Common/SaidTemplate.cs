using System.Globalization;
using System.Text;

namespace NameBand.Common;

/// <summary>Templates as resource files have them: a hole is its number in braces, a brace of the text is doubled.</summary>
internal static class SaidTemplate
{
    private const char WithinSentence = '…';

    /// <summary>Keys of resource files do not tell capitals from small letters: what begins with a small one has dots before it.</summary>
    public static string KeyOf(string template) =>
        template.Length > 0 && char.IsLower(template[0]) ? WithinSentence + template : template;

    public static string OfKey(string key) => key.Length > 1 && key[0] == WithinSentence && char.IsLower(key[1]) ? key[1..] : key;

    public static string Fill(string template, Func<int, string> ofHole) => Mapped(template, text => text, ofHole);

    /// <summary>The template with its words changed and its holes as they are.</summary>
    public static string Map(string template, Func<string, string> ofWords) =>
        Mapped(
            template, text => ofWords(text).Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal),
            hole => string.Create(CultureInfo.InvariantCulture, $"{{{hole}}}"));

    private static string Mapped(string template, Func<string, string> ofWords, Func<int, string> ofHole)
    {
        var filled = new StringBuilder();
        var words = new StringBuilder();
        for (int at = 0; at < template.Length; at++)
        {
            if (template[at] is '{' or '}' && at + 1 < template.Length && template[at + 1] == template[at])
            {
                words.Append(template[at++]);
            }
            else if (template[at] == '{' && template.IndexOf('}', at) is > 0 and var end
                && int.TryParse(template.AsSpan(at + 1, end - at - 1), NumberStyles.None, CultureInfo.InvariantCulture, out int hole))
            {
                filled.Append(ofWords(words.ToString())).Append(ofHole(hole));
                words.Clear();
                at = end;
            }
            else
            {
                words.Append(template[at]);
            }
        }

        return filled.Append(ofWords(words.ToString())).ToString();
    }
}

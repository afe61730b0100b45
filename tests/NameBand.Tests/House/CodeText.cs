using System.Text;

namespace NameBand.Tests.House;

/// <summary>C# source with comments and the contents of texts blanked out, so that rules look at code alone.</summary>
internal static class CodeText
{
    /// <param name="withHoles">What stands in the holes of a text is code too; else it is left out with the text.</param>
    public static string Of(string source, bool withHoles = true)
    {
        var code = new StringBuilder(source.Length);
        int at = 0;
        while (at < source.Length)
        {
            int end = EndOfComment(source, at);
            if (end > at)
            {
                code.Append('\n', source.AsSpan(at, end - at).Count('\n'));
                at = end;
            }
            else if (source[at] == '"')
            {
                end = EndOfText(source, at);
                code.Append("\"\"").Append(withHoles ? Holes(source, at, end) : "").Append('\n', source.AsSpan(at, end - at).Count('\n'));
                at = end;
            }
            else if (source[at] == '\'' && EndOfCharacter(source, at) is var after && after > at)
            {
                code.Append("' '");
                at = after;
            }
            else
            {
                code.Append(source[at]);
                at++;
            }
        }

        return code.ToString();
    }

    private static int EndOfComment(string source, int at)
    {
        if (string.CompareOrdinal(source, at, "//", 0, 2) == 0)
        {
            int end = source.IndexOf('\n', at);
            return end < 0 ? source.Length : end;
        }

        if (string.CompareOrdinal(source, at, "/*", 0, 2) == 0)
        {
            int end = source.IndexOf("*/", at + 2, StringComparison.Ordinal);
            return end < 0 ? source.Length : end + 2;
        }

        return at;
    }

    private static int EndOfText(string source, int at)
    {
        int quotes = 0;
        while (at + quotes < source.Length && source[at + quotes] == '"')
        {
            quotes++;
        }

        if (quotes >= 3)
        {
            int end = source.IndexOf(new string('"', quotes), at + quotes, StringComparison.Ordinal);
            return end < 0 ? source.Length : end + quotes;
        }

        bool isVerbatim = at > 0 && (source[at - 1] == '@' || (at > 1 && source[at - 1] == '$' && source[at - 2] == '@'));
        for (int i = at + 1; i < source.Length; i++)
        {
            if (!isVerbatim && source[i] == '\\')
            {
                i++;
            }
            else if (source[i] == '"' && isVerbatim && i + 1 < source.Length && source[i + 1] == '"')
            {
                i++;
            }
            else if (source[i] == '"')
            {
                return i + 1;
            }
            else if (source[i] == '{' && IsInterpolated(source, at) && i + 1 < source.Length && source[i + 1] != '{')
            {
                i = EndOfHole(source, i);
            }
            else if (source[i] == '{' && IsInterpolated(source, at))
            {
                i++;
            }
        }

        return source.Length;
    }

    private static bool IsInterpolated(string source, int at) =>
        at > 0 && (source[at - 1] == '$' || (at > 1 && source[at - 1] == '@' && source[at - 2] == '$'));

    /// <summary>Where a hole of an interpolated text closes; it may itself hold braces and texts.</summary>
    private static int EndOfHole(string source, int at)
    {
        int depth = 0;
        for (int i = at; i < source.Length; i++)
        {
            switch (source[i])
            {
                case '{':
                    depth++;
                    break;
                case '}' when --depth == 0:
                    return i;
                case '"':
                    i = EndOfText(source, i) - 1;
                    break;
                default:
                    break;
            }
        }

        return source.Length - 1;
    }

    /// <summary>The code within the holes of an interpolated text is code too.</summary>
    private static string Holes(string source, int at, int end)
    {
        if (!IsInterpolated(source, at))
        {
            return "";
        }

        var holes = new StringBuilder();
        for (int i = at; i < end - 1; i++)
        {
            if (source[i] == '{' && source[i + 1] == '{')
            {
                i++;
            }
            else if (source[i] == '{')
            {
                int close = EndOfHole(source, i);
                holes.Append(' ').Append(Of(source[(i + 1)..close])).Append(' ');
                i = close;
            }
        }

        return holes.ToString();
    }

    private static int EndOfCharacter(string source, int at)
    {
        int end = at + 1 < source.Length && source[at + 1] == '\\' ? source.IndexOf('\'', at + 3) : source.IndexOf('\'', at + 1);
        return end > at && end - at <= 10 ? end + 1 : at;
    }
}

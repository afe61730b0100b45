namespace NameBand.Common;

/// <summary>A quotation mark that breaks RFC 4180: opened in one line and never closed, or closed with text after it.</summary>
internal readonly record struct QuoteFault(int OpenedLine, int Line, bool NeverClosed);

/// <summary>
/// Walks a CSV without taking it apart, as RFC 4180 says (blanks round a quoted field allowed): how many fields
/// each row would have with a separator, and the first wrong quotation mark. The fields themselves come from the
/// CSV reader; this is what it does not tell.
/// </summary>
internal static class CsvScan
{
    public static (List<int> FieldCounts, QuoteFault? Fault) Walk(string text, char separator, int mostRows = int.MaxValue)
    {
        var counts = new List<int>();
        QuoteFault? fault = null;
        int line = 1;
        int i = 0;
        while (i < text.Length && counts.Count < mostRows)
        {
            int fields = 1;
            bool blank = true;
            while (true)
            {
                i = SkipField(text, i, separator, ref line, ref blank, ref fault);
                if (i < text.Length && text[i] == separator)
                {
                    fields++;
                    i++;
                    continue;
                }

                break;
            }

            if (!blank || fields > 1)
            {
                counts.Add(fields);
            }

            if (i < text.Length)
            {
                i += text[i] == '\r' && i + 1 < text.Length && text[i + 1] == '\n' ? 2 : 1;
                line++;
            }
        }

        return (counts, fault);
    }

    /// <summary>Line breaks in a piece of text: CR LF, CR or LF, each one break.</summary>
    public static int CountLineBreaks(ReadOnlySpan<char> text)
    {
        int breaks = 0;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                breaks++;
            }
        }

        return breaks;
    }

    /// <summary>The place of the separator or line break that ends the field, or the text's end.</summary>
    private static int SkipField(string text, int i, char separator, ref int line, ref bool blank, ref QuoteFault? fault)
    {
        int start = i;
        while (start < text.Length && text[start] == ' ')
        {
            start++;
        }

        if (start < text.Length && text[start] == '"')
        {
            blank = false;
            int opened = line;
            i = SkipQuoted(text, start + 1, ref line);
            if (i < 0)
            {
                fault ??= new QuoteFault(opened, opened, NeverClosed: true);
                return text.Length;
            }

            while (i < text.Length && text[i] == ' ')
            {
                i++;
            }

            if (i < text.Length && !EndsField(text[i], separator))
            {
                fault ??= new QuoteFault(opened, line, NeverClosed: false);
            }
        }

        while (i < text.Length && !EndsField(text[i], separator))
        {
            blank &= char.IsWhiteSpace(text[i]);
            i++;
        }

        return i;
    }

    /// <summary>The place after the closing quotation mark, or -1.</summary>
    private static int SkipQuoted(string text, int i, ref int line)
    {
        int from = i;
        while (true)
        {
            int quote = text.IndexOf('"', i);
            if (quote < 0)
            {
                return -1;
            }

            if (quote + 1 < text.Length && text[quote + 1] == '"')
            {
                i = quote + 2;
                continue;
            }

            line += CountLineBreaks(text.AsSpan(from, quote - from));
            return quote + 1;
        }
    }

    private static bool EndsField(char c, char separator) => c == separator || c is '\r' or '\n';
}

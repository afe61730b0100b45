namespace NameBand.Common;

/// <summary>
/// Writes text as fields and rows of a CSV (RFC 4180: quotes where needed, doubled inside, rows end in CR LF) so
/// that a spreadsheet shows the text and never runs it as a formula.
/// </summary>
/// <remarks>
/// A spreadsheet takes a field that begins with <c>= + - @</c> for a formula, some do so with the wide forms of these
/// signs, and some drop a tab or line end before them. Such a field is written with one apostrophe before it. So that
/// every text comes back as it was, a field that already begins with apostrophes and then one of the signs gets one more;
/// <see cref="ReadBack"/> takes one off in just these cases.
/// </remarks>
internal static class CsvText
{
    public const string LineEnd = "\r\n";

    /// <summary>A field, quoted where needed.</summary>
    public static string Field(string text, char separator = ',')
    {
        string shown = LooksLikeFormula(text) ? "'" + text : text;
        bool quoted = shown.AsSpan().IndexOfAny("\"\r\n") >= 0 || shown.Contains(separator)
            || shown.StartsWith(' ') || shown.EndsWith(' ');
        return quoted ? "\"" + shown.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : shown;
    }

    /// <summary>A row without its line end.</summary>
    public static string Row(IEnumerable<string> fields, char separator = ',') =>
        string.Join(separator, fields.Select(f => Field(f, separator)));

    /// <summary>The text behind a field as the CSV reader returns it: undoes the apostrophe of <see cref="Field"/>.</summary>
    public static string ReadBack(string field) =>
        field.StartsWith('\'') && LooksLikeFormula(field) ? field[1..] : field;

    private static bool LooksLikeFormula(string text)
    {
        ReadOnlySpan<char> rest = text.AsSpan().TrimStart('\'');
        return rest.Length > 0 && rest[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '＝' or '＋' or '－' or '＠';
    }
}

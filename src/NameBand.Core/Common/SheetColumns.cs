using System.Globalization;

namespace NameBand.Common;

/// <summary>The columns of a small sheet with a heading, found by their names.</summary>
internal sealed class SheetColumns
{
    private readonly Dictionary<string, int> _at;
    private readonly string _file;

    private SheetColumns(Dictionary<string, int> at, string file)
    {
        _at = at;
        _file = file;
    }

    /// <param name="needed">How many of the first columns must be there.</param>
    public static SheetColumns? Find(CsvTable table, IReadOnlyList<string> columns, int needed, string file, List<Problem> problems)
    {
        var at = new Dictionary<string, int>(StringComparer.Ordinal);
        var header = table.Rows.IsEmpty ? [] : table.Rows[0].Fields;
        for (int i = 0; i < header.Length; i++)
        {
            string found = header[i].Trim().ToLowerInvariant().Replace(' ', '_');
            if (columns.Contains(found) && !at.TryAdd(found, i))
            {
                problems.Add(Problem.CannotUse(
                    new Where(file, table.Rows[0].Line), $"The heading has the column {found} twice.", "Keep the one that is right."));
                return null;
            }
        }

        if (columns.Take(needed).FirstOrDefault(c => !at.ContainsKey(c)) is { } missing)
        {
            problems.Add(Problem.CannotUse(
                new Where(file, table.Rows.IsEmpty ? null : table.Rows[0].Line), $"The heading has no column {missing}.",
                $"Write {string.Join(",", columns.Take(Math.Max(needed, 3)))} as the first line."));
            return null;
        }

        return new SheetColumns(at, file);
    }

    public bool Has(string column) => _at.ContainsKey(column);

    public string Text(CsvRow row, string column) =>
        _at.TryGetValue(column, out int i) && i < row.Fields.Length ? row.Fields[i].Trim() : "";

    /// <summary>The number in a column; null when it is empty or wrong, and wrong ones are problems.</summary>
    public double? Number(CsvRow row, string column, double low, double high, List<Problem> problems)
    {
        string text = Text(row, column);
        if (text.Length == 0)
        {
            return null;
        }

        // A sheet filled in where a comma marks decimals: "12,5" can only mean one thing here.
        string plain = text.Count(c => c == ',') == 1 && !text.Contains('.') ? text.Replace(',', '.') : text;
        if (plain.EndsWith(" mm", StringComparison.OrdinalIgnoreCase))
        {
            plain = plain[..^3];
        }

        var where = new Where(_file, row.Line, Key: column);
        if (!double.TryParse(
            plain, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number)
            || !double.IsFinite(number))
        {
            problems.Add(Problem.CannotUse(where, $"“{PlainText.Short(text)}” is not a number.", "Write a plain number, such as 47.5."));
            return null;
        }

        if (number < low || number > high || (low > 0 && number <= 0))
        {
            problems.Add(Problem.CannotUse(
                where, $"{column} is {PlainText.Short(text)}, and nothing under {low:0.##} or over {high:0.##} can be right here.",
                "Measure again, or check whether a decimal mark was lost."));
            return null;
        }

        return number;
    }
}

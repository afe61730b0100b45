using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>
/// Judges rows that do not have as many fields as the header, and rows that run over several lines: is the name still
/// surely the name? What the well-formed rows have in each column (a mail address, a number) is the evidence.
/// </summary>
internal sealed class RowForm
{
    private enum Kind
    {
        Any,
        Mail,
        Number,
    }

    private readonly ListColumns _columns;
    private readonly char _separator;
    private readonly Kind[] _kinds;
    private readonly int _usualLength;

    public RowForm(ListColumns columns, CsvTable table)
    {
        _columns = columns;
        _separator = table.Separator;
        var whole = table.Rows.Skip(columns.HasHeader ? 1 : 0).Where(r => r.Fields.Length == columns.Count).ToList();
        _usualLength = table.Rows.Skip(columns.HasHeader ? 1 : 0).GroupBy(r => r.Fields.Length)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key).FirstOrDefault()?.Key ?? columns.Count;
        _kinds = [.. Enumerable.Range(0, columns.Count).Select(i => UsualKind(whole.Select(r => r.Fields[i])))];
    }

    /// <summary>Why the name is doubtful, or null; and what to note.</summary>
    public (Said? Doubt, ImmutableArray<Said> Notes) Judge(CsvRow row)
    {
        if (RunsOver(row))
        {
            return ($"the row runs from line {row.Line} to line {row.LastLine}: is a quotation mark missing?", []);
        }

        int last = row.Fields.Length;
        while (last > _columns.Count && string.IsNullOrWhiteSpace(row.Fields[last - 1]))
        {
            last--;
        }

        if (last > _columns.Count)
        {
            Said fields = $"the row has {last} fields, {Expected()}";
            return NameStillFits(row)
                ? (null, [fields]) : ((Said)$"{fields}: does a {SeparatorWord()} belong to the name? Then put the name in quotation marks", []);
        }

        if (row.Fields.Length > last && !_columns.LeaveOut.IsEmpty && row.Fields.Length != _usualLength && !NameStillFits(row))
        {
            // Blank fields at the end may be the last column of a row that a separator in the name pushed to the right.
            return ($"the row has {row.Fields.Length} fields, the last of them blank, {Expected()}: "
                + $"does a {SeparatorWord()} belong to the name? Then put the name in quotation marks", []);
        }

        return last < _columns.Count
            ? (null, [Said.Plural(last, $"the row has {last} field, {Expected()}", $"the row has {last} fields, {Expected()}")]) : (null, []);
    }

    /// <summary>A line inside a quoted field that looks like a row of its own was probably swallowed by a stray quotation mark.</summary>
    private bool RunsOver(CsvRow row)
    {
        if (row.LastLine == row.Line)
        {
            return false;
        }

        for (int i = 0; i < row.Fields.Length; i++)
        {
            string[] lines = row.Fields[i].ReplaceLineEndings("\n").Split('\n');
            int rowLike = lines.Skip(1).SkipLast(1).Count(l => l.Count(c => c == _separator) == _columns.Count - 1 && l.Trim().Length > 0);
            bool inName = i == _columns.Name && lines.Length > 1 && row.Fields[i].Contains(_separator);
            if (inName || (i == _columns.Name && lines.Length > 3) || rowLike >= (_columns.Count > 2 ? 1 : 2))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// A column right of the name that always holds a mail address or a number still does in this row, so that nothing was
    /// pushed to the right before it; and no answer to whether the name may be shown stands behind it.
    /// </summary>
    private bool NameStillFits(CsvRow row)
    {
        int proven = -1;
        for (int i = _columns.Name + 1; i < _columns.Count; i++)
        {
            if (_kinds[i] == Kind.Any || string.IsNullOrWhiteSpace(row.Fields[i]))
            {
                continue;
            }

            if (KindOf(row.Fields[i]) != _kinds[i])
            {
                break;
            }

            proven = i;
        }

        return proven > 0 && _columns.LeaveOut.All(c => c.Index <= proven);
    }

    private static Kind UsualKind(IEnumerable<string> cells)
    {
        var kinds = cells.Where(c => !string.IsNullOrWhiteSpace(c)).Select(KindOf).ToList();
        foreach (var kind in new[] { Kind.Mail, Kind.Number })
        {
            if (kinds.Count > 0 && kinds.Count(k => k == kind) * 10 >= kinds.Count * 9)
            {
                return kind;
            }
        }

        return Kind.Any;
    }

    private static Kind KindOf(string cell) =>
        cell.Contains('@') ? Kind.Mail
        : cell.Any(char.IsAsciiDigit)
            && cell.All(c => char.IsAsciiDigit(c) || char.IsWhiteSpace(c) || char.IsPunctuation(c) || char.IsSymbol(c)) ? Kind.Number
        : Kind.Any;

    private Said Expected() =>
        _columns.HasHeader ? (Said)$"the header {_columns.Count}" : "the first row 1";

    private Said SeparatorWord() => new CsvTable(_separator, []).SeparatorWord;
}

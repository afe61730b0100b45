using System.Collections.Immutable;
using System.Text;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>The text of approvals.csv, cell by cell: what is not set stays as it is, understood or not, and so do columns of the
/// maker's own.</summary>
internal sealed class ApprovalsEditing
{
    private readonly char _separator;
    private readonly List<string> _header;
    private readonly List<(int Line, List<string> Fields)> _rows;

    private ApprovalsEditing(char separator, List<string> header, List<(int Line, List<string> Fields)> rows) =>
        (_separator, _header, _rows) = (separator, header, rows);

    /// <summary>Of a file that is not there, or is empty, as <c>invite</c> would begin it.</summary>
    public static Result<ApprovalsEditing> Open(string jobFolder)
    {
        if (!ApprovalsFile.Exists(jobFolder)
            || (InnerFile.IsPlain(jobFolder, ApprovalsFile.FileName) && InnerFile.IsEmpty(jobFolder, ApprovalsFile.FileName)))
        {
            return Result.Of(new ApprovalsEditing(',', [.. ApprovalsFile.Columns, ApprovalsFile.WebColumn, ApprovalsFile.LookColumn], []));
        }

        var table = CsvFile.Read(jobFolder, ApprovalsFile.FileName);
        if (table.Value is not { } read)
        {
            return Result.Fail<ApprovalsEditing>([.. table.Problems]);
        }

        var header = read.Rows[0];
        string[] lacking = [.. ApprovalsFile.Columns[..4].Where(c => !header.Fields.Any(f => ApprovalsFile.IsColumn(f, c)))];
        return lacking.Length > 0
            ? Result.Fail<ApprovalsEditing>(Problem.CannotUse(
                new Where(ApprovalsFile.FileName, header.Line),
                $"The header lacks {ListColumns.Listed(lacking)}, so no answer can be entered.",
                $"Let the first line of the file be: {string.Join(read.Separator, ApprovalsFile.Columns)}"))
            : Result.Of(new ApprovalsEditing(
                read.Separator, Texts(header), [.. read.Rows.Skip(1).Select(r => (r.Line, Texts(r)))]));
    }

    /// <param name="line">Of the file as it was opened.</param>
    public string Get(int line, string column)
    {
        var fields = _rows.Find(r => r.Line == line).Fields;
        return Place(column) is >= 0 and var at && at < fields.Count ? fields[at].Trim() : "";
    }

    /// <param name="line">Of the file as it was opened; 0: the one that was added last.</param>
    public void Set(int line, string column, string value)
    {
        if (Place(column) < 0)
        {
            _header.Add(column);
        }

        int at = Place(column);
        var fields = line == 0 ? _rows[^1].Fields : _rows.Find(r => r.Line == line).Fields;
        while (fields.Count <= at)
        {
            fields.Add("");
        }

        fields[at] = value;
    }

    /// <summary>A line for a row that has none.</summary>
    public void Add(ListedRow row)
    {
        _rows.Add((0, []));
        foreach (var (column, value) in new[]
        {
            ("list", row.Row.List), ("line", row.Row.Line.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("name", row.Text),
            ("details", row.DetailsPrint),
        })
        {
            Set(0, column, value);
        }
    }

    public KeptFile Content()
    {
        var text = new StringBuilder();
        foreach (var fields in _rows.Select(r => r.Fields).Prepend(_header))
        {
            ImmutableArray<string> whole = [.. fields, .. Enumerable.Repeat("", Math.Max(0, _header.Count - fields.Count))];
            text.Append(CsvText.Row(whole, _separator)).Append(CsvText.LineEnd);
        }

        return KeptFile.Of(Encoding.UTF8.GetBytes(text.ToString()));
    }

    private int Place(string column) => _header.FindIndex(f => ApprovalsFile.IsColumn(f, column));

    private static List<string> Texts(CsvRow row) => [.. row.Fields.Select(f => CsvText.ReadBack(f.Trim('\uFEFF')))];
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Turns the rows of one list into <see cref="SourceRow"/>s.</summary>
internal static class RowReader
{
    private const int LongestShownAnswer = 20;

    public static IEnumerable<SourceRow> Read(string list, CsvTable table, ListColumns columns, Grouping grouping)
    {
        var form = new RowForm(columns, table);
        foreach (var row in table.Rows.Skip(columns.HasHeader ? 1 : 0))
        {
            var (doubt, notes) = form.Judge(row);
            var (wish, wishReason) = WishOf(row, columns);
            var name = NameText.Clean(Cell(row, columns.Name));
            var place = new RowRef(list, row.Line);
            yield return new SourceRow(place, name, DetailsOf(row, columns, wish), wish, wishReason, doubt, [.. name.Notes, .. notes])
            {
                Group = grouping.Of(place, columns.Group is { } group ? Cell(row, group) : null),
            };
        }
    }

    private static (Wish Wish, string Reason) WishOf(CsvRow row, ListColumns columns)
    {
        string unclear = "";
        foreach (var column in columns.LeaveOut)
        {
            string cell = Cell(row, column.Index);
            bool? hides = YesNo.Hides(cell, column.YesHides);
            if (hides == true)
            {
                return (Wish.LeaveOut, "");
            }

            bool blankMeansShow = column.YesHides && cell.Length == 0;
            if (hides is null && !blankMeansShow && unclear.Length == 0)
            {
                unclear = $"asked not to be shown? The column “{columns.Labels[column.Index]}” {Says(cell)}";
            }
        }

        return unclear.Length > 0 ? (Wish.Unclear, unclear) : (Wish.Show, "");
    }

    /// <summary>The answer is repeated only when it is one short word: anything longer may be a private remark.</summary>
    private static string Says(string cell)
    {
        string text = NameText.Clean(cell).Text;
        if (text.Length == 0)
        {
            return "is empty";
        }

        bool word = text.Length <= LongestShownAnswer && text.All(c => char.IsLetter(c) || c == '?');
        return word ? $"says “{text}”" : "says neither yes nor no";
    }

    private static ImmutableArray<Detail> DetailsOf(CsvRow row, ListColumns columns, Wish wish)
    {
        var details = new List<Detail>();
        for (int i = 0; i < row.Fields.Length; i++)
        {
            string cell = Cell(row, i);
            bool said = cell.Length > 0 && i != columns.Name;
            if (!said || columns.LeaveOut.Any(c => c.Index == i && wish != Wish.Unclear))
            {
                continue;
            }

            details.Add(i < columns.Count
                ? new Detail(columns.Meanings[i], columns.Labels[i], cell)
                : new Detail("+" + (i - columns.Count), "fields after the last column", cell));
        }

        if (wish == Wish.LeaveOut)
        {
            details.Add(new Detail("!", columns.Labels[columns.LeaveOut[0].Index], "yes"));
        }

        return [.. details.OrderBy(d => d.Meaning, StringComparer.Ordinal)];
    }

    private static string Cell(CsvRow row, int index) => index < row.Fields.Length ? row.Fields[index].Trim() : "";
}

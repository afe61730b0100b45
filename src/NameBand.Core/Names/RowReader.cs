using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Turns the rows of one list into <see cref="SourceRow"/>s.</summary>
internal static class RowReader
{
    public static IEnumerable<SourceRow> Read(string list, CsvTable table, ListColumns columns, Grouping grouping)
    {
        var form = new RowForm(columns, table);
        foreach (var row in table.Rows.Skip(columns.HasHeader ? 1 : 0))
        {
            var (doubt, notes) = form.Judge(row);
            var answers = AnswersOf(row, columns);
            var name = NameText.Clean(Cell(row, columns.Name));
            var place = new RowRef(list, row.Line);
            yield return new SourceRow(place, name, DetailsOf(row, columns, answers), answers, doubt, [.. name.Notes, .. notes])
            {
                Web = WebAnswerOf(row, columns),
                Group = grouping.Of(place, columns.Group is { } group ? Cell(row, group) : null),
            };
        }
    }

    /// <summary>A no in any such column is a no, and so is what nobody can read until somebody has.</summary>
    private static WebAnswer WebAnswerOf(CsvRow row, ListColumns columns)
    {
        var answers = columns.Web.Select(c => WebAnswers.Read(Cell(row, c.Index), yesHides: c.YesHides == true)).ToList();
        return answers.Count == 0 ? WebAnswer.None : answers.Max();
    }

    private static ShowAnswers AnswersOf(CsvRow row, ListColumns columns)
    {
        var answers = ImmutableArray.CreateBuilder<ShowAnswer>();
        foreach (var column in columns.LeaveOut)
        {
            string cell = Cell(row, column.Index);
            bool blankShows = column.YesHides == true && cell.Length == 0;
            answers.Add(new ShowAnswer(
                LabelOf(columns, column.Index), ShowAnswers.InWords(cell, column.YesHides),
                blankShows ? false : column.YesHides is null && YesNo.Read(cell) != Answer.Hide ? null : YesNo.Hides(cell, column.YesHides),
                column.YesHides));
        }

        foreach (int index in columns.Remarks)
        {
            string cell = Cell(row, index);
            if (cell.Length > 0 && !cell.Contains('@') && HeaderWords.MayAskNotToBeShown(cell))
            {
                answers.Add(new ShowAnswer(LabelOf(columns, index), ShowAnswers.InWords(cell, null), null, null) { IsRemark = true });
            }
        }

        return new ShowAnswers(answers.ToImmutable());
    }

    /// <summary>Another one for each column, so that answers are never taken for each other's.</summary>
    private static string LabelOf(ListColumns columns, int index) =>
        columns.Labels.Count(l => l == columns.Labels[index]) == 1 ? columns.Labels[index].English
            : ((Said)$"{columns.Labels[index]}, column {index + 1}").English;

    private static ImmutableArray<Detail> DetailsOf(CsvRow row, ListColumns columns, ShowAnswers answers)
    {
        var wish = answers.Wish;
        var details = new List<Detail>();
        for (int i = 0; i < row.Fields.Length; i++)
        {
            string cell = Cell(row, i);
            bool isOfWeb = columns.Web.Any(c => c.Index == i);
            bool isAnswer = isOfWeb || columns.LeaveOut.Any(c => c.Index == i);
            if (cell.Length == 0 || i == columns.Name || (isAnswer && !isOfWeb && wish != Wish.Unclear))
            {
                continue;
            }

            details.Add(i < columns.Count
                ? new Detail(columns.Meanings[i], columns.Labels[i], cell) { IsAnswer = isAnswer }
                : new Detail("+" + (i - columns.Count), "fields after the last column", cell));
        }

        if (wish == Wish.LeaveOut)
        {
            details.Add(new Detail("!", columns.Labels[columns.LeaveOut[0].Index], "yes") { IsAnswer = true });
        }

        return [.. details.OrderBy(d => d.Meaning, StringComparer.Ordinal)];
    }

    private static string Cell(CsvRow row, int index) => index < row.Fields.Length ? row.Fields[index].Trim() : "";
}

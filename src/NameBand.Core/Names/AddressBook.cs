using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>Where each row's owner can be written to. Private: for the letters alone, and never in a message.</summary>
internal sealed record AddressBook(ImmutableDictionary<RowRef, string> All)
{
    public string Of(RowRef row) => All.GetValueOrDefault(row, "");

    /// <returns>Problems that name rows and headings, and never what stands under them.</returns>
    public static Result<AddressBook> Read(BandJob job)
    {
        var all = ImmutableDictionary.CreateBuilder<RowRef, string>();
        var problems = new List<Problem>();
        foreach (string list in job.Lists)
        {
            if (ListFile.Read(job.Folder, list).Value is { } read && Column(job, read.Name, read.Table, problems) is { } column)
            {
                Take(read.Name, read.Table, column, job.Columns.Address is not null, all, problems);
            }
        }

        return problems.Any(p => p.Severity == Severity.CannotUse)
            ? Result.Fail<AddressBook>(problems) : Result.Of(new AddressBook(all.ToImmutable()), problems);
    }

    private static int? Column(BandJob job, string list, CsvTable table, List<Problem> problems)
    {
        string[] header = [.. table.Rows[0].Fields];
        var labels = ListColumns.LabelsOf(table.Rows[0]);
        int[] Fitting(Func<string, bool> fits) => [.. Enumerable.Range(0, header.Length).Where(i => fits(header[i]))];

        string mail = HeaderWords.MeaningOf("mail");
        int[] found = job.Columns.Address is { } wanted
            ? Fitting(h => HeaderWords.Key(h) == HeaderWords.Key(wanted))
            : Fitting(h => HeaderWords.MeaningOf(h) == mail);
        if (found.Length == 1)
        {
            return found[0];
        }

        Said example = found.Length > 1 ? labels[found[0]] : labels[^1];
        problems.Add(new Problem(
            found.Length > 1 ? Severity.CannotUse : Severity.NeedsPerson,
            new Where(list, table.Rows[0].Line, Key: JobKeys.AddressColumn.Path),
            found.Length > 1
                ? (Said)$"The addresses could stand in any of the columns {ListColumns.Listed(found.Select(i => labels[i]))}."
                : $"None of the columns {ListColumns.Listed(labels)} is known to hold addresses, so the letters have none.",
            $"Say in job.json which one it is, for example \"columns\": {{ \"address\": \"{example}\" }}."));
        return null;
    }

    private static void Take(
        string list, CsvTable table, int column, bool isChosen, ImmutableDictionary<RowRef, string>.Builder all, List<Problem> problems)
    {
        foreach (var row in table.Rows.Skip(1))
        {
            string cell = column < row.Fields.Length ? PlainText.OneLine(row.Fields[column]) : "";
            if (cell.Length == 0)
            {
                continue;
            }

            all[new RowRef(list, row.Line)] = cell;
            bool isMail = cell.Contains('@') && !cell.Any(char.IsWhiteSpace) && cell.IndexOf('@') == cell.LastIndexOf('@')
                && cell[^1] != '@' && cell[0] != '@';
            if (!isMail && (!isChosen || cell.Contains('@')))
            {
                problems.Add(Problem.NeedsPerson(
                    new Where(list, row.Line, column + 1), "What stands here is not a mail address.",
                        "Mend it in the list, and run invite again."));
            }
        }
    }
}

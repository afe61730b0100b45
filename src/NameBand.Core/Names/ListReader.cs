using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>The Names room: lists in, every row accounted for out.</summary>
internal static class ListReader
{
    /// <summary>
    /// Reads all lists of a job and decides what becomes of each row. Lists that cannot be used are
    /// <see cref="Severity.CannotUse"/> problems, one for each fault found in each list.
    /// </summary>
    public static Result<NameList> Read(BandJob job, Corrections corrections)
    {
        var problems = new List<Problem>();
        var tables = ReadTables(job, problems);
        var columns = tables.ToDictionary(t => t.List, t => ColumnsOf(job, tables, t, problems), StringComparer.Ordinal);
        if (problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<NameList>(problems);
        }

        var grouping = new Grouping(job.Groups);
        var rows = Twins.Told(tables.SelectMany(t => RowReader.Read(t.List, t.Table, columns[t.List]!, grouping)).ToList());
        if (rows.Count == 0)
        {
            return Result.Fail<NameList>([.. problems, Problem.CannotUse(new Where(File: job.Lists.FirstOrDefault()),
                "There are no names in it: it ends after the header.",
                "Save the list again with its rows, or name the right file in job.json.")]);
        }

        problems.AddRange(tables.Where(t => t.Table.Rows.Length == 1 && columns[t.List]!.HasHeader)
            .Select(t => Problem.Note(new Where(File: t.List), "This list has a header and no rows.")));
        var fitting = new FittingCorrections(corrections, [.. tables.Select(t => t.List)], rows);
        problems.AddRange(fitting.Problems);
        var settler = new RowSettler(rows, fitting.Lines, fitting.Doubtful);
        ImmutableArray<ListedRow> settled = [.. rows.Select(settler.Settle)];
        problems.AddRange(settler.Problems);
        problems.AddRange(grouping.Problems());
        return Result.Of(
            new NameList(settled, [.. settled.Where(r => r.Outcome == RowOutcome.Placed)
                .Select(r => new Name(r.Text, r.Row) { Group = r.Group, IsKept = r.Decided == Decision.Keep })]), problems);
    }

    private static List<(string List, CsvTable Table)> ReadTables(BandJob job, List<Problem> problems)
    {
        var tables = new List<(string, CsvTable)>();
        foreach (string list in job.Lists.Distinct(StringComparer.Ordinal))
        {
            var read = ListFile.Read(job.Folder, list);
            problems.AddRange(read.Problems);
            if (read.Value is { } found)
            {
                tables.Add((found.Name, found.Table));
            }
        }

        return tables;
    }

    /// <summary>A column chosen in job.json has to be in the lists that have it; it is an error only when none has.</summary>
    private static ListColumns? ColumnsOf(
        BandJob job, List<(string List, CsvTable Table)> tables, (string List, CsvTable Table) table, List<Problem> problems)
    {
        string? WhereDue(string? wanted) => wanted is null
            || ColumnFinder.Has(table.Table.Rows[0], wanted) || !tables.Any(t => ColumnFinder.Has(t.Table.Rows[0], wanted)) ? wanted : null;

        var choice = new ColumnChoice(WhereDue(job.Columns.Name), WhereDue(job.Columns.LeaveOut), WhereDue(job.Groups.Column))
        {
            Hide = [.. job.Columns.Hide.Select(WhereDue).OfType<string>()],
            Show = [.. job.Columns.Show.Select(WhereDue).OfType<string>()],
            Web = [.. job.Columns.Web.Select(WhereDue).OfType<string>()],
            Ignored = [.. job.Columns.Ignored.Select(WhereDue).OfType<string>()],
        };
        var columns = ColumnFinder.Find(table.List, table.Table, choice);
        problems.AddRange(columns.Problems);
        return columns.Value;
    }
}

using System.Text;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>Lists made in a folder of their own and read as a job would read them.</summary>
internal static class Lists
{
    public static Result<NameList> Read(string csv, string? corrections = null, ColumnChoice? columns = null) =>
        Read([("names.csv", csv)], corrections, columns);

    public static Result<NameList> Read((string Name, string Csv)[] lists, string? corrections = null, ColumnChoice? columns = null)
    {
        using var folder = new TemporaryFolder();
        foreach (var (name, csv) in lists)
        {
            folder.With(name, csv);
        }

        return Read(folder, corrections, columns, [.. lists.Select(l => l.Name)]);
    }

    public static Result<NameList> ReadBytes(byte[] bytes)
    {
        using var folder = new TemporaryFolder();
        return Read(folder.With("names.csv", bytes));
    }

    public static Result<NameList> Read(
        TemporaryFolder folder, string? corrections = null, ColumnChoice? columns = null, params string[] lists)
    {
        if (corrections is not null)
        {
            folder.With("corrections.csv", corrections);
        }

        var read = Corrections.Read(folder.FullPath);
        if (read.Value is null)
        {
            return Result.Fail<NameList>(read.Problems);
        }

        var job = Sample.Job with
        {
            Folder = folder.FullPath,
            Lists = lists.Length > 0 ? [.. lists] : ["names.csv"],
            Columns = columns ?? new ColumnChoice(),
        };
        var names = ListReader.Read(job, read.Value);
        return names with { Problems = [.. read.Problems, .. names.Problems] };
    }

    /// <summary>Rows as "line outcome text" lines, to be compared with a table in the test.</summary>
    public static string Table(Result<NameList> read)
    {
        Assert.True(read.Value is not null, string.Join("\n", read.Problems));
        return string.Join("\n", read.Value.Rows.Select(r => $"{r.Row.Line} {Word(r.Outcome)} {r.Text}".TrimEnd()));
    }

    public static ListedRow Row(Result<NameList> read, int line, string list = "names.csv")
    {
        Assert.True(read.Value is not null, string.Join("\n", read.Problems));
        return read.Value.Rows.Single(r => r.Row == new RowRef(list, line));
    }

    public static Problem Refused(Result<NameList> read)
    {
        Assert.Null(read.Value);
        return read.Problems.First(p => p.Severity == Severity.CannotUse);
    }

    /// <summary>Everything that may reach an output, in one string.</summary>
    public static string AllShown(Result<NameList> read, IEnumerable<string>? more = null)
    {
        var text = new StringBuilder();
        foreach (var row in read.Value?.Rows ?? [])
        {
            text.AppendLine(row.Text).AppendLine(row.Reason.English).AppendLine(string.Join('\n', row.Notes));
        }

        foreach (var problem in read.Problems)
        {
            text.AppendLine($"{problem.Where} {problem.Found} {problem.Mend}");
        }

        return text.AppendLine(string.Join('\n', more ?? [])).ToString();
    }

    private static string Word(RowOutcome outcome) => outcome == RowOutcome.LeftOut ? "leftOut" : outcome.ToString().ToLowerInvariant();
}

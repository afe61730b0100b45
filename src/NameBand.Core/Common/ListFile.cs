using System.Collections.Immutable;

namespace NameBand.Common;

/// <summary>A list as it was read.</summary>
/// <param name="Name">What rows are known by: the file, and of a workbook the sheet too, such as <c>names.xlsx#Friends</c>.</param>
internal sealed record ReadList(string Name, CsvTable Table)
{
    /// <summary>Of a workbook all its sheets.</summary>
    public ImmutableArray<string> Sheets { get; init; } = [];
}

/// <summary>A list of a job: a CSV, or a sheet of a workbook written as <c>names.xlsx</c> (its first sheet) or
/// <c>names.xlsx#Friends</c>.</summary>
internal static class ListFile
{
    private const string Workbook = ".xlsx";

    /// <summary>The file that a list stands in, relative to the job's folder.</summary>
    public static string FileOf(string list) => Parts(list).File;

    public static bool IsWorkbook(string list) => FileOf(list).EndsWith(Workbook, StringComparison.OrdinalIgnoreCase);

    /// <param name="list">As the job names it, relative to the folder.</param>
    public static Result<ReadList> Read(string folder, string list)
    {
        var (file, sheet) = Parts(list);
        if (IsWorkbook(list))
        {
            var read = SheetFile.Read(folder, file, sheet);
            return read.Value is { } found
                ? Result.Of(new ReadList($"{file}#{found.Sheet}", found.Table) { Sheets = found.Sheets }, read.Problems)
                : Result.Fail<ReadList>(read.Problems);
        }

        var table = CsvFile.Read(folder, list);
        return table.Value is { } rows ? Result.Of(new ReadList(list, rows), table.Problems) : Result.Fail<ReadList>(table.Problems);
    }

    /// <summary>A sheet is told only of a workbook: the name of a CSV may have a # in it.</summary>
    private static (string File, string? Sheet) Parts(string list)
    {
        int at = list.IndexOf(Workbook + "#", StringComparison.OrdinalIgnoreCase);
        return at < 0 ? (list, null) : (list[..(at + Workbook.Length)], list[(at + Workbook.Length + 1)..]);
    }
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>The first rows of a list as they stand, for a person who is asked which column holds the names.</summary>
/// <param name="Header">The first line's fields.</param>
/// <param name="Rows">Some rows under it.</param>
public sealed record ListPreview(string List, ImmutableArray<string> Header, ImmutableArray<ImmutableArray<string>> Rows)
{
    // Rows under the header: enough to tell which column holds the names, and they fit one screen with the question.
    private const int MostRows = 5;

    /// <summary>Of a workbook all its sheets; empty for a CSV.</summary>
    public ImmutableArray<string> Sheets { get; init; } = [];

    /// <param name="list">A list of the job, relative to its folder.</param>
    public static Result<ListPreview> Read(string jobFolder, string list)
    {
        var read = ListFile.Read(jobFolder, list);
        return read.Value is { Table.Rows: var rows, Sheets: var sheets }
            ? Result.Of(
                new ListPreview(list, Plain(rows[0]), [.. rows.Skip(1).Take(MostRows).Select(Plain)]) { Sheets = sheets }, read.Problems)
            : Result.Fail<ListPreview>(read.Problems);
    }

    private static ImmutableArray<string> Plain(CsvRow row) => [.. row.Fields.Select(f => PlainText.Short(f, 60))];
}

using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout.Drift;

/// <summary>Where a sewn name really ended.</summary>
/// <param name="Number">The name's number on the key-in sheet, in the order of sewing.</param>
/// <param name="Name">The name as a check that the number is still its; empty: not given.</param>
/// <param name="EndMm">From the strip's end that was sewn first, on the strip as it lies now.</param>
public sealed record MeasuredEnd(int Number, string Name, double EndMm, int FileLine)
{
    /// <summary>Where it was said.</summary>
    public Where Where { get; init; } = new(DriftFile.FileName, FileLine);
}

/// <summary>Reads drift.csv, <c>number,name,end_mm</c>: no file is no drift.</summary>
public static class DriftFile
{
    public const string FileName = "drift.csv";
    private static readonly string[] Columns = ["number", "end_mm", "name"];

    /// <summary>Holds the ends as read, in the file's order.</summary>
    public sealed record Ends(ImmutableArray<MeasuredEnd> All);

    public static Result<Ends> Read(string jobFolder)
    {
        if (!InnerFile.IsThere(jobFolder, FileName))
        {
            return Result.Of(new Ends([]));
        }

        var table = CsvFile.Read(jobFolder, FileName);
        if (table.Value is null)
        {
            return Result.Fail<Ends>(table.Problems);
        }

        var problems = table.Problems.ToList();
        if (SheetColumns.Find(table.Value, Columns, needed: 2, FileName, problems) is not { } header)
        {
            return Result.Fail<Ends>(problems);
        }

        var ends = ImmutableArray.CreateBuilder<MeasuredEnd>();
        foreach (var row in table.Value.Rows.Skip(1))
        {
            if (!int.TryParse(header.Text(row, "number"), NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number < 1)
            {
                problems.Add(Problem.CannotUse(
                    new Where(FileName, row.Line), "This line does not give the number of a name.",
                    "Write the number that stands before the name on the key-in sheet, or, where names are sewn from needle paths, beside it on its proof."));
            }
            else if (header.Number(row, "end_mm", 0.1, JobKeys.LongestEdgeMm, problems) is { } end)
            {
                ends.Add(new MeasuredEnd(number, CsvText.ReadBack(header.Text(row, "name")), end, row.Line));
            }
            else if (header.Text(row, "end_mm").Length == 0)
            {
                problems.Add(Problem.CannotUse(
                    new Where(FileName, row.Line), "This line does not say where the name ended.",
                    "Write the length in millimetres, or take the line out."));
            }
        }

        return problems.Any(p => p.Severity == Severity.CannotUse)
            ? Result.Fail<Ends>(problems)
            : Result.Of(new Ends(ends.ToImmutable()), problems);
    }
}

using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Reads approvals.csv in a job's folder: what the owners of the names say to their pictures.</summary>
public static class ApprovalsFile
{
    public const string FileName = "approvals.csv";

    public static ImmutableArray<string> Columns { get; } = ["list", "line", "name", "state", "date", "text", "details"];

    public static bool Exists(string jobFolder) => InnerFile.IsThere(jobFolder, FileName);

    /// <summary>All lines that can be understood; the others are told. A file that cannot be read at all is told too, and stops nothing.</summary>
    public static (ImmutableArray<ApprovalLine> Lines, char Separator, ImmutableArray<Problem> Problems) Read(string jobFolder)
    {
        if (InnerFile.IsPlain(jobFolder, FileName) && InnerFile.IsEmpty(jobFolder, FileName))
        {
            return ([], ',', []);
        }

        var table = CsvFile.Read(jobFolder, FileName);
        if (table.Value is not { } read)
        {
            return ([], ',', [.. table.Problems.Select(p => p with { Severity = Severity.NeedsPerson })]);
        }

        var header = read.Rows[0];
        int[] places = [.. Columns.Select(c => Array.FindIndex([.. header.Fields], f => f.Trim().Trim('\uFEFF').Equals(c, StringComparison.OrdinalIgnoreCase)))];
        if (places[..4].Any(p => p < 0))
        {
            return ([], read.Separator, [Problem.NeedsPerson(
                new Where(FileName, header.Line), "The header lacks one of the columns list, line, name and state, so nobody counts as asked.",
                $"Let the first line of the file be: {string.Join(read.Separator, Columns)}")]);
        }

        var problems = table.Problems.ToBuilder();
        var lines = read.Rows.Skip(1).Where(r => !r.Fields.All(string.IsNullOrWhiteSpace)).Select(r => Line(r, places, problems)).OfType<ApprovalLine>();
        return ([.. lines], read.Separator, problems.ToImmutable());
    }

    /// <summary>The word for a state in the file.</summary>
    public static string Word(ApprovalState state) => state switch
    {
        ApprovalState.NotAsked => "",
        ApprovalState.Asked => "asked",
        ApprovalState.Agreed => "agreed",
        ApprovalState.ChangeWished => "change wished",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "No such state."),
    };

    private static ApprovalLine? Line(CsvRow row, int[] places, ImmutableArray<Problem>.Builder problems)
    {
        string Field(int column) => places[column] is >= 0 and var i && i < row.Fields.Length ? CsvText.ReadBack(row.Fields[i].Trim()) : "";

        if (!int.TryParse(Field(1), NumberStyles.None, CultureInfo.InvariantCulture, out int line) || line < 1)
        {
            problems.Add(Problem.NeedsPerson(
                new Where(FileName, row.Line), "The line in the list is not a whole number, so this line was passed over.",
                "Write the number of the line in the list, counting its header as line 1."));
            return null;
        }

        if (State(Field(3)) is not { } state)
        {
            problems.Add(Problem.NeedsPerson(
                new Where(FileName, row.Line), $"“{PlainText.Short(Field(3), 40)}” is no state, so the name counts as not asked.",
                "Write asked, agreed or change wished in the column “state”."));
            return null;
        }

        return new ApprovalLine(
            new RowRef(Field(0).Replace('\\', '/'), line), Field(2), state, PlainText.Short(Field(4), 40), NameText.Clean(Field(5)).Text, Field(6), row.Line);
    }

    private static ApprovalState? State(string written) => string.Concat(written.Where(char.IsLetter)).ToLowerInvariant() switch
    {
        "" => written.Length == 0 ? ApprovalState.NotAsked : null,
        "asked" => ApprovalState.Asked,
        "agreed" => ApprovalState.Agreed,
        "changewished" => ApprovalState.ChangeWished,
        _ => null,
    };
}

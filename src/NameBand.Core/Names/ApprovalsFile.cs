using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Reads approvals.csv in a job's folder: what the owners of the names say to their pictures.</summary>
public static class ApprovalsFile
{
    public const string FileName = "approvals.csv";

    public static ImmutableArray<string> Columns { get; } = ["list", "line", "name", "state", "date", "text", "details"];

    /// <summary>What the owner says to being shown on the web: yes or no. It need not be there.</summary>
    public const string WebColumn = "web";

    /// <summary>Mark of the picture that the owner saw. It need not be there.</summary>
    public const string LookColumn = "look";

    /// <summary>Fingerprint of the answers that were entered. It need not be there.</summary>
    public const string HeardColumn = "heard";

    /// <summary>The first line of a file that is begun, with its line end.</summary>
    public static string NewHeader => CsvText.Row([.. Columns, WebColumn, LookColumn]) + CsvText.LineEnd;

    /// <summary>A line of a file that is begun, in which the answer is to be filled in.</summary>
    public static string NewLine(ListedRow row, string look) => CsvText.Row(
        [row.Row.List, row.Row.Line.ToString(CultureInfo.InvariantCulture), row.Text, "", "", "", row.DetailsPrint, "", look])
        + CsvText.LineEnd;

    public static bool Exists(string jobFolder) => InnerFile.IsThere(jobFolder, FileName);

    /// <summary>All lines that can be understood; the others are told. A file that cannot be read at all is told too, and stops
    /// nothing.</summary>
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
        int[] places = [.. Columns.Select(c => Array.FindIndex([.. header.Fields], f => IsColumn(f, c)))];
        if (places[..4].Any(p => p < 0))
        {
            return ([], read.Separator, [Problem.NeedsPerson(
                new Where(FileName, header.Line),
                "The header lacks one of the columns list, line, name and state, so nobody counts as asked.",
                $"Let the first line of the file be: {string.Join(read.Separator, Columns)}")]);
        }

        int look = Array.FindIndex([.. header.Fields], f => IsColumn(f, LookColumn));
        int heard = Array.FindIndex([.. header.Fields], f => IsColumn(f, HeardColumn));
        var problems = table.Problems.ToBuilder();
        var lines = read.Rows.Skip(1).Where(r => !r.Fields.All(string.IsNullOrWhiteSpace))
            .Select(r => Line(r, places, problems) is { } line
                ? line with { Look = Mark(r, look), Heard = Mark(r, heard) } : null)
            .OfType<ApprovalLine>();
        return ([.. lines], read.Separator, problems.ToImmutable());
    }

    /// <summary>
    /// What stands in the column “web” of every line, whatever else is wrong with the line: a no must not be lost to a slip of the pen.
    /// </summary>
    /// <returns>A problem where the file cannot be read: then nobody knows who said no.</returns>
    internal static Result<WebLines> ReadWeb(string jobFolder)
    {
        if (!Exists(jobFolder) || (InnerFile.IsPlain(jobFolder, FileName) && InnerFile.IsEmpty(jobFolder, FileName)))
        {
            return Result.Of(new WebLines([]));
        }

        var table = CsvFile.Read(jobFolder, FileName);
        if (table.Value is not { } read)
        {
            return Result.Fail<WebLines>([.. table.Problems]);
        }

        var header = read.Rows[0];
        int Place(string column) => Array.FindIndex([.. header.Fields], f => IsColumn(f, column));
        int[] webs = [.. Enumerable.Range(0, header.Fields.Length).Where(i => IsColumn(header.Fields[i], WebColumn))];
        var (list, at, name, details) = (Place("list"), Place("line"), Place("name"), Place("details"));
        if (webs.Length > 0 && (list < 0 || at < 0 || name < 0))
        {
            return Result.Fail<WebLines>(Problem.CannotUse(
                new Where(FileName, header.Line),
                    "The header lacks one of the columns list, line and name, so NameBand does not know who said no to the web.",
                $"Let the first line of the file be: {string.Join(read.Separator, [.. Columns, WebColumn])}"));
        }

        return Result.Of(new WebLines([.. read.Rows.Skip(1).Select(row =>
        {
            string Field(int place) => place >= 0 && place < row.Fields.Length ? CsvText.ReadBack(row.Fields[place].Trim()) : "";
            var answer = webs.Select(w => WebAnswers.Read(Field(w))).DefaultIfEmpty(WebAnswer.None).Max();
            bool isPlaced = int.TryParse(Field(at), NumberStyles.None, CultureInfo.InvariantCulture, out int line);
            return new WebLine(
                new RowRef(Field(list).Replace('\\', '/'), isPlaced ? line : 0), Field(name), Field(details), answer, row.Line);
        }).Where(l => l.Answer != WebAnswer.None)]));
    }

    private static string Mark(CsvRow row, int at) =>
        at >= 0 && at < row.Fields.Length ? PlainText.Short(CsvText.ReadBack(row.Fields[at].Trim()), 10) : "";

    internal static bool IsColumn(string header, string column) =>
        header.Trim().Trim('\uFEFF').Equals(column, StringComparison.OrdinalIgnoreCase);

    /// <summary>The word for a state in the file.</summary>
    public static string Word(ApprovalState state) => InWords(state).English;

    /// <summary>The same, for a person.</summary>
    public static Said InWords(ApprovalState state) => state switch
    {
        ApprovalState.NotAsked => "",
        ApprovalState.Asked => "asked",
        ApprovalState.Agreed => "agreed",
        ApprovalState.ChangeWished => "change wished",
        ApprovalState.No => "no",
        ApprovalState.Unclear => "unclear",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "No such state."),
    };

    private static ApprovalLine? Line(CsvRow row, int[] places, ImmutableArray<Problem>.Builder problems)
    {
        string Field(int column) => places[column] is >= 0 and var i && i < row.Fields.Length ? CsvText.ReadBack(row.Fields[i].Trim()) : "";

        if (!int.TryParse(Field(1), NumberStyles.None, CultureInfo.InvariantCulture, out int line) || line < 1)
        {
            problems.Add(Problem.NeedsPerson(
                new Where(FileName, row.Line), "The line in the list is not a whole number, so this line was skipped.",
                "Write the number of the line in the list, counting its header as line 1."));
            return null;
        }

        if (State(Field(3)) is not { } state)
        {
            problems.Add(Problem.NeedsPerson(
                new Where(FileName, row.Line), $"“{PlainText.Short(Field(3), 40)}” is not a state, so the name counts as not asked.",
                "Write asked, agreed, change wished or no in the column “state”."));
            return null;
        }

        return new ApprovalLine(
            new RowRef(Field(0).Replace('\\', '/'), line), Field(2), state, PlainText.Short(Field(4), 40), NameText.Clean(Field(5)).Text,
            Field(6), row.Line);
    }

    private static ApprovalState? State(string written) => string.Concat(written.Where(char.IsLetter)).ToLowerInvariant() switch
    {
        "" => written.Length == 0 ? ApprovalState.NotAsked : null,
        "asked" => ApprovalState.Asked,
        "agreed" => ApprovalState.Agreed,
        "changewished" => ApprovalState.ChangeWished,
        "no" => ApprovalState.No,
        "unclear" => ApprovalState.Unclear,
        _ => null,
    };
}

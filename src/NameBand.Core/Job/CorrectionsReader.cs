using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Reads the lines of corrections.csv; each fault is told with its line and column.</summary>
internal static class CorrectionsReader
{
    private static readonly Said HowToDecide = "Write keep, leave out, change or elsewhere in the column “decision”.";

    public static Result<Corrections> Read(string jobFolder)
    {
        string path = Path.Combine(jobFolder, Corrections.FileName);
        if (!InnerFile.IsThere(jobFolder, Corrections.FileName) && !Directory.Exists(path))
        {
            return Result.Of(Corrections.None);
        }

        // An empty file is how one starts; there is nothing in it to pass over.
        if (InnerFile.IsPlain(jobFolder, Corrections.FileName) && InnerFile.IsEmpty(jobFolder, Corrections.FileName))
        {
            return Result.Of(Corrections.None);
        }

        var table = CsvFile.Read(jobFolder, Corrections.FileName);
        return table.Value is null
            ? Result.Fail<Corrections>(table.Problems)
            : ReadTable(table.Value, table.Problems);
    }

    private static Result<Corrections> ReadTable(CsvTable table, ImmutableArray<Problem> problems)
    {
        var header = table.Rows[0];
        var places = Corrections.Columns.ToDictionary(c => c, c => IndexOf(header.Fields, c), StringComparer.Ordinal);
        string[] missing = [.. new[] { "list", "line", "was", "decision" }.Where(c => places[c] < 0)];
        if (missing.Length > 0)
        {
            return Result.Fail<Corrections>([.. problems, Problem.CannotUse(
                new Where(File: Corrections.FileName, Line: header.Line),
                $"The header has no column {Said.Join(" and no ", missing.Select(m => (Said)$"“{m}”"))}.",
                $"Let the first line of the file be: {string.Join(table.Separator, Corrections.Columns)}")]);
        }

        var found = problems.ToBuilder();
        var lines = table.Rows.Skip(1).Select(row => ReadLine(row, places, found)).OfType<Correction>().ToList();
        var settled = OneForEachRow(DecidedForAll(lines, found), found);
        TellUndecided(settled, found);
        return Result.Of(
            new Corrections(settled, true, table.Separator) { Header = [.. header.Fields.Select(f => f.Trim().Trim('\uFEFF'))] }, found);
    }

    private static Correction? ReadLine(CsvRow row, Dictionary<string, int> places, ImmutableArray<Problem>.Builder problems)
    {
        string Field(string column) =>
            places[column] is >= 0 and var i && i < row.Fields.Length ? CsvText.ReadBack(row.Fields[i].Trim()) : "";

        Where At(string column) => new(Corrections.FileName, row.Line, places[column] + 1);

        if (row.Fields.All(string.IsNullOrWhiteSpace))
        {
            return null;
        }

        string list = PlainPath(Field("list"));
        if (list.Length == 0)
        {
            problems.Add(Problem.NeedsPerson(At("list"), "This line does not say which list it is about, so it was skipped.",
                "Write the list's file name in the column “list”."));
            return null;
        }

        if (!int.TryParse(Field("line"), NumberStyles.None, CultureInfo.InvariantCulture, out int line) || line < 1)
        {
            problems.Add(Problem.NeedsPerson(At("line"), "The line in the list is not a whole number, so this line was skipped.",
                "Write the number of the line in the list, counting its header as line 1."));
            return null;
        }

        var (decision, isForAll) = Decide(Field("decision"));
        if (decision == Decision.Unclear)
        {
            problems.Add(Problem.NeedsPerson(At("decision"), "This decision is not one we know, so the row is held.", HowToDecide));
        }
        else if (decision == Decision.Change && Field("text").Length == 0)
        {
            problems.Add(
                Problem.NeedsPerson(At("decision"), "The name should be changed, but the column “text” is empty, so the row is held.",
                "Write the name as it should be sewn in the column “text”."));
            decision = Decision.Unclear;
        }
        else if (decision == Decision.Elsewhere && Field("text").Length == 0)
        {
            problems.Add(Problem.NeedsPerson(
                At("decision"),
                "The name should be sewn elsewhere, but the column “text” does not say where, so the row is held.",
                "Write in the column “text” where it is sewn."));
            decision = Decision.Unclear;
        }

        return new Correction(new RowRef(list, line), Field("was"), decision, Field("text"), Field("why"), row.Line)
        {
            Details = Field("details"),
            Show = Field("show"),
            Alike = Field("alike"),
            IsForAll = isForAll,
        };
    }

    /// <summary>“Keep all” in one line is for every line of its mark that has no decision; two that differ are for none.</summary>
    private static List<Correction> DecidedForAll(List<Correction> lines, ImmutableArray<Problem>.Builder problems)
    {
        var forAll = lines.Where(l => l.IsForAll && l.Alike.Length > 0).ToLookup(l => l.Alike, StringComparer.Ordinal);
        foreach (var mark in forAll.Where(m => m.Select(l => l.Decision).Distinct().Count() > 1))
        {
            problems.Add(Problem.NeedsPerson(
                new Where(Corrections.FileName, mark.Last().FileLine),
                $"Line {mark.First().FileLine.ToString(CultureInfo.InvariantCulture)} gives another decision for all rows that ask the "
                    + $"same, so those without a decision stay held.",
                "Leave “all” in only one of the two lines."));
        }

        return [.. lines.Select(l =>
            l.Decision == Decision.NotYet && forAll[l.Alike].Select(a => a.Decision).Distinct().ToList() is [var one]
                ? l with { Decision = one }
                : l)];
    }

    private static void TellUndecided(ImmutableArray<Correction> lines, ImmutableArray<Problem>.Builder problems)
    {
        var open = lines.Where(l => l.Decision == Decision.NotYet).ToList();
        if (open.Count > 0)
        {
            problems.Add(Problem.Note(
                new Where(Corrections.FileName, open[0].FileLine),
                open.Count == 1 ? "This line has no decision yet."
                    : (Said)$"This line and {open.Count - 1} more have no decision yet.", HowToDecide));
        }
    }

    /// <summary>
    /// Of several lines about one row the first counts when they agree; else the row is held. A line without a decision says
    /// nothing, and lines about another name that stood there are about another row.
    /// </summary>
    private static ImmutableArray<Correction> OneForEachRow(List<Correction> lines, ImmutableArray<Problem>.Builder problems)
    {
        var settled = ImmutableArray.CreateBuilder<Correction>();
        var places = new Dictionary<(RowRef Row, string Was), int>();
        foreach (var line in lines)
        {
            if (!places.TryGetValue((line.Row, line.Was), out int place))
            {
                places.Add((line.Row, line.Was), settled.Count);
                settled.Add(line);
                continue;
            }

            var first = settled[place];
            if (line.Decision == Decision.NotYet || (first.Decision, first.Text) == (line.Decision, line.Text))
            {
                continue;
            }

            if (first.Decision == Decision.NotYet)
            {
                settled[place] = line;
                continue;
            }

            problems.Add(Problem.NeedsPerson(new Where(Corrections.FileName, line.FileLine),
                $"Line {first.FileLine.ToString(CultureInfo.InvariantCulture)} is about the same row and says something else, so the row is held.",
                "Leave only one of the two lines in the file."));
            settled[place] = first with { Decision = Decision.Unclear };
        }

        return settled.ToImmutable();
    }

    private static (Decision Decision, bool IsForAll) Decide(string written) =>
        string.Concat(written.Where(char.IsLetter)).ToLowerInvariant() switch
        {
            "" => (written.Length == 0 ? Decision.NotYet : Decision.Unclear, false),
            "keep" => (Decision.Keep, false),
            "keepall" => (Decision.Keep, true),
            "leaveout" => (Decision.LeaveOut, false),
            "leaveoutall" or "leaveallout" => (Decision.LeaveOut, true),
            "change" => (Decision.Change, false),
            "elsewhere" => (Decision.Elsewhere, false),
            _ => (Decision.Unclear, false),
        };

    /// <returns>Place of a column; -1: the header has none of that name.</returns>
    internal static int IndexOf(ImmutableArray<string> header, string column)
    {
        for (int i = 0; i < header.Length; i++)
        {
            if (header[i].Trim().Trim('\uFEFF').Equals(column, StringComparison.OrdinalIgnoreCase))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>The row of a list that a line is about; null where it does not say so clearly.</summary>
    internal static RowRef? RowOf(CsvRow line, ImmutableArray<string> header)
    {
        string list = PlainPath(Field("list"));
        return list.Length > 0 && int.TryParse(Field("line"), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number >= 1
            ? new RowRef(list, number)
            : null;

        string Field(string column) =>
            IndexOf(header, column) is >= 0 and var i && i < line.Fields.Length ? CsvText.ReadBack(line.Fields[i].Trim()) : "";
    }

    private static string PlainPath(string list)
    {
        string path = list.Replace('\\', '/');
        return path.StartsWith("./", StringComparison.Ordinal) ? path[2..] : path;
    }
}

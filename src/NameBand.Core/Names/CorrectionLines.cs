using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>The questions of held rows as lines for corrections.csv, in which a person has only to fill in the decision.</summary>
internal static class CorrectionLines
{
    /// <summary>
    /// One line for each held row that has none yet, without line ends; before them the header when there is no
    /// corrections.csv. Nothing is held that needs a line: nothing comes back.
    /// </summary>
    /// <param name="corrections">As read for the same job: says which columns the file has, and its separator.</param>
    public static ImmutableArray<string> ToAdd(NameList names, Corrections corrections)
    {
        ImmutableArray<string> lines = [.. Questions(names).Where(q => q.Replaces == 0).Select(q => Line(q, corrections))];
        return lines.IsEmpty || corrections.FileExists ? lines : [CsvText.Row(Corrections.Columns, corrections.Separator), .. lines];
    }

    /// <summary>
    /// What waits for a decision, each with an empty one: rows without a line, and rows whose line was decided for another
    /// name or another answer than the row has now. Rows that ask the same have one mark.
    /// </summary>
    public static ImmutableArray<RowDecision> Questions(NameList names)
    {
        var asked = names.Rows.Where(r => r.WaitsForDecision && (r.DecidedIn == 0 || IsAskedAnew(r))).ToList();
        var alike = asked.Where(r => r.HeldFor is HeldFor.Wish or HeldFor.Marks).GroupBy(AsksAlike).Where(g => g.Count() > 1)
            .SelectMany(g => g.Select(r => (r.Row, Mark: MarkOf(g), Count: g.Count()))).ToDictionary(g => g.Row);
        return [.. asked.Select(r => alike.TryGetValue(r.Row, out var group)
            ? Question(r, $"{r.Reason}; {group.Count} rows ask this: “keep all” or “leave out all” in one of them answers them all")
                with
            { Alike = group.Mark }
            : Question(r, r.Reason))];
    }

    /// <summary>A line of the file's own columns, without its line end.</summary>
    public static string Line(RowDecision decision, Corrections corrections) =>
        CsvText.Row(
            CorrectionsEditing.Fields(decision, corrections.FileExists ? corrections.Header : Corrections.Columns), corrections.Separator);

    /// <summary>Marks to be added by hand are one question, whichever marks they are.</summary>
    private static (string Show, Said Reason) AsksAlike(ListedRow row) =>
        row.HeldFor == HeldFor.Marks ? ("", "") : (row.Show, row.Reason);

    private static bool IsAskedAnew(ListedRow row) =>
        row.Decided is Decision.Keep or Decision.LeaveOut or Decision.Change && row.IsDecidedForElse;

    private static RowDecision Question(ListedRow row, Said why) => new(row.Row, row.Was, Decision.NotYet, "", why.English)
    {
        Details = row.DetailsPrint,
        Show = row.Show,
        Replaces = row.DecidedIn,
    };

    /// <summary>Other rows that ask the same later get another mark: no decision speaks for a row that was not there.</summary>
    private static string MarkOf(IEnumerable<ListedRow> rows)
    {
        string all = string.Concat(rows.Select(r => $"{r.Show}\u0001{r.Was}\u0001{r.DetailsPrint}\u0002"));
        return "a" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all))[..4]);
    }
}

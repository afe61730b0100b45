using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>
/// What needs a person before anything is sewn, in the order in which all of the program tells it: what is wrong with the
/// job as a whole stands first and is never cut short, and the held rows come after it.
/// </summary>
/// <param name="OfJob">The gravest first, else in the order in which they were found.</param>
/// <param name="OfRows">At least one for each held row, in the list's order. One whose mend is empty is settled in corrections.csv.</param>
public sealed record Needs(ImmutableArray<Problem> OfJob, ImmutableArray<Problem> OfRows)
{
    public static Needs None { get; } = new([], []);

    private const int LongestShownCharacters = 80; // Characters: a longer name is cut, so that its message stays two lines long.

    public int Count => OfJob.Length + OfRows.Length;

    public IEnumerable<Problem> All => OfJob.Concat(OfRows);

    /// <summary>Whether anything waits for an answer besides the facts that have a verdict of their own.</summary>
    public Verdict Waiting()
    {
        int rows = OfRows.Select(p => (p.Where.File, p.Where.Line)).Distinct().Count();
        int others = OfJob.Count(p => p.Judged is null);
        Said ofRows = rows == 0
            ? "" : (Said)$"{rows} {Said.Plural(rows, "row of the lists waits", "rows of the lists wait")} for your decision.";
        Said ofJob = others == 0
            ? "" : (Said)$"{others} {Said.Plural(others, "thing in the job waits", "things in the job wait")} for your decision.";
        return rows + others == 0
            ? new Verdict(Fact.Waiting, null, VerdictKind.Good, "Nothing waits for an answer.")
            : new Verdict(Fact.Waiting, null, VerdictKind.NeedsAPerson, Said.Join(" ", new[] { ofRows, ofJob }.Where(t => !t.IsEmpty)));
    }

    public static Needs Of(NameList? names, IEnumerable<Problem> problems)
    {
        // What a column means is asked once, and not for each of its rows.
        var asked = problems.Where(AskedColumns.IsAsked).Select(p => p.Where.File).ToHashSet(StringComparer.Ordinal);
        var held = (names?.Rows ?? [])
            .Where(r => r.Outcome == RowOutcome.Held && !(r.HeldFor == HeldFor.Column && asked.Contains(r.Row.List))).ToList();
        var heldRows = held.Select(r => (r.Row.List, r.Row.Line)).ToHashSet();
        bool IsOfRow(Problem problem) => problem.Where is { File: { } file, Line: { } line } && heldRows.Contains((file, line));
        var needing = problems.Where(p => p.Severity != Severity.Note).ToList();
        var said = needing.Where(IsOfRow).ToLookup(p => (p.Where.File!, p.Where.Line!.Value));
        return new Needs(
            [.. needing.Where(p => !IsOfRow(p)).OrderByDescending(p => p.Severity)],
            [.. held.SelectMany(r => OfRow(r, [.. said[(r.Row.List, r.Row.Line)]]))]);
    }

    /// <summary>All that was found, as it is told: what needs a person, then the notes.</summary>
    public static IEnumerable<Problem> InOrder(NameList? names, IReadOnlyCollection<Problem> problems) =>
        Of(names, problems).All.Concat(problems.Where(p => p.Severity == Severity.Note));

    private static IEnumerable<Problem> OfRow(ListedRow row, ImmutableArray<Problem> said)
    {
        string? name = row.Text.Length > 0 ? PlainText.Short(row.Text, LongestShownCharacters) : null;
        return said.IsEmpty
            ? [Problem.NeedsPerson(new Where(row.Row.List, row.Row.Line, Name: name), Wording.AsSentence(row.Reason), "")]
            : said.Select(p => p with { Where = p.Where with { Name = p.Where.Name ?? name } });
    }
}

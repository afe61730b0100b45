using NameBand.Common;
using NameBand.Job;
using NameBand.Names;

namespace NameBand.Reports.Answers;

/// <summary>What <c>names</c> answers: what became of every row, and how the held ones are settled.</summary>
public sealed record NamesAnswer : CommandAnswer
{
    /// <summary>Null, as what comes of it, where the lists could not be read.</summary>
    public ToldCounts? Rows { get; init; }

    /// <summary>How many lists there are.</summary>
    public int? Lists { get; init; }

    public IReadOnlyList<ToldRow>? Held { get; init; }

    /// <summary>Rows that are sewn once with another.</summary>
    public IReadOnlyList<ToldRow>? Repeats { get; init; }

    public IReadOnlyList<ToldRow>? LeftOut { get; init; }

    /// <summary>Names that were changed a little on the way; the reason says how.</summary>
    public IReadOnlyList<ToldRow>? Changed { get; init; }

    public required ToldNeeds Needs { get; init; }

    /// <summary>The file that settles rows, inside the job's folder.</summary>
    public required string SettledIn { get; init; }

    /// <summary>Rows that wait for a decision there.</summary>
    public required int Waiting { get; init; }

    /// <summary>Those of them whose question does not stand there yet.</summary>
    public required int Unasked { get; init; }

    /// <summary>How many questions were just written into it; null where that was not asked for.</summary>
    public int? Written { get; init; }

    /// <summary>Wishes of owners that were written there as changes.</summary>
    public int WishesWritten { get; init; }

    /// <summary>Lines for it.</summary>
    public required IReadOnlyList<string> LinesToAdd { get; init; }

    /// <summary>How each name stands with its owner; null, as what comes of it, where the job has no approvals.csv.</summary>
    public IReadOnlyList<ToldApproval>? Approvals { get; init; }

    public IReadOnlyList<string>? ApprovalLinesToAdd { get; init; }

    public IReadOnlyList<string>? WishedCorrections { get; init; }

    internal static NamesAnswer Of(NamesReport report)
    {
        var waiting = report.Names?.Rows.Where(r => r.WaitsForDecision).ToList() ?? [];
        var answer = new NamesAnswer
        {
            Status = (int)report.Status,
            Problems = [.. NameBand.Names.Needs.InOrder(report.Names, report.Problems)],
            Needs = Telling.Needs(report.Names, report.Problems),
            SettledIn = Corrections.FileName,
            Waiting = waiting.Count,
            Unasked = waiting.Count(r => r.DecidedIn == 0 || r.IsDecidedForElse),
            Written = report.Written,
            WishesWritten = report.WishesWritten,
            LinesToAdd = report.LinesToAdd,
            Approvals = report.Approvals is { } asked ? [.. asked.Names.Select(Approval)] : null,
            ApprovalLinesToAdd = report.Approvals?.LinesToAdd,
            WishedCorrections = report.Approvals?.Corrections,
        };
        return report.Names is { } names ? WithRows(answer, names) : answer;
    }

    private static NamesAnswer WithRows(NamesAnswer answer, NameList names) => answer with
    {
        Rows = Telling.Counts(names),
        Lists = names.Rows.Select(r => r.Row.List).Distinct(StringComparer.Ordinal).Count(),
        Held = Telling.Rows(names, RowOutcome.Held),
        Repeats = Telling.Rows(names, RowOutcome.Merged),
        LeftOut = Telling.Rows(names, RowOutcome.LeftOut),
        Changed = [.. names.Rows.Where(r => r.Outcome == RowOutcome.Placed && !r.Notes.IsEmpty)
            .Select(r => Telling.Row(r.Row, r.Text, Said.Join("; ", r.Notes)))],
    };

    private static ToldApproval Approval(NameApproval name) => new()
    {
        List = name.Row.Row.List,
        Line = name.Row.Row.Line,
        Text = name.Row.Text,
        State = ApprovalsFile.Word(name.State),
        Date = name.Line?.Date ?? "",
        Wished = name.Line?.Text ?? "",
        Asked = name.Line?.Name,
        Outdated = name.IsOutdated,
    };
}

/// <summary>How a name stands with its owner.</summary>
public sealed record ToldApproval
{
    public required string List { get; init; }

    public required int Line { get; init; }

    public required string Text { get; init; }

    public static string ChangeWished { get; } = ApprovalsFile.Word(ApprovalState.ChangeWished);

    /// <summary>The word of approvals.csv; empty: not asked.</summary>
    public required string State { get; init; }

    /// <summary>As written down there.</summary>
    public required string Date { get; init; }

    /// <summary>The words that the owner wishes instead; empty for none.</summary>
    public required string Wished { get; init; }

    /// <summary>The words that were shown to the owner; null where nothing was written down.</summary>
    public string? Asked { get; init; }

    /// <summary>Whether those are others than are to be sewn now.</summary>
    public required bool Outdated { get; init; }
}

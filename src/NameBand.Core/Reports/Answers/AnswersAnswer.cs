using NameBand.Names;

namespace NameBand.Reports.Answers;

/// <summary>What <c>invite --answers</c> answers: what was entered, and who is missing. No address is in it.</summary>
public sealed record AnswersAnswer : CommandAnswer
{
    public required string Title { get; init; }

    public required int Files { get; init; }

    /// <summary>Lines with an answer in all files.</summary>
    public required int Lines { get; init; }

    /// <summary>Names of which something new was heard.</summary>
    public required IReadOnlyList<ToldAnswer> Entered { get; init; }

    public required int Agreed { get; init; }

    public required int ChangeWished { get; init; }

    /// <summary>Names that are held until it is clear what their owners answered.</summary>
    public required int Unclear { get; init; }

    /// <summary>Names whose owners have not answered.</summary>
    public required IReadOnlyList<string> Missing { get; init; }

    /// <summary>Lines for corrections.csv that would fulfil what is wished.</summary>
    public required IReadOnlyList<string> Corrections { get; init; }

    /// <summary>Names left the plan or wait, so that places move: it has to be made anew.</summary>
    public required bool PlanTouched { get; init; }

    internal static CommandAnswer Of(AnswersReport report) => report.Title is { } title
        ? new AnswersAnswer
        {
            Status = (int)report.Status,
            Problems = report.Problems,
            Title = title,
            Files = report.Files,
            Lines = report.Lines,
            Entered = [.. report.Entered.Select(e => new ToldAnswer
            {
                Text = e.Row.Text, State = ApprovalsFile.Word(e.State),
                Web = e.Web == WebAnswer.None ? null : e.Web.ToString().ToLowerInvariant(),
            })],
            Agreed = Count(report, ApprovalState.Agreed),
            ChangeWished = Count(report, ApprovalState.ChangeWished),
            Unclear = Count(report, ApprovalState.Unclear),
            Missing = [.. (report.Approvals?.Names ?? []).Where(n => n.State is ApprovalState.NotAsked or ApprovalState.Asked)
            .Select(n => n.Row.Text)],
            Corrections = report.Approvals?.Corrections ?? [],
            PlanTouched = report.IsPlanTouched,
        }
        : RefusedAnswer.Of(report.Status, report.Problems);

    private static int Count(AnswersReport report, ApprovalState state) => report.Approvals?.In(state).Count() ?? 0;
}

/// <summary>A name of which something new was heard.</summary>
public sealed record ToldAnswer
{
    public required string Text { get; init; }

    /// <summary>The word that stands in approvals.csv now.</summary>
    public required string State { get; init; }

    /// <summary><c>yes</c>, <c>no</c> or <c>unclear</c>; null where nothing was said of the web.</summary>
    public string? Web { get; init; }
}

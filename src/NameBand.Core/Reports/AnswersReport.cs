using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Reports;

/// <summary>Answers of owners as they were entered, or why they were not.</summary>
/// <param name="Title">Null: nothing was entered.</param>
public sealed record AnswersReport(ExitStatus Status, string? Title, ImmutableArray<Problem> Problems)
{
    /// <summary>Lines with an answer in all files.</summary>
    public int Lines { get; init; }

    public int Files { get; init; }

    /// <summary>Names of which something new was heard.</summary>
    public int Heard => Entered.Length;

    internal ImmutableArray<EnteredAnswer> Entered { get; init; } = [];

    /// <summary>How all names stand with their owners now.</summary>
    public ApprovalReport? Approvals { get; init; }

    /// <summary>A name left the plan or came back, or waits: places move.</summary>
    public bool IsPlanTouched { get; init; }

    public static AnswersReport Refused(ImmutableArray<Problem> problems) => new(ExitStatus.CannotUse, null, problems);
}

using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Reports;

/// <summary>The check of the lists alone, with the corrections.csv lines that would settle what is held.</summary>
public sealed record NamesReport(
    ExitStatus Status, NameList? Names, ImmutableArray<string> LinesToAdd, ImmutableArray<Problem> Problems)
{
    /// <summary>How each name stands with its owner; null when the job has no approvals.csv.</summary>
    public ApprovalReport? Approvals { get; init; }

    /// <summary>How many questions were written into corrections.csv; null: that was not asked for.</summary>
    public int? Written { get; init; }

    /// <summary>Wishes of owners that were written into corrections.csv as changes.</summary>
    public int WishesWritten { get; init; }
}

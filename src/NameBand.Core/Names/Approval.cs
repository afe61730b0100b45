using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>How it stands between the maker and the owner of a name; the words in the file are these in small letters, apart.</summary>
public enum ApprovalState
{
    /// <summary>Nobody has asked yet.</summary>
    NotAsked,

    /// <summary>Asked, and no answer yet.</summary>
    Asked,

    Agreed,

    /// <summary>The owner wants it otherwise.</summary>
    ChangeWished,

    /// <summary>The owner does not want to be sewn at all.</summary>
    No,

    /// <summary>Answers came that contradict each other, or that nobody has read yet: held until the maker has said what holds.</summary>
    Unclear,
}

/// <summary>One line of approvals.csv.</summary>
/// <param name="Name">The words that were shown to the owner.</param>
/// <param name="Date">As written; for people, never computed with.</param>
/// <param name="Text">The words that the owner wishes instead.</param>
public sealed record ApprovalLine(RowRef Row, string Name, ApprovalState State, string Date, string Text, string Details, int FileLine)
{
    /// <summary>Mark of the picture that was shown; empty where it was not written down.</summary>
    public string Look { get; init; } = "";

    /// <summary>Fingerprint of the answers that were entered here; what the maker has written since stands until others come.</summary>
    public string Heard { get; init; } = "";
}

/// <summary>A name to be sewn and how it stands with its owner.</summary>
/// <param name="Line">What was written down; null when nothing was.</param>
/// <param name="IsOutdated">What was written down is about other words than are to be sewn now.</param>
public sealed record NameApproval(ListedRow Row, ApprovalState State, ApprovalLine? Line, bool IsOutdated);

/// <summary>The whole list and how it stands with its owners.</summary>
/// <param name="LinesToAdd">Lines for approvals.csv, for names that have none.</param>
/// <param name="Corrections">Lines for corrections.csv that would fulfil wishes; nothing is changed without them.</param>
public sealed record ApprovalReport(
    ImmutableArray<NameApproval> Names, ImmutableArray<string> LinesToAdd, ImmutableArray<string> Corrections,
    ImmutableArray<Problem> Problems)
{
    /// <summary>The same as decisions, to be written there when she has what waits settled.</summary>
    public ImmutableArray<RowDecision> Wishes { get; init; } = [];

    public IEnumerable<NameApproval> In(ApprovalState state) => Names.Where(n => n.State == state);
}

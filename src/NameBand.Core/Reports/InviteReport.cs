using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output.Asking;

namespace NameBand.Reports;

/// <summary>The asking round as it was written, or why it was not.</summary>
/// <param name="Job">Null: it could not be used.</param>
/// <param name="Folder">Null: nothing was written.</param>
public sealed record InviteReport(ExitStatus Status, BandJob? Job, string? Folder, ImmutableArray<Problem> Problems)
{
    public int Letters => Owners.Length;

    /// <summary>Owners without an answer.</summary>
    public int Missing => Owners.Count(o => o.IsMissing);

    internal ImmutableArray<AskedOwner> Owners { get; init; } = [];

    /// <summary>Names that wait for a decision and have no letter yet.</summary>
    public int Held { get; init; }

    /// <summary>The day until which owners can answer is past.</summary>
    public bool IsPast { get; init; }

    /// <summary>approvals.csv was begun, with a line for each name.</summary>
    public bool IsBegun { get; init; }

    /// <summary>Lines for corrections.csv that leave out who was silent, where the job says so.</summary>
    public ImmutableArray<string> LeaveOutLines { get; init; } = [];

    public static InviteReport Refused(ImmutableArray<Problem> problems) => new(ExitStatus.CannotUse, null, null, problems);
}

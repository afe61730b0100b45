using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Pipeline;
using NameBand.Reports;

namespace NameBand.Web.Table;

/// <summary>
/// How the worktable stands at one moment. Immutable: every change publishes another one with a greater
/// <see cref="Version"/>, so that what is drawn from one snapshot belongs together.
/// </summary>
/// <param name="Version">Grows with every snapshot.</param>
/// <param name="LayoutNumber">Grows with every layout: pictures and stitches of the same number may be kept.</param>
/// <param name="HasJobFile">False in a folder where a job is still to be begun.</param>
/// <param name="Job">As job.json says; null while it cannot be read.</param>
/// <param name="Laid">
/// The layout with its rounds, names at their places and hoopings, and the way to their stitches; null where the job cannot
/// be laid out. While <paramref name="IsLaying"/> it is that of before the change: to be shown as such or not at all.
/// </param>
/// <param name="Figures">Hours and thread of this very layout; null while they are being counted.</param>
/// <param name="Counting">How far the counting has come.</param>
/// <param name="Problems">What was found, in the order it was found.</param>
public sealed record TableSnapshot(
    long Version, long LayoutNumber, bool HasJobFile, BandJob? Job, LaidOutJob? Laid, bool IsLaying, JobFigures? Figures,
    Progress? Counting, ImmutableArray<Problem> Problems)
{
    /// <summary>The file job.json as the page knows it.</summary>
    public KeptFile JobFile { get; init; } = KeptFile.None;

    /// <summary>Equal as long as the same is told of the workshop in the job's folder.</summary>
    public string WorkshopPrint { get; init; } = KeptFile.None.Fingerprint;

    /// <summary>job.json was changed by somebody else: the maker is asked which one holds.</summary>
    public bool IsChangedOutside { get; init; }

    /// <summary>Counting was stopped by somebody; figures come when it is asked for again, or when something changes.</summary>
    public bool IsCountingStopped { get; init; }

    /// <summary>What undo would take back, in words; null: there is nothing.</summary>
    public Said? Undo { get; init; }

    /// <summary>What redo would do again, in words; null: there is nothing.</summary>
    public Said? Redo { get; init; }

    /// <summary>Why nothing of before a restart can be undone; null: all is well.</summary>
    public Said? UndoLost { get; init; }

    /// <summary>What went wrong at the machine, such as a full disk; null: nothing.</summary>
    public Said? Fault { get; init; }

    public StripPlan? Plan => Laid?.Plan;

    /// <summary>Every row with what became of it; null where the lists cannot be read.</summary>
    public NameList? Rows => Laid?.Rows;

    public Estimate? Estimate => Figures?.Estimate;

    /// <summary>Whether the job's lengths are mostly written in inches, feet and yards.</summary>
    public bool IsInInches => TapeUnit.IsInches(JobFile.Bytes.AsSpan());
}

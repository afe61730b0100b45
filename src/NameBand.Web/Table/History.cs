using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>The files that hold everything a maker decides.</summary>
internal sealed record JobFiles(KeptFile Job, KeptFile Corrections, KeptFile Workshop)
{
    public bool IsSame(JobFiles other) => (Job.Fingerprint, Corrections.Fingerprint, Workshop.Fingerprint)
        == (other.Job.Fingerprint, other.Corrections.Fingerprint, other.Workshop.Fingerprint);
}

/// <summary>What can be taken back and done again: whole files, so that nothing is half undone.</summary>
internal sealed class History
{
    private const int MostSteps = 200; // Steps back: an evening's work, and each keeps whole files of a few kilobytes.

    private readonly List<(Said What, JobFiles Files)> _back = [];
    private readonly List<(Said What, JobFiles Files)> _forth = [];

    public Said? UndoWords => _back.Count > 0 ? _back[^1].What : null;

    public Said? RedoWords => _forth.Count > 0 ? _forth[^1].What : null;

    public void Did(Said what, JobFiles before)
    {
        _forth.Clear();
        _back.Add((what, before));
        if (_back.Count > MostSteps)
        {
            _back.RemoveAt(0);
        }
    }

    /// <summary>Takes up what was kept before a restart. What somebody changed meanwhile is a step of its own.</summary>
    /// <returns>In words, where nothing can be undone though there was something; null: all is well.</returns>
    public Said? TakeUp(string folder, JobFiles now)
    {
        var (steps, isDamaged) = HistoryFile.Read(folder);
        if (steps is not null)
        {
            _back.AddRange(steps.Back.TakeLast(MostSteps));
            if (steps.Now.IsSame(now))
            {
                _forth.AddRange(steps.Forth.TakeLast(MostSteps));
            }
            else
            {
                _back.Add(("the change made outside", steps.Now));
            }
        }

        return isDamaged ? "What could be undone before cannot be read any more: undo starts again from here." : null;
    }

    /// <summary>Keeps what can be undone for after a restart; where it cannot be written, undo lasts as long as the page.</summary>
    public void Keep(string folder, JobFiles now)
    {
        try
        {
            HistoryFile.Keep(folder, new HistoryFile.Steps(now, [.. _back], [.. _forth]));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What was changed is written, and that is what counts.
        }
    }

    public ImmutableArray<Problem> Undo(JobFiles now, Func<JobFiles, JobFiles, ImmutableArray<Problem>> restore) =>
        Move(_back, _forth, now, restore);

    public ImmutableArray<Problem> Redo(JobFiles now, Func<JobFiles, JobFiles, ImmutableArray<Problem>> restore) =>
        Move(_forth, _back, now, restore);

    private static ImmutableArray<Problem> Move(
        List<(Said What, JobFiles Files)> from, List<(Said What, JobFiles Files)> to, JobFiles now,
        Func<JobFiles, JobFiles, ImmutableArray<Problem>> restore)
    {
        if (from.Count == 0)
        {
            return [];
        }

        var (what, files) = from[^1];
        var problems = restore(now, files);
        if (problems.IsEmpty)
        {
            from.RemoveAt(from.Count - 1);
            to.Add((what, now));
        }

        return problems;
    }
}

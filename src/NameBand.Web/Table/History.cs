using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>The files that hold everything a maker decides.</summary>
internal sealed record JobFiles(KeptFile Job, KeptFile Corrections, KeptFile Workshop);

/// <summary>What can be taken back and done again: whole files, so that nothing is half undone.</summary>
internal sealed class History
{
    private const int Most = 200;

    private readonly List<(string What, JobFiles Files)> _back = [];
    private readonly List<(string What, JobFiles Files)> _forth = [];

    public string? UndoWords => _back.Count > 0 ? _back[^1].What : null;

    public string? RedoWords => _forth.Count > 0 ? _forth[^1].What : null;

    public void Did(string what, JobFiles before)
    {
        _forth.Clear();
        _back.Add((what, before));
        if (_back.Count > Most)
        {
            _back.RemoveAt(0);
        }
    }

    public ImmutableArray<Problem> Undo(JobFiles now, Func<JobFiles, JobFiles, ImmutableArray<Problem>> restore) => Move(_back, _forth, now, restore);

    public ImmutableArray<Problem> Redo(JobFiles now, Func<JobFiles, JobFiles, ImmutableArray<Problem>> restore) => Move(_forth, _back, now, restore);

    private static ImmutableArray<Problem> Move(
        List<(string What, JobFiles Files)> from, List<(string What, JobFiles Files)> to, JobFiles now, Func<JobFiles, JobFiles, ImmutableArray<Problem>> restore)
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

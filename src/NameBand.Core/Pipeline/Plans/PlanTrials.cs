using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Output;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Plans;

/// <summary>Lays a job out as it would be with some of its keys set otherwise, by what make does; each choice once.</summary>
/// <param name="folder">Full path of the job's folder.</param>
internal sealed class PlanTrials(string folder, JobAsWritten written, FaceShelf shelf, CancellationToken cancel)
{
    private readonly ConcurrentDictionary<string, Lazy<PlanTrial>> _tried = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<Asked>> _asked = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<Result<NamesRead>>> _read = new(StringComparer.Ordinal);
    private readonly Lazy<KeptChoices?> _kept = new(() => PreviousOutput.KeptIn(Path.Combine(folder, OutFolder.Name)));

    /// <summary>A choice as the job that it makes.</summary>
    /// <param name="Letters">What its letters depend on: names lettered for another choice of the same are the same.</param>
    private sealed record Asked(Result<BandJob> Job, string Letters)
    {
        public bool IsUsable => Job.Value is not null && Job.IsUsable;
    }

    public PlanTrial Of(VisibleChoice choice) => _tried.GetOrAdd(choice.Key, _ => new Lazy<PlanTrial>(() => Try(choice))).Value;

    /// <summary>In the order of the choices.</summary>
    public ImmutableArray<PlanTrial> Of(IEnumerable<VisibleChoice> choices)
    {
        VisibleChoice[] all = [.. choices.DistinctBy(c => c.Key)];
        var trials = new PlanTrial[all.Length];

        // Letters first, each list once, so that no core waits for what another one letters. What is kept of a face is the same
        // whichever comes first.
        Asked[] lists = [.. all.Select(JobOf).Where(a => a.IsUsable).DistinctBy(a => a.Letters).Where(a => !_read.ContainsKey(a.Letters))];
        Cores.ForEach(lists.Length, cancel, i => Read(lists[i]));
        Cores.ForEach(all.Length, cancel, i => trials[i] = Of(all[i]));
        return [.. trials];
    }

    private PlanTrial Try(VisibleChoice choice)
    {
        cancel.ThrowIfCancellationRequested();
        var asked = JobOf(choice);
        if (!asked.IsUsable)
        {
            return PlanTrial.Failed(choice, asked.Job.Problems);
        }

        // What is sewn has settled a job by itself.
        var read = Read(asked);
        read = read.Value is { Sewn: null } names ? read with { Value = names with { Job = asked.Job.Value! } } : read;
        if (!read.IsUsable)
        {
            return PlanTrial.Failed(choice, read.Problems);
        }

        var laid = Planning.Lay(read, () => _kept.Value, findsMends: choice.IsAsSet);
        return new PlanTrial(
            choice, laid.IsUsable ? laid.Value : null, laid.Problems,
            [.. laid.Problems.Except(read.Problems).Where(p => !p.IsBeforeSewing)]);
    }

    private Asked JobOf(VisibleChoice choice) => _asked.GetOrAdd(choice.Key, _ => new Lazy<Asked>(() =>
    {
        var job = written.Bytes(choice) is { } file ? JobReader.Check(folder, file) : Result.Fail<BandJob>();
        if (job.Value is not { } known)
        {
            return new Asked(job, "");
        }

        string[] sizes = [.. known.Letters.Sizes.Select(l => l.ToString())];
        return new Asked(
            job, string.Join('|', [.. known.Ways.Select(w => w.ToString()), known.Lettering.Face, known.Letters.Has, .. sizes]));
    })).Value;

    private Result<NamesRead> Read(Asked asked) => _read.GetOrAdd(
        asked.Letters, _ => new Lazy<Result<NamesRead>>(() => Planning.ReadNames(folder, shelf, cancel, asked.Job))).Value;
}

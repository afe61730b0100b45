using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Output;

namespace NameBand.Pipeline.Plans;

/// <summary>Lays a job out as it would be with some of its keys set otherwise, by what make does; each choice once.</summary>
/// <param name="folder">Full path of the job's folder.</param>
internal sealed class PlanTrials(string folder, JobAsWritten written, FaceShelf shelf, CancellationToken cancel)
{
    private readonly ConcurrentDictionary<string, Lazy<PlanTrial>> _tried = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<Result<NamesRead>>> _read = new(StringComparer.Ordinal);
    private readonly Lazy<KeptChoices?> _kept = new(() => EarlierWorks.KeptIn(Path.Combine(folder, OutFolder.Name)));

    public PlanTrial Of(VisibleChoice choice) => _tried.GetOrAdd(choice.Key, _ => new Lazy<PlanTrial>(() => Try(choice))).Value;

    /// <summary>In the order of the choices.</summary>
    public ImmutableArray<PlanTrial> Of(IEnumerable<VisibleChoice> choices)
    {
        VisibleChoice[] all = [.. choices.DistinctBy(c => c.Key)];
        var trials = new PlanTrial[all.Length];
        Cores.ForEach(all.Length, cancel, i => trials[i] = Of(all[i]));
        return [.. trials];
    }

    private PlanTrial Try(VisibleChoice choice)
    {
        cancel.ThrowIfCancellationRequested();
        if (written.Bytes(choice) is not { } file)
        {
            return PlanTrial.Failed(choice, []);
        }

        var job = JobReader.Check(folder, file);
        if (job.Value is not { } known || !job.IsUsable)
        {
            return PlanTrial.Failed(choice, job.Problems);
        }

        var read = Names(known, job);
        if (read.Value is not { } names || !read.IsUsable)
        {
            return PlanTrial.Failed(choice, read.Problems);
        }

        // Names lettered for another choice of the same letters are the same; what is sewn has settled a job by itself.
        names = names.Sewn is null ? names with { Job = known } : names;
        var laid = Planning.Lay(Result.Of(names, read.Problems), () => _kept.Value, findsMends: choice.IsAsSet);
        return new PlanTrial(choice, laid.IsUsable ? laid.Value : null, laid.Problems, [.. laid.Problems.Except(read.Problems)]);
    }

    private Result<NamesRead> Names(BandJob job, Result<BandJob> checkedJob)
    {
        string[] sizes = [.. job.Letters.Sizes.Select(l => l.ToString())];
        string letters = string.Join('|', [.. job.Ways.Select(w => w.ToString()), job.Lettering.Face, job.Letters.Has, .. sizes]);
        return _read.GetOrAdd(letters, _ => new Lazy<Result<NamesRead>>(() => Planning.ReadNames(folder, shelf, cancel, checkedJob))).Value;
    }
}

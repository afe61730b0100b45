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
    private readonly ConcurrentDictionary<string, Lazy<Result<NamesRead>>> _ready = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Result<NamesRead>> _read = new(StringComparer.Ordinal);
    private readonly Lock _reading = new();
    private readonly Lazy<KeptChoices?> _kept = new(() => PreviousOutput.KeptIn(Path.Combine(folder, OutFolder.Name)));

    public PlanTrial Of(VisibleChoice choice) => _tried.GetOrAdd(choice.Key, _ => new Lazy<PlanTrial>(() => Try(choice))).Value;

    /// <summary>In the order of the choices.</summary>
    public ImmutableArray<PlanTrial> Of(IEnumerable<VisibleChoice> choices)
    {
        VisibleChoice[] all = [.. choices.DistinctBy(c => c.Key)];
        var trials = new PlanTrial[all.Length];

        // Names are lettered one list after the other, always in the same order; only layouts are tried side by side.
        foreach (var choice in all)
        {
            Ready(choice);
        }

        Cores.ForEach(all.Length, cancel, i => trials[i] = Of(all[i]));
        return [.. trials];
    }

    private PlanTrial Try(VisibleChoice choice)
    {
        cancel.ThrowIfCancellationRequested();
        var read = Ready(choice);
        if (read.Value is null || !read.IsUsable)
        {
            return PlanTrial.Failed(choice, read.Problems);
        }

        var laid = Planning.Lay(read, () => _kept.Value, findsMends: choice.IsAsSet);
        return new PlanTrial(
            choice, laid.IsUsable ? laid.Value : null, laid.Problems, [.. laid.Problems.Except(read.Problems).Where(p => !p.IsBeforeSewing)]);
    }

    /// <summary>The job of a choice, with its names lettered.</summary>
    private Result<NamesRead> Ready(VisibleChoice choice) =>
        _ready.GetOrAdd(choice.Key, _ => new Lazy<Result<NamesRead>>(() => Read(choice))).Value;

    private Result<NamesRead> Read(VisibleChoice choice)
    {
        if (written.Bytes(choice) is not { } file)
        {
            return Result.Fail<NamesRead>();
        }

        var job = JobReader.Check(folder, file);
        if (job.Value is not { } known || !job.IsUsable)
        {
            return Result.Fail<NamesRead>(job.Problems);
        }

        string[] sizes = [.. known.Letters.Sizes.Select(l => l.ToString())];
        string letters = string.Join('|', [.. known.Ways.Select(w => w.ToString()), known.Lettering.Face, known.Letters.Has, .. sizes]);
        lock (_reading)
        {
            if (!_read.TryGetValue(letters, out var read))
            {
                _read[letters] = read = Planning.ReadNames(folder, shelf, cancel, job);
            }

            // Names lettered for another choice of the same letters are the same; what is sewn has settled a job by itself.
            return read.Value is { Sewn: null } names ? read with { Value = names with { Job = known } } : read;
        }
    }
}

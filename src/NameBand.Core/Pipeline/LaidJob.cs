using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Load;
using NameBand.Names;
using NameBand.Output.Keying;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Ways;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>
/// A job laid out and not yet sewn: what a screen can show at once. Stitches are worked out when they are asked for, and
/// what was worked out for a letter is kept. Safe to use from several threads.
/// </summary>
public sealed class LaidJob
{
    private readonly Planning.Planned _made;
    private readonly Lazy<Stitcher> _stitcher;
    private readonly Lazy<ImmutableArray<Problem>> _smallness;
    private readonly Lazy<ImmutableArray<KeyInName>> _keyIns;

    internal LaidJob(Planning.Planned made)
    {
        _made = made;
        _stitcher = new Lazy<Stitcher>(() => new Stitcher(made.Fabric, made.Plan.LetterHeightMm));
        _smallness = new Lazy<ImmutableArray<Problem>>(() => [.. made.Smallness()]);
        _keyIns = new Lazy<ImmutableArray<KeyInName>>(() => made.Keyed is { } keyed ? KeyedSewing.NamesOf(made, keyed) : []);
    }

    /// <summary>The job as it was laid out: once something is sewn, with the face and cloth of what is sewn.</summary>
    public BandJob Job => _made.Job;

    public Fabric Fabric => _made.Fabric;

    public Face Face => _made.Face;

    /// <summary>Every row with what finally became of it.</summary>
    public NameList Rows => _made.Rows;

    public StripPlan Plan => _made.Plan;

    /// <summary>Whether the cloth is hooped; else a strip is sewn in one run, under the presser foot or along a template.</summary>
    public bool IsHooped => Plan.HasNeedlePaths || (_made.Keyed is not null && Job.Letters.Hooped);

    /// <summary>Numbers of the hoopings that the sewing log says are sewn.</summary>
    public ImmutableHashSet<int> SewnHoopings => _made.Begun is { } begun ? [.. begun.Log.Sewn] : [];

    /// <summary>What to key in, in the order of sewing; empty where names are not keyed into a machine's own letters.</summary>
    public ImmutableArray<KeyInName> KeyIns => _keyIns.Value;

    /// <summary>
    /// The stitches of one name at the plan's height; origin: the left edge of the name's width, on its base line; on a
    /// curved strip the middle of its width, on the strip's centre line.
    /// </summary>
    /// <exception cref="InvalidOperationException">The job has no needle paths.</exception>
    public NeedlePath SewName(Round round, PlacedName name) =>
        StripCurve.Of(Plan.Hem, round.Number) is { } curve ? Stitches.SewName(name, curve) : Stitches.SewName(name.Lettered);

    /// <summary>What a name's stitches do to the cloth, place by place, in the coordinates of <see cref="SewName"/>; null for none.</summary>
    /// <exception cref="InvalidOperationException">The job has no needle paths.</exception>
    public LoadMap? LoadOf(Round round, PlacedName name) => LoadMap.Of(SewName(round, name), Fabric.Thread.DiameterMm);

    /// <summary>The whole path of one hooping, if it is sewn that which was sewn; origin: left end of its first segment, on its strip's centre line.</summary>
    /// <exception cref="InvalidOperationException">The job has no needle paths.</exception>
    public NeedlePath SewHooping(Hooping hooping) => Reckoning.PathOf(_made, Stitches, hooping);

    /// <summary>Stitches everything in memory to see what it takes.</summary>
    /// <exception cref="OperationCanceledException">The work was given up.</exception>
    public JobFigures Reckon(IProgress<Progress>? progress = null, CancellationToken cancel = default)
    {
        if (_made.Keyed is { } keyed)
        {
            return new JobFigures(KeyedSewing.Reckon(_made, keyed, cancel), [], []);
        }

        if (Job.Way == Way.Traced)
        {
            return new JobFigures(TracedSewing.Reckon(_made, cancel), [], []);
        }

        var figures = new HoopingFigures[Plan.Hoopings.Length];
        var loads = new ClothLoad[figures.Length];
        int done = 0;
        // One core is left for the page that shows it meanwhile.
        int cores = Math.Max(1, Environment.ProcessorCount - 1);
        Sewing.ForEach(figures.Length, cancel, i =>
        {
            var hooping = Plan.Hoopings[i];
            var path = SewHooping(hooping);
            figures[i] = Reckoning.FiguresOf(_made, hooping, path);
            loads[i] = LoadMeter.Measure(path, _made.ClothOf(hooping.Number));
            progress?.Report(new Progress("counting the stitches", Interlocked.Increment(ref done), figures.Length));
        }, cores);

        var problems = LoadAdvice.For(Fabric, Plan.Hoopings.Select((h, i) => new HoopingLoad(h.Number, loads[i].WorstLetterPerMm2)));
        var log = _made.Begun?.Log;
        var estimate = LoggedPace.AtOwnPace(Estimator.Make(Job, Plan, [.. figures], log), log);
        return new JobFigures(estimate, [.. loads], [.. Stitches.Problems, .. problems, .. _smallness.Value])
        {
            Left = estimate.WorkLeft,
        };
    }

    private Stitcher Stitches => Plan.HasNeedlePaths
        ? _stitcher.Value
        : throw new InvalidOperationException("A job without needle paths has no stitches.");
}

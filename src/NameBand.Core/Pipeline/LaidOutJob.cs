using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering.Faces;
using NameBand.Load;
using NameBand.Names;
using NameBand.Output.Keying;
using NameBand.Pipeline.Stages;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>
/// A job laid out and not yet sewn: what a screen can show at once. Stitches are worked out when they are asked for, and
/// what was worked out for a letter is kept. Safe to use from several threads.
/// </summary>
public sealed class LaidOutJob
{
    private readonly LaidOut _made;
    private readonly Lazy<IPieceSewing> _sewing;
    private readonly Lazy<ImmutableArray<Problem>> _doubts;

    internal LaidOutJob(LaidOut made)
    {
        _made = made;
        _sewing = new Lazy<IPieceSewing>(() => made.Way.Sew(made));
        _doubts = new Lazy<ImmutableArray<Problem>>(() => made.Way.Doubts(made));
    }

    /// <summary>The job as it was laid out: once something is sewn, with the face and cloth of what is sewn.</summary>
    public BandJob Job => _made.Job;

    public Fabric Fabric => _made.Fabric;

    public Face Face => _made.Face;

    /// <summary>Every row with what finally became of it.</summary>
    public NameList Rows => _made.Rows;

    public StripPlan Plan => _made.Plan;

    /// <summary>Whether the cloth is hooped; else a strip is sewn in one run, under the presser foot or along a template.</summary>
    public bool IsHooped => Job.IsHooped;

    /// <summary>Numbers of the hoopings that the sewing log says are sewn.</summary>
    public ImmutableHashSet<int> SewnHoopings => _made.Begun is { } begun ? [.. begun.Log.Sewn] : [];

    /// <summary>Rows whose names are on the cloth, as the sewing log says.</summary>
    public ImmutableHashSet<RowRef> SewnRows => _made.Begun is { } begun
        ? [.. Plan.Hoopings.SelectMany(h => h.Segments.SelectMany(s => s.Segment.Names)
            .Where(n => begun.Log.Sewn.Contains(h.Number) || begun.Log.OfNames.IsSewn(n.Order)).Select(n => n.Lettered.Name.Row))]
        : [];

    /// <summary>What to key in, in the order of sewing; empty where names are not keyed into a machine's own letters.</summary>
    public ImmutableArray<KeyInName> KeyIns => _sewing.Value.KeyIns;

    /// <summary>
    /// The stitches of one name at the plan's height; origin: the left edge of the name's width, on its base line; on a
    /// curved strip the middle of its width, on the strip's centre line.
    /// </summary>
    public NeedlePath SewName(Round round, PlacedName name) =>
        _sewing.Value.PathOf(name, StripCurve.Of(Plan.Hem, round.Number));

    /// <summary>What a name's stitches do to the cloth, place by place, in the coordinates of <see cref="SewName"/>; null for
    /// none.</summary>
    public LoadMap? LoadOf(Round round, PlacedName name) => LoadMap.Of(SewName(round, name), Fabric.Thread.DiameterMm);

    /// <summary>The whole path of one hooping, if it is sewn that which was sewn; origin: left end of its first segment, on its
    /// strip's centre line.</summary>
    public NeedlePath SewHooping(Hooping hooping) => _sewing.Value.PathOf(hooping);

    /// <summary>Sews everything in memory to see what it takes.</summary>
    /// <param name="today">For evenings with dates; null: they are counted.</param>
    /// <exception cref="OperationCanceledException">The work was given up.</exception>
    public JobFigures Calculate(IProgress<Progress>? progress = null, CancellationToken cancel = default, DateOnly? today = null)
    {
        var loads = new ClothLoad?[Plan.HasNeedlePaths ? Plan.Hoopings.Length : 0];
        // One core is left for the page that shows it meanwhile.
        int cores = Math.Max(1, Environment.ProcessorCount - 1);
        var figures = Counting.Measure(
            _made, _sewing.Value, (i, path) =>
            {
                if (Plan.HasNeedlePaths && Plan.Hoopings[i].HasNeedlePath)
                {
                    loads[i] = LoadMeter.Measure(path, _made.ClothOf(Plan.Hoopings[i].Number));
                }
            },
            progress, cancel, cores);
        var estimate = Counting.Of(_made, _sewing.Value, figures);
        var problems = LoadAdvice.For(Fabric, [.. Plan.Hoopings.Zip(loads).Where(p => p.First.HasNeedlePath)
            .Select(p => new HoopingLoad(p.First.Number, p.Second!.WorstLetterPerMm2, p.Second.Spot))]);
        var evenings = Evenings.Of(_made, _sewing.Value, estimate, today: today);
        return new JobFigures(estimate, [.. loads], [.. _sewing.Value.Problems, .. problems, .. _doubts.Value])
        {
            Evenings = evenings.Plan,
            Calendar = evenings.Calendar,
            Tonight = evenings.Tonight,
        };
    }
}

using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Keying;
using NameBand.Output.Sheets;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Pipeline.Ways;

/// <summary>
/// The sheet to sew by. Its thread is a likeness: that of a similar face, filled and stretched letter by letter to the machine's widths.
/// Places and lengths are right, the shapes are not the machine's.
/// </summary>
internal sealed class KeyedSewing(LaidOut made, KeyedLetters known) : IPieceSewing
{
    private readonly StripPlan _plan = made.Plan;

    /// <summary>What drifted is set out anew only where all names of a strip are keyed in.</summary>
    private readonly bool _setsOut = !made.Job.HasSeveralWays && made.Plan.LineStepMm == 0;

    private readonly BandJob _job = made.Job.Letters.Hooped ? made.Job : KeyedWork.WithoutHoops(made.Job);
    private readonly FilledLetters _letters = new(made.Fabric, made.Plan.LetterHeightMm);
    private readonly SizeStep _step = StepOf(made.Plan);
    private readonly Lazy<ImmutableArray<KeyInName>> _names = new(() => KeyInPlan.Of(made.Plan, known.At(StepOf(made.Plan)), made.Job.Letters));

    public ImmutableArray<Problem> Problems => [];

    public ImmutableArray<KeyInName> KeyIns => [.. _names.Value.Select(n => n with { IsLogged = made.Begun?.Log.OfNames.IsSewn(n.Order) ?? false })];

    public IPieceSewing Of(LaidOut other) => new KeyedSewing(other, known);

    public NeedlePath PathOf(Hooping hooping) => _letters.PathOf(_plan, hooping);

    public NeedlePath PathOf(PlacedName name, StripCurve? curve = null) => _letters.PathOf(name.Lettered);

    public HoopingFigures FiguresOf(Hooping hooping, NeedlePath path) =>
        FiguresOf(hooping, HoopingMeter.Measure(hooping, _plan, path, made.Fabric, _job.Machine));

    public HoopingFigures FiguresOf(Hooping hooping, HoopingFigures counted) => KeyedWork.Timed(
        counted, Keys(KeyIns.Where(n => n.Hooping == hooping.Number)), Seconds(hooping.Number), _job.Machine);

    public string MadeBy(Hooping hooping) => string.Create(CultureInfo.InvariantCulture, $"keyed {made.Job.Letters.Hooped} {Seconds(hooping.Number):R}");

    public bool AreLettersRead(Hooping hooping) => true;

    public NameStyle? StyleOf(PlacedName name) => null;

    public ImmutableArray<WayActs> Acts => [KeyedWork.Acts(_job, KeyIns.ToImmutableDictionary(n => n.Order, n => new NameKeys(Keys([n]), n.Parts.Length, n.Seconds, n.HandMarks)))];

    public StripPlan PlanOf(Hooping hooping) => _plan;

    public IEnumerable<(string File, Action<Stream> Write)> Papers(Estimate estimate)
    {
        foreach (var paper in Paper.Both)
        {
            yield return (OutPaths.KeyIn(paper.Word), stream => KeyInSheet.Write(stream, paper, made.Job.Title, _plan, KeyIns, _step, made.Job.Letters, _setsOut));
        }

        yield return (OutPaths.KeyInTable, stream => KeyInCsv.Write(stream, MeasuredFirst, _step, SheetMarks.Of(_plan)));
    }

    public ImmutableArray<string> ReadMe => KeyInReadMe.Parts(SheetMarks.Of(_plan), _setsOut);

    /// <summary>The names to be measured on a scrap before all others; their places on the strip stay.</summary>
    private IEnumerable<KeyInName> MeasuredFirst
    {
        get
        {
            var first = known.ToMeasure.Select(m => KeyIns.FirstOrDefault(n => n.Row == m.Row)).OfType<KeyInName>().ToList();
            return [.. first, .. KeyIns.Except(first)];
        }
    }

    private static int Keys(IEnumerable<KeyInName> names) => names.Sum(n => n.Parts.Sum(p => Letters.Of(p.Keyed).Count));

    /// <summary>Measured time of the letters in a hooping; null where not all were measured.</summary>
    private double? Seconds(int hooping)
    {
        var here = KeyIns.Where(n => n.Hooping == hooping).ToList();
        return here.All(n => n.Seconds is not null) ? here.Sum(n => n.Seconds) : null;
    }

    private static SizeStep StepOf(StripPlan plan) => new(plan.LetterHeightMm, plan.SpacingMm ?? 0);
}

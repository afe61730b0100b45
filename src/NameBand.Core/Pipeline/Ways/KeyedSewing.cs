using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.Output;
using NameBand.Output.Keying;
using NameBand.Output.Sheets;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;

namespace NameBand.Pipeline.Ways;

/// <summary>
/// The sheet to sew by. Its thread is a likeness: that of a similar face, filled and stretched letter by letter to the machine's widths.
/// Places and lengths are right, the shapes are not the machine's.
/// </summary>
internal sealed class KeyedSewing(LaidOut made, KeyedLetters known) : IPieceSewing
{
    private readonly StripPlan _plan = made.Plan;

    /// <summary>What drifted is set out anew only where all names of a strip are keyed in.</summary>
    private readonly bool _setsOut = !made.Job.HasSeveralWays && made.Plan.MaySetOut;

    private readonly BandJob _job = made.Job.Letters.Hooped ? made.Job : KeyedWork.WithoutHoops(made.Job);
    private readonly FilledLetters _letters = new(made.Fabric, made.Plan.LetterHeightMm);
    private readonly Lazy<ImmutableArray<KeyInName>> _names =
        new(() => KeyInPlan.Of(made.Plan, n => known.At(StepOf(made.Plan, known, n)), made.Job.Letters, known.Motif));

    public ImmutableArray<Problem> Problems => [];

    public ImmutableArray<KeyInName> KeyIns =>
        [.. _names.Value.Select(n => n with { IsLogged = made.Begun?.Log.OfNames.IsSewn(n.With) ?? false })];

    public IPieceSewing Of(LaidOut other) => new KeyedSewing(other, known);

    public NeedlePath PathOf(Hooping hooping) => _letters.PathOf(_plan, hooping);

    public NeedlePath PathOf(PlacedName name, StripCurve? curve = null) =>
        curve is null ? _letters.PathOf(name.Lettered) : _letters.PathOf(name, curve);

    public HoopingFigures FiguresOf(Hooping hooping, NeedlePath path) =>
        FiguresOf(hooping, HoopingMeter.Measure(hooping, _plan, path, made.Fabric, _job.Machine));

    public HoopingFigures FiguresOf(Hooping hooping, HoopingFigures counted) => KeyedWork.Timed(
        counted, Keys(KeyIns.Where(n => n.Hooping == hooping.Number)), Seconds(hooping.Number), _job.Machine);

    public string MadeBy(Hooping hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"keyed {made.Job.Letters.Hooped} {Seconds(hooping.Number):R}");

    public bool AreLettersRead(Hooping hooping) => true;

    public NameStyle? StyleOf(PlacedName name) => null;

    public ImmutableArray<WayActs> Acts =>
        [KeyedWork.Acts(_job, KeyIns.GroupBy(n => n.With).ToImmutableDictionary(g => g.Key, g => Work([.. g])))];

    public StripPlan PlanOf(Hooping hooping) => _plan;

    public IEnumerable<(string File, Action<Stream> Write)> Papers(Estimate estimate)
    {
        foreach (var paper in Paper.Both)
        {
            yield return (OutPaths.KeyIn(paper.Word),
                stream => KeyInSheet.Write(stream, paper, made.Job, _plan, KeyIns, _setsOut));
        }

        yield return (OutPaths.KeyInTable, stream => KeyInCsv.Write(stream, MeasuredFirst, SheetMarks.Of(_plan)));
    }

    public ImmutableArray<Said> ReadMe => KeyInReadMe.Parts(SheetMarks.Of(_plan), _setsOut);

    /// <summary>The names to be measured on a scrap before all others; their places on the strip stay.</summary>
    private IEnumerable<KeyInName> MeasuredFirst
    {
        get
        {
            var first = known.ToMeasure.Select(m => KeyIns.FirstOrDefault(n => n.Row == m.Row)).OfType<KeyInName>().ToList();
            return [.. first, .. KeyIns.Except(first)];
        }
    }

    /// <summary>Of a name, with what is sewn before it.</summary>
    private static NameKeys Work(IReadOnlyList<KeyInName> names) => new(
        Keys(names), names.Sum(n => n.Parts.Length), SecondsOf(names), names.Sum(n => n.HandMarks));

    /// <summary>A motif that was never timed is left out.</summary>
    private static double? SecondsOf(IEnumerable<KeyInName> names)
    {
        var timed = names.Where(n => !n.IsMotif || n.Seconds is not null).ToList();
        return timed.TrueForAll(n => n.Seconds is not null) ? timed.Sum(n => n.Seconds) : null;
    }

    private static int Keys(IEnumerable<KeyInName> names) => names.Sum(n => n.Parts.Sum(p => Letters.Of(p.Keyed).Count));

    /// <summary>Measured time of the letters in a hooping; null where not all were measured.</summary>
    private double? Seconds(int hooping) => SecondsOf(KeyIns.Where(n => n.Hooping == hooping));

    private static SizeStep StepOf(StripPlan plan) => new(plan.LetterHeightMm, plan.SpacingMm ?? 0);

    private static SizeStep StepOf(StripPlan plan, KeyedLetters known, PlacedName name) =>
        known.StepOf(StepOf(plan), name.Lettered.Standing.HeightFactor);
}

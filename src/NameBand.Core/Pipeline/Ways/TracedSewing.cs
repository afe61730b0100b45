using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Output;
using NameBand.Output.Keying;
using NameBand.Output.Sheets;
using NameBand.Output.Tracing;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Pipeline.Ways;

/// <summary>Follows the lines of a template: its thread is the line, and its hours are the line's length over a pace.</summary>
internal sealed class TracedSewing(LaidOut made) : IPieceSewing
{
    private readonly StripPlan _plan = made.Plan;
    private readonly TraceLines _lines = new(made.Plan.LetterHeightMm, made.Job.Traced.AlongOutline);

    public ImmutableArray<Problem> Problems => [];

    public ImmutableArray<KeyInName> KeyIns => [];

    public IPieceSewing Of(LaidOut other) => new TracedSewing(other);

    public NeedlePath PathOf(Hooping hooping) => _lines.Path(_plan, hooping);

    public NeedlePath PathOf(PlacedName name, StripCurve? curve = null) => _lines.Path(name.Lettered);

    public HoopingFigures FiguresOf(Hooping hooping, NeedlePath path) =>
        FiguresOf(hooping, HoopingMeter.Measure(hooping, _plan, path, made.Fabric, KeyedWork.WithoutHoops(made.Job).Machine));

    public HoopingFigures FiguresOf(Hooping hooping, HoopingFigures counted) =>
        TracedWork.Timed(counted, _lines.LengthMm(hooping), made.Job.Traced);

    public string MadeBy(Hooping hooping) => string.Create(
        CultureInfo.InvariantCulture, $"traced {made.Job.Traced.AlongOutline} {made.Job.Traced.ByHand} {made.Job.Traced.PaceMmPerMinute}");

    public bool AreLettersRead(Hooping hooping) => true;

    public NameStyle? StyleOf(PlacedName name) => null;

    public ImmutableArray<WayActs> Acts => [TracedWork.Acts(_plan.Hoopings.ToImmutableDictionary(h => h.Number, _lines.LengthMm))];

    public StripPlan PlanOf(Hooping hooping) => _plan;

    public IEnumerable<(string File, Action<Stream> Write)> Papers(Estimate estimate)
    {
        foreach (var paper in Paper.Both)
        {
            yield return (OutPaths.Template(paper.Word),
                stream => Template.Write(stream, paper, made.Job.Title, _plan, _lines, made.Job.Traced.Mirrored));
        }
    }

    public ImmutableArray<Said> ReadMe => TemplateReadMe.Parts(SheetMarks.Of(_plan));
}

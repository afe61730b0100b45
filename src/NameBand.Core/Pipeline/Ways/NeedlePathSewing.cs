using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Output;
using NameBand.Output.Keying;
using NameBand.Pipeline.Stages;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;

namespace NameBand.Pipeline.Ways;

/// <summary>Stitches each piece, letter by letter; what is sewn already is taken as it was sewn.</summary>
internal sealed class NeedlePathSewing : IPieceSewing
{
    private readonly LaidOut _made;
    private readonly Stitcher _stitcher;

    public NeedlePathSewing(LaidOut made)
        : this(made, StitcherOf(made))
    {
    }

    private NeedlePathSewing(LaidOut made, Stitcher stitcher) => (_made, _stitcher) = (made, stitcher);

    public ImmutableArray<Problem> Problems => [.. _stitcher.Problems, .. _stitcher.StyleProblems];

    public ImmutableArray<KeyInName> KeyIns => [];

    public IPieceSewing Of(LaidOut other) => new NeedlePathSewing(
        other, other.Fabric == _made.Fabric && other.Plan.LetterHeightMm == _made.Plan.LetterHeightMm
            && other.Job.CutsThread == _made.Job.CutsThread ? _stitcher : StitcherOf(other));

    /// <summary>Where every cut is one by hand, it is worth more to do without.</summary>
    private static Stitcher StitcherOf(LaidOut made) => new(
        made.Fabric, made.Plan.LetterHeightMm,
        made.Job.CutsThread ? null : new SewingSettings(CutWorthMm: SewingSettings.CutByHandWorthMm));

    public NeedlePath PathOf(Hooping hooping) => _made.KeptPath(hooping.Number) ?? _stitcher.SewHooping(_made.Plan, hooping);

    public NeedlePath PathOf(PlacedName name, StripCurve? curve = null) =>
        curve is null ? _stitcher.SewName(name.Lettered) : _stitcher.SewName(name, curve);

    public HoopingFigures FiguresOf(Hooping hooping, NeedlePath path) =>
        FiguresOf(hooping, HoopingMeter.Measure(hooping, _made.Plan, path, _made.ClothOf(hooping.Number), _made.Job.Machine));

    public HoopingFigures FiguresOf(Hooping hooping, HoopingFigures counted) => counted with { IsSewn = _made.IsSewn(hooping.Number) };

    public string MadeBy(Hooping hooping) => _made.Job.CutsThread ? "" : "cut-by-hand";

    public bool AreLettersRead(Hooping hooping)
    {
        bool areRead = true;
        foreach (var name in hooping.Segments.SelectMany(s => s.Segment.NamesAndMotifs))
        {
            areRead &= _stitcher.IsRead(name.Lettered);
        }

        return areRead;
    }

    public NameStyle? StyleOf(PlacedName name) => _stitcher.StyleOf(name.Lettered);

    public bool AreStrokesRead(PlacedName name) => _stitcher.AreStrokesRead(name.Lettered);

    public ImmutableArray<WayActs> Acts => [WayActs.NeedlePath(_made.Plan.Marks)];

    public StripPlan PlanOf(Hooping hooping) => _made.Plan;

    public IEnumerable<(string File, Action<Stream> Write)> Papers(Estimate estimate) =>
        [(OutPaths.Worksheet, stream => Worksheet.Write(stream, _made.Plan, estimate, _made.Job.Frame?.Name ?? ""))];

    public ImmutableArray<Said> ReadMe => ReadMeFirst.Parts(_made.Plan, _made.Job.Strip.SewnBeforeCutting);
}

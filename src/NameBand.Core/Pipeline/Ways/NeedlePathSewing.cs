using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Keying;
using NameBand.Pipeline.Resume;
using NameBand.Stitching;

namespace NameBand.Pipeline.Ways;

/// <summary>Stitches each piece, letter by letter; what is sewn already is taken as it was sewn.</summary>
internal sealed class NeedlePathSewing : IPieceSewing
{
    private readonly LaidOut _made;
    private readonly Stitcher _stitcher;

    public NeedlePathSewing(LaidOut made)
        : this(made, new Stitcher(made.Fabric, made.Plan.LetterHeightMm))
    {
    }

    private NeedlePathSewing(LaidOut made, Stitcher stitcher) => (_made, _stitcher) = (made, stitcher);

    public ImmutableArray<Problem> Problems => _stitcher.Problems;

    public ImmutableArray<KeyInName> KeyIns => [];

    public IPieceSewing Of(LaidOut other) => new NeedlePathSewing(
        other, other.Fabric == _made.Fabric && other.Plan.LetterHeightMm == _made.Plan.LetterHeightMm
            ? _stitcher : new Stitcher(other.Fabric, other.Plan.LetterHeightMm));

    public NeedlePath PathOf(Hooping hooping) => _made.KeptPath(hooping.Number) ?? _stitcher.SewHooping(_made.Plan, hooping);

    public NeedlePath PathOf(PlacedName name, StripCurve? curve = null) =>
        curve is null ? _stitcher.SewName(name.Lettered) : _stitcher.SewName(name, curve);

    public HoopingFigures FiguresOf(Hooping hooping, NeedlePath path) =>
        HoopingMeter.Measure(hooping, _made.Plan, path, _made.ClothOf(hooping.Number), _made.Job.Machine) with
        {
            IsSewn = _made.IsSewn(hooping.Number),
        };

    public string MadeBy(Hooping hooping) => "";

    public bool AreLettersRead(Hooping hooping)
    {
        bool areRead = true;
        foreach (var name in hooping.Segments.SelectMany(s => s.Segment.NamesAndMotifs))
        {
            areRead &= _stitcher.IsRead(name.Lettered);
        }

        return areRead;
    }

    public ImmutableArray<WayActs> Acts => [WayActs.NeedlePath(_made.Plan.Marks)];

    public StripPlan PlanOf(Hooping hooping) => _made.Plan;

    public IEnumerable<(string File, Action<Stream> Write)> Papers(Estimate estimate) =>
        [(OutPaths.Worksheet, stream => Worksheet.Write(stream, _made.Plan, estimate))];

    public ImmutableArray<string> ReadMe => ReadMeFirst.Parts(_made.Plan, _made.Job.Strip.SewnBeforeCutting);
}

using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Output.Keying;
using NameBand.Pipeline.Stages;
using NameBand.Stitching;

namespace NameBand.Pipeline.Ways;

/// <summary>Hands every hooping and every name to the sewing of the way it goes, each with that part of the plan which goes the
/// same.</summary>
internal sealed class SideBySideSewing : IPieceSewing
{
    private readonly ImmutableArray<SideBySideLetters.Part> _parts;
    private readonly ImmutableArray<Share> _shares;

    private sealed record Share(SideBySideLetters.Part Part, LaidOut Own, IPieceSewing Sewing);

    public SideBySideSewing(LaidOut made, ImmutableArray<SideBySideLetters.Part> parts)
    {
        _parts = parts;
        _shares = [.. parts.Select(p => (Part: p, Own: Own(made, p))).Select(p => new Share(p.Part, p.Own, p.Part.Letters.Sew(p.Own)))];
    }

    private SideBySideSewing(ImmutableArray<SideBySideLetters.Part> parts, ImmutableArray<Share> shares) =>
        (_parts, _shares) = (parts, shares);

    /// <summary>What of a layout goes one way.</summary>
    public static LaidOut Own(LaidOut made, SideBySideLetters.Part part)
    {
        var traits = WayTraits.Of(part.Way);
        var plan = made.Plan.Only(w => w == part.Way) with
        {
            HasNeedlePaths = traits.FollowsCoordinates,
            Marks = traits.FollowsCoordinates ? made.Plan.Marks : MarkMethod.None,
            PullCompensationMm = traits.FollowsCoordinates ? made.Plan.PullCompensationMm : 0,
        };
        return made with
        {
            Plan = plan.Hoopings.Any(h => h.IsRun) ? OneRun.Of(plan) with { FieldAcrossMm = plan.Hem.Strip.CutWidthMm } : plan,
            Fabric = part.Letters.On(made.Fabric),
            Way = part.Letters,
        };
    }

    public ImmutableArray<WayActs> Acts =>
    [
        .. _shares.SelectMany(s =>
            s.Sewing.Acts.Select(a =>
                a with { How = WayTraits.Of(s.Part.Way).How, Hoopings = [.. s.Own.Plan.Hoopings.Select(h => h.Number)] })),
    ];

    public ImmutableArray<Problem> Problems => [.. _shares.SelectMany(s => s.Sewing.Problems)];

    public ImmutableArray<KeyInName> KeyIns => [.. _shares.SelectMany(s => s.Sewing.KeyIns)];

    public NeedlePath PathOf(Hooping hooping) => Of(hooping.Way).PathOf(hooping);

    public NeedlePath PathOf(PlacedName name, StripCurve? curve = null) => Of(name.Lettered.Way).PathOf(name, curve);

    public HoopingFigures FiguresOf(Hooping hooping, NeedlePath path) => Of(hooping.Way).FiguresOf(hooping, path);

    public HoopingFigures FiguresOf(Hooping hooping, HoopingFigures counted) => Of(hooping.Way).FiguresOf(hooping, counted);

    public string MadeBy(Hooping hooping) => Of(hooping.Way).MadeBy(hooping);

    public bool AreLettersRead(Hooping hooping) => Of(hooping.Way).AreLettersRead(hooping);

    public NameStyle? StyleOf(PlacedName name) => Of(name.Lettered.Way).StyleOf(name);

    public StripPlan PlanOf(Hooping hooping) => Of(hooping.Way).PlanOf(hooping);

    public IPieceSewing Of(LaidOut other) => new SideBySideSewing(
        _parts, [.. _shares.Select(s => (s.Part, s.Sewing, Own: Own(other, s.Part)))
        .Select(s => new Share(s.Part, s.Own, s.Sewing.Of(s.Own)))]);

    public IEnumerable<(string File, Action<Stream> Write)> Papers(Estimate estimate) =>
        WithNames.SelectMany(s => s.Sewing.Papers(estimate));

    public ImmutableArray<Said> ReadMe => [.. WithNames.SelectMany(s => s.Sewing.ReadMe.Prepend(Heading(s)))];

    private IEnumerable<Share> WithNames => _shares.Where(s => !s.Own.Plan.Hoopings.IsEmpty);

    private static Said Heading(Share share)
    {
        int count = share.Own.Plan.Rounds.Sum(r => r.Names.Count());
        Said line = $"The {Wording.Count(count, "name")} {WayTraits.Of(share.Part.Way).How}";
        return line.Changed((text, _) => $"\n\n{text}\n{new string('=', text.Length)}\n");
    }

    private IPieceSewing Of(Way way) => (_shares.FirstOrDefault(s => s.Part.Way == way)
        ?? throw new InvalidOperationException("A hooping goes a way that the job does not have.")).Sewing;
}

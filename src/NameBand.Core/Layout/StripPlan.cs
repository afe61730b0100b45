using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>A name at its place. Lengths are measured along the finished round from its starting (left) end.</summary>
/// <param name="StartMm">Left edge of the name's width.</param>
/// <param name="WidthMm">Ink plus pull compensation on each side.</param>
/// <param name="BaselineYMm">Height of its base line above the strip's centre line.</param>
/// <param name="Order">Place in the sewing order of the whole job, from 1: the number drawn on proofs.</param>
public sealed record PlacedName(LetteredName Lettered, double StartMm, double WidthMm, double BaselineYMm, int Order)
{
    public double EndMm => StartMm + WidthMm;

    /// <summary>On a strip with two lines of names: 1 on the upper one, 2 on the lower one; else 0.</summary>
    public int Line { get; init; }

    /// <summary>Where it was laid out, where it has moved since by what was measured; null: it has not.</summary>
    public (double StartMm, double WidthMm)? PlannedMm { get; init; }

    /// <summary>Sewn, and no row asks for it any longer: it lies on the cloth and is no name of the job.</summary>
    public bool IsGone { get; init; }

    /// <summary>Sewn before its group's names, and no name of the list.</summary>
    public bool IsHeading => Lettered.Standing.IsHeading;

    /// <summary>Whether it is a name that a row of a list asks for.</summary>
    public bool IsOfList => !IsGone && !IsHeading;
}

/// <summary>A piece of one strip that is sewn in one hooping.</summary>
/// <param name="Number">Unique in the job, from 1.</param>
/// <param name="ClothStartMm">Where it starts on the flat cloth, before sewing shortens it.</param>
public sealed record Segment(int Number, double StartMm, double LengthMm, double ClothStartMm, ImmutableArray<PlacedName> Names)
{
    /// <summary>Sewn between its names, or between one of its names and a neighbour’s.</summary>
    public ImmutableArray<PlacedName> Motifs { get; init; } = [];

    /// <summary>Names and motifs from left to right; of two names at one place the upper one first.</summary>
    public IEnumerable<PlacedName> NamesAndMotifs =>
        Motifs.IsEmpty ? Names : PlacesAlong.Of(Names.Concat(Motifs)).SelectMany(p => p);

    /// <summary>The name that reaches farthest along the strip; null where it holds none.</summary>
    public PlacedName? LastName => Names.IsEmpty ? null : Names[^1].Line == 0 ? Names[^1] : Names.MaxBy(n => n.EndMm);

    /// <summary>How its names get onto the cloth: a segment holds a run of names that go the same way.</summary>
    public Way Way => Names.IsEmpty ? default : Names[0].Lettered.Way;

    /// <summary>Half the length of its two alignment crosses, in mm.</summary>
    public double MarkArmMm => Math.Min(SegmentCutter.MarkArmMm, LengthMm / 4);

    /// <summary>Middle of the left alignment cross, on the flat cloth, from the segment's left end.</summary>
    public double LeftMarkMm => MarkArmMm;

    /// <summary>Middle of the right alignment cross, on the flat cloth, from the segment's left end.</summary>
    public double RightMarkMm => LengthMm - MarkArmMm;
}

/// <summary>One strip that goes once round.</summary>
/// <param name="LengthMm">As laid out: equal to <paramref name="HemMm"/> unless the names need more.</param>
/// <param name="GapMm">Clear space between two names.</param>
public sealed record Round(int Number, double LengthMm, double HemMm, double GapMm, ImmutableArray<Segment> Segments)
{
    /// <summary>How far it is sewn by hand-entered measures; null: nothing was measured.</summary>
    public SewnSoFar? Sewn { get; init; }

    public IEnumerable<PlacedName> Names => Segments.SelectMany(s => s.Names);

    /// <summary>Its places from left to right: a name each, or two that stand one above the other as one.</summary>
    public ImmutableArray<PlacedName> Places => [.. PlacesAlong.Merged(Names)];

    /// <summary>Gaps between two names of the list.</summary>
    public int Gaps => Places.Zip(Places.Skip(1)).Count(p => !p.First.IsHeading && !p.Second.IsHeading);

    /// <summary>Names and motifs, segment by segment.</summary>
    public IEnumerable<PlacedName> NamesAndMotifs => Segments.SelectMany(s => s.NamesAndMotifs);
}

/// <summary>A segment as it lies in a hooping: its left end at <paramref name="XMm"/>, its strip's centre line at
/// <paramref name="YMm"/>.</summary>
public sealed record HoopedSegment(Round Round, Segment Segment, double XMm, double YMm)
{
    /// <summary>
    /// Where it starts on the flat cloth along its own strip, from the cut left end; null: as far from where the hooping does as it lies
    /// in it. Curved strips beside each other have each its own arc.
    /// </summary>
    public double? LiesMm { get; init; }
}

/// <summary>One placing of the cloth in the hoop.</summary>
public sealed record Hooping(int Number, ImmutableArray<HoopedSegment> Segments)
{
    /// <summary>Number of the cloth it lies on.</summary>
    public int Cloth { get; init; } = 1;

    /// <summary>Where its origin lies, measured along the flat cloth from its left end and never from the hooping before.</summary>
    public double OnClothMm { get; init; }

    /// <summary>The frame that it is sewn in where that is not the plan's own.</summary>
    public Frame? Frame { get; init; }

    /// <summary>How all its names get onto the cloth.</summary>
    public Way Way => Segments[0].Segment.Way;

    /// <summary>A machine sews it from a needle path; else its names are keyed in, or traced.</summary>
    public bool HasNeedlePath => WayTraits.Of(Way).FollowsCoordinates;

    /// <summary>Names that are sewn in one run, without a hoop.</summary>
    public bool IsRun => Segments[0].Segment.Names is [var first, ..] && first.Lettered.IsInOneRun;
}

/// <summary>The names of a plan that go one way onto the cloth.</summary>
/// <param name="Hoopings">That hold them.</param>
/// <param name="Runs">Sewn without a hoop, beside names that are hooped.</param>
public sealed record WayShare(Way Way, int Names, int Hoopings, int Runs)
{
    /// <summary>Such as <c>4 names keyed in, in 2 runs without a hoop</c>.</summary>
    public Said InWords => $"{Count(Names, "name")} {WayTraits.Of(Way).How}, in {Sittings(Hoopings, Runs)}";

    /// <summary>Such as <c>2 hoopings and 1 run without a hoop</c>.</summary>
    internal static Said Sittings(int hoopings, int runs)
    {
        Said many = Count(hoopings, "hooping"), inRuns = $"{Count(runs, "run")} without a hoop";
        return hoopings == 0 && runs == 0 ? Said.Nothing : hoopings == 0 ? inRuns : runs == 0 ? many : $"{many} and {inRuns}";
    }

    private static Said Count(int count, string one) => Said.Counted(count, "0", one, one + "s");
}

/// <summary>A row that keeps everybody's letters down, and the height there would be without it and those before it.</summary>
/// <param name="IsGain">Whether that is any larger than with it: else it is in the way only together with one that comes after it.</param>
public sealed record HeightLimit(LetteredName Name, Said Because, double HeightWithoutMm, bool IsGain);

/// <summary>The whole layout.</summary>
/// <param name="Bound">What keeps the letters from being larger.</param>
/// <param name="BaselineYMm">Height of the common base line above the strip's centre line (usually below it: negative).</param>
/// <param name="MarkYMm">Height of the ruled line of alignment marks; outside the finished width.</param>
/// <param name="Held">Rows whose names are too wide for the field or too tall for the strip even at the least height.</param>
public sealed record StripPlan(
    HemPlan Hem,
    double LetterHeightMm,
    HeightBound Bound,
    double PullCompensationMm,
    double Shortening,
    double FieldAlongMm,
    double FieldAcrossMm,
    double SpareMm,
    double BaselineYMm,
    double MarkYMm,
    ImmutableArray<Round> Rounds,
    ImmutableArray<Hooping> Hoopings,
    ImmutableArray<HeightLimit> Limits,
    ImmutableArray<HeldRow> Held)
{
    /// <summary>The field that a hooping is sewn in.</summary>
    public (double AlongMm, double AcrossMm) FieldOf(Hooping hooping) =>
        hooping.Frame is { } own ? (own.Along.Mm, own.Across.Mm) : (FieldAlongMm, FieldAcrossMm);

    /// <summary>The cloths the strips are sewn on, with their pieces; every hooping lies on one of them.</summary>
    public ImmutableArray<StripCloth> Cloths { get; init; } = [];

    /// <summary>How many strips may lie side by side, where that was free to choose; null where the job names it.</summary>
    public int? FreeLanes { get; init; }

    /// <summary>The colours of its cloth and threads.</summary>
    public PlanColours Colours { get; init; } = PlanColours.Usual;

    /// <summary>In which order threads are sewn, where there are several.</summary>
    public ThreadTurns Threads { get; init; } = ThreadTurns.None;

    /// <summary>The thread of some of its names; where they have several, that of the job.</summary>
    public CssColour? ThreadOf(IEnumerable<PlacedName> names) =>
        names.Select(Colours.OfThread).Distinct().Take(2).ToList() is [var one] ? one : null;

    /// <summary>The highest number that a name of this job ever had; 0: those of its names say it.</summary>
    public int LastNumber { get; init; }

    /// <summary>From the lower base line up to the upper one, where strips have two lines of names; else 0.</summary>
    public double LineStepMm { get; init; }

    /// <summary>What is known of the fewest segments, where the order was free; else null.</summary>
    public BestFitProof? BestFit { get; init; }

    /// <summary>Joins of two ends of strip: between pieces, and where a round closes.</summary>
    public int Joins => Math.Max(Cloths.Sum(c => c.Pieces.Length), Rounds.Length) - (Hem.Closed ? 0 : Rounds.Length);

    /// <summary>How each round lies on the garment, lowest first, judged by the gaps it was laid out with.</summary>
    public ImmutableArray<RoundEase> Easing => [.. Rounds.Select(r => RoundEasing.Of(this, r))];

    /// <summary>Each strip beside its hem, lowest first.</summary>
    public ImmutableArray<RoundFit> Fits => [.. Rounds.Select(FitOf)];

    public RoundFit FitOf(Round round) => new(round.Number, round.LengthMm, round.HemMm, Hem.Tolerance.OfMm(round.HemMm));

    /// <summary>How much a round may be off its hem, wherever it is told.</summary>
    public Said AllowedInWords => Hem.Tolerance.InWords(Rounds.Select(r => r.HemMm));

    /// <summary>Whether groups of names are sewn in letters of other heights.</summary>
    public bool HasSizes => Rounds.SelectMany(r => r.Names).Any(n => n.Lettered.Standing.HeightFactor != 1);

    /// <summary>The letter height, or the smallest and the largest of the groups’: “10.4 mm”, “10.4 to 13.0 mm”.</summary>
    public Said LetterHeightsInWords
    {
        get
        {
            double[] factors =
                [.. Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Standing.HeightFactor).DefaultIfEmpty(1).Distinct().Order()];
            return factors.Length == 1
                ? (Said)$"{LetterHeightMm * factors[0]:0.0} mm"
                : $"{LetterHeightMm * factors[0]:0.0} to {LetterHeightMm * factors[^1]:0.0} mm";
        }
    }

    /// <summary>Gap between the letters of a machine's own alphabet; null for drawn faces, whose letters bring their own.</summary>
    public double? SpacingMm { get; init; }

    /// <summary>
    /// What the cloth loses under the stitches, where it loses nothing between them; then <see cref="Shortening"/> is what all of it loses
    /// together. Null: it loses the same everywhere.
    /// </summary>
    public double? UnderStitchesPart { get; init; }

    /// <summary>How each hooping from a needle path is set where it belongs; wherever crosses stand, they stand in the same
    /// places.</summary>
    public MarkMethod Marks { get; init; } = MarkMethod.Sewn;

    /// <summary>How what is hooped is held.</summary>
    public FrameHold Hold { get; init; } = FrameHold.Screw;

    /// <summary>Whether a machine follows coordinates for any name; else all are keyed in, or traced.</summary>
    public bool HasNeedlePaths { get; init; } = true;

    /// <summary>Whether the needle meets a hooping's crosses, and sews none.</summary>
    public bool AreMarksMet(Hooping hooping) => hooping.HasNeedlePath && Marks is (MarkMethod.Drawn or MarkMethod.Paper);

    /// <summary>What goes each way, in the order of the ways; one entry where all names go the same.</summary>
    public ImmutableArray<WayShare> Ways =>
    [
        .. Hoopings.GroupBy(h => h.Way).OrderBy(g => g.Key).Select(g => new WayShare(
            g.Key, g.Sum(h => h.Segments.Sum(s => s.Segment.Names.Count(n => n.IsOfList))), g.Count(h => !h.IsRun), g.Count(h => h.IsRun))),
    ];

    /// <summary>How often the cloth is taken up, in words: hoopings, and runs without a hoop beside them.</summary>
    public Said SittingsInWords => WayShare.Sittings(Hoopings.Count(h => !h.IsRun), Hoopings.Count(h => h.IsRun));

    /// <summary>Whether names go different ways side by side.</summary>
    public bool HasSeveralWays => Hoopings.Select(h => h.Way).Distinct().Skip(1).Any();

    /// <summary>The whole plan that this is a part of; null: it is the whole. Marks are those of the whole.</summary>
    public StripPlan? PartOf { get; private init; }

    /// <summary>
    /// Whether names that came out otherwise than planned have the rest set out anew: of two lines what one would win the other has sewn,
    /// beside another way others have their places, and the cloth of a curved strip holds each name in its own.
    /// </summary>
    public bool MaySetOut => LineStepMm == 0 && !Hem.IsCurved && PartOf is null && !HasSeveralWays;

    /// <summary>What of it is sewn from needle paths: itself where all of it is.</summary>
    public StripPlan OfNeedlePaths => Hoopings.All(h => h.HasNeedlePath) ? this : Only(w => WayTraits.Of(w).FollowsCoordinates);

    /// <summary>What of it is sewn in some of the ways: every round, and of its segments and hoopings only theirs.</summary>
    public StripPlan Only(Func<Way, bool> isAsked) => this with
    {
        PartOf = PartOf ?? this,
        Rounds = [.. Rounds.Select(r => r with { Segments = [.. r.Segments.Where(s => isAsked(s.Way))] })],
        Hoopings = [.. Hoopings.Where(h => isAsked(h.Way))],
    };

    /// <summary>Some of its hoopings, such as one person's.</summary>
    public StripPlan Only(IReadOnlySet<int> hoopings) =>
        this with { PartOf = PartOf ?? this, Hoopings = [.. Hoopings.Where(h => hoopings.Contains(h.Number))] };

    /// <summary>The hoopings that a round is sewn in with its segments in them, in the plan's order.</summary>
    public IEnumerable<(Hooping Hooping, Segment Segment)> HoopedIn(Round round)
    {
        foreach (var hooping in Hoopings)
        {
            foreach (var hooped in hooping.Segments)
            {
                if (hooped.Round.Number == round.Number)
                {
                    yield return (hooping, hooped.Segment);
                }
            }
        }
    }

    /// <summary>Places of a curved segment in its hooping; null where strips are straight.</summary>
    public BentFrame? FrameOf(HoopedSegment hooped) => StripCurve.Of(Hem, hooped.Round.Number)?.Frame(hooped.Segment.LengthMm);

    /// <summary>Height of the ruled line of a segment's alignment marks in its hooping, above its own
    /// <see cref="HoopedSegment.YMm"/>.</summary>
    public double RuledLineYMm(HoopedSegment hooped) =>
        FrameOf(hooped)?.MarkChordYMm(MarkYMm, hooped.Segment.MarkArmMm) ?? MarkYMm;

    /// <summary>Middle of the right alignment cross in its hooping, from the segment's left end.</summary>
    public double RightMarkMm(HoopedSegment hooped) =>
        FrameOf(hooped) is { } frame ? frame.ChordMm - hooped.Segment.MarkArmMm : hooped.Segment.RightMarkMm;

    /// <summary>Middles of a segment's two alignment crosses in its hooping, whether they are sewn, drawn or on paper.</summary>
    public (Common.Point Left, Common.Point Right) CrossesOf(HoopedSegment hooped)
    {
        double y = hooped.YMm + RuledLineYMm(hooped);
        return (new(hooped.XMm + hooped.Segment.LeftMarkMm, y), new(hooped.XMm + RightMarkMm(hooped), y));
    }

    /// <summary>Middles of a segment's two alignment crosses along the strip on the flat cloth, from the segment's left end.</summary>
    public (double LeftMm, double RightMm) MarksAlongMm(HoopedSegment hooped)
    {
        if (FrameOf(hooped) is not { } frame)
        {
            return (hooped.Segment.LeftMarkMm, hooped.Segment.RightMarkMm);
        }

        double left = frame.Unbent(new Common.Point(hooped.Segment.LeftMarkMm, RuledLineYMm(hooped))).AlongMm;
        return (left, frame.LengthMm - left);
    }

    /// <summary>Blank on each side of a name within its place along a curved strip, whose lower edge is longer than the base
    /// line.</summary>
    public double InsetMm(PlacedName name) => Hem.IsCurved
        ? Math.Max(0, (name.WidthMm - name.Lettered.WidthMm(LetterHeightMm, PullCompensationMm)) / 2)
        : 0;

    /// <summary>The cloth as it lies under the needle.</summary>
    public FlatCloth Flat => new(Shortening);

    /// <inheritdoc cref="FlatCloth.OnClothMm"/>
    public double OnClothMm(double finishedMm) => Flat.OnClothMm(finishedMm);

    /// <summary>Where a segment starts, counted from the cut left end of its piece of flat cloth.</summary>
    public static double OnClothMm(Hooping hooping, HoopedSegment hooped) => hooped.LiesMm ?? (hooping.OnClothMm + hooped.XMm);

    /// <summary>Where a segment ends, counted from the cut left end of its piece of flat cloth.</summary>
    public double EndOnClothMm(Hooping hooping, HoopedSegment hooped) => OnClothMm(hooping, hooped) + OnClothMm(hooped.Segment.LengthMm);

    /// <summary>Where a name's width begins, counted from the cut left end of its piece of flat cloth: its place on every sheet.</summary>
    public double OnClothMm(Hooping hooping, HoopedSegment hooped, PlacedName name) =>
        OnClothMm(hooping, hooped) + OnClothMm(name.StartMm - hooped.Segment.StartMm);

    public double TotalLengthMm => Rounds.Sum(r => r.LengthMm);

    /// <summary>Total strip length less the sum of what the hems ask for.</summary>
    public double DifferenceMm => Rounds.Sum(r => r.LengthMm - r.HemMm);

    public bool MatchesHem => Fits.All(f => f.Meets);

    /// <summary>Gaps that could have a motif, and how many have one.</summary>
    public (int All, int WithMotif) Gaps => (Rounds.Sum(r => r.Gaps), Rounds.Sum(r => r.Segments.Sum(s => s.Motifs.Length)));

    public int NameCount => Rounds.Sum(r => r.Segments.Sum(s => s.Names.Count(n => n.IsOfList)));
}

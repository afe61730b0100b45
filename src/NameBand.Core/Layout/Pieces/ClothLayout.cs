using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout.Pieces;

/// <summary>Lays rounds out on cloths, piece by piece and side by side, and cuts them into segments and hoopings.</summary>
/// <param name="smaller">Frames that hoopings may be sewn in beside the job's.</param>
internal sealed class ClothLayout(
    BandJob job, Sizing sizing, int lanes, double heightMm, ImmutableArray<(Frame Frame, CoverField Field)> smaller)
{
    private readonly List<Hooping> _hoopings = [];
    private readonly List<StripCloth> _cloths = [];
    private readonly Dictionary<int, List<Segment>> _segments = [];
    private readonly HoopedMotifs _motifs = new(sizing, heightMm);
    private int _piece;
    private int _segment;

    public (ImmutableArray<Round> Rounds, ImmutableArray<Hooping> Hoopings,
        ImmutableArray<StripCloth> Cloths) Lay(ImmutableArray<LaidRound> laid)
    {
        foreach (var cloth in Cloths(laid))
        {
            LayCloth(cloth);
        }

        ImmutableArray<Round> rounds = [.. laid.Select(r => new Round(
            r.Number, r.LengthMm, r.HemMm, r.GapMm,
            [.. (_segments.TryGetValue(r.Number, out var own) ? own : []).OrderBy(s => s.StartMm)]))];
        var byNumber = rounds.ToDictionary(r => r.Number);
        return (
            rounds,
            [.. _hoopings.Select(h => h with { Segments = [.. h.Segments.Select(s => s with { Round = byNumber[s.Round.Number] })] })],
            [.. _cloths]);
    }

    /// <summary>
    /// The parts that lie side by side, cloth by cloth. Lanes that the job names take as many rounds as there are lanes; where
    /// rounds are fewer, they are cut into as many parts as fill the lanes. Free lanes cut nothing: a join is seen.
    /// </summary>
    private List<List<RoundPart>> Cloths(ImmutableArray<LaidRound> laid)
    {
        if (job.Layout.AreLanesFree)
        {
            ImmutableArray<RoundPart> free = [.. laid.SelectMany(r => Parts(r, 1))];
            bool isSharedBest = sizing.Hem.IsCurved && lanes > 1 && free.Length is > 1 and <= NestedSharing.MostPieces
                && BentCover.Places(free.Select(p => p.Hooped.Length).OrderDescending().Take(lanes)) <= BentCover.MostPlaces;
            bool isImproved = sizing.Hem.IsCurved && lanes > 1 && free.Length is > NestedSharing.MostPieces and <= MostImproved
                && BentCover.Places(free.Select(p => p.Hooped.Length).OrderDescending().Take(lanes)) <= MostPlacesImproved;
            return Nestable(isSharedBest ? Best(free) : isImproved ? Improved(FreeLanes.Share(free, lanes)) : FreeLanes.Share(free, lanes));
        }

        var parts = new List<RoundPart>();
        for (int first = 0; first < laid.Length; first += lanes)
        {
            var beside = laid.Skip(first).Take(lanes).ToList();
            for (int i = 0; i < beside.Count; i++)
            {
                int pieces = (lanes / beside.Count) + (i < lanes % beside.Count ? 1 : 0);
                parts.AddRange(Parts(beside[i], pieces));
            }
        }

        return Nestable([.. parts.Chunk(lanes).Select(c => c.ToList())]);
    }

    private IEnumerable<RoundPart> Parts(LaidRound round, int pieces) =>
        PieceCutter.Cut(round, pieces, sizing.Hem).Select(p => p with { Hooped = _motifs.Of(p) });

    private List<List<RoundPart>> Best(ImmutableArray<RoundPart> parts)
    {
        return Cloths(parts, Sharing(parts));
    }

    private NestedSharing Sharing(ImmutableArray<RoundPart> parts) =>
        new(parts.Length, lanes, set => Work(NestedSharing.Of(set).Select(i => parts[i])));

    private static List<List<RoundPart>> Cloths(ImmutableArray<RoundPart> parts, NestedSharing sharing) =>
        [.. sharing.Cloths().Select(c => c.Select(i => parts[i]).ToList())];

    private double Work(IEnumerable<RoundPart> parts)
    {
        List<RoundPart> on = [.. NestedArcs.FromAbove(parts, CurveOf)];
        return Nested(on, [.. on.Select((p, l) => Piece(p, l, 0, 0, on))]).LeastWork();
    }

    /// <summary>More pieces than all ways can be looked at of: of two cloths at a time all ways are, as long as that saves work.</summary>
    private List<List<RoundPart>> Improved(List<List<RoundPart>> cloths)
    {
        for (bool isBetter = true; isBetter;)
        {
            isBetter = false;
            for (int i = 0; i < cloths.Count * cloths.Count && !isBetter; i++)
            {
                var (one, other) = (cloths[i / cloths.Count], cloths[i % cloths.Count]);
                if (i / cloths.Count >= i % cloths.Count || one.Count + other.Count > NestedSharing.MostPieces + 1)
                {
                    continue;
                }

                ImmutableArray<RoundPart> both = [.. one, .. other];
                var sharing = Sharing(both);
                isBetter = sharing.Least < Work(one) + Work(other) - Tolerance.Rounding;
                cloths = isBetter ? [.. cloths.Where(c => c != one && c != other), .. Cloths(both, sharing)] : cloths;
            }
        }

        return cloths;
    }

    // So many pieces are shared anew two cloths at a time, and names of so many places.
    private const int MostImproved = 24;
    private const int MostPlacesImproved = 3000;

    /// <summary>Curved strips from above as they nest closest; those with more names than can all be looked at lie alone.</summary>
    private List<List<RoundPart>> Nestable(List<List<RoundPart>> cloths) => !sizing.Hem.IsCurved ? cloths
        :
        [
            .. cloths.SelectMany(c => BentCover.Places(c.Select(p => p.Hooped.Length)) > BentCover.MostPlaces
                ? c.Select(p => new List<RoundPart> { p }) : [[.. NestedArcs.FromAbove(c, CurveOf)]]),
        ];

    private StripCurve CurveOf(RoundPart part) => StripCurve.Of(sizing.Hem, part.Round.Number)!;

    private void LayCloth(List<RoundPart> parts)
    {
        bool isNested = sizing.Hem.IsCurved && (parts.Count > 1 || !smaller.IsEmpty);
        double[] offsets = isNested ? new double[parts.Count] : LaneCutter.Offsets(parts, sizing);
        double end = job.Layout.EndCloth.Mm;
        var pieces = parts.Select((p, l) => Piece(p, l, offsets[l], end, parts) with { Number = ++_piece }).ToImmutableArray();
        pieces = isNested ? PieceEnds.Nested(job, sizing, pieces) : pieces;
        var numbers = new List<int>();
        foreach (var (field, shares) in isNested ? Nested(parts, pieces).Cut()
            : LaneCutter.Cut(parts, offsets, sizing, smaller.Select(s => s.Field)))
        {
            var frame = field == 0 ? null : smaller[field - 1].Frame;
            Add(shares.Length > 1 && isNested ? Hoop(parts, pieces, shares, frame) : Hoop(parts, pieces, offsets, shares, frame));
        }

        foreach (var (part, piece) in parts.Zip(pieces))
        {
            foreach (var names in part.Unhooped())
            {
                Add(Run(part, piece, names));
            }
        }

        void Add(Hooping hooping)
        {
            _hoopings.Add(hooping);
            numbers.Add(hooping.Number);
        }

        _cloths.Add(PieceEnds.Cloth(job, sizing, pieces, [.. numbers]));
    }

    private StripPiece Piece(RoundPart part, int lane, double offset, double end, List<RoundPart> beside)
    {
        bool isFirst = part.StartMm <= 0;
        bool isLast = part.EndMm >= part.Round.LengthMm;

        var (before, after) = PieceEnds.AllowancesMm(job, sizing.Hem, isFirst, isLast);

        // All starts stand in line before their offsets, however much cloth each needs for its seam.
        double widest = beside.Max(p => PieceEnds.BeforeMm(job, sizing.Hem, isFirst: p.StartMm <= 0));
        return new StripPiece(
            0, part.Round.Number, part.StartMm, part.LengthMm, _cloths.Count + 1, lane + 1, end + widest + offset, before, after);
    }

    private Hooping Hoop(
        List<RoundPart> parts, ImmutableArray<StripPiece> pieces, double[] offsets, ImmutableArray<LaneCutter.Share> shares, Frame? frame)
    {
        var held = In(frame);
        double left = shares.Min(s => offsets[s.Lane] + sizing.Flat.OnClothMm(From(s, parts).StartMm - parts[s.Lane].StartMm));
        double right = shares.Max(s => offsets[s.Lane] + sizing.Flat.OnClothMm(To(s, parts).EndMm - parts[s.Lane].StartMm));
        double slack = Math.Max(0, held.HoopingOnClothMm - (right - left));
        var hooped = new List<(HoopedSegment Segment, int Lane, double OnCloth)>();
        foreach (var share in shares)
        {
            var part = parts[share.Lane];
            double Finished(double onCloth) => part.StartMm + sizing.Flat.FinishedMm(onCloth - offsets[share.Lane]);
            double from = parts.Count > 1 ? Math.Max(part.StartMm, Finished(left - (slack / 2))) : part.StartMm;
            double to = parts.Count > 1 ? Math.Min(part.EndMm, Finished(right + (slack / 2))) : part.EndMm;
            var extent = SegmentCutter.Extent(From(share, parts), To(share, parts), from, to, held);
            var (segment, onCloth) = Lay(part, pieces[share.Lane], extent, part.Hooped.Slice(share.First, share.Count));
            hooped.Add((segment, share.Lane, onCloth));
        }

        var first = hooped.OrderBy(h => h.OnCloth).ThenBy(h => h.Lane).First();
        double pitch = job.Strip.CutWidth.Mm;
        return new Hooping(
            _hoopings.Count + 1,
            [.. hooped.OrderBy(h => h.OnCloth).ThenBy(h => h.Lane).Select(h => h.Segment with
            {
                XMm = h.OnCloth - first.OnCloth,
                YMm = (first.Lane - h.Lane) * pitch,
            })])
        {
            Cloth = _cloths.Count + 1,
            OnClothMm = first.OnCloth,
            Frame = frame,
        };
    }

    /// <summary>The leftmost name or motif of what one lane has in one hooping.</summary>
    private static PlacedName From(LaneCutter.Share share, List<RoundPart> parts) => parts[share.Lane].Hooped[share.First].First;

    /// <summary>The rightmost one.</summary>
    private static PlacedName To(LaneCutter.Share share, List<RoundPart> parts) =>
        parts[share.Lane].Hooped[share.First + share.Count - 1].Last;

    /// <summary>Angle of a place of a round from the middle of its cloth.</summary>
    private double AngleRad(NestedArcs nest, RoundPart part, int lane, double atMm) =>
        nest.AngleRad(lane, sizing.Flat.OnClothMm(atMm - part.StartMm));

    private BentCover Nested(List<RoundPart> parts, ImmutableArray<StripPiece> pieces)
    {
        var nest = PieceEnds.Nest(sizing, pieces);
        return new BentCover(
            nest, [.. parts.Select((p, l) => p.Hooped.Select(n => AngleRad(nest, p, l, n.First.StartMm)).ToArray())],
            [.. parts.Select((p, l) => p.Hooped.Select(n => AngleRad(nest, p, l, n.Last.EndMm)).ToArray())],
            [ArcField.Of(sizing, 1), .. smaller.Select(s => ArcField.Of(In(s.Frame), s.Field.Work))]);
    }

    private Sizing In(Frame? frame) => frame is null ? sizing
        : sizing with { FieldAlongMm = frame.Along.Mm, FieldAcrossMm = frame.Across.Mm };

    /// <summary>Several curved strips in one hooping: their segments reach over the same angles, so that their chords are
    /// parallel.</summary>
    private Hooping Hoop(List<RoundPart> parts, ImmutableArray<StripPiece> pieces, ImmutableArray<LaneCutter.Share> shares, Frame? frame)
    {
        var nest = PieceEnds.Nest(sizing, pieces);
        var field = ArcField.Of(In(frame), 1);
        ImmutableArray<ArcSpan> spans =
        [
            .. shares.Select(s => new ArcSpan(
                s.Lane, AngleRad(nest, parts[s.Lane], s.Lane, From(s, parts).StartMm),
                AngleRad(nest, parts[s.Lane], s.Lane, To(s, parts).EndMm))),
        ];
        var (from, to) = nest.Extent(spans, field)!.Value;
        int first = shares.Select(s => s.Lane).MinBy(l => nest.LiesAt(l, shares[0].Lane, from, to).XMm);
        var hooped = new List<HoopedSegment>();
        foreach (var share in shares)
        {
            var part = parts[share.Lane];
            double start = part.StartMm + sizing.Flat.FinishedMm(nest.FromStartMm(share.Lane, from));
            var extent = (start, nest.LengthMm(share.Lane, from, to));
            var (segment, onCloth) = Lay(part, pieces[share.Lane], extent, part.Hooped.Slice(share.First, share.Count));
            var at = nest.LiesAt(share.Lane, first, from, to);
            hooped.Add(segment with { XMm = at.XMm, YMm = at.YMm, LiesMm = onCloth });
        }

        ImmutableArray<HoopedSegment> inOrder = [.. hooped.OrderBy(h => h.XMm).ThenByDescending(h => h.YMm)];
        return new Hooping(_hoopings.Count + 1, inOrder) { Cloth = _cloths.Count + 1, OnClothMm = inOrder[0].LiesMm!.Value, Frame = frame };
    }

    /// <summary>Names beside hooped ones that need no hoop: one run, and its place on the cloth.</summary>
    private Hooping Run(RoundPart part, StripPiece piece, ImmutableArray<PlacedName> names)
    {
        var extent = SegmentCutter.Extent(names[0], names[^1], part.StartMm, part.EndMm, sizing);
        var (segment, onCloth) = Lay(part, piece, extent, [.. names.Select(n => new HoopedUnit(n, 0))]);
        return new Hooping(_hoopings.Count + 1, [segment]) { Cloth = _cloths.Count + 1, OnClothMm = onCloth };
    }

    /// <summary>A segment of its round, and where it starts on its cloth.</summary>
    private (HoopedSegment Segment, double OnClothMm) Lay(
        RoundPart part, StripPiece piece, (double StartMm, double LengthMm) extent, ImmutableArray<HoopedUnit> units)
    {
        var (start, length) = extent;
        ImmutableArray<PlacedName> names = [.. units.Select(u => u.Name).OfType<PlacedName>()];
        var segment = new Segment(++_segment, start, length, sizing.Flat.OnClothMm(start), names)
        {
            Motifs = [.. units.SelectMany(u => u.Motifs)],
        };
        var round = new Round(part.Round.Number, part.Round.LengthMm, part.Round.HemMm, part.Round.GapMm, []);
        if (!_segments.TryGetValue(round.Number, out var own))
        {
            _segments[round.Number] = own = [];
        }

        own.Add(segment);
        return (new HoopedSegment(round, segment, 0, 0), piece.OnClothMm + sizing.Flat.OnClothMm(start - part.StartMm));
    }
}

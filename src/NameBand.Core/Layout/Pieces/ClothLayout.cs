using System.Collections.Immutable;
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

    public (ImmutableArray<Round> Rounds, ImmutableArray<Hooping> Hoopings, ImmutableArray<StripCloth> Cloths) Lay(ImmutableArray<LaidRound> laid)
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
            return FreeLanes.Share([.. laid.SelectMany(r => PieceCutter.Cut(r, 1, sizing.Hem))], lanes);
        }

        var parts = new List<RoundPart>();
        for (int first = 0; first < laid.Length; first += lanes)
        {
            var beside = laid.Skip(first).Take(lanes).ToList();
            for (int i = 0; i < beside.Count; i++)
            {
                int pieces = (lanes / beside.Count) + (i < lanes % beside.Count ? 1 : 0);
                parts.AddRange(PieceCutter.Cut(beside[i], pieces, sizing.Hem));
            }
        }

        return [.. parts.Chunk(lanes).Select(c => c.ToList())];
    }

    private void LayCloth(List<RoundPart> parts)
    {
        List<RoundPart> hooped = [.. parts.Select(p => p.Hooped())];
        double[] offsets = LaneCutter.Offsets(hooped, sizing);
        double end = job.Layout.EndCloth.Mm;
        var pieces = parts.Select((p, l) => Piece(p, l, offsets[l], end, parts)).ToImmutableArray();
        var numbers = new List<int>();
        foreach (var (field, shares) in LaneCutter.Cut(hooped, offsets, sizing, smaller.Select(s => s.Field)))
        {
            Add(Hoop(hooped, pieces, offsets, shares, field == 0 ? null : smaller[field - 1].Frame));
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
            ++_piece, part.Round.Number, part.StartMm, part.LengthMm, _cloths.Count + 1, lane + 1, end + widest + offset, before, after);
    }

    private Hooping Hoop(
        List<RoundPart> parts, ImmutableArray<StripPiece> pieces, double[] offsets, ImmutableArray<LaneCutter.Share> shares, Frame? frame)
    {
        var held = frame is null ? sizing : sizing with { FieldAlongMm = frame.Along.Mm, FieldAcrossMm = frame.Across.Mm };
        var items = _motifs.Add(parts, offsets, shares, held.HoopingOnClothMm);
        double left = items.Min(i => i.LeftMm);
        double right = items.Max(i => i.RightMm);
        double slack = Math.Max(0, held.HoopingOnClothMm - (right - left));
        var hooped = new List<(HoopedSegment Segment, int Lane, double OnCloth)>();
        foreach (var (share, item) in shares.Zip(items))
        {
            var part = parts[share.Lane];
            var names = part.Names.Slice(share.First, share.Count);
            double Finished(double onCloth) => part.StartMm + sizing.Flat.FinishedMm(onCloth - offsets[share.Lane]);
            double from = parts.Count > 1 ? Math.Max(part.StartMm, Finished(left - (slack / 2))) : part.StartMm;
            double to = parts.Count > 1 ? Math.Min(part.EndMm, Finished(right + (slack / 2))) : part.EndMm;
            var extent = SegmentCutter.Extent(item.First, item.Last, from, to, held);
            var (segment, onCloth) = Lay(part, pieces[share.Lane], extent, names, item.Motifs);
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

    /// <summary>Names beside hooped ones that need no hoop: one run, and its place on the cloth.</summary>
    private Hooping Run(RoundPart part, StripPiece piece, ImmutableArray<PlacedName> names)
    {
        var extent = SegmentCutter.Extent(names[0], names[^1], part.StartMm, part.EndMm, sizing);
        var (segment, onCloth) = Lay(part, piece, extent, names, []);
        return new Hooping(_hoopings.Count + 1, [segment]) { Cloth = _cloths.Count + 1, OnClothMm = onCloth };
    }

    /// <summary>A segment of its round, and where it starts on its cloth.</summary>
    private (HoopedSegment Segment, double OnClothMm) Lay(
        RoundPart part, StripPiece piece, (double StartMm, double LengthMm) extent, ImmutableArray<PlacedName> names, ImmutableArray<PlacedName> motifs)
    {
        var (start, length) = extent;
        var segment = new Segment(++_segment, start, length, sizing.Flat.OnClothMm(start), names) { Motifs = motifs };
        var round = new Round(part.Round.Number, part.Round.LengthMm, part.Round.HemMm, part.Round.GapMm, []);
        if (!_segments.TryGetValue(round.Number, out var own))
        {
            _segments[round.Number] = own = [];
        }

        own.Add(segment);
        return (new HoopedSegment(round, segment, 0, 0), piece.OnClothMm + sizing.Flat.OnClothMm(start - part.StartMm));
    }
}

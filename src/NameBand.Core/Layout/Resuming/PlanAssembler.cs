using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout.Pieces;

namespace NameBand.Layout.Resuming;

/// <summary>Makes rounds and hoopings of blocks.</summary>
internal static class PlanAssembler
{
    public static ImmutableArray<Round> Rounds(
        ImmutableArray<KeptBlock> blocks, double[] hemsMm, EarlierPlan earlier, Sizing sizing, double heightMm)
    {
        var byRound = blocks.ToLookup(b => b.Round);
        return [.. Enumerable.Range(1, hemsMm.Length).Select(Round)];

        Round Round(int number)
        {
            var segments = byRound[number].OrderBy(b => b.FirstMm)
                .Select(b => new Segment(
                    b.Segment, b.StartMm, b.LengthMm, b.ClothStartMm ?? sizing.Flat.OnClothMm(b.StartMm), b.Names)
                { Motifs = b.Motifs })
                    .ToImmutableArray();
            double hem = hemsMm[number - 1];
            double end = segments.SelectMany(s => s.Names).Select(n => n.EndMm).DefaultIfEmpty(0).Max();
            double gap = Gap(segments, earlier, number);
            double need = end + (sizing.Hem.Closed && end > 0 ? Math.Min(gap, sizing.GapMm(heightMm)) / 2 : 0);
            return new Round(number, need > hem + Tolerance.RoundingMm ? need : hem, hem, gap, segments);
        }
    }

    /// <summary>The least gap that two neighbours have.</summary>
    private static double Gap(ImmutableArray<Segment> segments, EarlierPlan earlier, int round)
    {
        double before = earlier.Rounds.FirstOrDefault(r => r.Number == round)?.GapMm ?? 0;
        var names = segments.SelectMany(s => s.Names).OrderBy(n => n.StartMm).ToList();
        double least = names.Count < 2 ? before : names.Skip(1).Select((n, i) => n.StartMm - names[i].EndMm).Min();

        // Places are kept to the thousandth, and a gap that did not change is not to seem to.
        return Math.Abs(least - before) < 0.005 ? before : least;
    }

    /// <summary>Hoopings in the order of their numbers; those of the earlier plan lie on the cloth as they did.</summary>
    public static ImmutableArray<Hooping> Hoopings(
        ImmutableArray<KeptBlock> blocks, ImmutableArray<Round> rounds, EarlierPlan earlier, ImmutableArray<StripCloth> cloths,
        Sizing sizing)
    {
        var flat = sizing.Flat;
        var before = earlier.Hoopings.ToDictionary(h => h.Number);
        var byNumber = rounds.SelectMany(r => r.Segments.Select(s => (Round: r, Segment: s))).ToDictionary(p => p.Segment.Number);
        return [.. blocks.GroupBy(b => b.Hooping).OrderBy(g => g.Key).Select(Made)];

        Hooping Made(IGrouping<int, KeptBlock> group)
        {
            var known = group.All(b => b.ClothStartMm is not null) && before.TryGetValue(group.Key, out var hooping) ? hooping : null;
            if (known is not null)
            {
                // The first segment is where a hooping's origin lies: with another one first, the origin would move.
                var places = known.Segments.ToDictionary(s => s.Segment);
                var order = known.Segments.Select(s => s.Segment).ToList();
                var lying = group.OrderBy(b => order.IndexOf(b.Segment)).ToList();
                var origin = places[lying[0].Segment];
                var kept = new Hooping(
                    group.Key,
                    [.. lying
                        .Select(b =>
                            new HoopedSegment(byNumber[b.Segment].Round, byNumber[b.Segment].Segment, places[b.Segment].XMm - origin.XMm,
                                places[b.Segment].YMm - origin.YMm) { LiesMm = places[b.Segment].OnClothMm })])
                {
                    Cloth = known.Cloth,
                    OnClothMm = origin.OnClothMm ?? (known.OnClothMm + origin.XMm),
                };
                return known.Frame is { } frame && Holds(frame, kept, sizing.SpareMm, sizing.Flat) ? kept with { Frame = frame } : kept;
            }

            var lanes = group.Select(b => (Of: byNumber[b.Segment], Lies: OnCloth(byNumber[b.Segment].Segment, b.Round, cloths, flat)))
                .OrderBy(l => l.Lies.OnClothMm).ThenBy(l => l.Lies.Lane).ToList();
            var first = lanes[0].Lies;
            double pitch = cloths.FirstOrDefault(c => c.Number == first.Cloth)?.LanePitchMm ?? 0;
            return new Hooping(
                group.Key,
                [.. lanes.Select(l =>
                    new HoopedSegment(l.Of.Round, l.Of.Segment, l.Lies.OnClothMm - first.OnClothMm, (first.Lane - l.Lies.Lane) * pitch))])
            {
                Cloth = first.Cloth,
                OnClothMm = first.OnClothMm,
            };
        }
    }

    /// <summary>Whether what lies in a hooping now still lies within the field of the frame that it was planned in, spare and
    /// all.</summary>
    private static bool Holds(Frame frame, Hooping hooping, double spareMm, FlatCloth flat) =>
        hooping.Segments.Max(s => s.XMm + flat.OnClothMm(s.Segment.LengthMm)) - hooping.Segments.Min(s => s.XMm)
            <= FlatCloth.FieldMm(frame.Along.Mm, spareMm) + Tolerance.RoundingMm;

    /// <summary>The cloths as they were cut, with the pieces on them; their lengths along the rounds follow the shortening as it
    /// is known now.</summary>
    public static ImmutableArray<StripCloth> Cloths(EarlierPlan earlier, Sizing sizing, double[] hemsMm, BandJob job)
    {
        double scale = (1 - sizing.Shortening) / (1 - earlier.Shortening);
        double pitch = job.Strip.CutWidth.Mm;
        ImmutableArray<StripCloth> cut = [.. earlier.Cloths.Select(c => new StripCloth(
            c.Number, c.LengthMm, c.WidthMm, pitch, [.. c.Pieces.Select(p => Piece(p, c.Number))],
            [.. earlier.Hoopings.Where(h => h.Cloth == c.Number).Select(h => h.Number)]))
            .Select(c => c with
            {
                Band = PieceEnds.Band(job, sizing, c.Pieces),
                LanePitchMm = sizing.Hem.IsCurved && c.Pieces.Length > 1 ? PieceEnds.Nest(sizing, c.Pieces).PitchMm : pitch,
            })];
        return [.. cut, .. AddedCloths.For(job, sizing, hemsMm, cut)];

        StripPiece Piece(EarlierPiece piece, int cloth)
        {
            bool isLast = earlier.Cloths.SelectMany(c => c.Pieces).All(p => p.Round != piece.Round || p.StartMm <= piece.StartMm);
            double start = piece.StartMm * scale;
            double length = isLast ? hemsMm[piece.Round - 1] - start : piece.LengthMm * scale;
            return new StripPiece(
                piece.Number, piece.Round, start, length, cloth, piece.Lane, piece.OnClothMm, piece.StartAllowanceMm, piece.EndAllowanceMm);
        }
    }

    /// <summary>A segment lies on the piece that its first name stands on: for the sake of its marks it may reach beyond a join.</summary>
    private static (int Cloth, int Lane, double OnClothMm) OnCloth(
        Segment segment, int round, ImmutableArray<StripCloth> cloths, FlatCloth flat) =>
        StripPiece.At(cloths.SelectMany(c => c.Pieces), round, segment.Names[0].StartMm) is { } piece
            ? (piece.Cloth, piece.Lane, piece.OnClothMm + flat.OnClothMm(segment.StartMm - piece.StartMm))
            : throw new InvalidOperationException("A round has no cloth.");
}

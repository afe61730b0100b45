using System.Collections.Immutable;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout.Resuming;

/// <summary>Finds what of an earlier plan stays.</summary>
internal static class KeptSegments
{
    /// <summary>
    /// The earlier segments with their names that are still asked for. What is sewn lies fast on the cloth: where the
    /// shortening is known better now, its place along the finished round follows.
    /// </summary>
    public static ImmutableArray<KeptBlock> Blocks(Continuation from, IReadOnlyList<LetteredName> names, Sizing sizing)
    {
        var earlier = from.Earlier;
        double scale = (1 - sizing.Shortening) / (1 - earlier.Shortening);
        var hoopingOf = earlier.HoopingOfSegment;
        var present = names
            .Where(n => from.Before.ContainsKey(n.Name.Row))
            .ToDictionary(n => from.Before[n.Name.Row]);
        foreach (var gone in earlier.Names)
        {
            if (!present.ContainsKey(gone)
                && from.Gone.FirstOrDefault(g => g.Name.Text == gone.Text && g.Name.Row == gone.Row) is { } lettered)
            {
                present.Add(gone, lettered);
            }
        }

        var blocks = ImmutableArray.CreateBuilder<KeptBlock>();
        foreach (var round in earlier.Rounds)
        {
            var standing = round.Segments.SelectMany(s => s.Names).Where(present.ContainsKey)
                .Select(n => (n.StartMm, Factor: present[n].Standing.HeightFactor)).OrderBy(n => n.StartMm).ToList();
            foreach (var segment in round.Segments.OrderBy(s => s.StartMm))
            {
                int hooping = hoopingOf[segment.Number];
                bool isSewn = from.Sewn.Contains(hooping);
                double start = segment.StartMm * scale;
                ImmutableArray<PlacedName> kept =
                [
                    .. segment.Names.Where(n => present.ContainsKey(n)).OrderBy(n => n.StartMm).Select(n => new PlacedName(
                        present[n], start + ((n.StartMm - segment.StartMm) * scale), n.WidthMm, n.BaselineYMm, n.Order)
                    {
                        IsGone = from.Gone.Contains(present[n]),
                        Line = n.OnLine,
                    }),
                ];
                if (kept.Length > 0)
                {
                    blocks.Add(new KeptBlock(round.Number, segment.Number, hooping, start, segment.LengthMm * scale, isSewn, kept)
                    {
                        ClothStartMm = segment.ClothStartMm,
                        Motifs = isSewn || kept.Length == segment.Names.Length
                            ? Motifs(segment, standing, start, scale, sizing.Motif)
                            : [],
                    });
                }
            }
        }

        return blocks.ToImmutable();
    }

    /// <summary>A motif is as large as the smaller of the two names it stands between, as it was planned.</summary>
    private static ImmutableArray<PlacedName> Motifs(
        EarlierSegment segment, List<(double StartMm, double Factor)> standing, double startMm, double scale, LetteredName? motif)
    {
        if (motif is null || segment.Motifs.IsEmpty)
        {
            return [];
        }

        LetteredName Sized(double atMm)
        {
            double before = standing.LastOrDefault(n => n.StartMm < atMm).Factor;
            double after = standing.FirstOrDefault(n => n.StartMm > atMm).Factor;
            double factor = before > 0 && after > 0 ? Math.Min(before, after) : Math.Max(before, after);
            return MotifGaps.Sized(motif, factor);
        }

        return [.. segment.Motifs.Select(m =>
            new PlacedName(Sized(m.StartMm), startMm + ((m.StartMm - segment.StartMm) * scale), m.WidthMm, m.BaselineYMm, 0))];
    }

    /// <summary>Clear room of every round, from its left end to its right one.</summary>
    /// <param name="hem">Its places to keep clear and its room kept free are left out.</param>
    /// <param name="cloths">As they are cut: where a round is joined, no name lies across.</param>
    public static IEnumerable<FreeStretch> Stretches(
        IEnumerable<KeptBlock> blocks, double[] hemsMm, HemPlan hem, ImmutableArray<StripCloth> cloths)
    {
        var joins = cloths.SelectMany(c => c.Pieces).Where(p => p.StartMm > 0).ToLookup(p => p.Round, p => p.StartMm);
        foreach (var stretch in Allowed(blocks, hemsMm, hem))
        {
            var left = stretch;
            foreach (double join in joins[stretch.Round].Where(j => j > stretch.StartMm && j < stretch.EndMm).Order())
            {
                yield return left with { EndMm = join, BeforeName = false, BeforeJoin = true };
                left = left with { StartMm = join, AfterName = false, AfterJoin = true };
            }

            yield return left;
        }
    }

    private static IEnumerable<FreeStretch> Allowed(IEnumerable<KeptBlock> blocks, double[] hemsMm, HemPlan hem)
    {
        var allowed = Enumerable.Range(1, hemsMm.Length).SelectMany(k => FreeInterval.Of(hem, k)).ToLookup(s => s.Round);
        foreach (var free in Between(blocks, hemsMm))
        {
            foreach (var stretch in allowed[free.Round].OrderBy(s => s.StartMm))
            {
                double from = Math.Max(free.StartMm, stretch.StartMm);
                double to = Math.Min(free.EndMm, stretch.StartMm + stretch.LengthMm);
                if (to > from || (free.EndMm <= free.StartMm && from <= to))
                {
                    yield return free with
                    {
                        StartMm = from,
                        EndMm = to,
                        AfterName = free.AfterName && from <= free.StartMm,
                        BeforeName = free.BeforeName && to >= free.EndMm,
                    };
                }
            }
        }
    }

    private static IEnumerable<(double StartMm, double EndMm)> Taken(KeptBlock block) =>
        block.IsClosed ? [(block.FirstMm, block.LastMm)] : block.Sewn.Select(n => (n.StartMm, n.EndMm));

    private static IEnumerable<FreeStretch> Between(IEnumerable<KeptBlock> blocks, double[] hemsMm)
    {
        var byRound = blocks.ToLookup(b => b.Round);
        for (int round = 1; round <= hemsMm.Length; round++)
        {
            double at = 0;
            bool afterName = false;
            foreach (var (startMm, endMm) in byRound[round].SelectMany(Taken).OrderBy(t => t.StartMm))
            {
                if (startMm > at)
                {
                    yield return new FreeStretch(round, at, startMm, afterName, true);
                }

                at = Math.Max(at, endMm);
                afterName = true;
            }

            yield return new FreeStretch(round, at, Math.Max(at, hemsMm[round - 1]), afterName, false);
        }
    }
}

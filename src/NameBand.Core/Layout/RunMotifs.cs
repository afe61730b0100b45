using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>
/// Puts motifs between names that stand on their strip already: where runs are set out anew name by name, and where names of several
/// ways stand beside each other. Each stands between two neighbours of one segment, and so goes the way they go.
/// </summary>
internal static class RunMotifs
{
    /// <param name="motifOf">The motif of a way; null: it has none.</param>
    /// <param name="stays">Segments whose motifs are sewn, or laid out already.</param>
    public static StripPlan Placed(StripPlan plan, Func<Way, LetteredName?> motifOf, Func<Segment, bool>? stays = null)
    {
        var gaps = plan.Rounds.SelectMany(r => r.Segments).Select(s => s.Way).Distinct().Select(w => (Way: w, Motif: motifOf(w)))
            .Where(m => m.Motif is not null).ToDictionary(m => m.Way, m => new MotifGaps(
                plan.PullCompensationMm, plan.LetterHeightMm, m.Motif!, StripCurve.WidestFactor(plan.Hem, plan.LetterHeightMm)));
        ImmutableArray<Round> rounds = [.. plan.Rounds.Select(r => r with { Segments = [.. r.Segments.Select(s => Of(r, s))] })];
        var bySegment = rounds.SelectMany(r => r.Segments.Select(s => (Round: r, Segment: s))).ToDictionary(p => p.Segment.Number);
        return plan with
        {
            Rounds = rounds,
            Hoopings = [.. plan.Hoopings.Select(h => h with
            {
                Segments = [.. h.Segments.Select(s =>
                    s with { Round = bySegment[s.Segment.Number].Round, Segment = bySegment[s.Segment.Number].Segment })],
            })],
        };

        Segment Of(Round round, Segment segment)
        {
            if (stays?.Invoke(segment) == true)
            {
                return segment;
            }

            var places = PlacesAlong.Merged(segment.Names).ToList();
            var own = gaps.GetValueOrDefault(segment.Way);
            var stretches = FreeInterval.Of(plan.Hem.WithNothingKeptFree(), round.Number);
            bool runsOver = round.LengthMm > round.HemMm + Tolerance.RoundingMm;
            return segment with
            {
                Motifs = own is null
                    ? [] : [.. places.Zip(places.Skip(1)).Select(p => own.Between(p.First, p.Second, stretches, runsOver))
                    .OfType<PlacedName>().Select(OnLine)],
            };
        }

        // Between two lines it stands in the middle of both.
        PlacedName OnLine(PlacedName motif) =>
            plan.LineStepMm > 0 ? motif with { BaselineYMm = plan.BaselineYMm + (plan.LineStepMm / 2) } : motif;
    }
}

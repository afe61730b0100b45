using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout;

namespace NameBand.Output.Rehearsal;

/// <summary>A place on a finished round that is to be found again on the garment.</summary>
internal sealed record RehearsalMark(double AtMm, Said Word)
{
    private const double SamePlaceMm = 0.5; // As well as one pins: a mark nearer to the strip's beginning is the beginning.

    /// <summary>The ends, the middles of the garment, the joins, and where a place is kept clear begins and ends, from left to
    /// right.</summary>
    public static ImmutableArray<RehearsalMark> Of(StripPlan plan, Round round)
    {
        var marks = new List<RehearsalMark> { new(0, "start"), new(round.LengthMm, plan.Hem.Closed ? "end: lies on the start" : "end") };
        var middles = GarmentMiddles.On(plan.Hem, round.LengthMm);
        Add(middles.FrontMm, "centre front");
        Add(middles.BackMm, "centre back");
        foreach (var piece in plan.Cloths.SelectMany(c => c.Pieces).Where(p => p.Round == round.Number && p.StartMm > SamePlaceMm))
        {
            Add(piece.StartMm, "join");
        }

        double scale = plan.Hem.EdgeLengthMm > 0 ? round.LengthMm / plan.Hem.EdgeLengthMm : 1;
        foreach (var zone in plan.Hem.KeepClear)
        {
            Add((zone.AtMm * scale) - (zone.WidthMm / 2), "clear from here");
            Add((zone.AtMm * scale) + (zone.WidthMm / 2), "to here");
        }

        return
        [
            .. marks.Where(m => m.AtMm >= 0 && m.AtMm <= round.LengthMm + SamePlaceMm).OrderBy(m => m.AtMm)
                .GroupBy(m => Math.Round(m.AtMm)).Select(g => new RehearsalMark(g.First().AtMm, Said.Join(", ", g.Select(m => m.Word)))),
        ];

        void Add(double? atMm, Said word)
        {
            if (atMm is { } at)
            {
                marks.Add(new RehearsalMark(at, word));
            }
        }
    }
}

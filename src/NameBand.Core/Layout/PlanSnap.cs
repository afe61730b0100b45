using System.Collections.Immutable;

namespace NameBand.Layout;

/// <summary>
/// Puts every place of a plan on thousandths of a millimetre, as plan.json has them: what is read back from there later
/// is then the same number, and what is made from it the same to the last byte.
/// </summary>
internal static class PlanSnap
{
    public static StripPlan Apply(StripPlan plan)
    {
        var rounds = plan.Rounds.Select(r => r with
        {
            LengthMm = Snap(r.LengthMm),
            GapMm = Snap(r.GapMm),
            Segments = [.. r.Segments.Select(Apply)],
        }).ToImmutableArray();
        var bySegment = rounds.SelectMany(r => r.Segments.Select(s => (Round: r, Segment: s))).ToDictionary(p => p.Segment.Number);
        return plan with
        {
            BaselineYMm = Snap(plan.BaselineYMm),
            LineStepMm = Snap(plan.LineStepMm),
            MarkYMm = Snap(plan.MarkYMm),
            Cloths = [.. plan.Cloths.Select(Apply)],
            Rounds = rounds,
            Hoopings =
            [
                .. plan.Hoopings.Select(h => h with
                {
                    OnClothMm = Snap(h.OnClothMm),
                    Segments =
                    [
                        .. h.Segments.Select(s => s with
                        {
                            Round = bySegment[s.Segment.Number].Round,
                            Segment = bySegment[s.Segment.Number].Segment,
                            XMm = Snap(s.XMm),
                            YMm = Snap(s.YMm),
                            LiesMm = s.LiesMm is { } lies ? Snap(lies) : null,
                        }),
                    ],
                }),
            ],
        };
    }

    private static Segment Apply(Segment segment) => segment with
    {
        StartMm = Snap(segment.StartMm),
        LengthMm = Snap(segment.LengthMm),
        ClothStartMm = Snap(segment.ClothStartMm),
        Names = [.. segment.Names.Select(Apply)],
        Motifs = [.. segment.Motifs.Select(Apply)],
    };

    private static PlacedName Apply(PlacedName name) =>
        name with { StartMm = Snap(name.StartMm), WidthMm = Snap(name.WidthMm), BaselineYMm = Snap(name.BaselineYMm) };

    private static StripCloth Apply(StripCloth cloth) => cloth with
    {
        LengthMm = Snap(cloth.LengthMm),
        WidthMm = Snap(cloth.WidthMm),
        Pieces =
        [
            .. cloth.Pieces.Select(p => p with
            {
                StartMm = Snap(p.StartMm),
                LengthMm = Snap(p.LengthMm),
                OnClothMm = Snap(p.OnClothMm),
                StartAllowanceMm = Snap(p.StartAllowanceMm),
                EndAllowanceMm = Snap(p.EndAllowanceMm),
            }),
        ],
    };

    private static double Snap(double mm) => Math.Round(mm * 1000) / 1000;
}

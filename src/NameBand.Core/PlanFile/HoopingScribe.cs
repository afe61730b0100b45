using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;

namespace NameBand.PlanFile;

/// <summary>Puts the hoopings into the records of plan.json.</summary>
internal static class HoopingScribe
{
    public static IReadOnlyList<WrittenHooping> Of(StripPlan plan, Estimate estimate, PlanOrigin? origin)
    {
        var figures = estimate.Hoopings.ToDictionary(f => f.Number);
        return new Lazily<WrittenHooping>(
            plan.Hoopings.Length,
            i => Hooping(plan, plan.Hoopings[i], figures[plan.Hoopings[i].Number], estimate, origin));
    }

    private static WrittenHooping Hooping(
        StripPlan plan, Hooping hooping, HoopingFigures figure, Estimate estimate, PlanOrigin? planOrigin)
    {
        var origin = planOrigin?.Hoopings.GetValueOrDefault(hooping.Number);
        return new WrittenHooping
        {
            Number = hooping.Number,
            Mark = SheetMarks.Of(plan, hooping),
            Segments = [.. hooping.Segments.Select(s => Hooped(plan, s))],
            Cloth = hooping.Cloth,
            OnClothMm = Thousandths.Mm(hooping.OnClothMm),
            Frame = hooping.Frame is { } frame ? WorkshopScribe.Of(frame) : null,
            NeedlePath = plan.HasNeedlePaths && hooping.HasNeedlePath ? PlanPaths.NeedlePath(hooping.Number) : null,
            Proof = PlanPaths.HoopingProof(hooping.Number),
            Stitches = figure.Stitches,
            Jumps = figure.Jumps,
            Trims = figure.Trims,
            Threads = plan.Threads.Of(hooping.Number) is { } threads ? [.. threads.Order.Select(t => t.ToString())] : null,
            Minutes = Thousandths.Tenths(estimate.OwnMinutes(figure)),
            MadeFrom = origin?.MadeFrom,
            NeedlePathPrint = origin?.PathPrint,
            ProofPrint = origin?.ProofPrint,
            HolesPerMm2 = origin?.HolesPerMm2,
            SpotHolesPerMm2 = origin?.Spot.HolesPerMm2,
            MostLayers = origin?.Spot.Layers,
            Measured = origin is null ? null : MeasuredHooping.Row(origin.Figures),
            LettersRead = origin?.LettersRead,
            Sewn = origin is { IsSewn: true },
            SewnAs = origin?.SewnAs is { } sewnAs
                ? new WrittenSewnAs { Face = sewnAs.Face, Fabric = sewnAs.Fabric, LetterHeightExactMm = sewnAs.LetterHeightMm } : null,
            Again = origin is { IsAgain: true } or { IsPatch: true },
            Patch = origin is { IsPatch: true },
        };
    }

    private static WrittenHooped Hooped(StripPlan plan, HoopedSegment hooped)
    {
        var frame = plan.FrameOf(hooped);
        return new WrittenHooped
        {
            Number = hooped.Segment.Number,
            XMm = Thousandths.Mm(hooped.XMm),
            YMm = Thousandths.Mm(hooped.YMm),
            OnClothMm = hooped.LiesMm is { } lies ? Thousandths.Mm(lies) : null,
            ChordMm = frame is { } chord ? Thousandths.Mm(chord.ChordMm) : null,
            BowMm = frame is { } bow ? Thousandths.Mm(bow.BowMm) : null,
            RuledLineYMm = frame is null ? null : Thousandths.Mm(plan.RuledLineYMm(hooped)),
        };
    }
}

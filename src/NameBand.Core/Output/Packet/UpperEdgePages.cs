using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout;
using NameBand.Output.Sheets;
using SkiaSharp;

namespace NameBand.Output.Packet;

/// <summary>What the upper edge asks of the hands: its step, the tucks with their places, and what mends an edge that cannot be
/// sewn down.</summary>
internal static class UpperEdgePages
{
    // A table of small type; and the room for a picture, which no drawing is higher than.
    private const double TableMm = 3.4;
    private const double RowMm = 4.8;
    private const double PictureMm = 44;

    /// <summary>One to ten: the scale at which a curve is drawn.</summary>
    private const double CurveScale = 10;

    /// <summary>What the verdict on each round asks of the hands.</summary>
    public static Said Step(StripPlan plan)
    {
        var easing = plan.Easing;
        if (plan.Hem.IsCurved)
        {
            return "Then the upper edge: the strip is cut to the curve of the hem and lies flat, so nothing is eased. Both edges are off the straight grain somewhere: pin closely and do not stretch them.";
        }

        if (plan.Hem.UpperEdgeShorterMm <= 0.05)
        {
            return "Then the upper edge: it is as long as the lower one, and nothing is eased.";
        }

        Said verdicts = Said.Join(" ", easing.Select(e => e.InWords()));
        if (easing.Any(e => e.Verdict == EaseVerdict.WantsShaping))
        {
            return $"The upper edge cannot be sewn down as planned: decide this before you cut any cloth. {verdicts}";
        }

        Said eased = easing.Any(e => e.Verdict is EaseVerdict.CanBeEased || e is { Tucked: not null, EasedGapsPart: > 0 })
            ? (Said)$" {RoundEasing.EasingSteps}" : "";
        return $"Then the upper edge. {verdicts}{eased}";
    }

    /// <summary>Where each tuck lies, and what would mend an edge that cannot be sewn down, both drawn; nothing where there is
    /// neither.</summary>
    public static void Write(PageFlow flow, PacketMatter matter)
    {
        foreach (var round in matter.Plan.Rounds)
        {
            Tucks(flow, matter.Plan, round);
        }

        if (!matter.EaseMends.IsEmpty)
        {
            Mends(flow, matter);
        }
    }

    private static void Tucks(PageFlow flow, StripPlan plan, Round round)
    {
        var tucks = RoundTucks.Of(plan, round);
        if (tucks.IsEmpty)
        {
            return;
        }

        double finished = plan.Hem.Strip.FinishedWidthMm;
        flow.Heading($"Tapered tucks, round {round.Number}", 5.2, finished + 16);
        flow.Text(
            $"{Wording.Count(tucks.Length, "tuck")}, each {JobInWords.Mm(tucks[0].WidthMm)} wide at the upper edge: pinch up {JobInWords.Mm(tucks[0].WidthMm / 2)}, and nothing at the lower edge. At true size, between its two names:",
            sizeMm: TableMm);
        double top = flow.YMm + 3;
        double between = tucks[0].Before.StartMm - tucks[0].After.EndMm;
        flow.Pages.AsItLies(() => Gap(flow.Pages, PageFlow.LeftMm, top, finished, (tucks[0].WidthMm, between)));
        flow.YMm = top + finished + 2;
        Row(flow, ("tuck", "between", "along the round", "on the cloth", "wide"));
        foreach (var tuck in tucks)
        {
            Row(flow, (
                $"{tuck.Number}", $"{Named(tuck.After)}  and  {Named(tuck.Before)}",
                Tenths(tuck.AtMm), Tenths(tuck.OnClothMm), Tenths(tuck.WidthMm)));
        }

        flow.Text("Millimetres to the middle of each tuck: along the finished round from its starting end, and from the cut left end of its piece of flat cloth.", sizeMm: TableMm);
    }

    private static string Named(PlacedName name) => FormattableString.Invariant($"{name.Order} {name.Lettered.Name.Text}");

    private static Said Tenths(double mm) => $"{mm:0.0}";

    private static void Row(PageFlow flow, (Said Number, Said Between, Said Along, Said OnCloth, Said Wide) row)
    {
        flow.Room(RowMm);
        flow.YMm += RowMm;
        var pages = flow.Pages;
        pages.Text(PageFlow.LeftMm, flow.YMm, row.Number, TableMm);
        pages.Put(PageFlow.LeftMm + 10, flow.YMm, flow.Cut(row.Between, flow.WidthMm - 92, TableMm), TableMm);
        pages.TextRight(flow.RightMm - 50, flow.YMm, row.Along, TableMm);
        pages.TextRight(flow.RightMm - 20, flow.YMm, row.OnCloth, TableMm);
        pages.TextRight(flow.RightMm, flow.YMm, row.Wide, TableMm);
    }

    /// <summary>A gap with its tuck between the grey ends of two names.</summary>
    private static void Gap(SheetPages pages, double x, double y, double finishedMm, (double TuckMm, double GapMm) at)
    {
        const double NameMm = 18; // Of the names beside a tuck their ends are enough.
        double width = (2 * NameMm) + at.GapMm;
        double middle = x + (width / 2);
        pages.Box(x, y, width, finishedMm, 0.25);
        foreach (double left in new[] { x, x + NameMm + at.GapMm })
        {
            pages.Box(left, y + (finishedMm * 0.3), NameMm, finishedMm * 0.4, 0.15, Ink.Faint);
        }

        pages.Line(middle - (at.TuckMm / 2), y, middle, y + finishedMm, 0.25);
        pages.Line(middle + (at.TuckMm / 2), y, middle, y + finishedMm, 0.25);
        pages.Line(middle, y, middle, y + finishedMm, 0.12, Ink.Quiet);
    }

    private static void Mends(PageFlow flow, PacketMatter matter)
    {
        flow.Heading("What makes the upper edge attachable: any one of these", 5.2, PictureMm);
        int number = 0;
        foreach (var mend in matter.EaseMends)
        {
            flow.Item(FormattableString.Invariant($"({++number})"), mend.Text, 8);
            flow.Room(PictureMm);
            double top = flow.YMm + 3;
            double height = 0;
            flow.Pages.AsItLies(() => height = Picture(flow, matter.Plan, mend, top));
            flow.YMm = top + height + 2;
        }
    }

    /// <returns>The height it took.</returns>
    private static double Picture(PageFlow flow, StripPlan plan, EaseMend mend, double top)
    {
        double left = PageFlow.LeftMm + 8;
        double now = plan.Hem.Strip.FinishedWidthMm;
        switch (mend.Kind)
        {
            case EaseMendKind.Narrower:
                return Widths(flow.Pages, left, top, (now, mend.FinishedWidthMm));
            case EaseMendKind.Tucks:
                var tucks = mend.Tucks[0];
                double drawn = Math.Min(now, PictureMm - 6);
                Gap(flow.Pages, left, top, drawn, (tucks.WidthMm, tucks.Gaps[0].WidthMm));
                flow.Pages.Text(
                    left + 40 + tucks.Gaps[0].WidthMm, top + 5,
                    $"{JobInWords.Mm(tucks.WidthMm)} at the upper edge, in a gap of {JobInWords.Mm(tucks.Gaps[0].WidthMm)}", TableMm);
                return drawn;
            case EaseMendKind.Curve:
                return Arc(flow, left, top, mend.RadiiMm[0], now);
            default:
                return Bias(flow.Pages, left, top);
        }
    }

    /// <summary>Both strips at true size, or as much of them as there is room for.</summary>
    private static double Widths(SheetPages pages, double x, double y, (double NowMm, double ThenMm) width)
    {
        double scale = Math.Min(1, (PictureMm - 6) / width.NowMm);
        pages.Box(x, y, 40, width.NowMm * scale, 0.25, Ink.Quiet);
        Said now = $"now {JobInWords.Mm(width.NowMm)}";
        pages.Text(x + 2, y + 4.5, now, pages.Fitting(now, TableMm, 36));
        pages.Box(x + 50, y, 40, width.ThenMm * scale, 0.35);
        pages.Text(x + 92, y + 4.5, $"then {JobInWords.Mm(width.ThenMm)}", TableMm);
        return width.NowMm * scale;
    }

    /// <summary>A piece of the ring at a tenth of its size.</summary>
    private static double Arc(PageFlow flow, double x, double y, double radiusMm, double finishedMm)
    {
        double outer = radiusMm / CurveScale;
        double inner = (radiusMm - finishedMm) / CurveScale;
        double half = Math.Min(Math.Min(80, flow.WidthMm / 2 - 10) / outer, Math.Acos(Math.Max(-1, 1 - ((PictureMm - 14) / outer))));
        double depth = outer * (1 - Math.Cos(half));
        if (!flow.Pages.IsCounting)
        {
            using var pen = Ink.Full.Stroke(0.25);
            double middle = x + (outer * Math.Sin(half));
            foreach (double radius in new[] { inner, outer })
            {
                var box = new SKRect(
                    (float)(middle - radius), (float)(y + depth - outer - radius), (float)(middle + radius),
                    (float)(y + depth - outer + radius));
                flow.Pages.Canvas.DrawArc(box, (float)(90 - (half * 180 / Math.PI)), (float)(2 * half * 180 / Math.PI), false, pen);
            }
        }

        flow.Pages.Text(
            x, y + depth + 5,
            $"drawn 1:10; the lower edge has a radius of {JobInWords.Mm(radiusMm)}, the upper one {JobInWords.Mm(radiusMm - finishedMm)}",
            TableMm);
        return depth + 6;
    }

    /// <summary>A strip at 45° to the selvedge.</summary>
    private static double Bias(SheetPages pages, double x, double y)
    {
        const double SideMm = 24; // Of a square cloth on the bias: large enough for its slanting strip and the word beside it.
        pages.Box(x, y, SideMm, SideMm, 0.2, Ink.Quiet);
        pages.Line(x, y + SideMm - 5, x + SideMm - 5, y, 0.3);
        pages.Line(x + 5, y + SideMm, x + SideMm, y + 5, 0.3);
        pages.Text(x + SideMm + 3, y + 5, "at 45° to the selvedge", TableMm);
        return SideMm;
    }
}

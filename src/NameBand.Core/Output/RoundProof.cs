using System.Collections.Immutable;
using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Layout;
using NameBand.Output.Drawing;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Draws a whole round at true scale: the finished strip with its turned-in edges, every name as thread, a tape along
/// the round, and below it which hooping sews which part.
/// </summary>
public static class RoundProof
{
    // Wider pictures than this make trouble in common viewers; beyond, the scale goes down, never under 2.
    private const int GoodWidthPx = 16_384;
    private const double SideMm = 12;
    private const double CaptionMm = 2.4;

    /// <summary>Pixels a millimetre at which a round of this length is drawn: 4, 3 or 2.</summary>
    public static double PixelsPerMm(double lengthMm) =>
        new double[] { 4, 3 }.FirstOrDefault(scale => (lengthMm + (3 * SideMm)) * scale <= GoodWidthPx, 2);

    /// <param name="figures">By the numbers of the hoopings; those of other rounds may be among them.</param>
    /// <param name="sewn">The needle path of a name: origin at the left edge of its width, on its base line. May be asked more than once for a name.</param>
    public static void Draw(
        Stream png, StripPlan plan, Round round, IReadOnlyDictionary<int, HoopingFigures> figures, Func<PlacedName, NeedlePath> sewn, CaptionFace face,
        double threadMm = SewingThread.FortyWeightMm) =>
        Draw(png, plan, round, figures, sewn, face, null, threadMm);

    internal static void Draw(
        Stream png, StripPlan plan, Round round, IReadOnlyDictionary<int, HoopingFigures> figures, Func<PlacedName, NeedlePath> sewn, CaptionFace face,
        int? mostPixelsAtOnce, double threadMm = SewingThread.FortyWeightMm)
    {
        double reach = plan.Hem.Strip.CutWidthMm / 2;
        double before = plan.Hem.EndTurnInMm;
        double overlap = plan.Hem.Closed ? plan.Hem.OverlapMm : plan.Hem.EndTurnInMm;
        double end = Math.Max(round.LengthMm, round.Names.Select(n => n.EndMm).DefaultIfEmpty(0).Max());
        double top = reach + 2 + TapeMeasure.WidthMm + 2;
        double bottom = -reach - 15;
        var page = new ProofPage(-SideMm - before, top, before + end + overlap + (2 * SideMm), top - bottom, PixelsPerMm(before + end + overlap));
        ImmutableArray<(Hooping, Segment)> hooped = [.. plan.HoopedIn(round)];
        void Paint(Picture picture)
        {
            ClothWeave.At(page.PixelsPerMm).Lay(picture, 0, 0, picture.Width, page.HeightPx, Dyes.TableAt);
            StripDrawing.Cloth(picture, page, plan.Hem.Strip, 0, -before, round.LengthMm + overlap);
            StripDrawing.Lines(picture, page, plan.Hem.Strip, 0, -before, round.LengthMm + overlap, isCutHere: false);
            TapeMeasure.Draw(picture, page, face, reach + 2, 0, 0, end + overlap);
            DrawTucks(picture, page, plan, round);
            DrawEnds(picture, page, face, round, reach, plan.Hem);
            DrawHoopings(picture, page, face, hooped, figures, reach);
            DrawNames(picture, page, face, plan, round, sewn, threadMm);
            face.Set(picture, Caption(plan, round), page.X(0), page.Y(bottom + 2.2), page.CapPx(CaptionMm), Dyes.Ink);
        }

        if (mostPixelsAtOnce is { } most)
        {
            page.Write(png, Paint, most);
        }
        else
        {
            page.Write(png, Paint);
        }
    }

    /// <summary>Where the round begins and ends, and the cloth beyond: under its beginning, or turned in at both ends.</summary>
    private static void DrawEnds(Picture picture, ProofPage page, CaptionFace face, Round round, double reach, HemPlan hem)
    {
        double thick = Math.Max(1, page.Px(0.3));
        foreach (double x in new[] { 0, round.LengthMm })
        {
            picture.Upright(page.X(x), page.Y(reach + 2), page.Y(-reach - 2), thick, Dyes.Madder);
        }

        if (hem.Closed)
        {
            Beyond(round.LengthMm, hem.OverlapMm, "overlap");
        }
        else
        {
            Beyond(-hem.EndTurnInMm, hem.EndTurnInMm, "turn in");
            Beyond(round.LengthMm, hem.EndTurnInMm, "turn in");
        }

        void Beyond(double fromMm, double lengthMm, string what)
        {
            if (lengthMm <= 0)
            {
                return;
            }

            for (double x = 1.5; x < lengthMm; x += 3)
            {
                picture.Upright(page.X(fromMm + x), page.Y(reach), page.Y(-reach), Math.Max(1, page.Px(0.12)), Dyes.Madder, 0.35, page.Px(0.8));
            }

            face.Set(picture, what, page.X(fromMm + (lengthMm / 2)), page.Y(-reach - 4), page.CapPx(1.8), Dyes.Madder, 0.5);
        }
    }

    /// <summary>Both legs of each tapered tuck, from its width at the upper edge to their meeting at the lower one.</summary>
    private static void DrawTucks(Picture picture, ProofPage page, StripPlan plan, Round round)
    {
        double half = plan.Hem.Strip.FinishedWidthMm / 2;
        double thick = Math.Max(1, page.Px(0.2));
        double top = Math.Round(page.Y(half));
        double bottom = Math.Round(page.Y(-half));
        foreach (var tuck in RoundTucks.Of(plan, round))
        {
            for (double y = top; y < bottom; y++)
            {
                double leg = page.Px(tuck.WidthMm / 2) * (bottom - y) / (bottom - top);
                picture.Upright(page.X(tuck.AtMm) - leg, y, y + 1, thick, Dyes.Madder, 0.8);
                picture.Upright(page.X(tuck.AtMm) + leg, y, y + 1, thick, Dyes.Madder, 0.8);
            }
        }
    }

    private static void DrawHoopings(
        Picture picture, ProofPage page, CaptionFace face, ImmutableArray<(Hooping Hooping, Segment Segment)> hooped,
        IReadOnlyDictionary<int, HoopingFigures> figures, double reach)
    {
        int cap = page.CapPx(2.0);
        foreach (var (hooping, segment) in hooped)
        {
            string text = FormattableString.Invariant($"hooping {hooping.Number}");
            string longer = FormattableString.Invariant($"{text}  ·  {Thousandths.Tenths(figures[hooping.Number].MachineMinutes):0.0} min");
            double from = segment.Names.Length > 0 ? segment.Names[0].StartMm : segment.StartMm;
            double to = segment.Names.Length > 0 ? segment.Names[^1].EndMm : segment.StartMm + segment.LengthMm;
            bool fits = face.Measure(longer, cap) <= page.Px(to - from);
            NameBracket.Draw(picture, page, face, from, to, -reach - 1.2, fits ? longer : text, cap);
        }
    }

    private static void DrawNames(
        Picture picture, ProofPage page, CaptionFace face, StripPlan plan, Round round, Func<PlacedName, NeedlePath> sewn,
        double threadMm)
    {
        int cap = page.CapPx(1.8);
        double finished = plan.Hem.Strip.FinishedWidthMm / 2;
        bool inSight = page.Y(finished + 2) < picture.Bottom && page.Y(-finished - 2) > picture.Top;
        foreach (var name in round.NamesAndMotifs)
        {
            double middle = page.X(name.StartMm + (name.WidthMm / 2));
            string number = name.Order > 0 ? name.Order.ToString(CultureInfo.InvariantCulture) : "";
            face.Set(picture, number, middle, page.Y(-finished - 1.2) + cap, cap, Dyes.Ink, 0.5);
            if (inSight)
            {
                ThreadLayer.Draw(
                    picture, sewn(name).Steps.AsSpan(), page.X(name.StartMm + plan.InsetMm(name)), page.Y(name.BaselineYMm), ThreadKinds.Names,
                    Dyes.ThreadAt, Dyes.ThreadShades, threadMm);
            }
        }
    }

    /// <summary>The heights that stand on the round, the smallest first.</summary>
    private static string Letters(StripPlan plan, Round round)
    {
        double[] factors = [.. round.Names.Select(n => n.Lettered.Standing.HeightFactor).DefaultIfEmpty(1).Distinct().Order()];
        return "letters " + string.Join(" and ", factors.Select(f => FormattableString.Invariant($"{plan.LetterHeightMm * f:0.0}"))) + " mm";
    }

    private static string Caption(StripPlan plan, Round round)
    {
        var fit = plan.FitOf(round);
        string agrees = fit.Meets
            ? "meets the hem"
            : FormattableString.Invariant($"{Math.Abs(fit.OverMm):0.0} mm {(fit.RunsOver ? "longer" : "shorter")} than the hem");
        string tucks = RoundEasing.Of(plan, round).Tucked is { } tucked
            ? FormattableString.Invariant($"   ·   {tucked.Count} tapered {(tucked.Count == 1 ? "tuck" : "tucks")}, {tucked.WidthMm:0.0} mm at the upper edge") : "";
        return FormattableString.Invariant(
            $"round {round.Number}   ·   {round.LengthMm:0.0} mm   ·   {agrees}   ·   {round.Names.Count(n => n.IsOfList)} names   ·   {Letters(plan, round)}{tucks}{(plan.Hem.IsCurved ? $"   ·   drawn straight, along the lower edge; cut as an arc of radius {plan.Hem.RadiusMm(round.Number):0} mm" : "")}");
    }
}

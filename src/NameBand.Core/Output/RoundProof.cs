using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Layout;
using NameBand.Output.Drawing;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Draws a whole round at true scale as it lies on the flat cloth before sewing shortens it: the strip with its turned-in
/// edges, every name as thread, the tape of each piece of cloth, and below it which hooping sews which part.
/// </summary>
internal static class RoundProof
{
    // Wider pictures than this make trouble in common viewers; beyond, the scale goes down, never under 2.
    private const int GoodWidthPx = 16_384;
    private const double SideMm = 12;
    private const double CaptionMm = 2.4;
    private const double LabelMm = 5;

    /// <summary>Pixels a millimetre at which a round of this length is drawn: 4, 3 or 2.</summary>
    public static double PixelsPerMm(double lengthMm) =>
        new double[] { 4, 3 }.FirstOrDefault(scale => (lengthMm + (3 * SideMm)) * scale <= GoodWidthPx, 2);

    /// <param name="figures">By the numbers of the hoopings; those of other rounds may be among them.</param>
    /// <param name="sewn">The needle path of a name: origin at the left edge of its width, on its base line. May be asked more
    /// than once for a name.</param>
    public static void Draw(
        Stream png, StripPlan plan, Round round, IReadOnlyDictionary<int, HoopingFigures> figures, Func<PlacedName, NeedlePath> sewn,
        ProofLook look)
    {
        var (face, threadMm, _) = look;
        var flat = FlatRound.Of(plan, round);
        double reach = plan.Hem.Strip.CutWidthMm / 2;
        double top = reach + 2 + TapeMeasure.WidthMm + (flat.IsInPieces ? LabelMm : 2);
        double bottom = -reach - 15;
        double left = flat.CutLeftMm - SideMm;
        string[] caption = [Caption(plan, round).ToString(), .. Words(plan, flat).Select(w => w.ToString())];
        var page = new ProofPage(left, top, flat.CutRightMm + SideMm - left, top - bottom, PixelsPerMm(flat.CutRightMm - flat.CutLeftMm))
        {
            InWords = string.Join('\n', caption),
            Palette = ThreadSections.Dyes(plan, round.NamesAndMotifs),
        };
        void Paint(IndexedBitmap picture)
        {
            var on = new ProofCanvas(picture, page, face);
            ClothWeave.At(page.PixelsPerMm).Lay(picture, 0, 0, picture.Width, page.HeightPx, Palette.TableAt);
            StripDrawing.Cloth(picture, page, plan.Hem.Strip, 0, (flat.CutLeftMm, flat.CutRightMm));
            StripDrawing.Lines(picture, page, plan.Hem.Strip, 0, (flat.CutLeftMm, flat.CutRightMm), isCutHere: false);
            DrawTapes(on, flat, reach);
            DrawTucks(picture, page, plan, round);
            DrawEnds(on, flat, reach, plan.Hem);
            DrawHoopings(on, plan, flat, figures, reach);
            DrawNames(on, plan, flat, sewn, threadMm);
            DrawCaption(on, caption[0], bottom);
        }

        if (look.MostPixelsAtOnce is { } most)
        {
            page.Write(png, Paint, most);
        }
        else
        {
            page.Write(png, Paint);
        }
    }

    /// <summary>It begins where the finished round does; one that is longer than the round is set smaller.</summary>
    private static void DrawCaption(ProofCanvas on, string caption, double bottom)
    {
        var (picture, page, face) = on;
        int cap = CaptionLines.FittingPx(on, caption, page.CapPx(CaptionMm));
        double x = Language.Now is { IsRightToLeft: true } ? picture.Width - page.X(0) - face.Measure(caption, cap) : page.X(0);
        double over = x + face.Measure(caption, cap) - picture.Width;
        face.Set(picture, caption, (over > 0 ? Math.Max(0, x - over) : x, page.Y(bottom + 2.2)), cap, Palette.Ink);
    }

    /// <summary>A tape for each piece, which counts its own centimetres from its cut left end.</summary>
    private static void DrawTapes(ProofCanvas on, FlatRound flat, double reach)
    {
        var (picture, page, face) = on;
        foreach (var piece in flat.Pieces)
        {
            TapeMeasure.Draw(on, reach + 2, piece.ZeroMm, piece.FromMm - piece.ZeroMm, piece.ToMm - piece.ZeroMm);
            if (flat.IsInPieces)
            {
                Said cloth = $"cloth {piece.Cloth}";
                face.Set(
                    picture, cloth.ToString(), (page.X(piece.FromMm), page.Y(reach + 2 + TapeMeasure.WidthMm + 1.2)), page.CapPx(1.8),
                    Palette.Ink);
                double thick = Math.Max(1, page.Px(0.3));
                picture.Upright(
                    page.X(piece.FromMm), page.Y(reach + 2 + TapeMeasure.WidthMm), page.Y(-reach - 2), thick, new Ink(Palette.Madder, 0.6));
            }
        }
    }

    /// <summary>Where the finished round begins and ends, and the cloth beyond: under its beginning, or turned in at both ends.</summary>
    private static void DrawEnds(ProofCanvas on, FlatRound flat, double reach, HemPlan hem)
    {
        var (picture, page, face) = on;
        double thick = Math.Max(1, page.Px(0.3));
        foreach (double x in new[] { 0, flat.LengthMm })
        {
            picture.Upright(page.X(x), page.Y(reach + 2), page.Y(-reach - 2), thick, Palette.Madder);
        }

        Beyond(flat.CutLeftMm, -flat.CutLeftMm, "turn in");
        Beyond(flat.LengthMm, flat.CutRightMm - flat.LengthMm, hem.Closed ? "overlap" : "turn in");

        void Beyond(double fromMm, double lengthMm, Said what)
        {
            if (lengthMm <= 0)
            {
                return;
            }

            for (double x = 1.5; x < lengthMm; x += 3)
            {
                picture.Upright(
                    page.X(fromMm + x), page.Y(reach), page.Y(-reach), Math.Max(1, page.Px(0.12)),
                    new Ink(Palette.Madder, 0.35, page.Px(0.8)));
            }

            face.Set(picture, what.ToString(), (page.X(fromMm + (lengthMm / 2)), page.Y(-reach - 4)), page.CapPx(1.8), Palette.Madder, 0.5);
        }
    }

    /// <summary>Both legs of each tapered tuck, from its width at the upper edge to their meeting at the lower one.</summary>
    private static void DrawTucks(IndexedBitmap picture, ProofPage page, StripPlan plan, Round round)
    {
        double half = plan.Hem.Strip.FinishedWidthMm / 2;
        double thick = Math.Max(1, page.Px(0.2));
        double top = Math.Round(page.Y(half));
        double bottom = Math.Round(page.Y(-half));
        foreach (var tuck in RoundTucks.Of(plan, round))
        {
            double middle = page.X(plan.OnClothMm(tuck.AtMm));
            for (double y = top; y < bottom; y++)
            {
                double leg = page.Px(tuck.WidthMm / 2) * (bottom - y) / (bottom - top);
                picture.Upright(middle - leg, y, y + 1, thick, new Ink(Palette.Madder, 0.8));
                picture.Upright(middle + leg, y, y + 1, thick, new Ink(Palette.Madder, 0.8));
            }
        }
    }

    /// <summary>A bracket under each hooping's names, with what of its number, mark and minutes has room.</summary>
    private static void DrawHoopings(
        ProofCanvas on, StripPlan plan, FlatRound flat, IReadOnlyDictionary<int, HoopingFigures> figures, double reach)
    {
        var (_, page, face) = on;
        int cap = page.CapPx(2.0);
        foreach (var lying in flat.Hooped)
        {
            Said number = $"hooping {lying.Hooping.Number}";
            Said marked = $"{number}  ·  {SheetMarks.Of(plan, lying.Hooping)}";
            var minutes = Thousandths.Tenths(figures[lying.Hooping.Number].MachineMinutes);
            Said timed = $"{marked}  ·  {minutes:0.0} min";
            double room = page.Px(lying.ToMm - lying.FromMm);
            string fits = (new[] { timed, marked }.FirstOrDefault(t => face.Measure(t.ToString(), cap) <= room) ?? number).ToString();
            NameBracket.Draw(on, lying.FromMm, lying.ToMm, -reach - 1.2, fits, cap);
        }
    }

    private static void DrawNames(ProofCanvas on, StripPlan plan, FlatRound flat, Func<PlacedName, NeedlePath> sewn, double threadMm)
    {
        var (picture, page, face) = on;
        int cap = page.CapPx(1.8);
        double finished = plan.Hem.Strip.FinishedWidthMm / 2;
        bool inSight = page.Y(finished + 2) < picture.Bottom && page.Y(-finished - 2) > picture.Top;
        foreach (var (name, leftMm, _) in flat.Names)
        {
            double middle = page.X(leftMm + (name.WidthMm / 2));
            string number = name.Order > 0 ? name.Order.ToString(CultureInfo.InvariantCulture) : "";
            double baseline = name.Line == 1 ? page.Y(finished + 1.2) : page.Y(-finished - 1.2) + cap;
            face.Set(picture, number, (middle, baseline), cap, Palette.Ink, 0.5);
            if (inSight)
            {
                var (at, shades) = picture.Palette.ShadesOf(plan.Colours.OfThread(name));
                ThreadLayer.Draw(
                    picture, sewn(name).Steps.AsSpan(), (page.X(leftMm + plan.InsetMm(name)), page.Y(name.BaselineYMm)), ThreadKinds.Names,
                    (at, shades), threadMm);
            }
        }
    }

    /// <summary>Each name with its place on the tape, for those who do not see the picture.</summary>
    private static IEnumerable<Said> Words(StripPlan plan, FlatRound flat)
    {
        foreach (var lying in flat.Hooped)
        {
            string mark = SheetMarks.Of(plan, lying.Hooping);
            Said names = Said.Join("; ", lying.Names.Select(n =>
            {
                Said placed = $"{Thousandths.Tenths(n.OnClothMm):0.0} mm {n.Name.Lettered.Name.Text}";
                return n.Name.Line > 0 ? (Said)$"{placed} ({StripWords.LineOf(n.Name)})" : placed;
            }));
            yield return $"hooping {lying.Hooping.Number}, mark {mark}, cloth {lying.Hooping.Cloth}: {names}";
        }
    }

    /// <summary>The heights that stand on the round, the smallest first.</summary>
    private static Said Letters(StripPlan plan, Round round)
    {
        double[] factors = [.. round.Names.Select(n => n.Lettered.Standing.HeightFactor).DefaultIfEmpty(1).Distinct().Order()];
        return $"letters {Said.Join(" and ", factors.Select(f => (Said)$"{plan.LetterHeightMm * f:0.0}"))} mm";
    }

    private static Said Caption(StripPlan plan, Round round)
    {
        var fit = plan.FitOf(round);
        double over = Math.Abs(fit.OverMm);
        Said agrees = fit.Meets ? "meets the hem"
            : fit.RunsOver ? (Said)$"{over:0.0} mm longer than the hem" : $"{over:0.0} mm shorter than the hem";
        Said tucks = "";
        if (RoundEasing.Of(plan, round).Tucked is { } tucked)
        {
            tucks = Said.Plural(
                tucked.Count, $"   ·   {tucked.Count} tapered tuck, {tucked.WidthMm:0.0} mm at the upper edge",
                $"   ·   {tucked.Count} tapered tucks, {tucked.WidthMm:0.0} mm at the upper edge");
        }

        Said lengths = $"finished {Thousandths.Tenths(round.LengthMm):0.0} mm, flat {Thousandths.Tenths(plan.OnClothMm(round.LengthMm)):0.0} mm";
        Said drawn = plan.Hem.IsCurved
            ? (Said)$"   ·   drawn straight, along the lower edge; cut as an arc of radius {plan.Hem.RadiusMm(round.Number):0} mm" : "";
        int count = round.Names.Count(n => n.IsOfList);
        Said names = Said.Plural(count, $"{count} names", $"{count} names");
        string mark = SheetMarks.Of(plan, round);
        Said likeness = Likeness.IsIn(round.Names) ? (Said)$"   ·   {Likeness.OnProofs}" : "";
        return $"round {round.Number}   ·   mark {mark}   ·   {lengths}   ·   {agrees}   ·   {names}   ·   {Letters(plan, round)}{tucks}{drawn}{likeness}";
    }
}

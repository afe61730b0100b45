using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Drawing;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>Draws to scale how the cloths are cut out of the bought cloth, with the strips that are later cut from them.</summary>
internal static class CuttingPlan
{
    // On the cloth, as the plan is drawn small: the margin, the letters of the first line and of those for each cloth, and the room of a
    // line. So large that they can be read on a screen.
    private const double SideMm = 40;
    private const double CaptionMm = 22;
    private const double ClothMm = 17;
    private const double LinesMm = 45;
    private const int LeastCapPx = 7; // Smaller is not read on a screen.

    public static void Draw(Stream png, StripPlan plan, CutPlan cut, CaptionFace face)
    {
        double scale = cut.LengthMm > 8000 ? 0.25 : 0.5;
        double size = scale < 0.5 ? 2 : 1;
        double length = Math.Max(cut.LengthMm, 1500 * size);
        var words = Words(plan, cut);
        double below = SideMm + ((words.Length + 1) * LinesMm * size);
        var page = new ProofPage(
            -SideMm * size, cut.ClothWidthMm + (2.5 * SideMm * size), length + (2 * SideMm * size),
            cut.ClothWidthMm + (2.5 * SideMm * size) + below, scale);
        (page with { Palette = DyePalette.Of(plan.Colours), InWords = string.Join('\n', words.Select(w => w.Text.ToString().Trim())) })
            .Write(png, picture =>
        {
            var on = new ProofCanvas(picture, page, face);
            ClothWeave.At(1).Lay(picture, 0, 0, picture.Width, page.HeightPx, Palette.TableAt);
            ClothWeave.At(1).Lay(picture, page.X(0), page.Y(cut.ClothWidthMm), page.X(cut.LengthMm), page.Y(0), Palette.WasteAt);
            DrawRuler(on, cut, size);
            foreach (var one in cut.Cuts)
            {
                if (one.Cloth.Band is { } band)
                {
                    CurvedCutting.DrawCloth(on, plan, one, band, size);
                    continue;
                }

                DrawCloth(on, plan, cut, one, size);
            }

            DrawWords(on, words, size);
        });
    }

    /// <summary>A tape along the upper selvedge: every 100 mm a tick, every half metre a number.</summary>
    private static void DrawRuler(ProofCanvas on, CutPlan cut, double size)
    {
        var (picture, page, face) = on;
        double edge = page.Y(cut.ClothWidthMm);
        for (int mm = 0; mm <= cut.LengthMm; mm += 100)
        {
            bool isLong = mm % 500 == 0;
            picture.Upright(page.X(mm), edge - page.Px((isLong ? 22 : 10) * size), edge, 1.2, Palette.Ink);
            if (isLong)
            {
                Said metres = $"{mm / 1000.0:0.0} m";
                face.Set(
                    picture, metres.ToString(),
                    (page.X(mm) + 3, edge - page.Px(14 * size)), page.CapPx(14 * size), Palette.Ink);
            }
        }

        picture.Level(page.X(0), page.X(cut.LengthMm), edge, 2, Palette.Weld);
        picture.Level(page.X(0), page.X(cut.LengthMm), page.Y(0), 2, Palette.Weld);
    }

    private static void DrawCloth(ProofCanvas on, StripPlan plan, CutPlan cut, CutCloth one, double size)
    {
        var (picture, page, face) = on;
        var cloth = one.Cloth;
        void Part(double from, double to, double low, double high, byte colour) =>
            FillPart(on, cut, one, (from, to), (low, high), colour);

        const double line = 3; // In mm on the cloth, as the lines of curved strips.
        Part(0, cloth.LengthMm, 0, cloth.WidthMm, Palette.MarkAt);
        Part(line, cloth.LengthMm - line, line, cloth.WidthMm - line, Palette.TurnInAt);
        foreach (var piece in cloth.Pieces)
        {
            double middle = (cloth.WidthMm / 2) + cloth.LaneYMm(piece.Lane);
            double from = piece.OnClothMm - piece.StartAllowanceMm;
            double to = piece.OnClothMm + plan.OnClothMm(piece.LengthMm) + piece.EndAllowanceMm;
            double half = cloth.LanePitchMm / 2;
            Part(from, to, middle - half, middle + half, Palette.ThreadAt + 20);
            Part(from + line, to - line, middle - half + line, middle + half - line, Palette.CottonAt);
        }

        if (!cut.IsBias)
        {
            foreach (var piece in cloth.Pieces)
            {
                double y = page.Y(one.AcrossMm + (cloth.WidthMm / 2) + cloth.LaneYMm(piece.Lane));
                Said which = $"round {piece.Round}, piece {piece.Number}: {plan.OnClothMm(piece.LengthMm):0} mm on the flat";
                int cap = page.CapPx(13 * size);
                face.Set(picture, which.ToString(), (page.X(one.AlongMm + piece.OnClothMm + 20), y + (cap / 2.0)), cap, Palette.Ink);
            }
        }
    }

    /// <summary>Fills a part of a cloth, straight or at 45°, row of pixels by row of pixels.</summary>
    private static void FillPart(
        ProofCanvas on, CutPlan cut, CutCloth one, (double From, double To) along, (double Low, double High) across, byte colour)
    {
        var (picture, page, _) = on;
        if (!cut.IsBias)
        {
            picture.Fill(
                page.X(one.AlongMm + along.From), page.Y(one.AcrossMm + across.High), page.X(one.AlongMm + along.To),
                page.Y(one.AcrossMm + across.Low), colour);
            return;
        }

        // The first strip's lower corner; strips lie one strip's slanted width apart.
        double x0 = one.AcrossMm * CutPlan.RootOfTwo;
        double y0 = one.Cloth.WidthMm / CutPlan.RootOfTwo;
        for (int row = picture.Top; row < picture.Bottom; row++)
        {
            double y = page.TopMm - ((row + 0.5) / page.PixelsPerMm) - y0;
            double left = Math.Max((along.From * CutPlan.RootOfTwo) - y, (across.Low * CutPlan.RootOfTwo) + y);
            double right = Math.Min((along.To * CutPlan.RootOfTwo) - y, (across.High * CutPlan.RootOfTwo) + y);
            if (right > left)
            {
                picture.Fill(page.X(x0 + left), row, page.X(x0 + right), row + 1, colour);
            }
        }
    }

    private static void DrawWords(ProofCanvas on, ImmutableArray<(Said Text, double SizeMm)> words, double size)
    {
        var (picture, page, face) = on;
        double y = -SideMm * size;
        foreach (var (text, sizeMm) in words)
        {
            string line = text.ToString();
            int cap = page.CapPx(sizeMm * size);
            double wide = face.Measure(line, cap), room = picture.Width - (2 * page.X(0));
            cap = wide > room ? Math.Max(LeastCapPx, (int)(cap * room / wide)) : cap;
            bool isFromRight = Language.Now is { IsRightToLeft: true };
            face.Set(
                picture, line, (isFromRight ? picture.Width - page.X(0) : page.X(0), page.Y(y)), cap, Palette.Ink, isFromRight ? 1 : 0);
            y -= LinesMm * size;
        }
    }

    /// <summary>What stands below the drawing, line by line: first the whole and the plan it belongs to, then each cloth.</summary>
    private static ImmutableArray<(Said Text, double SizeMm)> Words(StripPlan plan, CutPlan cut)
    {
        var words = ImmutableArray.CreateBuilder<(Said, double)>();
        Said bought = cut.BoughtMm > cut.LengthMm + 1 ? (Said)$" (buy {cut.BoughtMm / 1000:0.00} m and wash it first)" : "";
        Said lies = cut.IsBias ? "on the bias"
            : plan.Hem.IsCurved ? "arcs nested, chords along the selvedge" : "strips along the selvedge";
        words.Add((
            $"Cutting plan, plan {SheetMarks.Of(plan)}: {cut.LengthMm / 1000:0.00} m of cloth {cut.ClothWidthMm:0} mm wide{bought}, {lies}",
            CaptionMm));
        foreach (var cloth in cut.Cuts.OrderBy(c => c.Cloth.Number).Select(c => c.Cloth))
        {
            if (cloth.Band is { } band)
            {
                words.AddRange(CurvedCutting.Words(plan, cloth, band).Select(line => (line, ClothMm)));
                continue;
            }

            Said hoopings = cloth.Hoopings.IsEmpty ? "" : (Said)$", hoopings {cloth.Hoopings[0]} to {cloth.Hoopings[^1]}";
            int count = cloth.Pieces.Length;
            Said strips = Said.Plural(count, $"{count} strip of {cloth.LanePitchMm:0.#} mm", $"{count} strips of {cloth.LanePitchMm:0.#} mm");
            words.Add((
                $"cloth {cloth.Number}: {Wording.Size($"{cloth.LengthMm:0}", $"{cloth.WidthMm:0}")}, {strips} to be cut after sewing{hoopings}", ClothMm));
        }

        return words.ToImmutable();
    }
}

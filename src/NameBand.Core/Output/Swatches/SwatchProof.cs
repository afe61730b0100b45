using NameBand.Common;
using NameBand.Output.Drawing;

namespace NameBand.Output.Swatches;

/// <summary>A swatch at true scale as it will look, with what each sample is, and a tape whose zero lies at the left mark.</summary>
internal static class SwatchProof
{
    private const double AroundMm = 4; // Cloth about the field, so that its corners stand free.
    private const double CaptionMm = 2.3; // As on a hooping's proof.
    private const double FootMm = 9; // Two lines of that.

    public static void Draw(Stream png, SwatchFacts facts, SewnSwatch sewn, CaptionFace face)
    {
        var field = facts.Plan.Field;
        double left = field.LeftMm - AroundMm;
        double top = field.TopMm + AroundMm + TapeMeasure.WidthMm;
        double bottom = field.BottomMm - AroundMm;
        var page = new ProofPage(left, top, field.WidthMm + (2 * AroundMm), top - bottom + FootMm, HoopingProof.PixelsPerMm)
        {
            InWords = Caption(facts, sewn).ToString(),
        };
        page.Write(png, picture =>
        {
            var on = new ProofCanvas(picture, page, face);
            ClothWeave.At(HoopingProof.PixelsPerMm).Lay(picture, 0, 0, picture.Width, page.Y(bottom), Palette.CottonAt);
            HoopingProof.DrawField(picture, page, field);
            double zero = sewn.Hooping.LeftMarkMm;
            TapeMeasure.Draw(on, field.TopMm + AroundMm, zero, left - zero, left + page.WidthMm - zero);
            DrawMarks(on, facts, sewn);
            foreach (var placed in sewn.Hooping.Samples)
            {
                int cap = page.CapPx(1.35);
                double x = placed.At.XMm + (placed.WidthMm / 2);
                string sample = SwatchFacts.InWords(placed.Sample).ToString();
                face.Set(picture, sample, (page.X(x), page.Y(placed.LabelAt.YMm - 2.2)), cap, Palette.Ink, 0.5);
            }

            foreach (var placed in sewn.Hooping.Columns)
            {
                double x = placed.At.XMm + (placed.Column.AlongMm / 2);
                double y = placed.LabelAt.YMm - 2.2;
                string column = SwatchFacts.InWords(placed.Column).ToString();
                face.Set(picture, column, (page.X(x), page.Y(y)), page.CapPx(1.35), Palette.Ink, 0.5);
            }

            var steps = sewn.Path.Steps.AsSpan();
            double thread = facts.Fabric.Thread.DiameterMm;
            ThreadLayer.Draw(picture, steps, (page.X(0), page.Y(0)), ThreadKinds.Names, (Palette.ThreadAt, Palette.ThreadShades), thread);
            ThreadLayer.Draw(picture, steps, (page.X(0), page.Y(0)), ThreadKinds.Marks, (Palette.MarkAt, Palette.MarkShades), thread);
            DrawFoot(on, facts, sewn, bottom);
        });
    }

    /// <summary>A line from cross to cross with its length: what is measured after sewing.</summary>
    private static void DrawMarks(ProofCanvas on, SwatchFacts facts, SewnSwatch sewn)
    {
        var (picture, page, face) = on;
        double from = sewn.Hooping.LeftMarkMm;
        double to = from + facts.Plan.MarksApartMm;
        double y = sewn.Hooping.MarkYMm;
        picture.Level(
            page.X(from + 3.5), page.X(to - 3.5), page.Y(y), Math.Max(1, page.Px(0.15)), new Ink(Palette.Madder, 0.8, page.Px(1)));
        Said before = $"{facts.Plan.MarksApartMm:0} mm before sewing: measure it afterwards";
        face.Set(
            picture, before.ToString(),
            (page.X((from + to) / 2), page.Y(y + 0.7)), page.CapPx(1.6), Palette.Madder, 0.5);
    }

    private static void DrawFoot(ProofCanvas on, SwatchFacts facts, SewnSwatch sewn, double bottom)
    {
        var (picture, page, face) = on;
        picture.Fill(0, page.Y(bottom), picture.Width, page.HeightPx, Palette.TableAt + 9);
        picture.Level(0, picture.Width, page.Y(bottom), Math.Max(1, page.Px(0.15)), new Ink(Palette.Ink, 0.5));
        string caption = Caption(facts, sewn).ToString();
        CaptionLines.Set(on, caption, page.Y(bottom - 5.4), CaptionLines.FittingPx(on, caption, page.CapPx(CaptionMm)), Palette.Ink);
    }

    private static Said Caption(SwatchFacts facts, SewnSwatch sewn)
    {
        Said count = facts.Hoopings.Length > 1 ? (Said)$"swatch {sewn.Hooping.Number} of {facts.Hoopings.Length}" : "swatch";
        Said stitches = Wording.Count(sewn.Stitches, "stitch", "stitches");
        return $"{count}   ·   plan {facts.PlanMark}   ·   {facts.Fabric.Name}, {facts.Fabric.Thread.Name}   ·   {stitches}   ·   {Thousandths.Tenths(sewn.Minutes):0.0} min   ·   true size";
    }
}

using System.Globalization;
using NameBand.Garment;
using NameBand.Layout;
using NameBand.Output.Sheets;
using SkiaSharp;

namespace NameBand.Output.Packet;

/// <summary>The whole hem as one picture: rings for a closed edge seen from above, bars for one with two ends.</summary>
internal static class HemPicture
{
    private const double MostRingMm = 11;
    private const double LeastTextMm = 1.5;

    public static void Draw(SheetPages pages, StripPlan plan, double middleXMm, double middleYMm, double radiusMm)
    {
        if (!plan.Hem.Closed)
        {
            Bars(pages, plan, middleXMm - radiusMm, middleYMm - radiusMm, 2 * radiusMm);
            return;
        }

        double ring = Math.Min(MostRingMm, radiusMm * 0.85 / plan.Rounds.Length);
        double innermost = radiusMm - (ring * plan.Rounds.Length);
        for (int i = 0; i < plan.Rounds.Length; i++)
        {
            Ring(pages, plan, plan.Rounds[i], (middleXMm, middleYMm), radiusMm - (ring * i), ring);
        }

        pages.Line(middleXMm, middleYMm - radiusMm - 2, middleXMm, middleYMm - innermost + 2, 0.5);
        pages.Line(middleXMm, middleYMm + innermost - 4, middleXMm, middleYMm + innermost - 1, 0.5);
        Centred(pages, "ends meet", middleXMm, middleYMm - innermost + 6, 3.2);
        Centred(pages, "middle", middleXMm, middleYMm + innermost - 5.5, 3.2);
    }

    private static void Ring(SheetPages pages, StripPlan plan, Round round, (double X, double Y) middle, double outerMm, double ringMm)
    {
        var canvas = pages.Canvas;
        using (var edge = Ink.Quiet.Stroke(0.2))
        {
            canvas.DrawCircle((float)middle.X, (float)middle.Y, (float)outerMm, edge);
            canvas.DrawCircle((float)middle.X, (float)middle.Y, (float)(outerMm - ringMm + 1), edge);
        }

        // Read from outside, upright to the viewer, a strip runs against the clock seen from above.
        double turn = plan.Hem.Runs == RunDirection.CounterClockwise ? -1 : 1;
        double length = Math.Max(round.LengthMm, 1);
        double textRadius = outerMm - (ringMm * 0.62);
        foreach (var name in round.Names)
        {
            double angle = turn * 360 * (name.StartMm + (name.WidthMm / 2)) / length;
            double room = 2 * Math.PI * textRadius * name.WidthMm / length;
            string number = name.Order.ToString(CultureInfo.InvariantCulture);
            string text = $"{number} {name.Lettered.Name.Text}";
            double size = pages.Fitting(text, ringMm * 0.3, room * 1.12);
            if (size < LeastTextMm)
            {
                text = number;
                size = pages.Fitting(text, ringMm * 0.3, room);
            }

            canvas.Save();
            canvas.RotateDegrees((float)angle, (float)middle.X, (float)middle.Y);
            bool lowerHalf = Math.Cos(angle * Math.PI / 180) < 0;
            if (lowerHalf)
            {
                canvas.RotateDegrees(180, (float)middle.X, (float)(middle.Y - textRadius - (size * -0.3)));
            }

            Centred(pages, text, middle.X, middle.Y - textRadius + (lowerHalf ? size * 0.9 : 0), size);
            canvas.Restore();
        }
    }

    private static void Bars(SheetPages pages, StripPlan plan, double left, double top, double width)
    {
        double longest = plan.Rounds.Max(r => r.LengthMm);
        double y = top;
        foreach (var round in plan.Rounds.Reverse())
        {
            pages.Box(left, y, width * round.LengthMm / longest, 9, 0.2, Ink.Quiet);
            foreach (var name in round.Names)
            {
                double middle = left + (width * (name.StartMm + (name.WidthMm / 2)) / longest);
                string number = name.Order.ToString(CultureInfo.InvariantCulture);
                Centred(pages, number, middle, y + 6, pages.Fitting(number, 3.4, width * name.WidthMm / longest));
            }

            y += 11;
        }
    }

    private static void Centred(SheetPages pages, string text, double x, double baseline, double size) =>
        pages.Text(x - (pages.Face.WidthMm(text, size) / 2), baseline, text, size);
}

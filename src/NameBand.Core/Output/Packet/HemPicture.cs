using System.Globalization;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout;
using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>The whole hem as one picture: rings for a closed edge seen from above, bars for one with two ends.</summary>
internal static class HemPicture
{
    // A ring wide enough for a name, the least type that can be read, a bar and its label.
    private const double MostRingMm = 11;
    private const double LeastTextMm = 1.8;
    private const double BarMm = 9;
    private const double LabelMm = 3.2;

    /// <summary>Room that it takes in a square of this side.</summary>
    public static double HeightMm(StripPlan plan, double sideMm) =>
        plan.Hem.Closed ? sideMm : (plan.Rounds.Length * BarStepMm(plan, sideMm)) + 8;

    public static void Draw(SheetPages pages, StripPlan plan, double leftMm, double topMm, double sideMm)
    {
        if (pages.IsCounting)
        {
            return;
        }

        pages.AsItLies(() =>
        {
            if (plan.Hem.Closed)
            {
                Rings(pages, plan, (leftMm + (sideMm / 2), topMm + (sideMm / 2)), sideMm / 2);
            }
            else
            {
                Bars(pages, plan, leftMm, topMm, sideMm);
            }
        });
    }

    private static void Rings(SheetPages pages, StripPlan plan, (double X, double Y) middle, double radiusMm)
    {
        double ring = Math.Min(MostRingMm, radiusMm * 0.8 / Math.Max(1, plan.Rounds.Length));
        double innermost = radiusMm - (ring * plan.Rounds.Length);
        bool inWords = plan.Rounds.Select((round, i) => (round, TextRadius(radiusMm - (ring * i), ring)))
            .All(r => r.round.Names.All(n => Fitting(pages, Words(n), LetterMm(n, ring), Room(r.round, n, r.Item2)) >= LeastTextMm));
        for (int i = 0; i < plan.Rounds.Length; i++)
        {
            Ring(pages, plan, plan.Rounds[i], middle, (radiusMm - (ring * i), ring), inWords);
        }

        pages.Line(middle.X, middle.Y - radiusMm - 2, middle.X, middle.Y - innermost + 2, 0.5);
        var middles = GarmentMiddles.On(plan.Hem, 1);
        bool meetAtBack = middles.FromBack(0) is { DistanceMm: < 0.01 };
        Label(pages, middle, innermost, 0, meetAtBack ? "ends meet, centre back" : "ends meet");
        double turn = Turn(plan);
        foreach (var (at, text) in new (double?, Said)[] { (middles.FrontMm, "centre front"), (meetAtBack ? null : middles.BackMm, "centre back") })
        {
            if (at is { } part)
            {
                Label(pages, middle, innermost, turn * 2 * Math.PI * part, text);
            }
        }
    }

    /// <summary>A short mark inside the innermost ring, and a word beside it.</summary>
    private static void Label(SheetPages pages, (double X, double Y) middle, double innermostMm, double angle, Said text)
    {
        var (x, y) = (Math.Sin(angle), -Math.Cos(angle));
        pages.Line(
            middle.X + (x * (innermostMm - 4)), middle.Y + (y * (innermostMm - 4)),
            middle.X + (x * (innermostMm - 0.5)), middle.Y + (y * (innermostMm - 0.5)), 0.5);
        double half = pages.WidthMm(text, LabelMm) / 2;
        double away = innermostMm - 6.5 - (Math.Abs(x) * half);
        Centred(pages, text.ToString(), middle.X + (x * away), middle.Y + (y * away) + (LabelMm * 0.35), LabelMm);
    }

    /// <summary>Read from outside, upright to the viewer, a strip runs against the clock seen from above.</summary>
    private static double Turn(StripPlan plan) => plan.Hem.Runs == RunDirection.CounterClockwise ? -1 : 1;

    /// <param name="inWords">Whether there is room for every name; else all stand as numbers, to be looked up in the table.</param>
    private static void Ring(
        SheetPages pages, StripPlan plan, Round round, (double X, double Y) middle, (double OuterMm, double WideMm) ring, bool inWords)
    {
        var (outerMm, ringMm) = ring;
        var canvas = pages.Canvas;
        using (var edge = Ink.Quiet.Stroke(0.2))
        {
            canvas.DrawCircle((float)middle.X, (float)middle.Y, (float)outerMm, edge);
            canvas.DrawCircle((float)middle.X, (float)middle.Y, (float)(outerMm - (ringMm * 0.9)), edge);
        }

        foreach (var name in round.Names)
        {
            double angle = Turn(plan) * 360 * (name.StartMm + (name.WidthMm / 2)) / Math.Max(round.LengthMm, 1);
            string text = inWords ? Words(name) : name.Order.ToString(CultureInfo.InvariantCulture);
            double textRadius = OnLine(name, outerMm, ringMm);
            double size = Fitting(pages, text, LetterMm(name, ringMm), Room(round, name, textRadius));
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

    private static string Words(PlacedName name) => string.Create(CultureInfo.InvariantCulture, $"{name.Order} {name.Lettered.Name.Text}");

    private static double TextRadius(double outerMm, double ringMm) => outerMm - (ringMm * 0.62);

    /// <summary>Where a name's words stand in their ring: of two lines one above the other.</summary>
    private static double OnLine(PlacedName name, double outerMm, double ringMm) => name.Line switch
    {
        1 => outerMm - (ringMm * 0.38),
        2 => outerMm - (ringMm * 0.66),
        _ => TextRadius(outerMm, ringMm),
    };

    private static double LetterMm(PlacedName name, double ringMm) => ringMm * (name.Line == 0 ? 0.3 : 0.22);

    private static double Room(Round round, PlacedName name, double textRadiusMm) =>
        2 * Math.PI * textRadiusMm * name.WidthMm * 1.1 / Math.Max(round.LengthMm, 1);

    private static double BarStepMm(StripPlan plan, double sideMm) => Math.Min(BarMm + 2, (sideMm - 8) / Math.Max(1, plan.Rounds.Length));

    private static void Bars(SheetPages pages, StripPlan plan, double left, double top, double width)
    {
        double longest = Math.Max(1, plan.Rounds.Max(r => r.LengthMm));
        double step = BarStepMm(plan, width);
        double bar = step * BarMm / (BarMm + 2);
        double y = top;
        foreach (var round in plan.Rounds.Reverse())
        {
            pages.Box(left, y, width * round.LengthMm / longest, bar, 0.2, Ink.Quiet);
            foreach (var name in round.Names)
            {
                double middle = left + (width * (name.StartMm + (name.WidthMm / 2)) / longest);
                string number = name.Order.ToString(CultureInfo.InvariantCulture);
                var (down, most) = name.Line switch { 1 => (0.44, 0.32), 2 => (0.88, 0.32), _ => (0.66, 0.38) };
                Centred(pages, number, middle, y + (bar * down), Fitting(pages, number, bar * most, width * name.WidthMm / longest));
            }

            y += step;
        }

        var lowest = plan.Rounds[0];
        var middles = GarmentMiddles.On(plan.Hem, lowest.LengthMm);
        foreach (var (at, text) in new (double?, Said)[] { (middles.FrontMm, "centre front"), (middles.BackMm, "centre back") })
        {
            if (at is { } mm)
            {
                double x = left + (width * mm / longest);
                pages.Line(x, top - 1.5, x, y + 1, 0.4);
                Centred(pages, text.ToString(), x, y + 5, LabelMm);
            }
        }
    }

    private static double Fitting(SheetPages pages, string text, double sizeMm, double widthMm) =>
        pages.Fitting(Said.Plain(text), sizeMm, widthMm);

    private static void Centred(SheetPages pages, string text, double x, double baseline, double size) =>
        pages.Put(x - (pages.Face.WidthMm(text, size) / 2), baseline, text, size);
}

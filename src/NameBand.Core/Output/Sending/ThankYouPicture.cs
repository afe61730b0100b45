using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout;
using NameBand.Output.Drawing;
using NameBand.Output.Packet;
using NameBand.Stitching;

namespace NameBand.Output.Sending;

/// <summary>
/// A picture to send to one supporter: her name as the thread will lie, and where on the garment it is. The stitches are
/// those of the job's needle path; nothing of anybody else is in it.
/// </summary>
internal static class ThankYouPicture
{
    // Parts of the picture's width.
    private const double High = 0.6;
    private const double StripMiddle = 0.23;
    private const double StripMost = 0.38;
    private const double NameMost = 0.84;
    private const double Side = 0.07;

    /// <param name="sewn">The name's own stitches, from the left edge of its ink and pull compensation.</param>
    /// <param name="threadMm">Width at which the thread is drawn.</param>
    public static void Draw(
        Stream png, StripPlan plan, FoundName found, NeedlePath sewn, double threadMm, ThanksCaptions captions)
    {
        int widthPx = captions.WidthPx;
        var strip = plan.Hem.Strip;
        var name = found.Placed;
        double scale = Math.Min(widthPx * NameMost / Math.Max(name.WidthMm, 1), widthPx * StripMost / strip.FinishedWidthMm);
        double wide = widthPx / scale;
        double centre = widthPx * StripMiddle / scale;
        var page = new ProofPage(-wide / 2, centre, wide, widthPx * High / scale, scale)
        {
            Palette = DyePalette.Of(plan.Colours, plan.Colours.OfThread(name)),
        };
        page.Write(png, picture =>
        {
            ClothWeave.At(scale).Lay(picture, 0, 0, picture.Width, page.HeightPx, Palette.TableAt);
            double reach = strip.FinishedWidthMm / 2;
            ClothWeave.At(scale).Lay(picture, 0, page.Y(reach), picture.Width, page.Y(-reach), Palette.CottonAt);
            foreach (int edge in new[] { 1, -1 })
            {
                picture.Level(0, picture.Width, page.Y(edge * reach), Math.Max(1, widthPx / 500.0), new Ink(Palette.Weld, 0.9));
            }

            ThreadLayer.Draw(
                picture, sewn.Steps.AsSpan(), (page.X((-name.WidthMm / 2) + plan.InsetMm(name)), page.Y(name.BaselineYMm)),
                ThreadKinds.Names, (Palette.ThreadAt, Palette.ThreadShades), threadMm);
            Caption(picture, plan, found, captions, widthPx);
        });
    }

    private static void Caption(IndexedBitmap picture, StripPlan plan, FoundName found, ThanksCaptions captions, double width)
    {
        double room = width * (1 - (2 * Side));
        double middle = width / 2;
        captions.Set(picture, Said.Plain(captions.Title), (middle, width * 0.478), width * 0.03, room, 0.5);
        Said place = $"{ThanksWords.Number(plan, found)}, {ThanksWords.Place(found)}";
        captions.Set(picture, place, (middle, width * 0.514), width * 0.021, room, 0.5);
        if (Likeness.IsIn([found.Placed]))
        {
            captions.Set(picture, Likeness.OnPictures, (middle, width * 0.593), width * 0.0125, room, 0.5);
        }

        Hem(picture, found, captions, width);
    }

    /// <summary>The round as a line, as it is read from left to right, with the middles of front and back and this name on it.</summary>
    private static void Hem(IndexedBitmap picture, FoundName found, ThanksCaptions captions, double width)
    {
        double left = width * Side;
        double length = width * (1 - (2 * Side));
        double y = width * 0.55;
        double line = Math.Max(1, width / 600);
        picture.Level(left, left + length, y, line, new Ink(Palette.Ink, 0.8));
        picture.Upright(left, y - (4 * line), y + (4 * line), line, new Ink(Palette.Ink, 0.8));
        picture.Upright(left + length, y - (4 * line), y + (4 * line), line, new Ink(Palette.Ink, 0.8));
        double round = Math.Max(found.Middles.RoundLengthMm, 1);
        double X(double mm) => left + (length * Math.Clamp(mm / round, 0, 1));
        foreach (var (at, word) in Middles(found.Middles))
        {
            double x = X(at);
            picture.Upright(x, y - (4 * line), y + (4 * line), line, new Ink(Palette.Ink, 0.8));
            double align = at < round * 0.08 ? 0 : at > round * 0.92 ? 1 : 0.5;
            captions.Set(
                picture, word, (align == 0 ? left : align == 1 ? left + length : x, y + (width * 0.026)), width * 0.0165, length / 2,
                align);
        }

        double spot = X(found.MiddleMm);
        double half = Math.Max(length * found.Placed.WidthMm / round / 2, 3 * line);
        picture.Box(spot - half, y - (3 * line), spot + half, y + (3 * line), Palette.Madder);
    }

    private static IEnumerable<(double AtMm, Said Word)> Middles(GarmentMiddles middles)
    {
        if (middles.FrontMm is { } front)
        {
            yield return (front, "centre front");
        }

        if (middles.BackMm is { } back)
        {
            yield return (back, "centre back");

            // A closed round meets itself: what lies at its beginning lies at its end too.
            if (middles.IsClosed && back < 0.5)
            {
                yield return (middles.RoundLengthMm, "centre back");
            }
        }
    }
}

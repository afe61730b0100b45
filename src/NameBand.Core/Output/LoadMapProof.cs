using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Load;
using NameBand.Output.Drawing;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// A map of what a hooping's stitches do to the cloth, at true scale over the sewn names. Stripes and squares say as much as
/// the colours, and the worst places have figures.
/// </summary>
internal static class LoadMapProof
{
    private const double AroundMm = 4; // Cloth about the field, so that its corners stand free.
    private const double LineMm = 4.4; // Capitals of 1.9 mm with as much again and a little between two lines.
    private const double ApartMm = 8; // Nearer places are one: both lie in one letter, and their figures would lie on each other.
    /// <summary>A figure stands above its place, so that the place is seen.</summary>
    private const double AboveMm = 9;
    private const int WorstPlaces = 3; // A count, as docs/cloths.md says: where to look at first.

    public static void Draw(
        Stream png, StripPlan plan, Hooping hooping, NeedlePath path, (Fabric Cloth, LoadVerdict Verdict) load, CaptionFace face)
    {
        var (fabric, verdict) = load;
        var field = HoopField.Of(plan, hooping);
        var map = LoadMap.Of(path, fabric.Thread.DiameterMm);
        var worst = map?.Worst(WorstPlaces, ApartMm) ?? [];
        double foot = ((3 + worst.Length) * LineMm) + 3;
        double left = field.LeftMm - AroundMm;
        double bottom = field.BottomMm - AroundMm;
        Said caption = $"load of hooping {hooping.Number}   ·   mark {SheetMarks.Of(plan, hooping)}   ·   {fabric.Name}, {fabric.Thread.Name}   ·   {InWords(verdict)}";
        var page = new ProofPage(
            left, field.TopMm + AroundMm, field.WidthMm + (2 * AroundMm), field.HeightMm + (2 * AroundMm) + foot, HoopingProof.PixelsPerMm)
        {
            InWords = caption.ToString(),
            Palette = ThreadSections.Dyes(plan, hooping),
        };
        page.Write(png, picture =>
        {
            var on = new ProofCanvas(picture, page, face);
            ClothWeave.At(HoopingProof.PixelsPerMm).Lay(picture, 0, 0, picture.Width, page.Y(bottom), Palette.CottonAt);
            HoopingProof.DrawField(picture, page, field);
            ThreadSections.Draw(picture, (plan, hooping), path.Steps.AsSpan(), (page.X(0), page.Y(0)), fabric.Thread.DiameterMm);
            if (map is not null)
            {
                DrawMap(picture, page, map, fabric.MostPenetrationsPerMm2);
            }

            for (int i = 0; i < worst.Length; i++)
            {
                DrawPlace(on, worst[i], i + 1);
            }

            picture.Fill(0, page.Y(bottom), picture.Width, page.HeightPx, Palette.TableAt + 9);
            DrawFoot(on, bottom, caption, fabric, worst);
        });
    }

    private static void DrawMap(IndexedBitmap picture, ProofPage page, LoadMap map, double mostPerMm2)
    {
        for (int row = 0; row < map.Rows; row++)
        {
            for (int column = 0; column < map.Columns; column++)
            {
                if (map.IsCovered(column, row) && BandOf(map.Spot(column, row).PenetrationsPerMm2, mostPerMm2) is var band and > 0)
                {
                    var at = map.At(column, row);
                    Cell(picture, page, (at.XMm - (LoadMap.CellMm / 2), at.YMm + (LoadMap.CellMm / 2)), (column, row), band);
                }
            }
        }
    }

    /// <summary>0: well within what the cloth bears; 1: near it; 2: over it.</summary>
    private static int BandOf(double perMm2, double mostPerMm2) =>
        perMm2 > mostPerMm2 ? 2 : perMm2 > LoadMeter.SwatchPart * mostPerMm2 ? 1 : 0;

    /// <summary>Near the limit: slanting stripes. Over it: squares, stripes both ways.</summary>
    private static void Cell(
        IndexedBitmap picture, ProofPage page, (double LeftMm, double TopMm) corner, (int Column, int Row) at, int band)
    {
        bool rising = (at.Column + at.Row) % 4 < 2;
        bool falling = (at.Column - at.Row + 4000) % 4 < 2;
        double strength = band == 1 ? (rising ? 0.85 : 0.2) : rising && falling ? 0.95 : rising || falling ? 0.75 : 0.3;
        double size = page.Px(LoadMap.CellMm);
        picture.Box(
            page.X(corner.LeftMm), page.Y(corner.TopMm), page.X(corner.LeftMm) + size, page.Y(corner.TopMm) + size,
            band == 1 ? Palette.Tape : Palette.Madder,
            strength);
    }

    private static void DrawPlace(ProofCanvas on, LoadSpot spot, int number)
    {
        var (picture, page, face) = on;
        double x = page.X(spot.At.XMm);
        double y = page.Y(spot.At.YMm + AboveMm);
        picture.Upright(x, y, page.Y(spot.At.YMm), page.Px(0.25), Palette.Ink);
        double half = page.Px(1.7);
        picture.Box(x - half, y - half, x + half, y + half, Palette.Cotton);
        foreach (int side in new[] { -1, 1 })
        {
            picture.Level(x - half, x + half, y + (side * half), page.Px(0.25), Palette.Ink);
            picture.Upright(x + (side * half), y - half, y + half, page.Px(0.25), Palette.Ink);
        }

        int cap = page.CapPx(2);
        face.Set(picture, number.ToString(CultureInfo.InvariantCulture), (x, y + (cap / 2.0)), cap, Palette.Ink, 0.5);
    }

    private static Said InWords(LoadVerdict verdict) => verdict switch
    {
        LoadVerdict.Overworked => "the cloth will be overworked",
        LoadVerdict.SewSwatch => "sew a swatch first",
        _ => "fine",
    };

    private static void DrawFoot(ProofCanvas on, double bottomMm, Said caption, Fabric fabric, IReadOnlyList<LoadSpot> worst)
    {
        var (picture, page, face) = on;
        int cap = page.CapPx(1.9);
        double y = bottomMm - LineMm;
        Say(caption);
        foreach (var (spot, i) in worst.Select((s, i) => (s, i)))
        {
            Say($"{i + 1}   {spot.PenetrationsPerMm2:0.0} needle holes and {spot.ThreadPerMm2:0.0} mm of thread on each mm² sewn");
        }

        double most = fabric.MostPenetrationsPerMm2;
        double x = 4;
        foreach (int band in new[] { 1, 2 })
        {
            for (int row = 0; row < 6; row++)
            {
                for (int column = 0; column < 12; column++)
                {
                    Cell(picture, page, (page.LeftMm + x + (column * LoadMap.CellMm), y + 2.4 - (row * LoadMap.CellMm)), (column, row),
                        band);
                }
            }

            string text = (band == 1
                ? (Said)$"{LoadMeter.SwatchPart * most:0.0} to {most:0.0} holes: near what it bears"
                : $"over {most:0.0}: overworked").ToString();
            face.Set(picture, text, (page.Px(x + 7.2), page.Y(y)), cap, Palette.Ink);
            x += 7.2 + (face.Measure(text, cap) / HoopingProof.PixelsPerMm) + 6;
        }

        y -= LineMm;
        Say("holes and thread within 2 mm of each place, over the cloth that thread covers there");

        void Say(Said said)
        {
            string text = said.ToString();
            CaptionLines.Set(on, text, page.Y(y), CaptionLines.FittingPx(on, text, cap), Palette.Ink);
            y -= LineMm;
        }
    }
}

using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Drawing;

namespace NameBand.Output;

/// <summary>Draws cloths for curved strips to scale: each a piece of a ring, its long edge (nearest the hem) outside.</summary>
internal static class CurvedCutting
{
    private const double LineMm = 3; // On the cloth, which is drawn small: a thinner line would be lost.

    public static void DrawCloth(ProofCanvas on, StripPlan plan, CutCloth one, ClothBand band, double size)
    {
        var (picture, page, face) = on;
        var (x, y) = (one.AlongMm + (band.LengthMm / 2), one.AcrossMm - band.FootMm);
        double line = LineMm / band.Curve.RadiusMm;
        double half = band.AngleRad / 2;
        Fill(band.InnerRadiusMm, band.OuterRadiusMm, -half, half, Palette.MarkAt);
        Fill(band.InnerRadiusMm + LineMm, band.OuterRadiusMm - LineMm, line - half, half - line, Palette.TurnInAt);
        foreach (var piece in one.Cloth.Pieces)
        {
            // Read upright, a strip whose centre lies above hangs like a bowl; here it is turned round to stand as an arch.
            double sign = band.Curve.CentreIsAbove ? -1 : 1;
            var lane = band.LaneOf(piece);
            double from = ((piece.OnClothMm - piece.StartAllowanceMm) / lane.Curve.RadiusMm) + lane.LeftRad;
            double to = ((piece.OnClothMm + plan.OnClothMm(piece.LengthMm) + piece.EndAllowanceMm) / lane.Curve.RadiusMm) + lane.LeftRad;
            var (left, right) = sign > 0 ? (from, to) : (-to, -from);
            double reach = plan.Hem.Strip.CutWidthMm / 2;
            double centre = y + (sign * lane.CentreMm);
            Strip(reach, left, right, Palette.ThreadAt + 20);
            Strip(reach - LineMm, left + line, right - line, Palette.CottonAt);
            double top = centre + lane.Curve.CentreRadiusMm;
            Said which = $"round {piece.Round}, piece {piece.Number}";
            face.Set(
                picture, which.ToString(),
                (page.X(x), page.Y(top) + (page.CapPx(13 * size) / 2.0)), page.CapPx(13 * size), Palette.Ink, 0.5);

            void Strip(double half, double from, double to, byte colour) => FillRing(
                picture, page, (x, centre), (lane.Curve.CentreRadiusMm - half, lane.Curve.CentreRadiusMm + half), (from, to), colour);
        }

        void Fill(double inner, double outer, double from, double to, byte colour) =>
            FillRing(picture, page, (x, y), (inner, outer), (from, to), colour);
    }

    /// <summary>Edges and angles of a cloth's strip, as it is cut after sewing.</summary>
    public static IEnumerable<Said> Words(StripPlan plan, StripCloth cloth, ClothBand band)
    {
        yield return $"cloth {cloth.Number}: a piece of a ring, radius {band.OuterRadiusMm:0} mm outside and {band.InnerRadiusMm:0} mm inside, in a rectangle {Wording.Size($"{band.LengthMm:0}", $"{band.HeightMm:0}")}; hoopings {(cloth.Hoopings.IsEmpty ? (Said)"none" : $"{cloth.Hoopings[0]} to {cloth.Hoopings[^1]}")}";
        foreach (var piece in cloth.Pieces)
        {
            var edges = CurvedEdges.Of(plan, piece, band.LaneOf(piece).Curve);
            yield return $"    piece {piece.Number}, cut after sewing: lower cut edge {edges.LowerMm:0} mm at radius {edges.LowerRadiusMm:0} mm, upper cut edge {edges.UpperMm:0} mm at radius {edges.UpperRadiusMm:0} mm";
            yield return $"    the grain runs along it at its middle, and at {edges.GrainRad * 180 / Math.PI:0}° to it at its ends: there it gives, do not pull it";
        }
    }

    private static void FillRing(
        IndexedBitmap picture, ProofPage page, (double X, double Y) centre, (double Inner, double Outer) radii,
        (double From, double To) angles, byte colour)
    {
        int firstRow = Math.Max(picture.Top, (int)page.Y(centre.Y + radii.Outer));
        int first = Math.Max(0, (int)page.X(centre.X - radii.Outer));
        int last = Math.Min(picture.Width - 1, (int)page.X(centre.X + radii.Outer) + 1);
        for (int row = firstRow; row < picture.Bottom; row++)
        {
            double dy = page.TopMm - ((row + 0.5) / page.PixelsPerMm) - centre.Y;
            if (dy < radii.Inner * Math.Min(Math.Cos(angles.From), Math.Cos(angles.To)) - 1)
            {
                break;
            }

            var pixels = picture.Row(row);
            for (int px = first; px <= last; px++)
            {
                double dx = page.LeftMm + ((px + 0.5) / page.PixelsPerMm) - centre.X;
                double radius = Math.Sqrt((dx * dx) + (dy * dy));
                double angle = Math.Atan2(dx, dy);
                if (radius >= radii.Inner && radius <= radii.Outer && angle >= angles.From && angle <= angles.To)
                {
                    pixels[px] = colour;
                }
            }
        }
    }
}

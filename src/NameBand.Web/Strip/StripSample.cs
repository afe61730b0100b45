using System.Globalization;
using System.Text;
using NameBand.Layout;

namespace NameBand.Web.Strip;

/// <summary>A piece of a plan's strip with its first names, drawn at true scale.</summary>
internal static class StripSample
{
    /// <summary>As much of it as a wide card shows.</summary>
    private const double MostMm = 150;

    private const double BeforeMm = 3; // Cloth before the first name, as beside a name's own picture.

    /// <param name="plan">One with a name at least.</param>
    /// <returns>Of the drawing: its view box in mm, and the path of all letters.</returns>
    public static (double WidthMm, double HeightMm, string Path, string Names) Of(StripPlan plan)
    {
        var names = plan.Rounds[0].Names.ToList();
        double left = names[0].StartMm - BeforeMm, height = plan.Hem.Strip.FinishedWidthMm;
        var shown = names.TakeWhile(n => n.StartMm < left + MostMm).ToList();
        var path = new StringBuilder();
        foreach (var name in shown)
        {
            Letters(path, plan, name, name.StartMm - left, (height / 2) - name.BaselineYMm);
        }

        return (Math.Min(MostMm, shown[^1].EndMm - left + BeforeMm), height, path.ToString(),
            string.Join(", ", shown.Select(n => n.Lettered.Name.Text)));
    }

    /// <summary>The outlines of a name, the left edge of its width at <paramref name="x0Mm"/> and its base line at
    /// <paramref name="y0Mm"/>.</summary>
    public static void Letters(StringBuilder path, StripPlan plan, PlacedName name, double x0Mm, double y0Mm)
    {
        // A machine's own letters are drawn in a similar face, each name as wide as the machine sews it.
        double up = plan.LetterHeightMm;
        double along = name.Lettered.Ink.WidthMm > 0 ? Math.Min(name.WidthMm / name.Lettered.Ink.WidthMm, up * 3) : up;
        double x0 = x0Mm - (name.Lettered.Ink.LeftMm * along);
        foreach (var placed in name.Lettered.Pieces)
        {
            foreach (var ring in placed.Piece.Outline.Rings)
            {
                for (int i = 0; i < ring.Points.Length; i++)
                {
                    double x = x0 + ((placed.At.XMm + ring.Points[i].XMm) * along), y = y0Mm - ((placed.At.YMm + ring.Points[i].YMm) * up);
                    path.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{x:0.##} {y:0.##}");
                }

                path.Append('Z');
            }
        }
    }
}

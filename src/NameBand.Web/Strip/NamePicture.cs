using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Pipeline;
using NameBand.Stitching;

namespace NameBand.Web.Strip;

/// <summary>A name by itself on its strip, as it will be sewn: thread where it follows coordinates, else its letters.</summary>
internal static class NamePicture
{
    public const string Type = "image/svg+xml";

    private const double BesideMm = 3; // Cloth at both ends, so that the first letter does not touch the picture's edge.

    /// <summary>Width and height of the picture at true size.</summary>
    public static (double WidthMm, double HeightMm) SizeOf(StripPlan plan, PlacedName name) =>
        (name.WidthMm + (2 * BesideMm), plan.Hem.Strip.FinishedWidthMm);

    /// <summary>One name.</summary>
    public static string Svg(LaidOutJob laid, Round round, PlacedName name) =>
        Svg(laid, round, [name], name.StartMm - BesideMm, name.WidthMm + (2 * BesideMm), new Dyes(null, null));

    /// <summary>The beginning of the strip, with as many names as there is room for; at least one.</summary>
    /// <param name="dyes">Colours to look at it in.</param>
    public static string Beginning(LaidOutJob laid, double mostMm, Dyes dyes)
    {
        var round = laid.Plan.Rounds.FirstOrDefault(r => r.Names.Any());
        if (round is null)
        {
            return "";
        }

        var all = round.NamesAndMotifs.ToList();
        double left = all[0].StartMm - BesideMm;
        var shown = all.TakeWhile((n, i) => i == 0 || n.EndMm + BesideMm - left <= mostMm).ToList();
        return Svg(laid, round, shown, left, shown[^1].EndMm + BesideMm - left, dyes);
    }

    /// <summary>Where one name ends and the next one begins, with what is sewn between them in the middle.</summary>
    public static string Between(LaidOutJob laid, double widthMm)
    {
        var round = laid.Plan.Rounds.FirstOrDefault(r => r.Names.Any());
        if (round is null)
        {
            return "";
        }

        var names = round.Names.ToList();
        var motif = round.NamesAndMotifs.FirstOrDefault(n => !names.Contains(n)) ?? names[0];
        double middle = motif == names[0] && names.Count > 1 ? (names[0].EndMm + names[1].StartMm) / 2 : (motif.StartMm + motif.EndMm) / 2;
        double left = middle - (widthMm / 2);
        return Svg(
            laid, round, [.. round.NamesAndMotifs.Where(n => n.EndMm > left && n.StartMm < left + widthMm)], left, widthMm,
            new Dyes(null, null));
    }

    private static string Svg(LaidOutJob laid, Round round, List<PlacedName> names, double left, double widthMm, Dyes dyes)
    {
        var plan = laid.Plan;
        (double WidthMm, double HeightMm) size = (widthMm, plan.Hem.Strip.FinishedWidthMm);
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {size.WidthMm:0.##} {size.HeightMm:0.##}\" ");
        svg.Append(CultureInfo.InvariantCulture, $"width=\"{size.WidthMm:0.##}mm\" height=\"{size.HeightMm:0.##}mm\">");
        svg.Append(
            CultureInfo.InvariantCulture, $"<rect width=\"100%\" height=\"100%\" fill=\"{dyes.Cloth ?? plan.Colours.Job.OfCloth}\"/>");
        foreach (var name in names)
        {
            double x0 = name.StartMm - left, y0 = (size.HeightMm / 2) - name.BaselineYMm;
            var thread = dyes.Thread ?? ThreadTurns.ThreadOf(plan, name);
            bool isSewn = plan.HasNeedlePaths && !plan.Hem.IsCurved && laid.SewName(round, name).Stitches > 0;
            if (isSewn)
            {
                svg.Append(
                    CultureInfo.InvariantCulture,
                    $"<path fill=\"none\" stroke=\"{thread}\" stroke-width=\"{laid.Fabric.Thread.DiameterMm:0.##}\" ");
                svg.Append("stroke-linecap=\"round\" stroke-linejoin=\"round\" d=\"");
                Sewn(svg, laid.SewName(round, name), x0, y0);
            }
            else
            {
                svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"{thread}\" fill-rule=\"evenodd\" d=\"");
                StripSample.Letters(svg, plan, name, x0, y0);
            }

            svg.Append("\"/>");
        }

        return svg.Append("</svg>").ToString();
    }

    private static void Sewn(StringBuilder svg, NeedlePath path, double x0, double y0)
    {
        bool isDown = false;
        foreach (var step in path.Steps)
        {
            if (step.Action == NeedleAction.Stitch && step.Kind != StitchKind.Mark)
            {
                svg.Append(CultureInfo.InvariantCulture, $"{(isDown ? 'L' : 'M')}{x0 + step.At.XMm:0.##} {y0 - step.At.YMm:0.##}");
                isDown = true;
            }
            else
            {
                isDown = false;
            }
        }
    }
}

/// <summary>Colours to look at a strip in; null: the job's own.</summary>
internal sealed record Dyes(CssColour? Cloth, CssColour? Thread);

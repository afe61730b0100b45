using System.Globalization;
using System.Net;
using System.Text;
using NameBand.Common;
using NameBand.Garment.Hanging;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Pipeline;

namespace NameBand.Web.Strip;

/// <summary>
/// The garment as it hangs, flat: seen from the front and from the back, as an SVG. For a browser that cannot draw in depth. Narrow
/// panels of the cloth are laid down from the farthest to the nearest, so that a fold hides what lies behind it.
/// </summary>
internal static class GarmentDrawing
{
    private const int Panels = 224; // A count: on a hem of four metres a panel is 18 mm wide, so that the shading of a fold looks round.

    private static readonly CssColour Cloth = new(0x6c, 0x7c, 0xb5);

    public static string Svg(LaidOutJob laid)
    {
        var plan = laid.Plan;
        var hung = GarmentMap.Hang(laid);
        var garment = hung.Garment;
        bool isStraight = garment.Hem.IsStraight;
        double half = garment.Body.Max(l => isStraight ? l.AcrossMm / 2 : l.AcrossMm + (1.2 * l.DepthMm)) + 20;
        double tall = garment.Body[0].HeightMm + 40;
        var sewn = laid.SewnRows;
        bool isOutside = plan.Hem.Side == GarmentSide.Outside;
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {4 * half:0} {tall + 60:0}\" ");
        svg.Append(
            $"data-says=\"{GarmentMap.InWords(garment, plan)}\" data-side=\"{(isOutside ? "outside" : "inside")}\">");
        foreach (bool isFront in new[] { true, false })
        {
            svg.Append(CultureInfo.InvariantCulture, $"<g transform=\"translate({(isFront ? half : 3 * half):0.#} {tall - 20:0.#})\">");
            View(svg, hung, new Eye(plan, isFront, isOutside, n => n.IsGone || sewn.Contains(n.Lettered.Name.Row)));
            Said words = isFront ? "front" : "back";
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<text x=\"0\" y=\"55\" text-anchor=\"middle\" font-size=\"{tall / 18:0}\">{words}</text></g>");
        }

        return svg.Append("</svg>").ToString();
    }

    /// <summary>How it is looked at.</summary>
    private sealed record Eye(StripPlan Plan, bool IsFront, bool IsOutside, Func<PlacedName, bool> IsSewn)
    {
        /// <summary>Across the picture, and how far away.</summary>
        public (double X, double Away) Of((double XMm, double YMm) at) => IsFront ? (at.XMm, at.YMm) : (-at.XMm, -at.YMm);
    }

    private static void View(StringBuilder svg, HungPlan hung, Eye eye)
    {
        var garment = hung.Garment;
        var byStrip = garment.Strips.ToDictionary(s => s.Round, s => (Strip: s, Names: hung.Names.Where(n => n.Round == s.Round).ToList()));
        var panels = Enumerable.Range(0, Panels).Select(i => (From: i / (double)Panels, To: (i + 1) / (double)Panels))
            .OrderByDescending(p => eye.Of(garment.Hem.At((p.From + p.To) / 2)).Away).ToList();
        foreach (var (from, to) in panels)
        {
            var (x0, away0) = eye.Of(garment.Hem.At(from));
            var (x1, away1) = eye.Of(garment.Hem.At(to));
            // Counter-clockwise from the right of who looks: cloth that turns its outer side to her runs to the right.
            bool isOuter = garment.Hem.IsStraight ? eye.IsFront : x1 > x0;
            double shade = Math.Abs(x1 - x0) / Math.Max(Math.Sqrt(((x1 - x0) * (x1 - x0)) + ((away1 - away0) * (away1 - away0))), 1e-9);
            double light = (isOuter ? 0.55 : 0.3) + (0.45 * shade);
            Panel(svg, eye, garment.Body, from, to, Lit(Cloth, light));
            if (isOuter != eye.IsOutside)
            {
                continue;
            }

            foreach (var (strip, names) in byStrip.Values)
            {
                Panel(svg, eye, [strip.Upper, strip.Lower], from, to, Lit(eye.Plan.Colours.Job.OfCloth, light));
                foreach (var name in names)
                {
                    Name(svg, eye, strip, name, (from, to));
                }
            }
        }
    }

    /// <summary>As much of a name as lies on a panel: a bar as high as its letters.</summary>
    private static void Name(StringBuilder svg, Eye eye, HungStrip strip, HungName name, (double From, double To) panel)
    {
        double low = Math.Min(name.FromPart, name.ToPart), high = Math.Max(name.FromPart, name.ToPart);
        if (eye.Plan.Hem.Closed && high - low > 0.5)
        {
            // It lies over the place where the line begins.
            Piece(svg, eye, strip, name, (Math.Max(panel.From, high), panel.To));
            (low, high) = (0, low);
        }

        Piece(svg, eye, strip, name, (Math.Max(panel.From, low), Math.Min(panel.To, high)));
    }

    private static void Piece(StringBuilder svg, Eye eye, HungStrip strip, HungName name, (double From, double To) part)
    {
        if (part.To <= part.From)
        {
            return;
        }

        var plan = eye.Plan;
        double wide = Math.Max(plan.Hem.Strip.FinishedWidthMm, 1), tall = plan.LetterHeightMm * name.Name.Lettered.Standing.HeightFactor;
        double foot = (name.AboveHemMm - strip.AboveHemMm) / wide, head = foot + ((plan.Hem.ReadBy == Reader.Viewer ? tall : -tall) / wide);
        string sewn = eye.IsSewn(name.Name) ? "data-sewn=\"\"" : "fill-opacity=\"0.42\"";
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<path data-name=\"{name.Index}\" {sewn} fill=\"{ThreadTurns.ThreadOf(plan, name.Name)}\" d=\"");
        Corner(svg, 'M', eye, Between(strip, part.From, head));
        Corner(svg, 'L', eye, Between(strip, part.To, head));
        Corner(svg, 'L', eye, Between(strip, part.To, foot));
        Corner(svg, 'L', eye, Between(strip, part.From, foot));
        svg.Append(CultureInfo.InvariantCulture, $"Z\"><title>{WebUtility.HtmlEncode(name.Name.Lettered.Name.Text)}</title></path>");
    }

    private static (double XMm, double YMm, double HeightMm) Between(HungStrip strip, double part, double across)
    {
        var (a, b) = (strip.Lower.At(part), strip.Upper.At(part));
        return (a.XMm + (across * (b.XMm - a.XMm)), a.YMm + (across * (b.YMm - a.YMm)),
            strip.Lower.HeightMm + (across * (strip.Upper.HeightMm - strip.Lower.HeightMm)));
    }

    private static string Lit(CssColour colour, double light)
    {
        int Channel(byte of) => (int)Math.Round(of * Math.Min(light, 1));
        return FormattableString.Invariant($"#{Channel(colour.Red):x2}{Channel(colour.Green):x2}{Channel(colour.Blue):x2}");
    }

    private static void Panel(StringBuilder svg, Eye eye, IReadOnlyList<HungLine> lines, double from, double to, string fill)
    {
        // Panels run into each other: a hair of their own colour closes what is left between them.
        svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"{fill}\" stroke=\"{fill}\" stroke-width=\"0.8\" d=\"");
        for (int i = 0; i < lines.Count; i++)
        {
            var (x, y) = lines[i].At(from);
            Corner(svg, i == 0 ? 'M' : 'L', eye, (x, y, lines[i].HeightMm));
        }

        for (int i = lines.Count - 1; i >= 0; i--)
        {
            var (x, y) = lines[i].At(to);
            Corner(svg, 'L', eye, (x, y, lines[i].HeightMm));
        }

        svg.Append("Z\"/>");
    }

    private static void Corner(StringBuilder svg, char how, Eye eye, (double XMm, double YMm, double HeightMm) at) =>
        svg.Append(CultureInfo.InvariantCulture, $"{how}{eye.Of((at.XMm, at.YMm)).X:0.#} {-at.HeightMm:0.#}");
}

using System.Globalization;
using System.Security;
using System.Text;
using NameBand.Common;
using NameBand.Layout;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Writes a needle path as a drawing in SVG 1.1 (W3C Recommendation, second edition): a user unit is a millimetre, the
/// drawing is the sewing field, and there is a path for each run of stitches, from where the needle goes down first to
/// where it comes up and the cloth moves on. SVG's y runs down, so that of the needle path is turned round.
/// </summary>
internal static class NeedlePathSvg
{
    /// <param name="threadMm">Width at which the thread is drawn.</param>
    public static void Write(Stream stream, StripPlan plan, Hooping hooping, NeedlePath path, double threadMm)
    {
        var field = HoopField.Of(plan, hooping);
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), 64 * 1024, leaveOpen: true) { NewLine = "\n" };
        string names = string.Join(", ", hooping.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Lettered.Name.Text));
        string width = Mm(Thousandths.Of(field.WidthMm)), height = Mm(Thousandths.Of(field.HeightMm));
        writer.Write(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
            + $"<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{width}mm\" height=\"{height}mm\" "
            + $"viewBox=\"{Mm(Thousandths.Of(field.LeftMm))} {Mm(-Thousandths.Of(field.TopMm))} {width} {height}\">\n"
            + $"<title>hooping {hooping.Number.ToString(CultureInfo.InvariantCulture)}, mark {SheetMarks.Of(plan, hooping)}</title>\n"
            + $"<desc>{SecurityElement.Escape(names)}</desc>\n");
        string stroke = Mm(Thousandths.Of(threadMm));
        var steps = path.Steps.AsSpan();
        WriteRuns(
            writer, steps, marks: true,
            $"<g id=\"marks\" fill=\"none\" stroke=\"#8f8262\" stroke-width=\"{stroke}\" stroke-linejoin=\"round\">\n");
        var parts = ThreadSections.Of(plan, hooping, steps);
        for (int i = 0; i < parts.Length; i++)
        {
            string thread = parts[i].Thread?.ToString() ?? "#1c2c5c";
            string id = i == 0 ? "names" : FormattableString.Invariant($"names-{i + 1}");
            WriteRuns(
                writer, steps[parts[i].From..parts[i].To], marks: false,
                $"<g id=\"{id}\" fill=\"none\" stroke=\"{thread}\" stroke-width=\"{stroke}\" stroke-linejoin=\"round\">\n");
        }

        writer.Write("</svg>\n");
    }

    private static void WriteRuns(StreamWriter writer, ReadOnlySpan<NeedleStep> steps, bool marks, string open)
    {
        writer.Write(open);
        bool isDown = false;
        foreach (var step in steps)
        {
            bool isDrawn = step.Action == NeedleAction.Stitch && (step.Kind == StitchKind.Mark) == marks;
            if (isDrawn)
            {
                writer.Write(isDown ? "L" : "<path d=\"M");
                writer.Write(Mm(Thousandths.Of(step.At.XMm)));
                writer.Write(',');
                writer.Write(Mm(-Thousandths.Of(step.At.YMm)));
            }
            else if (isDown)
            {
                writer.Write("\"/>\n");
            }

            isDown = isDrawn;
        }

        writer.Write(isDown ? "\"/>\n</g>\n" : "</g>\n");
    }

    private static string Mm(long thousandths) => (new decimal(thousandths) / 1000).ToString("0.###", CultureInfo.InvariantCulture);
}

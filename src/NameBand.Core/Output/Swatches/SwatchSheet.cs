using System.Globalization;
using NameBand.Common;
using NameBand.Load.Swatches;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;
using NameBand.Stitching;
using SkiaSharp;

namespace NameBand.Output.Swatches;

/// <summary>The printed sheet of a swatch: how to sew it, a picture of it at true size, and a table to write down what was seen.</summary>
internal static class SwatchSheet
{
    // In a millimetre: paths are set in hundredths, which are whole numbers, so that the same bytes come out anywhere.
    private const float UnitsPerMm = 100;
    private const double RowMm = 8.2; // A row to write in by hand.

    public static void Write(Stream stream, Paper paper, SwatchFacts facts, string jobWord)
    {
        using var plain = SheetFace.Open(SheetFace.PlainName);
        using var strong = SheetFace.Open();
        Said foot = $"{PaperTitle.Short(facts.Title)} · swatch · plan {facts.PlanMark}";
        using var pages = new SheetPages(stream, paper, $"{facts.Title}: swatch", foot, plain, strong);
        var flow = new PageFlow(pages);
        flow.NewPage();
        flow.Heading("The swatch: sew it before the real cloth", 6.5);
        int number = 0;
        foreach (var step in Steps(facts, jobWord))
        {
            flow.Item((++number).ToString(CultureInfo.InvariantCulture) + ".", step);
        }

        flow.YMm += 2;
        flow.Text(ReadMePage.CareInOneLine, ink: Ink.Quiet);
        Pictures(flow, facts);
        Table(flow, facts);
        Settings(flow, facts, jobWord);
    }

    private static IEnumerable<Said> Steps(SwatchFacts facts, string jobWord)
    {
        var cloth = facts.Fabric;
        yield return $"Hoop a piece of the real cloth, {cloth.Name}, with its backing ({cloth.Backing}), the needle ({cloth.Needle}) and the thread ({cloth.Thread.Name}) that you will use. The grain lies as it will in the strip.";
        yield return $"Sew {Files(facts)}. The two crosses come first, in the colour of the cloth; then the machine stops for the thread of the names.";
        yield return "Take it out of the hoop, take the backing off, press it face down as you will press the strip, and let it cool.";
        yield return $"Measure from the middle of one cross to the middle of the other, to a tenth of a millimetre if you can. It was {facts.Plan.MarksApartMm:0} mm.";
        if (facts.Plan.Columns.Any())
        {
            Said labels = Wording.List([.. facts.Plan.Columns.Select(c => c.Label)]);
            yield return $"Measure how wide and how long each of the columns {labels} is, to a tenth of a millimetre, with callipers "
                + $"if you have them: from thread to thread, the width along the stitches. "
                + $"swatch {jobWord} --columns with the figures tells what the cloth draws in, and --set after it writes it into job.json.";
        }

        yield return $"Look at every sample at arm's length and through a glass, and write into the table what you see. Bend the cloth: is it stiff, or cut along an edge? Pull at a letter's edge: do holes open?";
        yield return $"Set what you found: swatch {jobWord} --measured with your length tells the shortening, and --set after it writes it into job.json; the others are in the last table.";
    }

    private static Said Files(SwatchFacts facts) => Said.Join(
        " and ", facts.Hoopings.Select(h =>
            (Said)$"{OutPaths.SwatchNeedlePath(h.Hooping.Number)} ({Wording.Count(h.Stitches, "stitch", "stitches")}, about {Math.Ceiling(h.Minutes):0} min)"));

    private static void Pictures(PageFlow flow, SwatchFacts facts)
    {
        var field = facts.Plan.Field;
        foreach (var sewn in facts.Hoopings)
        {
            if (field.WidthMm > flow.WidthMm || field.HeightMm + 14 > flow.PageRoomMm)
            {
                flow.Text($"The field is larger than this paper: {OutPaths.SwatchProof(sewn.Hooping.Number)} shows it at true size.");
                continue;
            }

            flow.Room(field.HeightMm + 12);
            flow.YMm += 7;
            flow.Pages.Text(
                PageFlow.LeftMm, flow.YMm,
                $"At true size: the crosses are {facts.Plan.MarksApartMm:0} mm apart on this paper too, if it was printed at 100 %.",
                    3.4, Ink.Quiet);
            flow.YMm += 3;
            Draw(flow, sewn, field.LeftMm, field.TopMm, field.WidthMm, field.HeightMm);
            flow.YMm += field.HeightMm + 2;
        }
    }

    private static void Draw(PageFlow flow, SewnSwatch sewn, double leftMm, double topMm, double widthMm, double heightMm)
    {
        double x = PageFlow.LeftMm + ((flow.WidthMm - widthMm) / 2);
        flow.Pages.Box(x, flow.YMm, widthMm, heightMm, 0.15, Ink.Faint);
        var canvas = flow.Pages.Canvas;
        canvas.Save();
        canvas.Translate((float)(x - leftMm), (float)(flow.YMm + topMm));
        canvas.Scale(1 / UnitsPerMm, -1 / UnitsPerMm);
        using (var names = Lines(sewn.Path, marks: false))
        using (var thread = Ink.Full.Stroke(0.2 * UnitsPerMm))
        {
            canvas.DrawPath(names, thread);
        }

        using (var marks = Lines(sewn.Path, marks: true))
        using (var basting = Ink.Quiet.Stroke(0.35 * UnitsPerMm))
        {
            canvas.DrawPath(marks, basting);
        }

        canvas.Restore();
    }

    private static SKPath Lines(NeedlePath path, bool marks)
    {
        using var builder = new SKPathBuilder();
        for (int i = 1; i < path.Steps.Length; i++)
        {
            var (before, step) = (path.Steps[i - 1], path.Steps[i]);
            if (step.Action == NeedleAction.Stitch && before.Action == NeedleAction.Stitch && (step.Kind == StitchKind.Mark) == marks
                && step.Kind is not (StitchKind.Underlay or StitchKind.Travel))
            {
                builder.MoveTo(Hundredths(before.At.XMm), Hundredths(before.At.YMm));
                builder.LineTo(Hundredths(step.At.XMm), Hundredths(step.At.YMm));
            }
        }

        return builder.Detach();
    }

    private static float Hundredths(double mm) => (float)Math.Round(mm * UnitsPerMm);

    private static void Table(PageFlow flow, SwatchFacts facts)
    {
        flow.Heading("What you saw", 6, 60);
        double[] at = [0, 13, 62, 90, 118, 146];
        Said[] head = ["", "sewn with", "cloth shows", "width, height", "puckers", "cloth holds"];
        Line(flow, at, head, Ink.Quiet);
        foreach (var sample in facts.Plan.Samples)
        {
            if (flow.Room(RowMm))
            {
                Line(flow, at, head, Ink.Quiet);
            }

            var drawn = SwatchFacts.InWords(sample);
            Line(flow, at, [Said.Plain(sample.Label), sample.IsJobs ? (Said)$"{drawn}, as the job" : drawn, "", "", "", ""], Ink.Full);
        }

        foreach (var column in facts.Plan.Columns)
        {
            if (flow.Room(RowMm))
            {
                Line(flow, at, head, Ink.Quiet);
            }

            var sewn = SwatchSewer.AsSewn(column, facts.Fabric);
            Said drawn = $"width {sewn.WidthMm:0.0}, length {sewn.LengthMm:0.0} mm";
            Line(flow, at, [Said.Plain(column.Label), drawn, "", "", "", ""], Ink.Full);
        }

        flow.YMm += 2;
        flow.Text("Cloth shows: none, a little, much. Width, height: thinner, as on the picture, fatter. Puckers: flat, a little, much. Cloth holds: firm, stiff, cut.", sizeMm: 3.4, ink: Ink.Quiet);
    }

    private static void Line(PageFlow flow, double[] at, Said[] cells, Ink ink)
    {
        flow.YMm += RowMm;
        for (int i = 0; i < cells.Length; i++)
        {
            int next = i + 1;
            while (next < cells.Length && cells[next].IsEmpty)
            {
                next++;
            }

            double room = (next < cells.Length ? at[next] - 1 : flow.WidthMm) - at[i];
            flow.Pages.Text(PageFlow.LeftMm + at[i], flow.YMm - 2.4, cells[i], flow.Pages.Fitting(cells[i], 3.5, room), ink);
        }

        flow.Pages.Line(PageFlow.LeftMm, flow.YMm, flow.RightMm, flow.YMm, 0.15, Ink.Faint);
    }

    private static (string Key, Said What) OfColumns(string jobWord) => (
        ((Said)"stitches.pullCompensation, pullGrowth, pullAcross and push").ToString(),
        $"swatch {jobWord} --columns works them out: widths and lengths of D1 to D4. They go before row B, which judges one word only.");

    private static void Settings(PageFlow flow, SwatchFacts facts, string jobWord)
    {
        flow.Heading("What to set in job.json", 6, 60);
        Said apart = $"{facts.Plan.MarksApartMm:0}";
        (string Key, Said What)[] rows =
        [
            ("strip.shortening",
                $"({apart} − your length) / {apart} = ________   (now {facts.ShorteningPart:0.####})"),
            ("stitches.spacing",
            $"the widest of row A at which no cloth shows: ________ mm   (now {facts.Fabric.SpacingMm:0.00})"),
            ("stitches.pullCompensation",
            $"of row B the one whose strokes are as wide as on the picture: ________ mm   (now {facts.Fabric.PullCompensationMm:0.00})"),
            .. facts.Plan.Columns.Any() ? new[] { OfColumns(jobWord) } : [],
            ("lettering.least",
            $"the smallest of row C that can be read at arm's length: ________ mm   (letters now {facts.LetterHeightMm:0.0})"),
        ];
        foreach (var (key, what) in rows)
        {
            flow.Room(RowMm + 6);
            flow.YMm += 6;
            flow.Pages.PutStrong(PageFlow.LeftMm, flow.YMm, key, 3.4);
            flow.YMm += 1;
            flow.Text(what, 4);
        }

        flow.YMm += 2;
        flow.Text("If the cloth is cut or puckers in every sample, no setting mends it: take another cloth or a firmer backing, then larger letters, then a lighter face.");
    }
}

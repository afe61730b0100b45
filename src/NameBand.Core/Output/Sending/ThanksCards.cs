using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;
using NameBand.Stitching;
using QRCoder;
using SkiaSharp;

namespace NameBand.Output.Sending;

/// <summary>
/// Cards to print and to cut apart, one for each name: A7, eight on A4, and likewise on US letter. On each the name as it is sewn, and
/// where it lies; with an address of the maker's, that as a QR code too.
/// </summary>
internal static class ThanksCards
{
    // Eight on a sheet: A4 halved three times is A7 (ISO 216), and US letter is cut likewise.
    private const int Across = 2;
    private const int Down = 4;
    private const double SideMm = 7; // Clear of the cut and of the rim that printers leave blank.
    private const double StripPart = 0.36; // Of a card's height: a little over a third for the strip, and the words below it.
    private const double CodeMm = 21; // Phones read a code of that size from paper: our assumption.

    /// <summary>Stands in the address for the number of the name.</summary>
    public const string NumberMark = "{number}";

    /// <param name="sewn">The stitches of a name; origin at the left edge of its width, on its base line.</param>
    public static void Write(
        Stream stream, Paper paper, PacketMatter matter, ImmutableArray<FoundName> names, Func<PlacedName, NeedlePath> sewn)
    {
        using var face = SheetFace.Open();
        using var pdf = new PdfStream(stream);
        using (var document = SKDocument.CreatePdf(
            pdf, new SKDocumentPdfMetadata
            {
                Title = ((Said)$"{matter.Job.Title}: cards").ToString(),
                Producer = "NameBand",
                RasterDpi = 300,
                EncodingQuality = 101
            }))
        {
            var (wide, high) = (paper.WidthMm / Across, paper.HeightMm / Down);
            foreach (var page in names.Chunk(Across * Down))
            {
                var canvas = document.BeginPage(
                    (float)paper.WidthMm * SheetPages.PointsPerMm, (float)paper.HeightMm * SheetPages.PointsPerMm);
                canvas.Scale(SheetPages.PointsPerMm);
                for (int i = 0; i < page.Length; i++)
                {
                    canvas.Save();
                    canvas.Translate((float)(i % Across * wide), (float)(i / Across * high));
                    Card(canvas, face, matter, page[i], sewn(page[i].Placed), (wide, high));
                    canvas.Restore();
                }

                Cuts(canvas, paper, wide, high);
                document.EndPage();
            }

            document.Close();
        }

        pdf.Finish();
    }

    /// <summary>The address as it stands on the card of a name.</summary>
    /// <remarks>Readers of codes guess at letters beyond ASCII, and may guess wrongly: they go as RFC 3986 has them.</remarks>
    public static string Address(string address, FoundName found) =>
        string.Concat(address.Replace(NumberMark, found.Placed.Order.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .EnumerateRunes().Select(r => r.IsAscii ? r.ToString() : Uri.EscapeDataString(r.ToString())));

    private static void Card(
        SKCanvas canvas, SheetFace face, PacketMatter matter, FoundName found, NeedlePath path, (double Wide, double High) size)
    {
        var (plan, job) = (matter.Plan, matter.Job);
        double room = size.Wide - (2 * SideMm);
        Strip(canvas, matter, found, path, (SideMm, SideMm, room, size.High * StripPart));
        double below = SideMm + (size.High * StripPart) + 8;
        string? address = job.Show.ThanksAddress is { } hers ? Address(hers, found) : null;
        double words = address is null ? room : room - CodeMm - 3;
        Text(canvas, face, Said.Plain(PaperTitle.Short(PlainText.OneLine(job.Title))), below, 4.4, (size.Wide, words));
        Text(canvas, face, ThanksWords.Number(plan, found), below + 6.5, 3.3, (size.Wide, words));
        Text(canvas, face, ThanksWords.Place(found), below + 11.5, 3.3, (size.Wide, words));
        Text(canvas, face, "Thank you.", size.High - SideMm, 4.4, (size.Wide, words));
        if (address is not null)
        {
            bool isAtLeft = Language.Now is { IsRightToLeft: true };
            Code(canvas, address, isAtLeft ? SideMm : size.Wide - SideMm - CodeMm, size.High - SideMm - CodeMm);
        }
    }

    private static void Strip(
        SKCanvas canvas, PacketMatter matter, FoundName found, NeedlePath path, (double X, double Y, double Wide, double High) box)
    {
        var (plan, job) = (matter.Plan, matter.Job);
        var name = found.Placed;
        double strip = plan.Hem.Strip.FinishedWidthMm;
        float scale = (float)Math.Min(box.Wide * 0.94 / Math.Max(name.WidthMm, 1), box.High / strip);
        var thread = job.Colours.OfThread(job.Groups.Of(name.Lettered.Name.Group));
        using var ground = new SKPaint { Color = Colour(job.Colours.OfCloth) };
        double high = strip * scale;
        double top = box.Y + ((box.High - high) / 2);
        canvas.DrawRect((float)box.X, (float)top, (float)box.Wide, (float)high, ground);
        using var line = Line(path);
        canvas.Save();
        canvas.Translate((float)(box.X + (box.Wide / 2)), (float)(box.Y + (box.High / 2)));
        canvas.Scale(scale);
        canvas.Translate((float)((-name.WidthMm / 2) + plan.InsetMm(name)), (float)-name.BaselineYMm);
        foreach (var (colour, part) in new[] { (Public.PublicPicture.Shaded(thread), 1.0), (thread, Public.PublicPicture.LitPart) })
        {
            using var stroke = new SKPaint
            {
                Color = Colour(colour),
                IsStroke = true,
                IsAntialias = true,
                StrokeWidth = (float)(matter.Fabric.Thread.DiameterMm * part),
                StrokeJoin = SKStrokeJoin.Bevel,
            };
            canvas.DrawPath(line, stroke);
        }

        canvas.Restore();
    }

    private static SKPath Line(NeedlePath path)
    {
        using var line = new SKPathBuilder();
        var before = new Point(0, 0);
        bool isDown = false;
        foreach (var step in path.Steps)
        {
            bool isDrawn = step.Action == NeedleAction.Stitch && step.Kind is StitchKind.Satin or StitchKind.Running or StitchKind.Travel;
            if (isDrawn)
            {
                if (!isDown)
                {
                    line.MoveTo((float)before.XMm, (float)-before.YMm);
                }

                line.LineTo((float)step.At.XMm, (float)-step.At.YMm);
            }

            isDown = isDrawn;
            before = step.At;
        }

        return line.Detach();
    }

    /// <summary>ISO/IEC 18004, level M: a fifteenth of it may be spoiled.</summary>
    private static void Code(SKCanvas canvas, string address, double left, double top)
    {
        using var data = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.M);
        var rows = data.ModuleMatrix;
        float module = (float)(CodeMm / rows.Count);
        using var paper = new SKPaint { Color = SKColors.White };
        using var ink = new SKPaint { Color = SKColors.Black };
        canvas.DrawRect((float)left, (float)top, (float)CodeMm, (float)CodeMm, paper);
        for (int y = 0; y < rows.Count; y++)
        {
            for (int x = 0; x < rows[y].Count; x++)
            {
                if (rows[y][x])
                {
                    canvas.DrawRect((float)left + (x * module), (float)top + (y * module), module, module, ink);
                }
            }
        }
    }

    private static void Text(SKCanvas canvas, SheetFace face, Said said, double baseline, double size, (double Card, double Words) wide)
    {
        string text = said.ToString();
        double width = face.WidthMm(text, size);
        size = width > wide.Words ? size * wide.Words / width : size;
        double left = Language.Now is { IsRightToLeft: true } ? wide.Card - SideMm - Math.Min(width, wide.Words) : SideMm;
        using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true };
        face.Draw(canvas, text, left, baseline, size, ink);
    }

    private static void Cuts(SKCanvas canvas, Paper paper, double wide, double high)
    {
        using var hair = new SKPaint { Color = new SKColor(0xB0, 0xB0, 0xB0), IsStroke = true, StrokeWidth = 0.15f };
        canvas.DrawLine((float)wide, 0, (float)wide, (float)paper.HeightMm, hair);
        for (int i = 1; i < Down; i++)
        {
            canvas.DrawLine(0, (float)(i * high), (float)paper.WidthMm, (float)(i * high), hair);
        }
    }

    private static SKColor Colour(CssColour colour) => new(colour.Red, colour.Green, colour.Blue);
}

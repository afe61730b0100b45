using NameBand.Common;
using SkiaSharp;

namespace NameBand.Output.Sheets;

/// <summary>
/// A PDF drawn in millimetres, y down from the paper's upper left corner, true to scale when it is printed at its own
/// size (a PDF unit is 1/72 in). The same drawing gives the same bytes.
/// </summary>
internal sealed class SheetPages : IDisposable
{
    /// <summary>A PDF unit is 1/72 in (ISO 32000-1; from memory).</summary>
    public const float PointsPerMm = (float)(72 / Length.MmPerInch);

    private readonly SKDocument? _document;
    private readonly PdfStream? _stream;
    private readonly Said _foot;
    private SKCanvas? _canvas;

    /// <param name="strong">The face of headings; null: that of the text.</param>
    public SheetPages(Stream stream, Paper paper, Said title, Said foot, SheetFace face, SheetFace? strong = null)
        : this(paper, foot, face, strong)
    {
        _stream = new PdfStream(stream);
        _document = SKDocument.CreatePdf(
            _stream, new SKDocumentPdfMetadata { Title = title.ToString(), Producer = "NameBand", RasterDpi = 300, EncodingQuality = 101 });
    }

    private SheetPages(Paper paper, Said foot, SheetFace face, SheetFace? strong)
    {
        Paper = paper;
        Face = face;
        StrongFace = strong ?? face;
        _foot = foot;
        RunsFromRight = Language.Now is { IsRightToLeft: true };
    }

    /// <summary>Draws twice: first into the air, to count the pages, so that each can say how many there are.</summary>
    /// <param name="draw">Must leave out what is costly and takes no room while <see cref="IsCounting"/>.</param>
    /// <returns>How many pages there are.</returns>
    public static int WriteCounted(
        Stream stream, Paper paper, Said title, Said foot, (SheetFace Text, SheetFace? Strong) faces, Action<SheetPages> draw)
    {
        using var counting = new SheetPages(paper, foot, faces.Text, faces.Strong);
        draw(counting);
        using var pages = new SheetPages(stream, paper, title, foot, faces.Text, faces.Strong) { Of = counting.Page };
        draw(pages);
        return counting.Page;
    }

    /// <summary>Whether only the pages are counted and nothing is drawn.</summary>
    public bool IsCounting => _document is null;

    public Paper Paper { get; }

    public SheetFace Face { get; }

    public SheetFace StrongFace { get; }

    public int Page { get; private set; }

    /// <summary>How many pages there will be; 0 when that is not known, or while they are counted.</summary>
    public int Of { get; private init; }

    /// <summary>
    /// Whether the page is read from right to left: then what is set at the left in English stands at the right, and the
    /// other way about. <see cref="AsItLies"/> leaves out what is drawn of cloth and paper.
    /// </summary>
    public bool RunsFromRight { get; private set; }

    /// <summary>The page being drawn on, its unit a millimetre.</summary>
    public SKCanvas Canvas => _canvas ?? throw new InvalidOperationException("No page was begun.");

    public void Begin()
    {
        End();
        Page++;
        if (_document is null)
        {
            return;
        }

        _canvas = _document.BeginPage((float)Paper.WidthMm * PointsPerMm, (float)Paper.HeightMm * PointsPerMm);
        _canvas.Scale(PointsPerMm);
        Said page = Of > 0 ? (Said)$"page {Page} of {Of}" : $"page {Page}";
        Text(15, Paper.HeightMm - 8, _foot, 3.2, Ink.Quiet);
        TextRight(Paper.WidthMm - 15, Paper.HeightMm - 8, page, 3.2, Ink.Quiet);
    }

    /// <summary>Cloth lies as it lies, whichever way a page is read: a drawing has its left at the left.</summary>
    public void AsItLies(Action draw)
    {
        bool before = RunsFromRight;
        RunsFromRight = false;
        draw();
        RunsFromRight = before;
    }

    /// <summary>Where on the paper something begins that is this wide and is set from <paramref name="xMm"/> on.</summary>
    public double LeftOf(double xMm, double widthMm) => RunsFromRight ? Paper.WidthMm - xMm - widthMm : xMm;

    public void Text(double xMm, double baselineMm, Said text, double sizeMm, Ink? ink = null) =>
        Put(xMm, baselineMm, text.ToString(), sizeMm, ink);

    /// <summary>Sets a name, a number, or a line of a text that is said already.</summary>
    public void Put(double xMm, double baselineMm, string text, double sizeMm, Ink? ink = null)
    {
        if (IsCounting)
        {
            return;
        }

        using var paint = (ink ?? Ink.Full).Fill();
        xMm = RunsFromRight ? LeftOf(xMm, Face.WidthMm(text, sizeMm)) : xMm;
        int used = 0;
        foreach (string piece in text.Split(SheetFace.Blank))
        {
            xMm += Face.Draw(Canvas, piece, xMm, baselineMm, sizeMm, paint);
            if ((used += piece.Length + 1) <= text.Length)
            {
                DrawBlank(xMm, baselineMm, sizeMm, ink);
                xMm += SheetFace.BlankPart * sizeMm;
            }
        }
    }

    /// <summary>A flat trough under the line: room where nothing is sewn.</summary>
    private void DrawBlank(double xMm, double baselineMm, double sizeMm, Ink? ink)
    {
        double left = xMm + (0.06 * sizeMm);
        double right = xMm + ((SheetFace.BlankPart - 0.06) * sizeMm);
        double top = baselineMm - (0.1 * sizeMm);
        double bottom = baselineMm + (0.1 * sizeMm);
        double width = 0.05 * sizeMm;
        AsItLies(() =>
        {
            Line(left, top, left, bottom, width, ink);
            Line(left, bottom, right, bottom, width, ink);
            Line(right, bottom, right, top, width, ink);
        });
    }

    /// <summary>A heading.</summary>
    public void Strong(double xMm, double baselineMm, Said text, double sizeMm, Ink? ink = null) =>
        PutStrong(xMm, baselineMm, text.ToString(), sizeMm, ink);

    public void PutStrong(double xMm, double baselineMm, string text, double sizeMm, Ink? ink = null)
    {
        if (!IsCounting)
        {
            using var paint = (ink ?? Ink.Full).Fill();
            xMm = RunsFromRight ? LeftOf(xMm, StrongFace.WidthMm(text, sizeMm)) : xMm;
            StrongFace.Draw(Canvas, text, xMm, baselineMm, sizeMm, paint);
        }
    }

    public void TextRight(double xMm, double baselineMm, Said text, double sizeMm, Ink? ink = null) =>
        PutRight(xMm, baselineMm, text.ToString(), sizeMm, ink);

    public void PutRight(double xMm, double baselineMm, string text, double sizeMm, Ink? ink = null)
    {
        if (!IsCounting)
        {
            Put(xMm - Face.WidthMm(text, sizeMm), baselineMm, text, sizeMm, ink);
        }
    }

    /// <summary>Text in lines no wider than <paramref name="widthMm"/>; returns the base line after the last.</summary>
    public double Wrapped(double xMm, double baselineMm, double widthMm, Said text, double sizeMm, Ink? ink = null)
    {
        string line = "";
        foreach (string word in text.ToString().Split(' '))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Face.WidthMm(longer, sizeMm) > widthMm)
            {
                Put(xMm, baselineMm, line, sizeMm, ink);
                baselineMm += sizeMm * 1.35;
                longer = word;
            }

            line = longer;
        }

        Put(xMm, baselineMm, line, sizeMm, ink);
        return baselineMm + (sizeMm * 1.35);
    }

    public double WidthMm(Said text, double sizeMm) => Face.WidthMm(text.ToString(), sizeMm);

    /// <summary>The size at which a text fits a width, at most <paramref name="sizeMm"/>.</summary>
    public double Fitting(Said text, double sizeMm, double widthMm)
    {
        double width = WidthMm(text, sizeMm);
        return width <= widthMm ? sizeMm : sizeMm * widthMm / width;
    }

    public void Line(double x1Mm, double y1Mm, double x2Mm, double y2Mm, double widthMm = 0.2, Ink? ink = null)
    {
        if (!IsCounting)
        {
            using var paint = (ink ?? Ink.Full).Stroke(widthMm);
            Canvas.DrawLine((float)LeftOf(x1Mm, 0), (float)y1Mm, (float)LeftOf(x2Mm, 0), (float)y2Mm, paint);
        }
    }

    public void Box(double xMm, double yMm, double widthMm, double heightMm, double lineMm = 0.3, Ink? ink = null)
    {
        if (!IsCounting)
        {
            using var paint = (ink ?? Ink.Full).Stroke(lineMm);
            Canvas.DrawRect((float)LeftOf(xMm, widthMm), (float)yMm, (float)widthMm, (float)heightMm, paint);
        }
    }

    public void Dispose()
    {
        End();
        _document?.Close();
        _document?.Dispose();
        _stream?.Finish();
    }

    private void End()
    {
        if (_canvas is not null)
        {
            _document!.EndPage();
            _canvas = null;
        }
    }
}

/// <summary>A grey of the printer's black.</summary>
internal sealed record Ink(byte Grey)
{
    public static Ink Full { get; } = new(0);

    public static Ink Quiet { get; } = new(90);

    public static Ink Faint { get; } = new(170);

    public SKPaint Fill() => new() { Color = new SKColor(Grey, Grey, Grey), IsAntialias = true };

    public SKPaint Stroke(double widthMm) => new()
    {
        Color = new SKColor(Grey, Grey, Grey),
        IsAntialias = true,
        Style = SKPaintStyle.Stroke,
        StrokeWidth = (float)widthMm,
    };
}

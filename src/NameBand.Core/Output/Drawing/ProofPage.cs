namespace NameBand.Output.Drawing;

/// <summary>A proof's page: which part of the plane it shows and at which scale. Plane in mm, y up.</summary>
internal sealed record ProofPage(double LeftMm, double TopMm, double WidthMm, double HeightMm, double PixelsPerMm)
{
    // A row has a byte of its own before its pixels. A picture of this size is drawn in one piece; a larger one in bands of rows,
    // so that memory stays bounded.
    private const int MostPixelsAtOnce = 1 << 23;

    public int WidthPx => (int)Math.Round(WidthMm * PixelsPerMm);

    public int HeightPx => (int)Math.Round(HeightMm * PixelsPerMm);

    /// <summary>The same page for what is drawn from another place on the plane.</summary>
    public ProofPage From(double xMm, double yMm) => this with { LeftMm = LeftMm - xMm, TopMm = TopMm - yMm };

    /// <summary>A place on the plane in pixels of the page.</summary>
    public double X(double mm) => (mm - LeftMm) * PixelsPerMm;

    public double Y(double mm) => (TopMm - mm) * PixelsPerMm;

    /// <summary>A length in pixels.</summary>
    public double Px(double mm) => mm * PixelsPerMm;

    /// <summary>Cap height in whole pixels of a caption, never too small to read on a screen.</summary>
    public int CapPx(double mm) => Math.Max(7, (int)Math.Round(mm * PixelsPerMm));

    /// <summary>What stands on the page, as text in the file, for those who do not see it; empty for none.</summary>
    public string InWords { get; init; } = "";

    /// <summary>The colours of cloth and thread.</summary>
    public DyePalette Palette { get; init; } = DyePalette.Usual;

    /// <summary>Draws the page band by band and writes it as PNG.</summary>
    /// <param name="mostPixelsAtOnce">Pixels of the largest band; the result is the same for any.</param>
    public void Write(Stream png, Action<IndexedBitmap> draw, int mostPixelsAtOnce = MostPixelsAtOnce)
    {
        using var stream = new PngStream(png, WidthPx, HeightPx, PixelsPerMm, Palette.Colours, InWords);
        int rows = Math.Clamp(mostPixelsAtOnce / (WidthPx + 1), 8, HeightPx);
        for (int top = 0; top < HeightPx; top += rows)
        {
            using var band = new IndexedBitmap(WidthPx, top, Math.Min(rows, HeightPx - top), PixelsPerMm) { Palette = Palette };
            draw(band);
            stream.WriteRows(band.Bytes);
        }
    }
}

using SkiaSharp;

namespace NameBand.Output.Sheets;

/// <summary>The faces sheets are set in: those that travel with the program.</summary>
internal sealed class SheetFace : IDisposable
{
    private readonly SKTypeface _bold;

    private SheetFace(SKTypeface bold) => _bold = bold;

    /// <exception cref="IOException">The program's own faces are missing.</exception>
    public static SheetFace Open()
    {
        string path = Path.Combine(AppContext.BaseDirectory, "fonts-open", "noto-sans-bold", "NotoSans-Bold.ttf");
        return new SheetFace(SKTypeface.FromFile(path) ?? throw new IOException("The face for the sheets is missing: install the program again, with its folder fonts-open."));
    }

    /// <param name="sizeMm">Height of the type, from line to line.</param>
    public SKFont At(double sizeMm) => new(_bold, (float)sizeMm)
    {
        Hinting = SKFontHinting.None,
        Subpixel = true,
        LinearMetrics = true,
        Edging = SKFontEdging.Antialias,
    };

    public double WidthMm(string text, double sizeMm)
    {
        using var font = At(sizeMm);
        return font.MeasureText(text);
    }

    public void Dispose() => _bold.Dispose();
}

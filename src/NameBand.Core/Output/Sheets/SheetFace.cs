using NameBand.Lettering;
using SkiaSharp;

namespace NameBand.Output.Sheets;

/// <summary>The faces sheets are set in: those that travel with the program.</summary>
internal sealed class SheetFace : IDisposable
{
    private const string FaceName = "Noto Sans Bold";
    /// <summary>How a blank stands in what is handed to a sheet.</summary>
    public const char Blank = '␣';

    private readonly SKTypeface _bold;

    private SheetFace(SKTypeface bold) => _bold = bold;

    /// <exception cref="IOException">The program's own faces are missing.</exception>
    public static SheetFace Open()
    {
        const string Missing = "The face for the sheets is missing: install the program again, with its folder fonts-open.";
        string path = new FaceShelf().PathOf(FaceName) ?? throw new IOException(Missing);
        return new SheetFace(SKTypeface.FromFile(path) ?? throw new IOException(Missing));
    }

    /// <param name="sizeMm">Height of the type, from line to line.</param>
    public SKFont At(double sizeMm) => new(_bold, (float)sizeMm)
    {
        Hinting = SKFontHinting.None,
        Subpixel = true,
        LinearMetrics = true,
        Edging = SKFontEdging.Antialias,
    };

    /// <summary>Width of the mark that shows a blank, as a part of the size; no face of ours has it, so it is drawn.</summary>
    public const double BlankPart = 0.5;

    public double WidthMm(string text, double sizeMm)
    {
        using var font = At(sizeMm);
        return text.Split(Blank).Sum(t => font.MeasureText(t)) + (text.Count(c => c == Blank) * BlankPart * sizeMm);
    }

    public void Dispose() => _bold.Dispose();
}

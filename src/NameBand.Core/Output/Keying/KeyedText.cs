using NameBand.Common;
using NameBand.MachineLetters.Alphabets;
using NameBand.Output.Sheets;

namespace NameBand.Output.Keying;

/// <summary>
/// What is to be keyed, letter by letter, so that 1, I, l and 0, O are told apart: the 0 is struck through, and the bars of the I, which
/// the face has as short as those of its 1, are made longer in their own weight. The l has its foot from the face. Blanks are seen.
/// </summary>
internal sealed class KeyedText(SheetPages pages, double sizeMm)
{
    /// <summary>Parts of the size of the type; so little apart that a word copied out of the file stays a word.</summary>
    private const double Apart = 0.02;

    /// <summary>By which the bars reach past the room of the I on each side.</summary>
    private const double BarPart = 0.07;

    // Height of the face's own bars and of its capitals (Andika Bold, measured), so that what is added is not heavier.
    private const double BarHighPart = 0.095;
    private const double CapPart = 0.708;

    public static readonly Said Legend = "0 is struck through, O is not; I has long bars, l a foot.";

    /// <summary>The largest size, down to the least, at which a text fits a width.</summary>
    public static double Fitting(SheetPages pages, string keyed, double sizeMm, double leastMm, double widthMm) =>
        Math.Max(leastMm, sizeMm * Math.Min(1, widthMm / new KeyedText(pages, sizeMm).WidthMm(keyed)));

    public double WidthMm(string keyed) => Letters.Of(keyed).Sum(AdvanceMm);

    /// <param name="baselineMm">Of its line; y down.</param>
    public void Draw(double xMm, double baselineMm, string keyed)
    {
        double left = pages.LeftOf(xMm, WidthMm(keyed));
        pages.AsItLies(() => DrawFrom(left, baselineMm, keyed));
    }

    private void DrawFrom(double xMm, double baselineMm, string keyed)
    {
        foreach (string letter in Letters.Of(keyed))
        {
            double glyph = GlyphMm(letter);
            double at = xMm + (letter == "I" ? BarPart * sizeMm : 0);
            pages.Put(at, baselineMm, Letters.Shown(letter), sizeMm);
            TellApart(letter, at, glyph, baselineMm);
            xMm += AdvanceMm(letter);
        }
    }

    private double GlyphMm(string letter) => pages.Face.WidthMm(Letters.Shown(letter), sizeMm);

    private double AdvanceMm(string letter) =>
        GlyphMm(letter) + (Apart * sizeMm) + (letter == "I" ? 2 * BarPart * sizeMm : 0);

    private void TellApart(string letter, double xMm, double glyphMm, double baselineMm)
    {
        double line = BarHighPart * sizeMm;
        double cap = CapPart * sizeMm;
        switch (letter)
        {
            case "0":
                pages.Line(
                    xMm + (0.2 * glyphMm), baselineMm - (0.1 * sizeMm), xMm + (0.8 * glyphMm), baselineMm - cap + (0.1 * sizeMm),
                    0.055 * sizeMm);
                break;
            case "I":
                pages.Line(
                    xMm - (BarPart * sizeMm), baselineMm - (line / 2), xMm + glyphMm + (BarPart * sizeMm), baselineMm - (line / 2), line);
                pages.Line(
                    xMm - (BarPart * sizeMm), baselineMm - cap + (line / 2), xMm + glyphMm + (BarPart * sizeMm),
                    baselineMm - cap + (line / 2), line);
                break;
        }
    }
}

using System.Globalization;
using NameBand.Common;
using NameBand.Output.Sheets;

namespace NameBand.Output.Keying;

/// <summary>The columns of figures at the right of the key-in sheet.</summary>
/// <param name="rightMm">Right edge of the last one.</param>
internal sealed class KeyInColumns(double rightMm)
{
    private readonly double _start = rightMm - 68;
    private readonly double _fromLast = rightMm - 49;
    private readonly double _length = rightMm - 15;

    /// <summary>Room for the keyed text from <paramref name="leftMm"/> on.</summary>
    public double KeyedWidthMm(double leftMm) => _start - 24 - leftMm;

    public double Heading(SheetPages pages, double y)
    {
        pages.TextRight(_start, y, "start, on the cloth", 2.9, Ink.Quiet);
        pages.TextRight(_fromLast, y, "from last", 2.9, Ink.Quiet);
        pages.TextRight(_length, y, "must come out at", 2.9, Ink.Quiet);
        pages.TextRight(rightMm, y, "min:s", 2.9, Ink.Quiet);
        pages.Line(14, y + 1.5, rightMm, y + 1.5, 0.3);
        return y + 2;
    }

    /// <param name="isFirst">The part is the first of a piece of cloth: nothing on it was sewn before.</param>
    public void Fill(SheetPages pages, double baseline, KeyInPart part, bool isFirst)
    {
        pages.TextRight(_start, baseline - 1.5, Thousandths.Tenths(part.OnClothMm).ToString("0.0", CultureInfo.InvariantCulture), 6);
        pages.TextRight(_start, baseline + 2, Length.FromMm(part.OnClothMm).InInches(), 2.8, Ink.Quiet);
        pages.TextRight(_fromLast, baseline - 1.5, part.FromLastMm is { } last && !isFirst ? "+" + Half(last) : "–", 4.2);
        string mark = part.IsEstimated ? "~" : "";
        pages.TextRight(_length, baseline - 1.5, mark + Half(part.ExpectedMm), 5);
        string limits = $"{Half(part.ShortestMm)} to {Half(part.LongestMm)}";
        pages.TextRight(_length, baseline + 2, limits, 2.8, Ink.Quiet);
        pages.TextRight(rightMm, baseline - 1.5, Clock(part.Seconds), 4.2);
    }

    /// <summary>To the half millimetre, as a ruler is read.</summary>
    private static string Half(double mm) => (Math.Round(mm * 2) / 2).ToString("0.#", CultureInfo.InvariantCulture);

    private static string Clock(double? seconds) => seconds is { } s
        ? string.Create(CultureInfo.InvariantCulture, $"{(int)Math.Round(s) / 60}:{(int)Math.Round(s) % 60:00}")
        : "";
}

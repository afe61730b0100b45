using NameBand.Common;
using NameBand.Output.Sheets;

namespace NameBand.Output.Keying;

/// <summary>
/// The columns of figures at the right of the key-in sheet. What is read while sewing is set so large that it is read from 1 m:
/// capitals of 5 mm are 17 minutes of arc there, and 16 are the least that can be asked (ISO 9241-303, from memory).
/// </summary>
/// <param name="rightMm">Right edge of the last one.</param>
internal sealed class KeyInColumns(double rightMm)
{
    /// <summary>Size of the type of figures: its capitals are 5 mm high.</summary>
    public const double FigureMm = 7;

    // What is read at the table alone, and the box to write a length into.
    private const double SmallMm = 2.9;
    private const double BlankMm = 19;
    private const double MostSmallMm = 40; // Of inches and way under a start mark: under the keyed text too there is room.
    private readonly double _start = rightMm - 59;
    private readonly double _length = rightMm - BlankMm - 3;

    /// <summary>Room for the keyed text from <paramref name="leftMm"/> on.</summary>
    public double KeyedWidthMm(double leftMm) => _start - 27 - leftMm;

    public double Heading(SheetPages pages, double y)
    {
        Heading(pages, _start, y, "start mark on the cloth · after the last", _start - 14);
        Heading(pages, _length, y, "must come out at", _length - _start - 2);
        Heading(pages, rightMm, y, "measured", BlankMm + 1);
        pages.Line(14, y + 1.5, rightMm, y + 1.5, 0.3);
        return y + 2;
    }

    /// <param name="isFirst">The part is the first of a piece of cloth: nothing on it was sewn before.</param>
    public void Fill(SheetPages pages, double baseline, KeyInPart part, bool isFirst)
    {
        double small = baseline + 4;
        pages.TextRight(_start, baseline, $"{Thousandths.Tenths(part.OnClothMm):0.0}", FigureMm);
        Said last = part.FromLastMm is { } from && !isFirst ? (Said)$" · +{Half(from)}" : "";
        Said inches = $"{Length.FromMm(part.OnClothMm).InInches()}{last}";
        pages.TextRight(_start, small, inches, pages.Fitting(inches, SmallMm, MostSmallMm), Ink.Quiet);
        var text = InWords(part);
        pages.TextRight(_length, baseline, text, pages.Fitting(text, FigureMm, _length - _start - 4));
        Said time = part.Seconds is { } seconds ? (Said)$" · {Clock(seconds)}" : "";
        Said limits = $"{Half(part.ShortestMm)} to {Half(part.LongestMm)}{time}";
        pages.TextRight(_length, small, limits, pages.Fitting(limits, SmallMm, _length - _start - 2), Ink.Quiet);
        pages.Box(rightMm - BlankMm, baseline - 7, BlankMm, 10, 0.3, Ink.Quiet);
    }

    /// <summary>Such as <c>63 ±4</c>: the limits and the feed's own variation are in it together, to the next whole millimetre.</summary>
    private static Said InWords(KeyInPart part)
    {
        double less = Math.Ceiling(part.ExpectedMm - part.ShortestMm - 0.05);
        double more = Math.Ceiling(part.LongestMm - part.ExpectedMm - 0.05);
        Said tolerance = less == more ? (Said)$"±{Whole(more)}" : $"–{Whole(less)} +{Whole(more)}";
        return $"{(part.IsEstimated ? (Said)"~" : "")}{Half(part.ExpectedMm)} {tolerance}";
    }

    private static Said Whole(double mm) => $"{mm:0}";

    /// <summary>To the half millimetre, as a ruler is read.</summary>
    private static Said Half(double mm) => $"{Math.Round(mm * 2) / 2:0.#}";

    private static Said Clock(double seconds) => $"{(int)Math.Round(seconds) / 60}:{(int)Math.Round(seconds) % 60:00} min";

    private static void Heading(SheetPages pages, double right, double y, Said text, double room) =>
        pages.TextRight(right, y, text, pages.Fitting(text, SmallMm, room), Ink.Quiet);
}

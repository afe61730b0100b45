using NameBand.Common;
using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>Puts one thing under another and begins a new page where it would not fit.</summary>
internal sealed class PageFlow(SheetPages pages)
{
    /// <summary>
    /// The foot of every page stands there too: wider than the rim that printers leave blank (common practice, no source).
    /// </summary>
    public const double LeftMm = 15;
    public const double TextMm = 3.9; // 11 point: common practice, no source.
    /// <summary>From line to line, as a part of the size of the type.</summary>
    public const double LineStep = 1.4;

    // The page's margins above, and below with the foot's line.
    private const double TopMm = 17;
    private const double FootMm = 16;

    public SheetPages Pages => pages;

    public double RightMm => pages.Paper.WidthMm - LeftMm;

    public double WidthMm => pages.Paper.WidthMm - (2 * LeftMm);

    /// <summary>Height of a page that can be filled.</summary>
    public double PageRoomMm => pages.Paper.HeightMm - TopMm - FootMm;

    /// <summary>Lower edge of what stands on the page.</summary>
    public double YMm { get; set; }

    public void NewPage()
    {
        pages.Begin();
        YMm = TopMm;
    }

    /// <summary>Makes sure that so much of the page is free; true when a new one was begun.</summary>
    public bool Room(double heightMm)
    {
        if (pages.Page > 0 && YMm + heightMm <= pages.Paper.HeightMm - FootMm)
        {
            return false;
        }

        NewPage();
        return true;
    }

    public void Heading(Said text, double sizeMm = 6, double withMm = 20)
    {
        Room(sizeMm + withMm);
        YMm += sizeMm * (YMm > TopMm ? 1.9 : 1.5);
        pages.Strong(LeftMm, YMm, text, sizeMm);
        YMm += sizeMm * 0.45;
    }

    /// <summary>A paragraph; long ones run on to the next page.</summary>
    public void Text(Said text, double indentMm = 0, double sizeMm = TextMm, Ink? ink = null)
    {
        foreach (string line in Lines(text, WidthMm - indentMm, sizeMm))
        {
            Room(sizeMm * LineStep);
            YMm += sizeMm * LineStep;
            pages.Put(LeftMm + indentMm, YMm, line, sizeMm, ink);
        }
    }

    /// <summary>Height that <see cref="Text"/> takes.</summary>
    public double TextHeightMm(Said text, double sizeMm) => Lines(text, WidthMm, sizeMm).Count * sizeMm * LineStep;

    /// <param name="mark">A number, a dash, or nothing for a box to tick.</param>
    public void Item(string mark, Said text, double indentMm = 7, double sizeMm = TextMm)
    {
        Room(Lines(text, WidthMm - indentMm, sizeMm).Count * sizeMm * LineStep);
        YMm += 1;
        double baseline = YMm + (sizeMm * LineStep);
        if (mark.Length == 0)
        {
            pages.Box(LeftMm + 0.5, baseline - 3, 3.4, 3.4);
        }
        else
        {
            pages.Put(LeftMm, baseline, mark, sizeMm);
        }

        Text(text, indentMm, sizeMm);
    }

    /// <summary>Lines no wider than asked for; a word that is wider by itself is cut.</summary>
    public IReadOnlyList<string> Lines(Said text, double widthMm, double sizeMm, SheetFace? setIn = null)
    {
        var face = setIn ?? pages.Face;
        var lines = new List<string>();
        string line = "";
        foreach (string word in text.ToString().Split(' '))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && face.WidthMm(longer, sizeMm) > widthMm)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
            while (line.Length > 1 && face.WidthMm(line, sizeMm) > widthMm)
            {
                int fits = FittingLength(face, line, widthMm, sizeMm);
                lines.Add(line[..fits]);
                line = line[fits..];
            }
        }

        lines.Add(line);
        return lines;
    }

    /// <summary>A text, cut with three dots where it is wider than its column.</summary>
    public string Cut(Said text, double widthMm, double sizeMm) => Cut(text.ToString(), widthMm, sizeMm);

    /// <inheritdoc cref="Cut(Said, double, double)"/>
    public string Cut(string text, double widthMm, double sizeMm) =>
        pages.Face.WidthMm(text, sizeMm) <= widthMm
            ? text : text[..FittingLength(pages.Face, text, widthMm - (sizeMm * 0.8), sizeMm)] + "…";

    private static int FittingLength(SheetFace face, string text, double widthMm, double sizeMm)
    {
        int[] starts = System.Globalization.StringInfo.ParseCombiningCharacters(text);
        int most = starts.Length - 1;
        while (most > 1 && face.WidthMm(text[..starts[most]], sizeMm) > widthMm)
        {
            most--;
        }

        return starts[Math.Max(1, most)];
    }
}

using NameBand.Lettering.Faces;
using NameBand.Lettering.Shaping;
using SkiaSharp;

namespace NameBand.Output.Sheets;

/// <summary>
/// What sheets are set in: one face of those that travel with the program, and the others for letters it lacks. Text is
/// shaped as names are, and stays text in the file: it can be marked, copied and searched in any script. For one thread.
/// </summary>
internal sealed class SheetFace : IDisposable
{
    /// <summary>For headings, and for what is read from a metre away.</summary>
    public const string BoldName = PlainName + " Bold";

    /// <summary>A mark such as 1I0O is copied by hand from paper: its signs have to be told apart.</summary>
    public const string PlainName = "Andika";

    /// <summary>How a blank stands in what is handed to a sheet.</summary>
    public const char Blank = '␣';

    /// <summary>Width of the mark that shows a blank, as a part of the size; no face of ours has it, so it is drawn.</summary>
    public const double BlankPart = 0.5;

    /// <summary>Letters that faces of text tie together, English or not.</summary>
    private const string Tied = "ff-fi-fl-ffi-ffl-fj-tt-ti";

    private readonly Face _chosen;
    private readonly NameShaper _shaper;
    private readonly Dictionary<string, SheetLetters> _papers = new(StringComparer.Ordinal);

    private SheetFace(Face chosen, FaceShelf shelf)
    {
        _chosen = chosen;
        _shaper = new NameShaper(new FaceChain(chosen, shelf));
    }

    /// <exception cref="IOException">The program's own faces are missing.</exception>
    public static SheetFace Open(string name = BoldName, FaceShelf? shelf = null)
    {
        shelf ??= new FaceShelf();
        return new SheetFace(
            shelf.SheetCards.Where(c => c.Name == name).Select(c => shelf.Open(c).Value).FirstOrDefault()
                ?? throw new IOException("The face for the sheets is missing: install the program again, with its folder fonts-open."),
            shelf);
    }

    /// <param name="sizeMm">Height of the type, from line to line.</param>
    public double WidthMm(string text, double sizeMm) =>
        text.Split(Blank).Sum(t => Shape(t, out _).AdvanceMm * CapMm(sizeMm)) + (text.Count(c => c == Blank) * BlankPart * sizeMm);

    /// <summary>Sets a text without blanks to be shown; returns its width.</summary>
    public double Draw(SKCanvas canvas, string text, double xMm, double baselineMm, double sizeMm, SKPaint paint)
    {
        var shaped = Shape(text, out string shown);
        double capMm = CapMm(sizeMm);
        for (int from = 0; from < shaped.Glyphs.Count;)
        {
            int to = from;
            while (to < shaped.Glyphs.Count && shaped.Glyphs[to].Run == shaped.Glyphs[from].Run)
            {
                to++;
            }

            DrawRun(canvas, (shaped, shown), (from, to), new SKPoint((float)xMm, (float)baselineMm), capMm, paint);
            from = to;
        }

        return shaped.AdvanceMm * capMm;
    }

    /// <summary>The chosen face alone, for letters that are drawn as shapes.</summary>
    public SKFont At(double sizeMm) => FontOf(Paper(_chosen).Whole, sizeMm);

    public void Dispose()
    {
        _shaper.Dispose();
        foreach (var paper in _papers.Values)
        {
            paper.Dispose();
        }
    }

    private double CapMm(double sizeMm) => sizeMm * _chosen.CapHeightUnits / _chosen.UnitsPerEm;

    /// <summary>Titles may hold signs that no face has; names never do. A question mark stands for such a sign.</summary>
    private ShapedName Shape(string text, out string shown)
    {
        shown = text;
        var shaped = _shaper.Shape(shown);
        if (shaped.Unshown.Count > 0)
        {
            foreach (var sign in shaped.Unshown)
            {
                shown = shown.Replace(sign.Text, "?", StringComparison.Ordinal);
            }

            shaped = _shaper.Shape(shown);
        }

        return shaped;
    }

    private void DrawRun(
        SKCanvas canvas, (ShapedName Shaped, string Text) line, (int From, int To) part, SKPoint origin, double capMm, SKPaint paint)
    {
        var (shaped, text) = line;
        var (from, to) = part;
        var face = shaped.Glyphs[from].Face;
        var (start, bytes, offsets) = TextOf(shaped, text, from, to);
        var typeface = Paper(face).With(shaped.Glyphs.Skip(from).Take(to - from).Select(g => (uint)g.Glyph));
        using var font = FontOf(typeface, capMm * face.UnitsPerEm / face.CapHeightUnits);
        using var builder = new SKTextBlobBuilder();
        var run = builder.AllocateRawPositionedTextRun(font, to - from, bytes.Length, null);
        bytes.CopyTo(run.Text);
        for (int i = from; i < to; i++)
        {
            var glyph = shaped.Glyphs[i];
            run.Glyphs[i - from] = (ushort)glyph.Glyph;
            run.Positions[i - from] = new SKPoint((float)(glyph.At.XMm * capMm), (float)(-glyph.At.YMm * capMm));
            run.Clusters[i - from] = (uint)offsets[glyph.Cluster - start];
        }

        using var blob = builder.Build();
        if (blob is not null)
        {
            canvas.DrawText(blob, origin.X, origin.Y, paint);
        }
    }

    /// <summary>The characters of a run in UTF-8, and where each UTF-16 unit of it begins there.</summary>
    private static (int Start, byte[] Bytes, int[] Offsets) TextOf(ShapedName shaped, string text, int from, int to)
    {
        int start = int.MaxValue;
        int last = 0;
        for (int i = from; i < to; i++)
        {
            start = Math.Min(start, shaped.Glyphs[i].Cluster);
            last = Math.Max(last, shaped.Glyphs[i].Cluster);
        }

        int end = text.Length;
        foreach (var glyph in shaped.Glyphs)
        {
            if (glyph.Cluster > last && glyph.Cluster < end)
            {
                end = glyph.Cluster;
            }
        }

        string part = text[start..end];
        var offsets = new int[part.Length + 1];
        for (int unit = 0; unit < part.Length; unit++)
        {
            bool isSecondHalf = char.IsLowSurrogate(part[unit]);
            offsets[unit + 1] =
                System.Text.Encoding.UTF8.GetByteCount(part.AsSpan(0, unit + (isSecondHalf || !char.IsHighSurrogate(part[unit]) ? 1 : 0)));
        }

        return (start, System.Text.Encoding.UTF8.GetBytes(part), offsets);
    }

    private static SKFont FontOf(SKTypeface typeface, double sizeMm) => new(typeface, (float)sizeMm)
    {
        Hinting = SKFontHinting.None,
        Subpixel = true,
        LinearMetrics = true,
        Edging = SKFontEdging.Antialias,
    };

    private SheetLetters Paper(Face face)
    {
        if (!_papers.TryGetValue(face.Id, out var paper))
        {
            var tied = face == _chosen ? Shape(Tied, out _).Glyphs.Select(g => (uint)g.Glyph) : null;
            _papers.Add(face.Id, paper = new SheetLetters(face, tied));
        }

        return paper;
    }
}

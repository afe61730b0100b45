using NameBand.Common;
using NameBand.Lettering.Bidi;
using HarfBuzzBuffer = HarfBuzzSharp.Buffer;

namespace NameBand.Lettering.Shaping;

/// <summary>Shapes whole names by HarfBuzz: kerning, ligatures, joined scripts, marks, both directions.</summary>
internal sealed class NameShaper(FaceChain chain) : IDisposable
{
    /// <summary>No sound face makes more glyphs of a character; a hostile one could make thousands.</summary>
    private const int MostGlyphsPerCharacter = 16;

    private readonly HarfBuzzBuffer _buffer = new();

    // Never the machine's own language: the same list must give the same letters everywhere.
    private readonly HarfBuzzSharp.Language _language = new("und");

    public ShapedName Shape(string text)
    {
        var itemised = Itemiser.Split(text, chain);
        if (itemised.Unshown.Count > 0)
        {
            return ShapedName.Without(itemised.Unshown);
        }

        var runs = itemised.Runs;
        var levels = new byte[runs.Count];
        for (int i = 0; i < levels.Length; i++)
        {
            levels[i] = runs[i].Level;
        }

        int[] order = BidiLevels.VisualOrder(levels);
        var glyphs = new List<ShapedGlyph>(text.Length);
        double pen = 0;
        for (int place = 0; place < order.Length; place++)
        {
            var run = runs[order[place]];
            Fill(text, run);
            run.Face.Font.Shape(_buffer);
            GC.KeepAlive(run.Face);
            if (_buffer.Length > MostGlyphsPerCharacter * (run.Length + 1))
            {
                return ShapedName.Broken(
                    $"the face {run.Face.Name} makes {_buffer.Length} glyphs of {run.Length} characters: its file is damaged; choose another face");
            }

            pen = Place(run, place, pen, glyphs);
        }

        return glyphs.Exists(g => g.Glyph == 0) ? ShapedName.Without(Missing(text, glyphs)) : new ShapedName(glyphs, pen, [], null);
    }

    public void Dispose() => _buffer.Dispose();

    private static List<UnshownSign> Missing(string text, List<ShapedGlyph> glyphs) =>
        [.. glyphs.Where(g => g.Glyph == 0).Select(g => g.Cluster).Distinct().Order()
            .Select(c => new UnshownSign(c, ClusterAt(text, c), false))];

    private static string ClusterAt(string text, int start) =>
        text.Substring(start, System.Globalization.StringInfo.GetNextTextElementLength(text, start));

    private void Fill(string text, TextRun run)
    {
        _buffer.ClearContents();
        _buffer.AddUtf16(text.AsSpan(), run.Start, run.Length);
        _buffer.Direction = (run.Level & 1) == 1 ? HarfBuzzSharp.Direction.RightToLeft : HarfBuzzSharp.Direction.LeftToRight;
        _buffer.Script = run.Script;
        _buffer.Language = _language;
        _buffer.Flags = HarfBuzzSharp.BufferFlags.DoNotInsertDottedCircle;
    }

    private double Place(TextRun run, int place, double pen, List<ShapedGlyph> glyphs)
    {
        double scale = run.Face.MmPerUnit;
        var infos = _buffer.GetGlyphInfoSpan();
        var positions = _buffer.GetGlyphPositionSpan();
        int x = 0, y = 0;
        for (int i = 0; i < infos.Length; i++)
        {
            int atX = unchecked(x + positions[i].XOffset), atY = unchecked(y + positions[i].YOffset);
            glyphs.Add(new ShapedGlyph(
                run.Face, (int)infos[i].Codepoint, (int)infos[i].Cluster, place, atX, atY,
                new Point(pen + (atX * scale), atY * scale)));
            x = unchecked(x + positions[i].XAdvance);
            y = unchecked(y + positions[i].YAdvance);
        }

        return pen + (x * scale);
    }
}

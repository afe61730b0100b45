using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.MachineLetters.Alphabets;
using SkiaSharp;

namespace NameBand.Tests.StitchQuality;

/// <summary>Letters of any font file as pieces at a letter height of 1 mm, drawn by Skia alone.</summary>
internal sealed class FaceFileReader : IDisposable
{
    private const float Size = 1000;
    private readonly SKTypeface _typeface;
    private readonly SKFont _font;
    private readonly double _capHeight;

    public FaceFileReader(string file)
    {
        Name = Path.GetFileNameWithoutExtension(file);
        _typeface = SKTypeface.FromFile(file) ?? throw new InvalidDataException(file);
        _font = new SKFont(_typeface, Size) { Hinting = SKFontHinting.None, Subpixel = true, LinearMetrics = true };
        using var h = _font.GetGlyphPath(_font.GetGlyph('H')) ?? new SKPath();
        _capHeight = h.TightBounds.Height;
        if (_capHeight <= 0)
        {
            _capHeight = 0.7 * Size;
        }
    }

    public string Name { get; }

    public bool Has(string text) => _font.ContainsGlyphs(text);

    public LetterPiece Piece(string letter)
    {
        using var gathered = new SKPathBuilder();
        float x = 0;
        foreach (ushort glyph in _font.GetGlyphs(letter))
        {
            using var path = _font.GetGlyphPath(glyph);
            if (path is not null)
            {
                using var moved = new SKPath(path);
                moved.Transform(SKMatrix.CreateTranslation(x, 0));
                gathered.AddPath(moved);
            }

            x += _font.GetGlyphWidths([glyph])[0];
        }

        using var whole = gathered.Detach();
        using var simple = whole.Simplify() ?? new SKPath(whole);
        var outline = Read(simple);
        return new LetterPiece(Name + "|" + letter, Name, letter, outline, outline.Bounds());
    }

    /// <summary>Letters side by side by their advance widths, each a piece of its own.</summary>
    public (ImmutableArray<PlacedPiece> Pieces, Box Ink) Line(string text)
    {
        var pieces = ImmutableArray.CreateBuilder<PlacedPiece>();
        var ink = Box.Empty;
        double x = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            string letter = rune.ToString();
            var piece = Piece(letter);
            if (piece.Outline.Rings.Length > 0)
            {
                pieces.Add(new PlacedPiece(piece, new Point(x, 0)));
                ink = ink.Include(piece.Ink.Moved(new Point(x, 0)));
            }

            x += _font.GetGlyphWidths(_font.GetGlyphs(letter)).Sum() / _capHeight;
        }

        return (pieces.ToImmutable(), ink);
    }

    public void Dispose()
    {
        _font.Dispose();
        _typeface.Dispose();
    }

    private Outline Read(SKPath path)
    {
        var rings = new List<List<Point>>();
        using var iterator = path.CreateRawIterator();
        var p = new SKPoint[4];
        SKPathVerb verb;
        while ((verb = iterator.Next(p)) != SKPathVerb.Done)
        {
            switch (verb)
            {
                case SKPathVerb.Move:
                    rings.Add([Place(p[0])]);
                    break;
                case SKPathVerb.Line:
                    rings[^1].Add(Place(p[1]));
                    break;
                case SKPathVerb.Quad:
                    Curve(rings[^1], t => Mix(Mix(p[0], p[1], t), Mix(p[1], p[2], t), t));
                    break;
                case SKPathVerb.Conic:
                    float w = iterator.ConicWeight();
                    Curve(rings[^1], t => Conic(p, w, t));
                    break;
                case SKPathVerb.Cubic:
                    Curve(rings[^1], t => Mix(
                        Mix(Mix(p[0], p[1], t), Mix(p[1], p[2], t), t), Mix(Mix(p[1], p[2], t), Mix(p[2], p[3], t), t), t));
                    break;
            }
        }

        return Turned(rings);
    }

    private static SKPoint Conic(SKPoint[] p, float w, float t)
    {
        float a = (1 - t) * (1 - t);
        float b = 2 * w * t * (1 - t);
        float c = t * t;
        float sum = a + b + c;
        return new SKPoint(((a * p[0].X) + (b * p[1].X) + (c * p[2].X)) / sum, ((a * p[0].Y) + (b * p[1].Y) + (c * p[2].Y)) / sum);
    }

    private static SKPoint Mix(SKPoint a, SKPoint b, float t) => new(a.X + ((b.X - a.X) * t), a.Y + ((b.Y - a.Y) * t));

    private void Curve(List<Point> ring, Func<float, SKPoint> at)
    {
        const int Parts = 12;
        for (int i = 1; i <= Parts; i++)
        {
            ring.Add(Place(at((float)i / Parts)));
        }
    }

    private Point Place(SKPoint p) => new(p.X / _capHeight, -p.Y / _capHeight);

    /// <summary>Outer rings counter-clockwise, holes clockwise, by how many other rings lie around them.</summary>
    private static Outline Turned(List<List<Point>> rings)
    {
        var turned = ImmutableArray.CreateBuilder<Ring>();
        foreach (var points in rings)
        {
            while (points.Count > 1 && points[0].DistanceTo(points[^1]) < 1e-6)
            {
                points.RemoveAt(points.Count - 1);
            }

            if (points.Count < 3)
            {
                continue;
            }

            int around = rings.Count(r => r != points && r.Count > 2 && Contains(r, points[0]));
            var ring = new Ring([.. points]);
            bool wanted = around % 2 == 0;
            turned.Add(ring.SignedAreaMm2() > 0 == wanted ? ring : new Ring([.. Enumerable.Reverse(points)]));
        }

        return new Outline(turned.ToImmutable());
    }

    private static bool Contains(List<Point> ring, Point p)
    {
        bool inside = false;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
        {
            var (a, b) = (ring[i], ring[j]);
            if ((a.YMm > p.YMm) != (b.YMm > p.YMm) && p.XMm < ((b.XMm - a.XMm) * (p.YMm - a.YMm) / (b.YMm - a.YMm)) + a.XMm)
            {
                inside = !inside;
            }
        }

        return inside;
    }
}

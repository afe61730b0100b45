using System.Collections.Concurrent;
using System.Security.Cryptography;
using NameBand.Common;
using NameBand.Lettering.Fonts;
using NameBand.Lettering.Measuring;
using NameBand.Lettering.Outlines;
using SkiaSharp;
using HbBlob = HarfBuzzSharp.Blob;
using HbFace = HarfBuzzSharp.Face;
using HbFont = HarfBuzzSharp.Font;

namespace NameBand.Lettering.Faces;

/// <summary>
/// An open face: one TTF or OTF file, checked. Safe to use from several threads. What is worked out for a glyph
/// is kept for as long as the face.
/// </summary>
public sealed class Face
{
    private const int FarthestEms = 20; // No letter reaches so far from its base; a damaged outline does. Our assumption.

    private readonly byte[] _file;
    private readonly FontFacts _facts;
    private readonly HbFont _font;
    private readonly Lazy<string> _hash;
    private readonly Lazy<CapHeight> _capHeight;
    private readonly Lazy<StrokeWidths> _strokes;
    private readonly Lazy<double?> _counter;
    private readonly ConcurrentDictionary<int, Lazy<GlyphShape>> _glyphs = new();

    private Face(string id, string name, string file, byte[] bytes, FontFacts facts, bool helpsOut)
    {
        Id = id;
        Name = name;
        File = file;
        _file = bytes;
        _facts = facts;
        _font = OpenShaper(bytes, facts);
        _hash = new(() => Convert.ToHexStringLower(SHA256.HashData(_file)));
        _capHeight = new(() => CapHeight.Of(this, _facts.CapHeight, helpsOut));
        _strokes = new(() => StrokeWidths.Of(MeasuredLetters.Of(this).Select(shape => shape.Outline)));
        _counter = new(() => CounterWidths.Smallest(MeasuredLetters.Of(this).Select(shape => shape.Outline)));
    }

    /// <summary>
    /// HarfBuzzSharp's own finalizer leaves the font in native memory, and with it our copy of the file; only disposing
    /// lets go of them. Whoever hands the font to native code keeps the face alive meanwhile.
    /// </summary>
    ~Face() => _font?.Dispose(); // Null where the constructor threw.

    /// <summary>Such as “Nunito Bold”.</summary>
    public string Name { get; }

    /// <summary>File name without folders.</summary>
    public string File { get; }

    /// <summary>SHA-256 of the file, 64 small hexadecimal digits.</summary>
    public string Hash => _hash.Value;

    public int UnitsPerEm => _facts.UnitsPerEm;

    /// <summary>Height of the capitals in font units: what a letter height of 1 mm is measured by.</summary>
    public double CapHeightUnits => _capHeight.Value.Units;

    /// <summary>Which rule gave the cap height, as half a sentence.</summary>
    public Said CapHeightRule => _capHeight.Value.Rule;

    /// <summary>Width of the thinnest stroke as a part of the letter height; measured when first asked for.</summary>
    public double ThinnestStrokePart => _strokes.Value.Thinnest;

    /// <summary>Width of the main stems as a part of the letter height; measured when first asked for.</summary>
    public double MainStemPart => _strokes.Value.MainStem;

    /// <summary>Width of the smallest closed counter as a part of the letter height, null without any; measured when first asked
    /// for.</summary>
    public double? SmallestCounterPart => _counter.Value;

    /// <summary>Tells faces apart within one shelf and one job.</summary>
    internal string Id { get; }

    internal HbFont Font => _font;

    internal int GlyphCount => _facts.GlyphCount;

    /// <summary>Millimetres of a font unit at a letter height of 1 mm.</summary>
    internal double MmPerUnit => 1 / CapHeightUnits;

    /// <exception cref="FontFault">The file cannot be used.</exception>
    /// <param name="helpsOut">It stands in for letters another face lacks, and is sized to look like that one.</param>
    internal static Face FromBytes(string id, string? name, string file, byte[] bytes, bool helpsOut = false)
    {
        var facts = FontFacts.Read(bytes);
        string known = name ?? (facts.FullName.Length > 0 ? facts.FullName : file);
        return new Face(id, known, file, bytes, facts, helpsOut);
    }

    /// <summary>The glyph the face has for a character, or 0.</summary>
    internal uint GlyphOf(int codePoint)
    {
        bool has = _font.TryGetNominalGlyph(codePoint, out uint glyph);
        GC.KeepAlive(this);
        return has ? glyph : 0;
    }

    internal bool Has(int codePoint) => GlyphOf(codePoint) != 0;

    /// <summary>The same face for drawing text on paper, where letters stay letters; the caller disposes of it.</summary>
    internal SKTypeface? OpenForPaper()
    {
        using var data = SKData.CreateCopy(_file);
        return SKTypeface.FromData(data);
    }

    /// <summary>The same with no other letters than these, for a file that carries it; the caller disposes of it.</summary>
    /// <param name="glyphs">Their numbers.</param>
    internal SKTypeface? OpenForPaper(IEnumerable<uint> glyphs)
    {
        if (FontSubset.Of(_file, glyphs) is not { } part)
        {
            return OpenForPaper();
        }

        using var data = SKData.CreateCopy(part);
        return SKTypeface.FromData(data);
    }

    /// <summary>The outline of a glyph; worked out once.</summary>
    internal GlyphShape Shape(int glyph) => _glyphs.GetOrAdd(glyph, g => new Lazy<GlyphShape>(() => MakeShape(g))).Value;

    /// <summary>The outline as the font has it, in font units, y down; null when blank.</summary>
    /// <exception cref="FontFault">The glyph is damaged or absurd.</exception>
    internal SKPath? RawPath(int glyph)
    {
        if (glyph >= GlyphCount)
        {
            throw new FontFault("it has no such glyph");
        }

        var path = GlyphPen.Draw(_font, glyph);
        GC.KeepAlive(this);
        if (path is null)
        {
            return null;
        }

        if (path.PointCount > GlyphPen.MostPoints)
        {
            throw new FontFault($"its outline has more than {GlyphPen.MostPoints} points");
        }

        var bounds = path.Bounds;
        float farthest = FarthestEms * (float)UnitsPerEm;
        bool near = bounds.Left > -farthest && bounds.Right < farthest && bounds.Top > -farthest && bounds.Bottom < farthest;
        return near ? path : throw new FontFault($"its outline reaches more than {FarthestEms} times the size of the letters away");
    }

    private GlyphShape MakeShape(int glyph)
    {
        try
        {
            using var raw = RawPath(glyph);
            if (raw is null)
            {
                return GlyphShape.Blank;
            }

            var contours = PathRings.Flatten(raw, MmPerUnit);
            var (path, outline) = OverlapResolver.Resolve(new Tangle([raw], [contours], MmPerUnit));
            return outline.Rings.IsEmpty ? GlyphShape.Blank : new GlyphShape(path, contours, outline, outline.Bounds());
        }
        catch (FontFault fault)
        {
            return GlyphShape.Unusable(fault.What);
        }
    }

    private static unsafe HbFont OpenShaper(byte[] bytes, FontFacts facts)
    {
        // The array never moves (FaceFile reads into such a one), and the blob's release keeps it alive until then.
        fixed (byte* start = bytes)
        {
            using var blob = new HbBlob((IntPtr)start, bytes.Length, HarfBuzzSharp.MemoryMode.ReadOnly, () => GC.KeepAlive(bytes));
            blob.MakeImmutable();
            using var face = new HbFace(blob, 0);
            var font = new HbFont(face);
            font.SetScale(facts.UnitsPerEm, facts.UnitsPerEm);
            font.SetFunctionsOpenType();
            GC.SuppressFinalize(font);
            return font;
        }
    }
}

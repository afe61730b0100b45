using NameBand.Lettering.Faces;
using SkiaSharp;

namespace NameBand.Output.Sheets;

/// <summary>
/// A face as a sheet carries it: with the letters that are set in it. Which they are is known only when all is set, so that letters that
/// come later are carried besides, in a part of their own, and after a few of those the whole face. For one thread.
/// </summary>
/// <param name="tied">Where it sets the sheet's own words: glyphs of letters that are tied. They and its usual letters are carried from
/// the first.</param>
internal sealed class SheetLetters(Face face, IEnumerable<uint>? tied) : IDisposable
{
    // Each part has what came before it once more, some 10 KB of Latin: with many more the whole face is no larger. Our choice.
    private const int MostParts = 8;

    /// <summary>Latin letters with their accents, and the dashes, quotes and dots of texts (Unicode's blocks).</summary>
    private static readonly int[] Usual = [.. Enumerable.Range(0x20, 0x17F - 0x20 + 1), .. Enumerable.Range(0x2010, 0x2030 - 0x2010)];

    private readonly List<(SKTypeface Typeface, HashSet<uint> Glyphs)> _parts = [];
    private SKTypeface? _whole;

    /// <exception cref="IOException">It cannot be drawn with.</exception>
    public SKTypeface Whole => _whole ??= Opened(face.OpenForPaper());

    /// <summary>A part that has all of these glyphs.</summary>
    /// <param name="glyphs">Numbers in the face.</param>
    /// <exception cref="IOException">It cannot be drawn with.</exception>
    public SKTypeface With(IEnumerable<uint> glyphs)
    {
        var wanted = glyphs.ToHashSet();
        foreach (var (typeface, has) in _parts)
        {
            if (wanted.IsSubsetOf(has))
            {
                return typeface;
            }
        }

        if (_parts.Count == MostParts)
        {
            return Whole;
        }

        // What came before comes again sooner than what did not.
        wanted.UnionWith(_parts.Count > 0 ? _parts[^1].Glyphs : tied?.Concat(Usual.Select(face.GlyphOf)) ?? []);
        var part = Opened(face.OpenForPaper(wanted));
        _parts.Add((part, wanted));
        return part;
    }

    public void Dispose()
    {
        _whole?.Dispose();
        foreach (var (typeface, _) in _parts)
        {
            typeface.Dispose();
        }
    }

    private SKTypeface Opened(SKTypeface? typeface) => typeface ?? throw new IOException($"The face {face.Name} cannot be drawn with.");
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Outlines;
using NameBand.Lettering.Shaping;
using SkiaSharp;

namespace NameBand.Lettering;

/// <summary>
/// Makes letter pieces of glyphs: those of one cluster, and those whose outlines meet, become one piece. Each
/// distinct piece is made once; the same piece is the same object in every name.
/// </summary>
internal sealed class PieceMaker
{
    private readonly Dictionary<string, LetterPiece> _pieces = new(StringComparer.Ordinal);
    private readonly Dictionary<(Face, int), LetterPiece> _single = [];

    /// <summary>The pieces of a name in reading order.</summary>
    public ImmutableArray<PlacedPiece> Make(string text, IReadOnlyList<ShapedGlyph> glyphs)
    {
        // Loops and not LINQ here: this runs for every name, and its first run counts too.
        int[] groups = Groups(glyphs);
        var pieces = new List<PlacedPiece>(glyphs.Count);
        var firsts = new List<int>(glyphs.Count);
        var members = new List<ShapedGlyph>();
        for (int i = 0; i < groups.Length; i++)
        {
            if (groups[i] != i)
            {
                continue;
            }

            members.Clear();
            int first = glyphs[i].Cluster;
            for (int j = i; j < groups.Length; j++)
            {
                if (groups[j] == i)
                {
                    members.Add(glyphs[j]);
                    first = Math.Min(first, glyphs[j].Cluster);
                }
            }

            int place = firsts.Count;
            while (place > 0 && firsts[place - 1] > first)
            {
                place--;
            }

            firsts.Insert(place, first);
            pieces.Insert(place, new PlacedPiece(PieceOf(text, members, glyphs), members[0].At));
        }

        return [.. pieces];
    }

    /// <summary>For each glyph the least index of those it belongs together with; -1 for blank ones.</summary>
    private static int[] Groups(IReadOnlyList<ShapedGlyph> glyphs)
    {
        var shapes = new GlyphShape[glyphs.Count];
        var parent = new int[glyphs.Count];
        for (int i = 0; i < shapes.Length; i++)
        {
            shapes[i] = glyphs[i].Face.Shape(glyphs[i].Glyph);
            parent[i] = i;
        }

        int Root(int i) => parent[i] == i ? i : parent[i] = Root(parent[i]);
        for (int i = 0; i < shapes.Length; i++)
        {
            for (int j = i + 1; j < shapes.Length && !shapes[i].Ink.IsEmpty; j++)
            {
                if (shapes[j].Ink.IsEmpty || Root(i) == Root(j))
                {
                    continue;
                }

                bool together = (glyphs[i].Cluster == glyphs[j].Cluster && glyphs[i].Run == glyphs[j].Run)
                    || Touching.Meet(shapes[i], glyphs[i].At, shapes[j], glyphs[j].At);
                if (together)
                {
                    parent[Math.Max(Root(i), Root(j))] = Math.Min(Root(i), Root(j));
                }
            }
        }

        for (int i = 0; i < parent.Length; i++)
        {
            parent[i] = shapes[i].Ink.IsEmpty ? -1 : Root(i);
        }

        return parent;
    }

    private LetterPiece PieceOf(string text, List<ShapedGlyph> members, IReadOnlyList<ShapedGlyph> all)
    {
        var first = members[0];
        if (members.Count == 1)
        {
            if (!_single.TryGetValue((first.Face, first.Glyph), out var single))
            {
                var shape = first.Face.Shape(first.Glyph);
                single = new LetterPiece(KeyOf(members), first.Face.Name, TextOf(text, members, all), shape.Outline, shape.Ink);
                _single.Add((first.Face, first.Glyph), single);
            }

            return single;
        }

        string key = KeyOf(members);
        if (!_pieces.TryGetValue(key, out var piece))
        {
            var outline = Unite(members);
            piece = new LetterPiece(key, first.Face.Name, TextOf(text, members, all), outline, outline.Bounds());
            _pieces.Add(key, piece);
        }

        return piece;
    }

    private static Outline Unite(List<ShapedGlyph> members)
    {
        double unitsPerMm = members[0].Face.CapHeightUnits;
        var paths = new List<SKPath>();
        var raw = new List<List<Point[]>>();
        foreach (var member in members)
        {
            var shape = member.Face.Shape(member.Glyph);
            double scale = member.Face.MmPerUnit * unitsPerMm;
            var at = Offset(members[0], member);
            var move = at * unitsPerMm;
            var place = SKMatrix.CreateScaleTranslation((float)scale, (float)scale, (float)move.XMm, (float)-move.YMm);
            var path = new SKPath();
            shape.Path!.Transform(place, path);
            paths.Add(path);
            raw.Add([.. shape.Raw.Select(r => Array.ConvertAll(r, p => p + at))]);
        }

        var (united, outline) = OverlapResolver.Resolve(new Tangle(paths, raw, 1 / unitsPerMm));
        united.Dispose();
        paths.ForEach(p => p.Dispose());
        return outline;
    }

    /// <summary>
    /// From the first glyph of a piece to another, at a letter height of 1 mm. Within a run it is calculated from whole
    /// font units, so that it is the same number wherever in a name the piece stands; between runs it is rounded.
    /// </summary>
    private static Point Offset(ShapedGlyph first, ShapedGlyph other)
    {
        if (first.Run == other.Run)
        {
            double scale = first.Face.MmPerUnit;
            return new Point((other.XUnits - first.XUnits) * scale, (other.YUnits - first.YUnits) * scale);
        }

        var apart = other.At - first.At;
        return new Point(Math.Round(apart.XMm, 6), Math.Round(apart.YMm, 6));
    }

    private static string KeyOf(List<ShapedGlyph> members)
    {
        var first = members[0];
        var key = new StringBuilder(first.Face.Id);
        key.Append('#').Append(first.Glyph.ToString(CultureInfo.InvariantCulture));
        for (int i = 1; i < members.Count; i++)
        {
            var offset = Offset(first, members[i]);
            key.Append('|').Append(members[i].Face == first.Face ? "" : members[i].Face.Id)
                .Append('#').Append(members[i].Glyph.ToString(CultureInfo.InvariantCulture))
                .Append('@').Append(offset.XMm.ToString("R", CultureInfo.InvariantCulture))
                .Append(',').Append(offset.YMm.ToString("R", CultureInfo.InvariantCulture));
        }

        return key.ToString();
    }

    /// <summary>The characters of a piece in reading order, for messages.</summary>
    private static string TextOf(string text, List<ShapedGlyph> members, IReadOnlyList<ShapedGlyph> all)
    {
        var starts = new bool[text.Length];
        var wanted = new bool[text.Length];
        foreach (var glyph in all)
        {
            starts[glyph.Cluster] = true;
        }

        foreach (var member in members)
        {
            wanted[member.Cluster] = true;
        }

        var characters = new StringBuilder();
        bool inside = false;
        for (int i = 0; i < text.Length; i++)
        {
            inside = starts[i] ? wanted[i] : inside;
            characters.Append(inside ? text.AsSpan(i, 1) : default);
        }

        return characters.ToString().Trim();
    }
}

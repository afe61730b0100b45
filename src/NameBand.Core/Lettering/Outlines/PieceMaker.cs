using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Lettering.Shaping;
using SkiaSharp;

namespace NameBand.Lettering.Outlines;

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
        int[] groups = Groups(glyphs);
        var made = new List<(int First, PlacedPiece Piece)>();
        foreach (var group in Enumerable.Range(0, glyphs.Count).Where(i => groups[i] >= 0).GroupBy(i => groups[i]))
        {
            ShapedGlyph[] members = [.. group.Select(i => glyphs[i])];
            made.Add((members.Min(g => g.Cluster), new PlacedPiece(PieceOf(text, members, glyphs), members[0].At)));
        }

        return [.. made.OrderBy(m => m.First).ThenBy(m => m.Piece.At.XMm).Select(m => m.Piece)];
    }

    /// <summary>For each glyph the least index of those it belongs together with; -1 for blank ones.</summary>
    private static int[] Groups(IReadOnlyList<ShapedGlyph> glyphs)
    {
        var shapes = glyphs.Select(g => g.Face.Shape(g.Glyph)).ToArray();
        int[] parent = [.. Enumerable.Range(0, glyphs.Count)];
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

        return [.. Enumerable.Range(0, glyphs.Count).Select(i => shapes[i].Ink.IsEmpty ? -1 : Root(i))];
    }

    private LetterPiece PieceOf(string text, ShapedGlyph[] members, IReadOnlyList<ShapedGlyph> all)
    {
        var first = members[0];
        if (members.Length == 1)
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

    private static Outline Unite(ShapedGlyph[] members)
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
    /// From the first glyph of a piece to another, at a letter height of 1 mm. Within a run it is reckoned from whole
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

    private static string KeyOf(ShapedGlyph[] members)
    {
        var key = new StringBuilder(members[0].Face.Id);
        key.Append('#').Append(members[0].Glyph.ToString(CultureInfo.InvariantCulture));
        foreach (var member in members.Skip(1))
        {
            var offset = Offset(members[0], member);
            key.Append('|');
            if (member.Face != members[0].Face)
            {
                key.Append(member.Face.Id);
            }

            key.Append(CultureInfo.InvariantCulture, $"#{member.Glyph}@{offset.XMm:R},{offset.YMm:R}");
        }

        return key.ToString();
    }

    /// <summary>The characters of a piece in reading order, for messages.</summary>
    private static string TextOf(string text, ShapedGlyph[] members, IReadOnlyList<ShapedGlyph> all)
    {
        int[] starts = [.. all.Select(g => g.Cluster).Append(text.Length).Distinct().Order()];
        var characters = new StringBuilder();
        foreach (int start in members.Select(m => m.Cluster).Distinct().Order())
        {
            int end = starts[Array.BinarySearch(starts, start) + 1];
            characters.Append(text, start, end - start);
        }

        return characters.ToString().Trim();
    }
}

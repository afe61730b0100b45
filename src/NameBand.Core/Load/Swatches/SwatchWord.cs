using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Stitching.Sewing;

namespace NameBand.Load.Swatches;

/// <summary>
/// The word of a swatch: of the letters that come most often on the list (ten capitals, ten others) those that have the
/// longest strokes, put together. The capital with the
/// longest strokes comes first, the others after it by the length of theirs, each letter once; letters that the job's face does
/// not have itself are left to others. Nobody's name is sewn on a
/// scrap: letters that happen to make a word of a name change places, or get one more.
/// </summary>
internal static class SwatchWord
{
    /// <summary>Strokes are compared at this height; the order hardly depends on it.</summary>
    private const double CompareAtMm = 10;

    /// <summary>Capitals, and others, that are looked at: those that come most often, for they tell most of the work.</summary>
    private const int CommonLetters = 10;

    /// <param name="names">The names that will be sewn.</param>
    /// <param name="most">Letters of the word; it gets fewer where the list has fewer.</param>
    /// <returns>Empty when the names have no letter that can be sewn alone.</returns>
    public static string Choose(ImmutableArray<LetteredName> names, Face face, FaceShelf shelf, int most)
    {
        var ranked = Ranked(names, face, shelf);
        var first = ranked.FirstOrDefault(IsCapital) ?? ranked.FirstOrDefault();
        if (first is null)
        {
            return "";
        }

        var others = ranked.Where(l => l != first && !IsCapital(l)).Concat(ranked.Where(l => l != first && IsCapital(l))).ToList();
        var words = names.SelectMany(n => n.Name.Text.Split(' ', '-', '\u00a0')).ToHashSet(StringComparer.OrdinalIgnoreCase);
        for (int from = 0; from < Math.Max(1, others.Count); from++)
        {
            string word = first + string.Concat(others.Skip(from).Take(most - 1));
            if (!words.Contains(word))
            {
                return word;
            }
        }

        // Every choice is somebody's name: the same letter twice over is not.
        return first + first + first;
    }

    private static List<string> Ranked(ImmutableArray<LetteredName> names, Face face, FaceShelf shelf)
    {
        var all = names.SelectMany(n => Clusters(n.Name.Text)).Where(IsLetter).ToList();
        var own = all.Where(l => l.All(c => face.Has(c))).ToList();
        string[] letters = [.. (own.Count > 0 ? own : all)
            .GroupBy(l => l, StringComparer.Ordinal)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal)
            .GroupBy(g => IsCapital(g.Key)).SelectMany(kind => kind.Take(CommonLetters)).Select(g => g.Key)];
        var alone = Lettered(letters, face, shelf);
        return [.. alone
            .Select(n => (Letter: n.Name.Text, StrokeMm: n.Pieces.Sum(p => Centrelines.Of(p.Piece, CompareAtMm).Sum(LengthMm))))
            .Where(l => l.StrokeMm > 0)
            .OrderByDescending(l => Math.Round(l.StrokeMm, 3)).ThenBy(l => l.Letter, StringComparer.Ordinal)
            .Select(l => l.Letter)];
    }

    /// <summary>Texts of our own, shaped as names are.</summary>
    public static ImmutableArray<LetteredName> Lettered(IEnumerable<string> texts, Face face, FaceShelf shelf)
    {
        var names = new NameList([], [.. texts.Select((t, i) => new Name(t, new RowRef("swatch", i + 1)))]);
        return names.Names.IsEmpty ? [] : Letterer.Letter(names, face, shelf).Value?.Names ?? [];
    }

    private static double LengthMm(ImmutableArray<Point> line)
    {
        double length = 0;
        for (int i = 1; i < line.Length; i++)
        {
            length += line[i].DistanceTo(line[i - 1]);
        }

        return length;
    }

    private static IEnumerable<string> Clusters(string text)
    {
        var parts = StringInfo.GetTextElementEnumerator(text);
        while (parts.MoveNext())
        {
            yield return parts.GetTextElement();
        }
    }

    private static bool IsLetter(string cluster) => char.IsLetter(cluster, 0);

    private static bool IsCapital(string cluster) => CharUnicodeInfo.GetUnicodeCategory(cluster, 0) == UnicodeCategory.UppercaseLetter;
}

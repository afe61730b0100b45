using System.Collections.Immutable;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Measuring;

/// <summary>Bounds of the lines to sew.</summary>
/// <param name="LongestMm">A line longer than a short ruler is measured badly.</param>
/// <param name="MostLetters">Letters in one line; never more than the machine holds.</param>
/// <param name="MostLines">Null: as many as all letters need.</param>
internal sealed record LineBounds(double LongestMm = 75, int MostLetters = 10, int? MostLines = null);

/// <param name="Left">Letters that the allowed number of lines leaves out, to be estimated; least used last.</param>
internal sealed record LinePlan(ImmutableArray<KeyInLine> Lines, ImmutableArray<string> Left);

/// <summary>
/// Chooses few short lines that determine the width of every letter and the machine's gap, and betray a
/// mis-measured line.
/// </summary>
/// <remarks>
/// Each line gives one number, so m letters and a gap need m + 1 lines at the least. Among lines of at most k letters
/// none weigh m letters better than one repeated letter a line: a row of counts with sum k is at most k long, so by
/// Hadamard's inequality the determinant of the counts cannot be larger. On top come mixed lines that hold each letter
/// twice, in a pair of lines that no other letter has: they tell the gap from the letters, and the pair in which the
/// sums do not add up names the line that was misread.
/// </remarks>
internal static class LineDesign
{
    private const int Repeats = 4; // A letter four times in a row: its width is then read to a quarter of the ruler's error.
    private const int FewestMixed = 4; // Lines: four give six pairs, and each letter is known by its own pair.

    /// <param name="uses">How often each letter is needed.</param>
    /// <param name="roughWidthMm">A first guess of a letter's width and the gap after it, so that no line gets too long.</param>
    public static LinePlan Choose(IReadOnlyDictionary<string, int> uses, Func<string, double> roughWidthMm, LineBounds bounds)
    {
        string[] wanted = [.. uses.Keys
            .OrderByDescending(l => uses[l])
            .ThenBy(l => l, StringComparer.Ordinal)];

        // A blank is sewn between letters, so it comes after at least one of them; it is used in most names.
        wanted = wanted.Length > 1 && uses.ContainsKey(Letters.Blank)
            ? [wanted.First(l => l != Letters.Blank), Letters.Blank, .. wanted.Where(l => l != Letters.Blank).Skip(1)]
            : [.. wanted.Where(l => l != Letters.Blank)];

        int count = wanted.Length;
        while (bounds.MostLines is { } most && count > 1 && count + MixedCount(wanted[..count], roughWidthMm, bounds) > most)
        {
            count--;
        }

        string[] measured = wanted[..count];
        if (measured.Length == 0)
        {
            return new LinePlan([], []);
        }

        var texts = measured.Select(l => Repeated(l, measured[0], roughWidthMm, bounds))
            .Concat(Mixed(measured, MixedCount(measured, roughWidthMm, bounds)));
        return new LinePlan([.. texts.Select((t, i) => new KeyInLine(i + 1, t))], [.. wanted[count..]]);
    }

    private static string Repeated(string letter, string companion, Func<string, double> roughWidthMm, LineBounds bounds)
    {
        if (letter == Letters.Blank)
        {
            int blanks = Fitting(roughWidthMm(letter) + roughWidthMm(companion), bounds, (bounds.MostLetters - 1) / 2);
            return companion + string.Concat(Enumerable.Repeat(Letters.Blank + companion, blanks));
        }

        return string.Concat(Enumerable.Repeat(letter, Fitting(roughWidthMm(letter), bounds, bounds.MostLetters)));
    }

    private static int Fitting(double eachMm, LineBounds bounds, int most) =>
        Math.Clamp((int)(bounds.LongestMm / eachMm), 1, Math.Max(1, Math.Min(Repeats, most)));

    /// <summary>Enough lines that each letter has its own pair of them and none is too long.</summary>
    private static int MixedCount(string[] letters, Func<string, double> roughWidthMm, LineBounds bounds)
    {
        int count = FewestMixed;
        while (count * (count - 1) / 2 < letters.Length
            || Groups(letters, count).Any(g => g.Count > bounds.MostLetters || g.Sum(roughWidthMm) > bounds.LongestMm))
        {
            if (count > 3 * letters.Length + FewestMixed)
            {
                return count;
            }

            count++;
        }

        return count;
    }

    private static IEnumerable<string> Mixed(string[] letters, int count)
    {
        foreach (var group in Groups(letters, count).Where(g => g.Any(l => l != Letters.Blank)))
        {
            var inked = group.Where(l => l != Letters.Blank).ToList();
            if (inked.Count < group.Count)
            {
                if (inked.Count == 1)
                {
                    inked.Add(inked[0]);
                }

                inked.Insert(inked.Count / 2, Letters.Blank);
            }

            yield return string.Concat(inked);
        }
    }

    /// <summary>
    /// Deals the letters out to pairs of lines. The pairs are the edges of a complete graph in rounds of a
    /// tournament, so that the lines fill evenly.
    /// </summary>
    private static List<List<string>> Groups(string[] letters, int count)
    {
        var groups = Enumerable.Range(0, count).Select(_ => new List<string>()).ToList();
        int next = 0;
        int seats = count + (count % 2);
        for (int round = 0; round < seats - 1 && next < letters.Length; round++)
        {
            for (int k = 0; k < seats / 2 && next < letters.Length; k++)
            {
                int a = k == 0 ? seats - 1 : (round + k) % (seats - 1);
                int b = k == 0 ? round : (round + seats - 1 - k) % (seats - 1);
                if (a < count && b < count)
                {
                    groups[a].Add(letters[next]);
                    groups[b].Add(letters[next]);
                    next++;
                }
            }
        }

        return groups;
    }
}

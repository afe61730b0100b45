using System.Collections.Immutable;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters;

/// <summary>A part of a name that is keyed in at one go.</summary>
/// <param name="Keyed">Letters in the order of keying, blanks that are to be keyed among them.</param>
/// <param name="First">Which letter of the name, in the order of sewing, it begins with.</param>
internal sealed record NamePart(ImmutableArray<string> Keyed, int First);

/// <summary>Cuts a name that is longer than the machine holds.</summary>
internal static class NameParts
{
    /// <param name="letters">In the order of sewing.</param>
    /// <param name="holds">Characters the machine holds; null: any number.</param>
    /// <param name="keepsLeadingBlanks">
    /// Whether a blank at the start of what is keyed in is sewn as a blank. If not, the blank at a cut is keyed at the end
    /// of the part before it, or, when that is full, left to the next part's start mark.
    /// </param>
    public static ImmutableArray<NamePart> Cut(IReadOnlyList<string> letters, int? holds, bool keepsLeadingBlanks)
    {
        var parts = ImmutableArray.CreateBuilder<NamePart>();
        int at = 0;
        while (at < letters.Count)
        {
            if (parts.Count > 0 && !keepsLeadingBlanks)
            {
                at = SkipBlanks(letters, at);
            }

            int end = Math.Min(letters.Count, at + (holds ?? letters.Count));
            if (end < letters.Count && letters[end] != Letters.Blank && LastBlank(letters, at, end) is { } blank)
            {
                // The word at the cut goes over whole, its blank with it where the machine keeps it.
                end = keepsLeadingBlanks ? blank : blank + 1;
            }

            parts.Add(new NamePart([.. letters.Skip(at).Take(end - at)], at));
            at = end;
        }

        return parts.ToImmutable();
    }

    /// <summary>The same, each word by itself.</summary>
    public static ImmutableArray<NamePart> ByWord(IReadOnlyList<string> letters, int? holds)
    {
        var parts = ImmutableArray.CreateBuilder<NamePart>();
        for (int at = SkipBlanks(letters, 0); at < letters.Count;)
        {
            int end = at;
            while (end < letters.Count && letters[end] != Letters.Blank)
            {
                end++;
            }

            int first = at;
            parts.AddRange(Cut([.. letters.Skip(at).Take(end - at)], holds, keepsLeadingBlanks: false)
                .Select(p => p with { First = p.First + first }));
            at = SkipBlanks(letters, end);
        }

        return parts.ToImmutable();
    }

    private static int SkipBlanks(IReadOnlyList<string> letters, int at)
    {
        while (at < letters.Count && letters[at] == Letters.Blank)
        {
            at++;
        }

        return at;
    }

    /// <summary>The last blank inside a part, not at its very start.</summary>
    private static int? LastBlank(IReadOnlyList<string> letters, int from, int end)
    {
        for (int i = end - 1; i > from; i--)
        {
            if (letters[i] == Letters.Blank)
            {
                return i;
            }
        }

        return null;
    }
}

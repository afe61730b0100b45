using System.Collections.Immutable;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Keeps groups on rounds of their own.</summary>
internal sealed class GroupSeparation
{
    private readonly ImmutableArray<int> _ends;
    private readonly ImmutableArray<int> _rounds;

    private GroupSeparation(ImmutableArray<int> ends, ImmutableArray<int> rounds)
    {
        _ends = ends;
        _rounds = rounds;
    }

    /// <param name="names">In their order; names that share rounds follow one another.</param>
    /// <returns>Null where all may share rounds.</returns>
    public static GroupSeparation? Of(IReadOnlyList<LetteredName> names, IEnumerable<FreeInterval> stretches)
    {
        if (names.All(n => n.Standing.OwnRounds == 0))
        {
            return null;
        }

        int[] ends = new int[names.Count];
        for (int i = names.Count - 1; i >= 0; i--)
        {
            bool isLast = i == names.Count - 1 || names[i].Standing.OwnRounds != names[i + 1].Standing.OwnRounds;
            ends[i] = isLast ? i + 1 : ends[i + 1];
        }

        return new GroupSeparation([.. ends], [.. stretches.Select(s => s.Round)]);
    }

    /// <summary>Rounds that are needed at the least.</summary>
    public static int LeastRounds(IReadOnlyList<LetteredName> names) => names.Select(n => n.Standing.OwnRounds).Distinct().Count();

    /// <summary>The first name that may not stand on the next stretch any more, given how many names each stretch before it has.</summary>
    public int Until(IReadOnlyList<int> countsBefore, int next)
    {
        int stretch = countsBefore.Count;
        int first = next;
        for (int s = stretch - 1; s >= 0 && _rounds[s] == _rounds[stretch]; s--)
        {
            first -= countsBefore[s];
        }

        return first >= _ends.Length ? first : _ends[first];
    }
}

namespace NameBand.Lettering.Bidi;

/// <summary>Rules N0 (paired brackets, BD16), N1 and N2.</summary>
internal static class NeutralTypes
{
    private const int MaxOpenBrackets = 63; // The stack of UAX 9, BD16, has 63 places; a text that needs more has no pairs.

    public static void Resolve(BidiClass[] classes, ReadOnlySpan<BidiClass> original, ReadOnlySpan<int> brackets, IsolatingRun run)
    {
        foreach (var (open, close) in Pairs(classes, brackets, run))
        {
            ResolvePair(classes, original, run, open, close);
        }

        Neutrals(classes, run);
    }

    private static bool IsNeutral(BidiClass type) => type is BidiClass.B or BidiClass.S or BidiClass.WS or BidiClass.ON
        or BidiClass.LRI or BidiClass.RLI or BidiClass.FSI or BidiClass.PDI;

    /// <summary>L, R (numbers count as R), or null for what is not strong.</summary>
    private static BidiClass? Strong(BidiClass type) => type switch
    {
        BidiClass.L => BidiClass.L,
        BidiClass.R or BidiClass.EN or BidiClass.AN => BidiClass.R,
        _ => null,
    };

    private static List<(int Open, int Close)> Pairs(BidiClass[] classes, ReadOnlySpan<int> brackets, IsolatingRun run)
    {
        var pairs = new List<(int Open, int Close)>();
        var open = new List<(int Bracket, int At)>();
        for (int k = 0; k < run.Indexes.Length; k++)
        {
            int i = run.Indexes[k];
            int bracket = classes[i] == BidiClass.ON ? brackets[i] : 0;
            if (bracket > 0)
            {
                if (open.Count == MaxOpenBrackets)
                {
                    return [];
                }

                open.Add((bracket, k));
            }
            else if (bracket < 0)
            {
                int match = open.FindLastIndex(o => o.Bracket == -bracket);
                if (match >= 0)
                {
                    pairs.Add((open[match].At, k));
                    open.RemoveRange(match, open.Count - match);
                }
            }
        }

        pairs.Sort();
        return pairs;
    }

    private static void ResolvePair(BidiClass[] classes, ReadOnlySpan<BidiClass> original, IsolatingRun run, int open, int close)
    {
        var embedding = run.EmbeddingDirection;
        bool opposite = false, same = false;
        for (int k = open + 1; k < close && !same; k++)
        {
            var strong = Strong(classes[run.Indexes[k]]);
            same = strong == embedding;
            opposite |= strong is not null && !same;
        }

        if (!same && !opposite)
        {
            return;
        }

        var direction = embedding;
        if (!same)
        {
            var before = run.Start;
            for (int k = open - 1; k >= 0; k--)
            {
                if (Strong(classes[run.Indexes[k]]) is { } strong)
                {
                    before = strong;
                    break;
                }
            }

            direction = before != embedding ? before : embedding;
        }

        SetBracket(classes, original, run, open, direction);
        SetBracket(classes, original, run, close, direction);
    }

    /// <summary>Marks that stood after a bracket follow it.</summary>
    private static void SetBracket(BidiClass[] classes, ReadOnlySpan<BidiClass> original, IsolatingRun run, int at, BidiClass direction)
    {
        classes[run.Indexes[at]] = direction;
        for (int k = at + 1; k < run.Indexes.Length && original[run.Indexes[k]] == BidiClass.NSM; k++)
        {
            classes[run.Indexes[k]] = direction;
        }
    }

    private static void Neutrals(BidiClass[] classes, IsolatingRun run)
    {
        var at = run.Indexes;
        for (int k = 0; k < at.Length; k++)
        {
            if (!IsNeutral(classes[at[k]]))
            {
                continue;
            }

            int end = k;
            while (end < at.Length && IsNeutral(classes[at[end]]))
            {
                end++;
            }

            var before = k > 0 ? Strong(classes[at[k - 1]]) ?? run.EmbeddingDirection : run.Start;
            var after = end < at.Length ? Strong(classes[at[end]]) ?? run.EmbeddingDirection : run.End;
            for (; k < end; k++)
            {
                classes[at[k]] = before == after ? before : run.EmbeddingDirection;
            }

            k--;
        }
    }
}

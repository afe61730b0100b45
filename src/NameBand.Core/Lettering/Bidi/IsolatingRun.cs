namespace NameBand.Lettering.Bidi;

/// <summary>An isolating run sequence (BD13): its characters in order, without those X9 removes.</summary>
/// <param name="Start">The class that stands before it (sos).</param>
/// <param name="End">The class that stands after it (eos).</param>
internal sealed record IsolatingRun(int[] Indexes, byte Level, BidiClass Start, BidiClass End)
{
    public BidiClass EmbeddingDirection => DirectionOf(Level);

    public static BidiClass DirectionOf(int level) => (level & 1) == 1 ? BidiClass.R : BidiClass.L;
}

/// <summary>Rule X10: the isolating run sequences of a line.</summary>
internal static class IsolatingRuns
{
    public static List<IsolatingRun> Find(ReadOnlySpan<BidiClass> classes, ExplicitLevels found, int[] matches, int paragraphLevel)
    {
        var kept = new List<int>(classes.Length);
        for (int i = 0; i < classes.Length; i++)
        {
            if (!ExplicitLevels.IsRemoved(classes[i]))
            {
                kept.Add(i);
            }
        }

        byte[] levels = found.Levels;
        var runs = LevelRuns(kept, levels);
        var sequences = new List<IsolatingRun>();
        foreach (var (from, _) in runs.Runs)
        {
            int first = kept[from];
            if (classes[first] == BidiClass.PDI && matches[first] != Isolates.None)
            {
                continue; // it carries on the sequence of its isolate initiator
            }

            sequences.Add(Sequence(classes, kept, (levels, paragraphLevel), matches, runs, from));
        }

        return sequences;
    }

    private static (List<(int From, int To)> Runs, Dictionary<int, int> StartingAt) LevelRuns(List<int> kept, byte[] levels)
    {
        var runs = new List<(int From, int To)>();
        var startingAt = new Dictionary<int, int>();
        for (int i = 0; i < kept.Count;)
        {
            int end = i + 1;
            while (end < kept.Count && levels[kept[end]] == levels[kept[i]])
            {
                end++;
            }

            startingAt[kept[i]] = runs.Count;
            runs.Add((i, end));
            i = end;
        }

        return (runs, startingAt);
    }

    private static IsolatingRun Sequence(
        ReadOnlySpan<BidiClass> classes, List<int> kept, (byte[] OfCharacters, int OfParagraph) levels, int[] matches,
        (List<(int From, int To)> Runs, Dictionary<int, int> StartingAt) all, int firstKept)
    {
        var (runs, runStartingAt) = all;
        var indexes = new List<int>();
        var run = runs[runStartingAt[kept[firstKept]]];
        while (true)
        {
            indexes.AddRange(kept[run.From..run.To]);
            int end = indexes[^1];
            if (!Isolates.IsInitiator(classes[end]) || matches[end] >= classes.Length)
            {
                break;
            }

            run = runs[runStartingAt[matches[end]]];
        }

        int level = levels.OfCharacters[indexes[0]];
        int before = firstKept > 0 ? levels.OfCharacters[kept[firstKept - 1]] : levels.OfParagraph;
        bool openEnd = Isolates.IsInitiator(classes[indexes[^1]]);
        int after = !openEnd && run.To < kept.Count ? levels.OfCharacters[kept[run.To]] : levels.OfParagraph;
        return new IsolatingRun(
            [.. indexes], (byte)level,
            IsolatingRun.DirectionOf(Math.Max(level, before)), IsolatingRun.DirectionOf(Math.Max(level, after)));
    }
}

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
        var runs = LevelRuns(kept, levels, out var runStartingAt);
        var sequences = new List<IsolatingRun>();
        foreach (var (from, _) in runs)
        {
            int first = kept[from];
            if (classes[first] == BidiClass.PDI && matches[first] != Isolates.None)
            {
                continue; // it carries on the sequence of its isolate initiator
            }

            sequences.Add(Sequence(classes, kept, levels, matches, runs, runStartingAt, from, paragraphLevel));
        }

        return sequences;
    }

    private static List<(int From, int To)> LevelRuns(List<int> kept, byte[] levels, out Dictionary<int, int> startingAt)
    {
        var runs = new List<(int From, int To)>();
        startingAt = [];
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

        return runs;
    }

    private static IsolatingRun Sequence(
        ReadOnlySpan<BidiClass> classes, List<int> kept, byte[] levels, int[] matches, List<(int From, int To)> runs,
        Dictionary<int, int> runStartingAt, int firstKept, int paragraphLevel)
    {
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

        int level = levels[indexes[0]];
        int before = firstKept > 0 ? levels[kept[firstKept - 1]] : paragraphLevel;
        bool openEnd = Isolates.IsInitiator(classes[indexes[^1]]);
        int after = !openEnd && run.To < kept.Count ? levels[kept[run.To]] : paragraphLevel;
        return new IsolatingRun(
            [.. indexes], (byte)level,
            IsolatingRun.DirectionOf(Math.Max(level, before)), IsolatingRun.DirectionOf(Math.Max(level, after)));
    }
}

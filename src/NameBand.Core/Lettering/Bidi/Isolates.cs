namespace NameBand.Lettering.Bidi;

/// <summary>Matching of isolate initiators and their ends (BD9), and the first strong character (P2, P3).</summary>
internal static class Isolates
{
    public const int None = -1; // No index: those begin at 0.

    public static bool IsInitiator(BidiClass type) => type is BidiClass.LRI or BidiClass.RLI or BidiClass.FSI;

    /// <summary>For each isolate initiator the index of its PDI (or the length), for each PDI its initiator (or
    /// <see cref="None"/>).</summary>
    public static int[] Match(ReadOnlySpan<BidiClass> classes)
    {
        var matches = new int[classes.Length];
        Array.Fill(matches, None);
        var open = new Stack<int>();
        for (int i = 0; i < classes.Length; i++)
        {
            if (IsInitiator(classes[i]))
            {
                matches[i] = classes.Length;
                open.Push(i);
            }
            else if (classes[i] == BidiClass.PDI && open.TryPop(out int start))
            {
                matches[start] = i;
                matches[i] = start;
            }
            else if (classes[i] == BidiClass.B)
            {
                open.Clear();
            }
        }

        return matches;
    }

    /// <summary>0 or 1 by the first strong character outside isolates, or <see cref="None"/>.</summary>
    public static int FirstStrong(ReadOnlySpan<BidiClass> classes, int[] matches, int from, int to)
    {
        for (int i = from; i < to; i++)
        {
            switch (classes[i])
            {
                case BidiClass.L:
                    return 0;
                case BidiClass.R or BidiClass.AL:
                    return 1;
                case BidiClass.B:
                    return None;
                case BidiClass.LRI or BidiClass.RLI or BidiClass.FSI:
                    i = matches[i];
                    break;
            }
        }

        return None;
    }
}

namespace NameBand.Lettering.Bidi;

/// <summary>
/// The Unicode Bidirectional Algorithm (UAX 9, revision 46) for one line: which way each character of a name
/// runs, and in what order the pieces stand from left to right. Mirrored brackets are left to the shaper.
/// </summary>
internal static class BidiLevels
{
    public const int AutoParagraph = -1; // No level: those of UAX 9 begin at 0.

    /// <summary>Nothing below this code point runs from right to left.</summary>
    private const char FirstRightToLeft = '\u0590';

    /// <summary>The embedding level of each UTF-16 unit of a text; even levels run left to right.</summary>
    public static byte[] OfText(string text)
    {
        var levels = new byte[text.Length];
        if (text.AsSpan().IndexOfAnyInRange(FirstRightToLeft, '\uFFFF') < 0)
        {
            return levels;
        }

        var codePoints = new List<int>(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            codePoints.Add(rune.Value);
        }

        var classes = new BidiClass[codePoints.Count];
        var brackets = new int[codePoints.Count];
        for (int i = 0; i < classes.Length; i++)
        {
            classes[i] = BidiData.ClassOf(codePoints[i]);
            brackets[i] = classes[i] == BidiClass.ON ? BidiData.BracketOf(codePoints[i]) : 0;
        }

        byte[] resolved = Resolve(classes, brackets, AutoParagraph, out _);
        for (int i = 0, unit = 0; i < resolved.Length; i++)
        {
            levels[unit++] = resolved[i];
            if (codePoints[i] > 0xFFFF)
            {
                levels[unit++] = resolved[i];
            }
        }

        return levels;
    }

    /// <summary>Levels after rules P2 to L1. Characters that rule X9 removes get the level of the one before them.</summary>
    /// <param name="brackets">As <see cref="BidiData.BracketOf"/> gives them.</param>
    /// <param name="paragraph">0, 1 or <see cref="AutoParagraph"/>.</param>
    public static byte[] Resolve(ReadOnlySpan<BidiClass> classes, ReadOnlySpan<int> brackets, int paragraph, out int paragraphLevel)
    {
        int[] matches = Isolates.Match(classes);
        paragraphLevel = paragraph >= 0 ? paragraph : Math.Max(0, Isolates.FirstStrong(classes, matches, 0, classes.Length));
        var explicitLevels = ExplicitLevels.Find(classes, matches, paragraphLevel);
        foreach (var sequence in IsolatingRuns.Find(classes, explicitLevels, matches, paragraphLevel))
        {
            WeakTypes.Resolve(explicitLevels.Classes, sequence);
            NeutralTypes.Resolve(explicitLevels.Classes, classes, brackets, sequence);
            Imply(explicitLevels, sequence);
        }

        Finish(classes, explicitLevels.Levels, paragraphLevel);
        return explicitLevels.Levels;
    }

    /// <summary>Rule L2 for runs of one level each: the indexes of the runs from left to right.</summary>
    public static int[] VisualOrder(ReadOnlySpan<byte> levels)
    {
        var order = new int[levels.Length];
        int highest = 0, lowestOdd = int.MaxValue;
        for (int i = 0; i < order.Length; i++)
        {
            order[i] = i;
            highest = Math.Max(highest, levels[i]);
            lowestOdd = (levels[i] & 1) == 1 ? Math.Min(lowestOdd, levels[i]) : lowestOdd;
        }

        for (int level = highest; level >= lowestOdd; level--)
        {
            for (int start = 0; start < order.Length; start++)
            {
                int end = start;
                while (end < order.Length && levels[order[end]] >= level)
                {
                    end++;
                }

                if (end > start)
                {
                    Array.Reverse(order, start, end - start);
                    start = end;
                }
            }
        }

        return order;
    }

    /// <summary>Rules I1 and I2.</summary>
    private static void Imply(ExplicitLevels levels, IsolatingRun run)
    {
        foreach (int i in run.Indexes)
        {
            var type = levels.Classes[i];
            bool odd = (levels.Levels[i] & 1) == 1;
            levels.Levels[i] += (byte)(odd
                ? (type is BidiClass.L or BidiClass.EN or BidiClass.AN ? 1 : 0)
                : type switch { BidiClass.R => 1, BidiClass.EN or BidiClass.AN => 2, _ => 0 });
        }
    }

    /// <summary>Levels for what X9 removed, then rule L1.</summary>
    private static void Finish(ReadOnlySpan<BidiClass> classes, byte[] levels, int paragraphLevel)
    {
        for (int i = 0; i < levels.Length; i++)
        {
            if (ExplicitLevels.IsRemoved(classes[i]))
            {
                levels[i] = i > 0 ? levels[i - 1] : (byte)paragraphLevel;
            }
        }

        bool trailing = true;
        for (int i = levels.Length - 1; i >= 0; i--)
        {
            if (classes[i] is BidiClass.S or BidiClass.B)
            {
                levels[i] = (byte)paragraphLevel;
                trailing = true;
            }
            else if (classes[i] is BidiClass.WS or BidiClass.LRI or BidiClass.RLI or BidiClass.FSI or BidiClass.PDI
                || ExplicitLevels.IsRemoved(classes[i]))
            {
                levels[i] = trailing ? (byte)paragraphLevel : levels[i];
            }
            else
            {
                trailing = false;
            }
        }
    }
}

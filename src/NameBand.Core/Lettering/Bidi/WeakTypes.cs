namespace NameBand.Lettering.Bidi;

/// <summary>Rules W1 to W7.</summary>
internal static class WeakTypes
{
    public static void Resolve(BidiClass[] classes, IsolatingRun run)
    {
        MarksAndArabicNumbers(classes, run);
        Separators(classes, run);
        Terminators(classes, run);
        EuropeanAfterLatin(classes, run);
    }

    /// <summary>W1 (marks take the class before them), W2 (numbers after Arabic letters) and W3.</summary>
    private static void MarksAndArabicNumbers(BidiClass[] classes, IsolatingRun run)
    {
        var before = run.Start;
        foreach (int i in run.Indexes)
        {
            if (classes[i] == BidiClass.NSM)
            {
                classes[i] = Isolates.IsInitiator(before) || before == BidiClass.PDI ? BidiClass.ON : before;
            }

            before = classes[i];
        }

        var strong = run.Start;
        foreach (int i in run.Indexes)
        {
            if (classes[i] == BidiClass.EN && strong == BidiClass.AL)
            {
                classes[i] = BidiClass.AN;
            }
            else if (classes[i] is BidiClass.L or BidiClass.R or BidiClass.AL)
            {
                strong = classes[i];
            }
        }

        foreach (int i in run.Indexes)
        {
            classes[i] = classes[i] == BidiClass.AL ? BidiClass.R : classes[i];
        }
    }

    /// <summary>W4.</summary>
    private static void Separators(BidiClass[] classes, IsolatingRun run)
    {
        var at = run.Indexes;
        for (int k = 1; k + 1 < at.Length; k++)
        {
            var before = classes[at[k - 1]];
            var type = classes[at[k]];
            if (before == classes[at[k + 1]]
                && ((before == BidiClass.EN && (type is BidiClass.ES or BidiClass.CS))
                    || (before == BidiClass.AN && type == BidiClass.CS)))
            {
                classes[at[k]] = before;
            }
        }
    }

    /// <summary>W5 and W6.</summary>
    private static void Terminators(BidiClass[] classes, IsolatingRun run)
    {
        var at = run.Indexes;
        for (int k = 0; k < at.Length; k++)
        {
            if (classes[at[k]] != BidiClass.ET)
            {
                continue;
            }

            int end = k;
            while (end < at.Length && classes[at[end]] == BidiClass.ET)
            {
                end++;
            }

            bool byNumber = (k > 0 && classes[at[k - 1]] == BidiClass.EN) || (end < at.Length && classes[at[end]] == BidiClass.EN);
            for (; k < end; k++)
            {
                classes[at[k]] = byNumber ? BidiClass.EN : BidiClass.ON;
            }

            k--;
        }

        foreach (int i in at)
        {
            classes[i] = classes[i] is BidiClass.ES or BidiClass.CS ? BidiClass.ON : classes[i];
        }
    }

    /// <summary>W7.</summary>
    private static void EuropeanAfterLatin(BidiClass[] classes, IsolatingRun run)
    {
        var strong = run.Start;
        foreach (int i in run.Indexes)
        {
            if (classes[i] == BidiClass.EN && strong == BidiClass.L)
            {
                classes[i] = BidiClass.L;
            }
            else if (classes[i] is BidiClass.L or BidiClass.R)
            {
                strong = classes[i];
            }
        }
    }
}

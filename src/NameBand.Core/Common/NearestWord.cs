namespace NameBand.Common;

/// <summary>Finds the known word a mistyped one was meant to be.</summary>
public static class NearestWord
{
    /// <summary>
    /// The known word with the fewest slips of the keys (a letter missing, added, wrong, or two swapped) from
    /// <paramref name="word"/>, capitals aside; null when none is near. Of equally near ones the first is taken.
    /// </summary>
    public static string? Find(string word, IEnumerable<string> known)
    {
        string? best = null;
        int fewest = int.MaxValue;
        foreach (string candidate in known)
        {
            int slips = Slips(word.ToLowerInvariant(), candidate.ToLowerInvariant());
            if (slips < fewest)
            {
                fewest = slips;
                best = candidate;
            }
        }

        int most = Math.Max(1, (best?.Length ?? 0) / 3);
        return fewest <= most ? best : null;
    }

    /// <summary>Damerau-Levenshtein distance in its restricted form: no letter is touched twice.</summary>
    internal static int Slips(string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > 40 || a.Length > 200 || b.Length > 200)
        {
            return Math.Max(a.Length, b.Length);
        }

        var cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            cost[i, 0] = i;
        }

        for (int j = 0; j <= b.Length; j++)
        {
            cost[0, j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                int best = Math.Min(change, Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    best = Math.Min(best, cost[i - 2, j - 2] + 1);
                }

                cost[i, j] = best;
            }
        }

        return cost[a.Length, b.Length];
    }
}

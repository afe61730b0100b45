using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Runs of neighbours on a strip that go the same way onto the cloth: no segment reaches from one run into another.</summary>
internal static class NameRuns
{
    /// <summary>For each name the number of its run.</summary>
    /// <param name="names">All that lie on the strip, from left to right.</param>
    public static int[] Of(IReadOnlyList<PlacedName> names)
    {
        int[] runs = new int[names.Count];
        for (int i = 1; i < runs.Length; i++)
        {
            runs[i] = runs[i - 1] + (Alike(names[i - 1].Lettered, names[i].Lettered) ? 0 : 1);
        }

        return runs;
    }

    private static bool Alike(LetteredName one, LetteredName other) => one.Way == other.Way && one.IsInOneRun == other.IsInOneRun;
}

using System.Collections.Immutable;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Measuring;

/// <summary>Puts lines together that are keyed in and sewn at one go, each still measured by itself.</summary>
internal static class LineRuns
{
    /// <summary>Between two lines of a run: wide enough to see where one ends.</summary>
    public const string Between = "  ";

    // A run lies on one scrap as long as a usual field of 160 mm, and its keys are few enough to be checked at a glance. Our assumption.
    private const double LongestMm = 160;
    private const int MostLetters = 30;

    public static ImmutableArray<KeyInLine> Together(
        IEnumerable<KeyInLine> lines, Func<string, double> roughWidthMm, int? holds)
    {
        int most = Math.Min(MostLetters, holds ?? MostLetters);
        int run = 0;
        int letters = most + 1;
        double mm = 0;
        var together = ImmutableArray.CreateBuilder<KeyInLine>();
        foreach (var line in lines)
        {
            double wide = line.Letters.Sum(roughWidthMm);
            double blanks = Between.Length * roughWidthMm(Letters.Blank);
            bool fits = letters + Between.Length + line.Letters.Count <= most && mm + blanks + wide <= LongestMm;
            run += fits ? 0 : 1;
            letters = (fits ? letters + Between.Length : 0) + line.Letters.Count;
            mm = (fits ? mm + blanks : 0) + wide;
            together.Add(line with { Run = run });
        }

        return together.ToImmutable();
    }
}

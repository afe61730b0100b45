using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>The job in a few sentences, and its numbers as they are said on paper.</summary>
internal static class JobInWords
{
    public static string Sentence(StripPlan plan, Estimate estimate)
    {
        double difference = plan.DifferenceMm;
        string strips = plan.Rounds.Length == 1 ? "one strip" : $"{Whole(plan.Rounds.Length)} strips";
        string fits = plan.MatchesHem
            ? plan.Rounds.Length == 1 ? "which meets the hem" : "each of which meets its hem"
            : $"{Mm(Math.Abs(difference))} {(difference > 0 ? "longer" : "shorter")} than the hem in all";
        return $"{Names(plan.NameCount)} in letters {plan.LetterHeightsInWords} high on {strips}, {Length.FromMm(plan.TotalLengthMm).InMetres().English} in all, {fits}: "
            + (plan.HasSeveralWays
                ? $"{string.Join("; ", plan.Ways.Select(w => w.InWords))}; "
                : plan.HasNeedlePaths ? $"{Hoopings(plan)}, {Whole(estimate.Hoopings.Sum(h => (long)h.Stitches))} stitches, " : "")
            + $"{Range(estimate.MachineMinutes)} at the machine and {Range(estimate.HandsOnMinutes)} of work by hand.";
    }

    public static string Range(Figure minutes) =>
        $"{Time(minutes.Likely)} ({Time(minutes.Low)} to {Time(minutes.High)})";

    public static Said Time(double minutes) => Duration.InWords(minutes).Changed((text, _) => text.Replace(' ', '\u00a0'));

    public static string Hoopings(StripPlan plan) => plan.Hoopings.Length == 1 ? "1 hooping" : $"{Whole(plan.Hoopings.Length)} hoopings";

    public static string Names(int count) => count == 1 ? "1 name" : $"{Whole(count)} names";

    /// <summary>With the mark of thousands that page and commands have too.</summary>
    public static string Whole(long number) => number.ToString("#,0", CultureInfo.InvariantCulture);

    public static string Mm(double mm) => mm.ToString("0.0", CultureInfo.InvariantCulture) + " mm";
}

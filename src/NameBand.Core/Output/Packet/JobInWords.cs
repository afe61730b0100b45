using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>The job in a few sentences, and its numbers as they are said on paper.</summary>
internal static class JobInWords
{
    public static Said Sentence(StripPlan plan, Estimate estimate)
    {
        double difference = plan.DifferenceMm;
        int rounds = plan.Rounds.Length;
        Said strips = Said.Plural(rounds, "one strip", $"{rounds:#,0} strips");
        Said fits = plan.MatchesHem
            ? rounds == 1 ? "which meets the hem" : "each of which meets its hem"
            : difference > 0 ? (Said)$"{Mm(difference)} longer than the hem in all" : $"{Mm(-difference)} shorter than the hem in all";
        Said sewn = plan.HasSeveralWays ? (Said)$"{Said.Join("; ", plan.Ways.Select(w => w.InWords))}; "
            : plan.HasNeedlePaths
                ? (Said)$"{Hoopings(plan)}, {Wording.Count(estimate.Hoopings.Sum(h => (long)h.Stitches), "stitch", "stitches")}, " : "";
        return $"{Names(plan.NameCount)} in letters {plan.LetterHeightsInWords} high on {strips}, {Length.FromMm(plan.TotalLengthMm).InMetres()} in all, {fits}: "
            + $"{sewn}{Range(estimate.MachineMinutes)} at the machine and {Range(estimate.HandsOnMinutes)} of work by hand.";
    }

    public static Said Range(Figure minutes) => $"{Time(minutes.Likely)} ({Time(minutes.Low)} to {Time(minutes.High)})";

    public static Said Time(double minutes) => Duration.InTiedWords(minutes);

    public static Said Hoopings(StripPlan plan) => Wording.Count(plan.Hoopings.Length, "hooping");

    public static Said Names(int count) => Wording.Count(count, "name");

    /// <summary>With the mark of thousands that page and commands have too.</summary>
    public static Said Whole(long number) => $"{number:#,0}";

    public static Said Mm(double mm) => $"{mm:0.0} mm";
}

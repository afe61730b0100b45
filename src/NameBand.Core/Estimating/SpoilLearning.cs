using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>What the log has taught of names that go wrong.</summary>
/// <param name="Sewn">Names that are logged.</param>
/// <param name="SetPer100">As it is set.</param>
/// <param name="NowPer100">As it is taken now.</param>
public sealed record LearnedSpoils(int Sewn, int Spoiled, double SetPer100, double NowPer100);

/// <summary>
/// How many names of a hundred go wrong: what is set, as if it had been seen on a hundred names, and with it what the log says
/// (mean of a Beta
/// distribution). A hooping that was spoiled counts as one name: more than one seldom goes wrong at a time.
/// </summary>
internal static class SpoilLearning
{
    /// <summary>Names that what is set stands for: our choice.</summary>
    private const double SetNames = 100;

    /// <summary>Of fewer names without a spoiled one nothing is learned: our choice.</summary>
    private const int FewNames = 20;

    public static double Per100(double set, SewingLog? log, StripPlan plan) => Of(set, log, plan)?.NowPer100 ?? set;

    /// <summary>Null where nothing is learned.</summary>
    public static LearnedSpoils? Of(double set, SewingLog? log, StripPlan plan)
    {
        if (log is null)
        {
            return null;
        }

        var names = plan.Hoopings.ToDictionary(h => h.Number, HoopHands.NamesIn);
        int sewn = log.Sewings.Sum(names.GetValueOrDefault) + log.OfNames.Sewings.Length;
        int spoiled = Spoiled(log) + Spoiled(log.OfNames);
        return spoiled == 0 && sewn < FewNames ? null
            : new LearnedSpoils(Math.Max(sewn, spoiled), spoiled, set,
                100 * ((SetNames * set / 100) + spoiled) / (SetNames + Math.Max(sewn, spoiled)));
    }

    /// <summary>What was said to be spoiled and not taken back as a mistake.</summary>
    private static int Spoiled(SewingLog log) => log.Entries.Count(e => e.Deed is SewingDeed.Again or SewingDeed.Patch);
}

using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;

namespace NameBand.Layout;

/// <summary>Whether each strip meets its hem, as it is said of the plan that was settled on.</summary>
internal static class HemFits
{
    public static Problem Told(RoundFit fit, Said mend) =>
        fit.Judged().Told(Where.Of(null, $"round {fit.Number}"), mend);

    /// <summary>
    /// What was found while a layout was made, as it holds for the plan that came of it: what was sewn and measured may have
    /// moved a strip's end since.
    /// </summary>
    public static IEnumerable<Problem> Settled(StripPlan plan, ImmutableArray<Problem> found)
    {
        var off = plan.Fits.Where(f => !f.Meets).ToList();
        var holds = off.Select(f => f.Judged()).ToHashSet();
        var kept = found.Where(p => p.Judged is not { About: Fact.Hem } judged || holds.Contains(judged)).ToList();
        var said = kept.Select(p => p.Judged).OfType<Verdict>().ToHashSet();
        return kept.Concat(off.Where(f => !said.Contains(f.Judged())).Select(f => Told(
            f, "Measure what is sewn once more; then use smaller letters or another gap for what is still to be sewn.")));
    }
}

using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Plans;

/// <summary>
/// The plain way, beside which every plan stands as a measure: names typed into a machine's letters, one line on as many rounds
/// as they take, without a hoop.
/// </summary>
internal static class PlainWay
{
    /// <summary>Heights of built-in letters where nobody has said those of hers: common practice, no source.</summary>
    private static readonly ImmutableArray<Length> AssumedSizes = [Length.FromMm(9), Length.FromMm(7), Length.FromMm(5)];

    /// <summary>The job with its names typed; in the heights of her machine, or in those that are assumed.</summary>
    public static VisibleChoice Typed(VisibleSteps steps, PlanTrials trials)
    {
        var known = steps.Typed(VisibleChoice.AsSet, []);
        return trials.Of(known).Problems.Any(p => p.Severity == Severity.CannotUse && p.Where.Key == LettersKeys.Sizes.Path)
            ? steps.Typed(VisibleChoice.AsSet, AssumedSizes) : known;
    }

    /// <summary>
    /// In the height nearest to the letters of the plan as it is set that holds all its names, with a machine that has every
    /// letter of its names: all of
    /// them are to be measured by it. Null where the job, or some of its names, cannot be sewn so.
    /// </summary>
    public static PlanTrial? Of(LaidOut asSet, VisibleSteps steps, PlanTrials trials)
    {
        var names = asSet.Plan.Rounds.SelectMany(r => r.Names).Where(n => n.IsOfList).SelectMany(n => Letters.Of(n.Lettered.Name.Text));
        string letters = string.Concat(
            names.Where(l => l.Trim().Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
        // A motif that is drawn is no sign of a machine.
        var typed = asSet.Job.Traits.HasLettersOfItsOwn ? VisibleChoice.AsSet
            : steps.WithoutMotif(steps.WithLetters(Typed(steps, trials), letters));
        if (trials.Of(typed).Laid is not { Job.Letters.Sizes: { IsEmpty: false } sizes })
        {
            return null;
        }

        return sizes.OrderBy(s => Math.Abs(s.Mm - asSet.Plan.LetterHeightMm))
            .Select(s => trials.Of(steps.AsManyRounds(steps.AtHeight(typed, s))))
            .FirstOrDefault(t => t.Laid?.Plan.NameCount >= Math.Max(1, asSet.Plan.NameCount));
    }
}

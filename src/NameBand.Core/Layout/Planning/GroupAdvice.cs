using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout.Planning;

/// <summary>Says what of the groups' wishes cannot be had, and the smallest change that would do.</summary>
internal static class GroupAdvice
{
    /// <summary>Groups on rounds of their own need a round each; without them nothing can be laid out as it was asked.</summary>
    public static Problem? TooFewRounds(BandJob job, IReadOnlyList<LetteredName> names, HemPlan hem)
    {
        int least = GroupSeparation.LeastRounds(names);
        if (hem.FixedRounds is not { } rounds || rounds >= least)
        {
            return null;
        }

        Said turn = job.Hem.Skirt is null && job.Hem.Turn is null ? ", with \"circlePart\" in the group “hem”" : "";
        return Problem.CannotUse(
            new Where(JobReader.FileName, Key: "groups"),
            $"Groups on rounds of their own need {least} rounds with those of the others, and the garment has {rounds}.",
            $"Write \"rounds\": {least} in the group “strip”{turn}, or take \"ownRound\" from {(least - rounds == 1 ? "one group" : (Said)$"{least - rounds} groups")}.");
    }

    /// <param name="all">All names that could be lettered, held ones too.</param>
    public static IEnumerable<Problem> For(
        BandJob job, StripPlan plan, IReadOnlyList<LetteredName> names, ImmutableArray<LetteredName> all, ImmutableArray<HeldRow> held,
        Sizing sizing)
    {
        foreach (var heading in held.Where(h => h.Row.List == JobReader.FileName))
        {
            yield return GroupOrder.HeldHeading(job.Groups.All[heading.Row.Line - 1].Heading ?? "", heading);
        }

        var heldRows = held.Select(h => h.Row).Where(r => r.List != JobReader.FileName).ToHashSet();
        foreach (var group in job.Groups.All)
        {
            var own = names.Where(n => n.Standing.Group == group.Name).ToList();
            var tooBig = all.Where(n => n.Standing.Group == group.Name && heldRows.Contains(n.Name.Row)).ToList();
            if (tooBig.Count > 0 && Fitting(group, tooBig, job, sizing) is { } mend)
            {
                yield return Problem.NeedsPerson(
                    new Where(JobReader.FileName, Key: "groups"),
                    $"Of the group “{PlainText.Short(group.Name)}”, {(tooBig.Count == 1 ? (Said)"one name does" : $"{tooBig.Count} names do")} not fit the strip or the hoop at its size.",
                    mend);
            }

            double heightMm = plan.LetterHeightMm * group.HeightFactor;
            if (own.Count > 0 && heightMm < LayoutAdvice.LeastFor40WeightMm - Tolerance.Rounding
                && plan.LetterHeightMm >= LayoutAdvice.LeastFor40WeightMm - Tolerance.Rounding && LayoutAdvice.IsSewnWith40Weight(job))
            {
                yield return LayoutAdvice.TooSmall($"The letters of the group “{PlainText.Short(group.Name)}” come out {heightMm:0.0} mm high: under {LayoutAdvice.LeastFor40WeightMm:0} mm 40-weight thread no longer makes a letter.").Told(
                    new Where(JobReader.FileName, Key: "groups"),
                    $"Give the group a heightFactor of {Math.Ceiling(LayoutAdvice.LeastFor40WeightMm / plan.LetterHeightMm * 100) / 100:0.##} or more.");
            }
        }

        foreach (var problem in RunningOver(job, plan, names, sizing))
        {
            yield return problem;
        }
    }

    /// <summary>The factor at which what is too big would fit at the least height.</summary>
    private static Said? Fitting(NameGroup group, List<LetteredName> names, BandJob job, Sizing sizing)
    {
        double least = job.Lettering.Height?.Mm ?? job.Lettering.Least.Mm;
        var fitting = SmallerAlone.Largest(group.HeightFactor, f => names.All(n => n.Measuring(f / group.HeightFactor) is var smaller
            && sizing.FitsField(smaller, least) && sizing.FitsZone(smaller.Ink.BottomMm, smaller.Ink.TopMm, least)));
        return fitting is { } factor ? (Said)$"With \"heightFactor\": {factor:0.##} they would fit." : null;
    }

    /// <summary>Where names run over the rounds: the group whose letters need the least reducing for all to fit.</summary>
    private static IEnumerable<Problem> RunningOver(BandJob job, StripPlan plan, IReadOnlyList<LetteredName> names, Sizing sizing)
    {
        if (!plan.Fits.Any(f => f.RunsOver) || plan.Hem.FixedRounds is null)
        {
            yield break;
        }

        var search = new HeightSearch(sizing, plan.LetterHeightMm, job.Lettering.Order == NameOrder.BestFit);
        var best = job.Groups.All
            .Where(g => names.Any(n => n.Standing.Group == g.Name))
            .Select(g => (Group: g, Factor: SmallerAlone.Largest(g.HeightFactor, f => search.Obstacle(
                [.. names.Select(n => n.Standing.Group == g.Name ? n.Measuring(f / g.HeightFactor) : n)],
                plan.LetterHeightMm) is null) ?? 0))
            .Where(g => g.Factor * plan.LetterHeightMm >= LayoutAdvice.LeastFor40WeightMm)
            .OrderByDescending(g => g.Factor / g.Group.HeightFactor)
            .FirstOrDefault();
        if (best.Group is not null)
        {
            yield return Problem.NeedsPerson(
                new Where(JobReader.FileName, Key: "groups"),
                $"The group “{PlainText.Short(best.Group.Name)}” has letters {best.Group.HeightFactor:0.##} times as high as the job's, and the names run over.",
                $"With \"heightFactor\": {best.Factor:0.##} for it, all names would fit.");
        }
    }
}

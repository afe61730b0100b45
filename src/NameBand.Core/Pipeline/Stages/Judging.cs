using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering.Smallness;
using NameBand.Names;
using NameBand.Reports;

namespace NameBand.Pipeline.Stages;

/// <summary>Collects what the rooms found of each fact, in the order of the facts.</summary>
internal static class Judging
{
    /// <param name="load">None where no needle path was measured.</param>
    public static ImmutableArray<Verdict> Of(LaidOut laid, IReadOnlyCollection<Problem> found, Needs needs, ImmutableArray<Verdict> load) =>
    [
        .. laid.Plan.Fits.Select(f => f.Judged()),
        .. laid.Plan.Easing.Select(e => e.Judged()),
        .. load,
        .. Letters(laid, found),
        needs.Waiting(),
    ];

    /// <summary>How a command ends that says all this of a job: the same for every one of them.</summary>
    public static ExitStatus StatusOf(NameList rows, ImmutableArray<Problem> problems, ImmutableArray<Verdict> verdicts)
    {
        if (problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return ExitStatus.CannotUse;
        }

        bool waits = verdicts.Any(v => v.Kind == VerdictKind.NeedsAPerson) || Needs.Of(rows, problems).Count > 0;
        return waits ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced;
    }

    /// <summary>How <c>make</c> would end, as far as it shows before the cloth's load is known.</summary>
    public static ExitStatus StatusOf(LaidOut laid, ImmutableArray<Problem> problems)
    {
        var found = laid.Found(problems.Except(laid.Problems), []);
        return StatusOf(laid.Rows, problems, found.Verdicts);
    }

    /// <summary>What was said of letters; that they are large enough only where our own stitches make them.</summary>
    private static IEnumerable<Verdict> Letters(LaidOut laid, IReadOnlyCollection<Problem> found)
    {
        Verdict[] said = [.. found.Select(p => p.Judged).OfType<Verdict>().Where(v => v.About == Fact.Letters).Distinct()];
        return said.Length > 0 || !laid.Plan.HasNeedlePaths || laid.Plan.NameCount == 0
            ? said : [SmallnessAdvice.LargeEnough(laid.Fabric, laid.Plan.LetterHeightsInWords)];
    }
}

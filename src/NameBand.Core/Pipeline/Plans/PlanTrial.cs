using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Plans;

/// <summary>A choice laid out, and not stitched yet.</summary>
/// <param name="Laid">Null where nothing can be laid out so.</param>
/// <param name="Problems">All that was found.</param>
/// <param name="OfPlan">What of it comes from the layout and not from the lists.</param>
internal sealed record PlanTrial(VisibleChoice Choice, LaidOut? Laid, ImmutableArray<Problem> Problems, ImmutableArray<Problem> OfPlan)
{
    public static PlanTrial Failed(VisibleChoice choice, ImmutableArray<Problem> problems) => new(choice, null, problems, problems);

    /// <summary>
    /// What keeps it from being sewn or attached as it is laid out, by the verdicts that make gives of it; null where nothing does.
    /// What waits in the lists waits in every plan, and hinders none.
    /// </summary>
    public Problem? Obstacle => OfPlan.FirstOrDefault(p => p.Severity != Severity.Note);

    /// <summary>The upper edge of a strip cannot be eased in, and nothing else is wrong.</summary>
    public bool WantsShaping => Laid is not null && Obstacle is not null
        && OfPlan.Where(p => p.Severity != Severity.Note).All(p => p.Judged is { About: Fact.Easing });

    /// <summary>Whether some round has so few names that smaller letters should come before it.</summary>
    public bool HasIdleRound => Laid is { Plan: var plan } && plan.Rounds.Length > 1
        && plan.Rounds.Any(r => r.Names.Count(n => n.IsOfList) < LeastShare * plan.NameCount / plan.Rounds.Length);

    /// <summary>Part of its share of names under which a round is never recommended.</summary>
    private const double LeastShare = 1.0 / 3;

    /// <summary>What it would come to, its stitches estimated from those of another plan by the width of the names.</summary>
    public PlanFigures Guess(StitchRate rate)
    {
        var work = Counting.Of(Laid!, Laid!.Way.Sew(Laid), StandInFigures.Of(Laid.Plan)).Work;
        var stitching = rate.Of(Laid);
        return Figures(work with { Rows = [.. work.Rows, .. stitching] }, Laid.Plan.Hoopings.Length);
    }

    public PlanFigures Figures(Work work, int pieces) =>
        new(work.HersMinutes, work.ElapsedMinutes(pieces), Laid!.Plan.LetterHeightMm, Choice.Edits.Length);
}

/// <summary>How long stitches take for each millimetre that names are wide, as it was measured on one plan.</summary>
internal sealed record StitchRate(double MinutesPerMm)
{
    public static StitchRate Of(LaidOut laid, IEnumerable<HoopingFigures> figures) =>
        WidthMm(laid.Plan) is > 0 and var width ? new StitchRate(figures.Sum(f => f.StitchingMinutes) / width) : new StitchRate(0);

    public IEnumerable<WorkRow> Of(LaidOut laid) =>
    [
        new WorkRow("stitching", Doer.Machine, WorkTime.EachHooping, "mm of names", WidthMm(laid.Plan), MinutesPerMm, WorkCause.MachinePace)
        {
            IsAttended = laid.Job.Machine.IsWatched || !laid.Plan.HasNeedlePaths,
        },
    ];

    private static double WidthMm(StripPlan plan) => plan.Rounds.Sum(r => r.Names.Sum(n => n.WidthMm));
}

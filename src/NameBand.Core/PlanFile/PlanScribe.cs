using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;

namespace NameBand.PlanFile;

/// <summary>
/// Puts a plan into the records of plan.json. Lengths are rounded to 0.001 mm before they are added up, so that a reader who
/// adds the numbers in the file arrives at the sums in the file.
/// </summary>
internal static class PlanScribe
{
    public static WrittenPlan Of(
        string title, StripPlan plan, Estimate estimate, PlanFound found, PlanOrigin? origin)
    {
        var rows = found.Rows;
        Check(plan, estimate, rows);
        return new WrittenPlan
        {
            Format = PlanJson.Format,
            Title = title,
            Made = new WrittenMade { Version = ProgramVersion.Text, Mark = SheetMarks.Of(plan) },
            Workshop = origin?.Job is { } job ? WorkshopScribe.Of(job) : null,
            Free = origin?.Job is { } of ? WorkshopScribe.Free(of, plan) : null,
            Problems = [.. found.Needs.All.Select(Needed)],
            Verdicts = [.. found.Verdicts.Select(Judged)],
            Hem = Hem(plan.Hem),
            Strip = Strip(plan),
            LetterHeightMm = Thousandths.Mm(plan.LetterHeightMm),
            BaselineYMm = Thousandths.Mm(plan.BaselineYMm),
            MarkYMm = Thousandths.Mm(plan.MarkYMm),
            Marks = plan.Marks is MarkMethod.Drawn or MarkMethod.Paper ? HoldingKeys.Word(plan.Marks) : null,
            Hold = plan.Hold is FrameHold.Screw or FrameHold.None ? null : HoldingKeys.Word(plan.Hold),
            Face = origin?.Face,
            Fabric = origin?.Fabric,
            LetterHeightExactMm = origin is null ? null : plan.LetterHeightMm,
            LastNumber = plan.LastNumber > plan.Rounds.SelectMany(r => r.Names).Select(n => n.Order).DefaultIfEmpty(0).Max()
            ? plan.LastNumber : null,
            Rounds = RoundScribe.Of(plan, estimate, origin),
            BestFit = BestFit(plan.BestFit),
            Cloths = [.. plan.Cloths.Select(c => ClothScribe.Of(plan, c))],
            Hoopings = HoopingScribe.Of(plan, estimate, origin),
            Work = PlanWork.Of(estimate.Work),
            Totals = Totals(plan, estimate),
            Rows = new Lazily<WrittenRow>(rows.Length, i => Row(rows[i])),
        };
    }

    /// <summary>The word for a row's outcome in our files.</summary>
    public static string Word(RowOutcome outcome) => outcome switch
    {
        RowOutcome.Placed => "placed",
        RowOutcome.Merged => "merged",
        RowOutcome.Held => "held",
        RowOutcome.LeftOut => "leftOut",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No such outcome."),
    };

    private static WrittenProblem Needed(Problem problem) => new()
    {
        Severity = ProblemJson.Word(problem.Severity),
        Where = new WrittenWhere
        {
            File = problem.Where.File,
            Line = problem.Where.Line,
            Column = problem.Where.Column,
            Key = problem.Where.Key,
            Name = problem.Where.Name,
        },
        Text = problem.Found.English,
        Mend = problem.Mend.English,
    };

    internal static WrittenVerdict Judged(Verdict verdict) => new()
    {
        About = JsonNamingPolicy.CamelCase.ConvertName(verdict.About.ToString()),
        Round = verdict.Round,
        Verdict = JsonNamingPolicy.CamelCase.ConvertName(verdict.Kind.ToString()),
        Text = verdict.Text.English,
    };

    private static WrittenHem Hem(HemPlan hem) => new()
    {
        LengthMm = Thousandths.Mm(hem.EdgeLengthMm),
        Closed = hem.Closed,
        OverlapMm = Thousandths.Mm(hem.OverlapMm),
        ToleranceMm = Thousandths.Mm(hem.Tolerance.LeastMm),
        TolerancePercent = Thousandths.Mm(100 * hem.Tolerance.Part),
    };

    internal static WrittenStrip Strip(StripPlan plan)
    {
        decimal total = plan.Rounds.Sum(r => Thousandths.Mm(r.LengthMm));
        decimal asked = plan.Rounds.Sum(r => Thousandths.Mm(r.HemMm));
        return new WrittenStrip
        {
            CutWidthMm = Thousandths.Mm(plan.Hem.Strip.CutWidthMm),
            TurnInMm = Thousandths.Mm(plan.Hem.Strip.TurnInMm),
            FinishedWidthMm = Thousandths.Mm(plan.Hem.Strip.FinishedWidthMm),
            TotalLengthMm = total,
            DifferenceMm = total - asked,
            MatchesHem = plan.MatchesHem,
            Shortening = plan.Shortening,
            LineStepMm = plan.LineStepMm > 0 ? Thousandths.Mm(plan.LineStepMm) : null,
            UnderStitchesPart = plan.UnderStitchesPart,
            Shape = plan.Hem.IsCurved ? "curved" : null,
            Runs = plan.Hem.RunsInWords.English,
        };
    }

    private static WrittenBestFit? BestFit(BestFitProof? fit) => fit is null ? null : new WrittenBestFit
    {
        Hoopings = fit.Hoopings,
        Bound = fit.Bound,
        PatternBound = Thousandths.Mm(fit.PatternHoopings),
        GapMm = Thousandths.Mm(fit.GapMm),
        Proven = fit.IsProven,
    };

    private static WrittenTotals Totals(StripPlan plan, Estimate estimate) => new()
    {
        Names = plan.NameCount,
        Segments = plan.Rounds.Sum(r => r.Segments.Length),
        Hoopings = plan.Hoopings.Length,
        Stitches = estimate.Hoopings.Sum(h => (long)h.Stitches),
        Jumps = estimate.Hoopings.Sum(h => (long)h.Jumps),
        Trims = estimate.Hoopings.Sum(h => (long)h.Trims),
        MachineMinutes = PlanWork.Minutes(estimate.Work, Doer.Machine),
        HandsOnMinutes = PlanWork.Minutes(estimate.Work, Doer.Hands),
        MachineMinutesAtSetPace = estimate.OwnPace is { } own ? PlanWork.Minutes(own.AtSetPace.Work, Doer.Machine) : null,
        HandsOnMinutesAtSetPace = estimate.OwnPace is { } pace ? PlanWork.Minutes(pace.AtSetPace.Work, Doer.Hands) : null,
        NeedleThreadM = Thousandths.Tenths(estimate.NeedleThreadM),
        BobbinThreadM = Thousandths.Tenths(estimate.BobbinThreadM),
    };

    private static WrittenRow Row(ListedRow row) => new()
    {
        List = row.Row.List,
        Line = row.Row.Line,
        Outcome = Word(row.Outcome),
        Text = row.Text,
        Reason = row.Reason.English,
    };

    private static void Check(StripPlan plan, Estimate estimate, ImmutableArray<ListedRow> rows)
    {
        var placed = rows.Where(r => r.Outcome == RowOutcome.Placed).Select(r => r.Row).ToHashSet();
        var sewn = plan.Rounds.SelectMany(r => r.Names).Where(n => n.IsOfList).Select(n => n.Lettered.Name.Row).ToList();
        if (placed.Count != sewn.Count || !placed.SetEquals(sewn))
        {
            throw new InvalidOperationException("The placed rows are not the names of the plan.");
        }

        if (!plan.Hoopings.Select(h => h.Number).ToHashSet().SetEquals(estimate.Hoopings.Select(h => h.Number)))
        {
            throw new InvalidOperationException("The estimate is not of these hoopings.");
        }
    }
}

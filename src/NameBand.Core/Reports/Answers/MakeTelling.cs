using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Output.Changes;
using NameBand.PlanFile;

namespace NameBand.Reports.Answers;

/// <summary>Puts what was made into the record that is told.</summary>
internal static class MakeTelling
{
    public static CommandAnswer Of(MakeReport report) =>
        report is { Status: not ExitStatus.CannotUse, Names: { } names, Plan: { } plan, Estimate: { } estimate }
            ? Made(report, names, plan, estimate)
            : new RefusedMakeAnswer
            {
                Status = (int)report.Status,
                Problems = [.. Needs.InOrder(report.Names, report.Problems)],
                Title = report.Job?.Title,
                OutFolder = report.OutFolder,
                Changes = Changes(report.Changes),
                Assumed = report.Job is { } job ? AssumedWorkshop.Of(job) : null,
                Rows = report.Names is { } read ? Telling.Counts(read) : null,
                Held = report.Names is { } rows ? Telling.Rows(rows, RowOutcome.Held) : null,
            };

    private static MakeAnswer Made(MakeReport report, NameList names, StripPlan plan, Estimate estimate)
    {
        var job = report.Job!;
        var strip = PlanScribe.Strip(plan);
        var set = estimate.OwnPace?.AtSetPace;
        return new MakeAnswer
        {
            Status = (int)report.Status,
            Problems = [.. Needs.InOrder(names, report.Problems)],
            Title = job.Title,
            OutFolder = report.OutFolder!,
            Mark = SheetMarks.Of(plan),
            Face = job.Lettering.Face,
            OwnLetters = plan.SpacingMm is not null,
            SetsOut = plan.SpacingMm is not null && !job.HasSeveralWays && plan.MaySetOut,
            Unhooped = !job.IsHooped,
            SpacingMm = plan.SpacingMm is { } spacing ? Telling.Thousandth(spacing) : null,
            LetterHeightMm = Telling.Thousandth(plan.LetterHeightMm),
            LetterHeights = plan.HasSizes ? plan.LetterHeightsInWords : null,
            Names = plan.NameCount,
            Hoopings = plan.Hoopings.Length,
            Ways = plan.HasSeveralWays ? [.. plan.Ways.Select(Way)] : null,
            NeedlePaths = plan.HasNeedlePaths,
            MatchesHem = plan.MatchesHem,
            Rounds = [.. plan.Rounds.Select(r => Round(plan, r))],
            HeightLimits = [.. plan.Limits.Select(Limit)],
            StripLengthMm = (double)strip.TotalLengthMm,
            HemLengthMm = (double)(strip.TotalLengthMm - strip.DifferenceMm),
            DifferenceMm = (double)strip.DifferenceMm,
            Allowed = plan.AllowedInWords,
            Runs = plan.Hem.RunsInWords,
            CutWidthMm = (double)strip.CutWidthMm,
            FinishedWidthMm = (double)strip.FinishedWidthMm,
            FieldAlongMm = Telling.Thousandth(plan.FieldAlongMm),
            FieldAcrossMm = Telling.Thousandth(plan.FieldAcrossMm),
            OtherFrames = plan.Hoopings.Any(h => h.Frame is not null)
                ? [.. plan.Hoopings.Where(h => h.Frame is not null).GroupBy(h => h.Frame!.Name).Select(ToldFrame.Of)] : null,
            SideBySide = plan.Cloths.Select(c => c.Lanes).DefaultIfEmpty(1).Max(),
            Stitches = estimate.Hoopings.Sum(h => (long)h.Stitches),
            MachineMinutes = Sum(estimate.Work, Doer.Machine),
            HandsOnMinutes = Sum(estimate.Work, Doer.Hands),
            MachineMinutesAtSetPace = set is null ? null : Sum(set.Work, Doer.Machine),
            HandsOnMinutesAtSetPace = set is null ? null : Sum(set.Work, Doer.Hands),
            Left = Left(plan, estimate),
            NeedleThreadM = Telling.Thousandth(estimate.NeedleThreadM),
            BobbinThreadM = Telling.Thousandth(estimate.BobbinThreadM),
            Changes = Changes(report.Changes),
            Assumed = AssumedWorkshop.Of(job),
            Verdicts = [.. report.Verdicts.Select(PlanScribe.Judged)],
            Rows = Telling.Counts(names),
            Held = Telling.Rows(names, RowOutcome.Held),
            Needs = Telling.Needs(names, report.Problems),
        };
    }

    /// <summary>The sum of a doer's acts; the likely one to the last digit as the totals of plan.json have it.</summary>
    public static ToldFigure Sum(Work work, Doer doer) =>
        Telling.Figure(Work.Sum(work.By(doer))) with { Likely = (double)PlanWork.Minutes(work, doer) };

    private static ToldRound Round(StripPlan plan, Round round) => new()
    {
        Number = round.Number,
        LengthMm = Telling.Thousandth(round.LengthMm),
        HemMm = Telling.Thousandth(round.HemMm),
        Names = round.Names.Count(n => n.IsOfList),
        Meets = plan.FitOf(round).Meets,
        Blank = !round.Names.Any(),
    };

    private static ToldLimit Limit(HeightLimit limit) => new()
    {
        List = limit.Name.Name.Row.List,
        Line = limit.Name.Name.Row.Line,
        Heading = limit.Name.Standing.IsHeading ? true : null,
        Text = limit.Name.Name.Text,
        Because = limit.Because,
        HeightWithoutMm = Telling.Thousandth(limit.HeightWithoutMm),
        Gain = limit.IsGain,
    };

    private static ToldWay Way(WayShare share) => new()
    {
        Way = JobKeys.WordOf(share.Way),
        Names = share.Names,
        Hoopings = share.Hoopings,
        Runs = share.Runs,
        IsFollowed = WayTraits.Of(share.Way).FollowsCoordinates,
        Text = share.InWords,
    };

    private static ToldLeft? Left(StripPlan plan, Estimate estimate)
    {
        var logged = plan.OfNeedlePaths.Hoopings.Select(h => h.Number).ToHashSet();
        var left = estimate.WorkLeft;
        var set = estimate.OwnPace?.AtSetPace;
        return !left.IsBegun ? null : new ToldLeft
        {
            ToSew = [.. estimate.Hoopings.Where(h => !h.IsSewn && logged.Contains(h.Number)).Select(h => h.Number)],
            NamesToSew = estimate.Names.IsEmpty ? null : [.. estimate.Names.Where(n => !n.IsSewn).Select(n => n.Order).Order()],
            NamesByName = estimate.Names.IsEmpty ? null : estimate.Names.Length,
            MachineMinutes = Sum(estimate.Left, Doer.Machine),
            HandsOnMinutes = Sum(estimate.Left, Doer.Hands),
            MachineMinutesAtSetPace = set is null ? null : Sum(set.Left, Doer.Machine),
            HandsOnMinutesAtSetPace = set is null ? null : Sum(set.Left, Doer.Hands),
            FinishingMinutes = Telling.Thousandth(left.FinishingMinutes),
        };
    }

    private static ToldChanges? Changes(PlanChanges? changes) => changes is null ? null : new ToldChanges
    {
        Unchanged = changes.Of(NameFate.Unchanged).Count(),
        Names = [.. changes.Names.Where(n => n.Fate != NameFate.Unchanged).Select(n => new ToldChange
        {
            Change = PlanChanges.Word(n.Fate),
            Text = n.Text,
            TextBefore = n.TextBefore,
            List = n.Row.List,
            Line = n.Row.Line,
            Hooping = n.Hooping,
            HoopingBefore = n.HoopingBefore,
            Why = n.Why ?? Said.Nothing,
        })],
    };
}

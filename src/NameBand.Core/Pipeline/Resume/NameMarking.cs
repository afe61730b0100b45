using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>What a person says of names that are keyed in or traced, as lines of the log.</summary>
internal static class NameMarking
{
    private static readonly Where Plan = new(OutPaths.Plan);

    /// <summary>One line for each name, or why they cannot be written down. Minutes of several names are shared out by their
    /// widths.</summary>
    public static (SewingEntry[] Lines, Problem? Why) Lines(
        string jobFolder, string outFolder, SewingWord word, SewingLog log, PlanOverview plan)
    {
        var (first, last) = word.Names!.Value;
        var names = plan.Names.Where(n => n.Number >= first && n.Number <= last).ToList();
        if ((Unknown(first, last, names, plan) ?? Objection(word, names, log) ?? (word.Deed == SewingDeed.Sewn
            ? Sewable(jobFolder, outFolder, word, names, log, plan) : null)) is { } why)
        {
            return ([], why);
        }

        double all = names.Sum(n => n.WidthMm);
        double? Share(double? minutes, PlannedName name) => minutes is { } m ? Math.Round(m * name.WidthMm / all, 3) : null;
        return ([.. names.Select(n => new SewingEntry(
            n.Number, word.Deed, Share(word.Minutes, n), Share(word.HandMinutes, n), PlainText.Whole(word.Machine), null,
            PlainText.Whole(word.When),
            "", PlainText.Whole(word.Note))
        {
            Of = SewingSubject.Name,
        })], null);
    }

    private static string Sign(int number) => "n" + number.ToString(CultureInfo.InvariantCulture);

    private static Problem? Unknown(int first, int last, List<PlannedName> names, PlanOverview plan)
    {
        if (names.Count > 0 && (last > first || names[0].Number == first))
        {
            return null;
        }

        var planned = plan.Plan.Names.FirstOrDefault(n => n.Order == first);
        if (planned is not null)
        {
            int hooping =
                plan.Plan.HoopingOfSegment[plan.Plan.Rounds.SelectMany(r => r.Segments).First(s => s.Names.Contains(planned)).Number];
            return Problem.CannotUse(
                Plan, $"Name {Sign(first)}, “{planned.Text}”, is sewn from a needle path, and such names are logged hooping by hooping.",
                $"Say its hooping: sewn JOB {hooping}.");
        }

        return plan.Names.IsEmpty
            ? Problem.CannotUse(
                Plan, $"There is no name {Sign(first)} that is logged by itself: all names of this plan are sewn from needle paths, hooping by hooping.",
                "Say the hooping’s number: sewn JOB 1.")
            : Problem.CannotUse(
                Plan, $"There is no name {Sign(first)} in the plan; its names are numbered {Sign(plan.Names[0].Number)} to {Sign(plan.Names[^1].Number)}.",
                "Look at the number beside the name on the sheet, or run make if the plan is not yet what you sew from.");
    }

    private static Problem? Objection(SewingWord word, List<PlannedName> names, SewingLog log)
    {
        if (word.Deed is SewingDeed.Patch or SewingDeed.Measured)
        {
            return Problem.CannotUse(
                Plan, "Names that are keyed in or traced are not let in as pieces, and not measured piece by piece.",
                $"If it was spoiled, say: sewn JOB {Sign(names[0].Number)} --again.");
        }

        var notSewn =
            names.Find(n => !log.OfNames.IsSewn(n.Number) && !(word.Deed == SewingDeed.Mistake && log.OfNames.Last(n.Number) is not null));
        return word.Deed == SewingDeed.Sewn || notSewn is null ? null : Problem.CannotUse(
            Plan, $"Name {Sign(notSewn.Number)}, “{notSewn.Text}”, is not marked as sewn.",
            $"Mark it first: sewn JOB {Sign(notSewn.Number)}.");
    }

    /// <summary>Why the plan in the out folder cannot become the one that is gone on from; null where it can.</summary>
    private static Problem? Sewable(
        string jobFolder, string outFolder, SewingWord word, List<PlannedName> names, SewingLog log, PlanOverview plan)
    {
        if (OutManifest.Read(outFolder).HashOf(OutPaths.Plan) is { } written && FileHash.Of(outFolder, OutPaths.Plan) != written)
        {
            return Problem.CannotUse(
                Plan, "This plan is not as make wrote it: it was changed or spoiled since, so NameBand does not know where its names lie.",
                "Run make, compare the sheet with the cloth, and say it again.");
        }

        string said = SheetMarks.AsWritten(word.Mark);
        if (said.Length > 0 && said != plan.Mark && names.Find(n => n.Mark != said) is { } other)
        {
            return Problem.CannotUse(
                Plan, $"The sheet with mark {PlainText.Short(said, 12)} is not the one that name {Sign(other.Number)}, “{other.Text}”, is on now: that has {other.Mark}. "
                    + $"Nothing was logged.",
                $"Compare the cloth with the newest sheet. If the name lies there too, say: sewn JOB {Sign(other.Number)} --mark {other.Mark}");
        }

        var kept = log.HasBegun ? new SewnArchive(jobFolder).Plan(log) : Result.Fail<EarlierPlan>();
        return kept.Value is { } before && SewnArchive.MovedName(before, plan.Plan, log) is { } moved
            ? Problem.CannotUse(
                Plan, $"This plan does not hold name {Sign(moved)} where it was sewn: it was made before that was marked, or for another job.",
                "Run make, look at the new sheet, and mark what you sew from it.")
            : null;
    }
}

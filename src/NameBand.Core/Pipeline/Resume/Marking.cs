using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Drift;
using NameBand.Layout.Resuming;
using NameBand.Output;
using NameBand.Pipeline.Ways;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>Writes down what a person says was sewn, and keeps its files.</summary>
internal static class Marking
{
    public static SewingReport Run(string jobFolder, string outFolder, SewingWord? word, Action wait)
    {
        if (!Directory.Exists(jobFolder))
        {
            return Refuse(Problem.CannotUse(new Where(PlainText.Short(jobFolder, 200)), "There is no such folder.", "Give the path of the job's folder."));
        }

        if (JobReader.Read(jobFolder).Value is { Way: not Way.NeedlePath } other)
        {
            return Refuse(NotForThisWay(other.Way));
        }

        if (word is null)
        {
            return Look(jobFolder, outFolder, null, null);
        }

        var held = PatientLock.Take(jobFolder, wait);
        using var theLock = held.Value;
        return theLock is null ? Refuse([.. held.Problems]) : Say(jobFolder, outFolder, word, theLock);
    }

    private static Problem NotForThisWay(Way way) => Problem.CannotUse(
        new Where("job.json", Key: "way"),
        "The command sewn keeps what was sewn from needle paths, and this job has none.",
        way == Way.MachineLetters
            ? "Tick the names off on the key-in sheet; where they drift off their marks, write where one ended into drift.csv and run make again."
            : "Tick the names off on the template.");

    private static SewingReport Say(string jobFolder, string outFolder, SewingWord word, JobLock held)
    {
        if (new FileInfo(Path.Combine(jobFolder, SewingLogFile.FileName)).LinkTarget is not null)
        {
            return Refuse(Problem.CannotUse(
                new Where(SewingLogFile.FileName), "The log is a link to another place, and nothing is written through a link.", "Put a copy of the file itself into the folder."));
        }

        var log = SewingLogFile.Read(jobFolder);
        var plan = PlanOverview.Read(outFolder);
        if (plan.Value is not { } overview || log.Problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Refuse([.. log.Problems, .. plan.Problems]);
        }

        if (Objection(jobFolder, outFolder, word, log, overview) is { } objection)
        {
            return Refuse([.. log.Problems, objection]);
        }

        var pieces = word.Deed == SewingDeed.Measured ? SewnStrip.Of(SewnPlan(jobFolder, word.Hooping, overview), word.Hooping) : [];
        string print = word.Deed is SewingDeed.Again or SewingDeed.Patch
            ? SpoiledDrift.Remembered(DriftFile.Read(jobFolder).Value?.All ?? [], SewnPlan(jobFolder, word.Hooping, overview), word.Hooping)
            : pieces.Length > 1 ? SewingEntry.OfStrip(word.Strip!.Value) : "";
        if (word.Deed == SewingDeed.Sewn)
        {
            print = SewingPrint.Of(File.ReadAllBytes(Path.Combine(outFolder, OutPaths.NeedlePath(word.Hooping))));
            SewnFolder.Keep(jobFolder, outFolder, word.Hooping);
        }

        var entry = new SewingEntry(
            word.Hooping, word.Deed, word.Minutes, word.HandMinutes, word.Machine, word.MeasuredMm, word.When, print, word.Note);
        SewingLogFile.Append(jobFolder, held, entry);
        double? patch = word.Deed == SewingDeed.Patch ? overview.PatchOnClothMm(word.Hooping) : null;
        return Look(jobFolder, outFolder, entry, patch) with { Measured = pieces.FirstOrDefault(p => p.Strip == (word.Strip ?? 1)) };
    }

    /// <summary>The plan that a hooping was sewn from; that of the out folder where it is not kept.</summary>
    private static EarlierPlan SewnPlan(string jobFolder, int hooping, PlanOverview overview) =>
        EarlierPlanFile.Read(SewnFolder.PlanOf(jobFolder), OutPaths.Plan).Value is { } sewn && sewn.Hoopings.Any(h => h.Number == hooping)
            ? sewn : overview.Plan;

    /// <summary>Why a word cannot be written down; null when it can.</summary>
    private static Problem? Objection(string jobFolder, string outFolder, SewingWord word, SewingLog log, PlanOverview plan)
    {
        string number = word.Hooping.ToString(CultureInfo.InvariantCulture);
        var where = new Where(OutPaths.Plan);
        if (plan.Hoopings.IsEmpty)
        {
            return Problem.CannotUse(where, "The plan has no hoopings yet: no name is placed.", "Settle the rows that are held, and run make again.");
        }

        if (plan.Hoopings.All(h => h.Number != word.Hooping))
        {
            return Problem.CannotUse(
                where, $"There is no hooping {number} in the plan; it has {plan.Hoopings.Length}, numbered {plan.Hoopings.Min(h => h.Number)} to {plan.Hoopings.Max(h => h.Number)}.",
                "Look at the number on the proof, or run make if the plan is not yet what you sew from.");
        }

        if (word is { Deed: SewingDeed.Measured, MeasuredMm: { } measuredMm } && log.IsSewn(word.Hooping))
        {
            return SewnStrip.Objection(SewnPlan(jobFolder, word.Hooping, plan), word.Hooping, word.Strip, measuredMm, word.IsSure);
        }

        if (word.Deed != SewingDeed.Sewn)
        {
            return log.IsSewn(word.Hooping) || (word.Deed == SewingDeed.Mistake && log.Last(word.Hooping) is not null)
                ? null
                : Problem.CannotUse(where, $"Hooping {number} is not marked as sewn.", $"Mark it first: sewn JOB {number}.");
        }

        if (!File.Exists(Path.Combine(outFolder, OutPaths.NeedlePath(word.Hooping))) || !File.Exists(Path.Combine(outFolder, OutPaths.HoopingProof(word.Hooping))))
        {
            return Problem.CannotUse(where, $"The files of hooping {number} are not in the out folder, so they cannot be kept.", "Run make, or name the folder you sewed from with --out.");
        }

        // A plan in which something sewn lies otherwise must never become the one that is gone on from.
        foreach (int sewn in log.Sewn.Where(h => h != word.Hooping))
        {
            var kept = SewnFolder.Read(jobFolder, OutPaths.NeedlePath(sewn));
            string path = Path.Combine(outFolder, OutPaths.NeedlePath(sewn));
            if (kept is not null && !(File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(kept)))
            {
                return Problem.CannotUse(
                    where, FormattableString.Invariant($"This plan does not hold hooping {sewn} as it was sewn: it was made before that was marked, or for another job."),
                    "Run make, look at the new proofs, and mark what you sew from them.");
            }
        }

        if (log.IsSewn(word.Hooping) && SewnFolder.Read(jobFolder, OutPaths.NeedlePath(word.Hooping)) is { } before
            && !File.ReadAllBytes(Path.Combine(outFolder, OutPaths.NeedlePath(word.Hooping))).AsSpan().SequenceEqual(before))
        {
            return Problem.CannotUse(
                where, $"Hooping {number} is marked as sewn already, from another needle path than the plan has now.",
                $"If it was sewn a second time, say so first: sewn JOB {number} --again.");
        }

        return null;
    }

    private static SewingReport Look(string jobFolder, string outFolder, SewingEntry? said, double? patchMm)
    {
        var log = SewingLogFile.Read(jobFolder);
        var plan = PlanOverview.Read(outFolder);
        if (plan.Value is not { } overview)
        {
            return Refuse([.. log.Problems, .. plan.Problems]);
        }

        var states = overview.Hoopings.Select(h => new HoopingState(h.Number, h.Names, h.Minutes, log.Last(h.Number)));
        var status = log.Problems.Any(p => p.Severity == Severity.CannotUse) ? ExitStatus.CannotUse
            : log.Problems.Any(p => p.Severity == Severity.NeedsPerson) ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced;
        return new SewingReport(status, overview.Title, [.. states], log, said, patchMm, log.Problems);
    }

    private static SewingReport Refuse(params ImmutableArray<Problem> problems) =>
        new(ExitStatus.CannotUse, "", [], SewingLog.Empty, null, null, problems);
}

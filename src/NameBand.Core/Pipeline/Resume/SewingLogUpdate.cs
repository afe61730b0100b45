using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Drift;
using NameBand.Layout.Resuming;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>Writes down what a person says was sewn, and keeps its files.</summary>
internal static class SewingLogUpdate
{
    public static SewingReport Run(string jobFolder, string outFolder, SewingWord? word, Action wait)
    {
        if (!Directory.Exists(jobFolder))
        {
            return Refuse(Problem.CannotUse(
                new Where(PlainText.Short(jobFolder, 200)), "There is no such folder.", "Give the path of the job's folder."));
        }

        if (InnerFile.ObjectionBelow(jobFolder, outFolder) is { } objection)
        {
            return Refuse(objection);
        }

        if (word is null)
        {
            return Look(jobFolder, outFolder, null, null);
        }

        var held = PatientLock.Take(jobFolder, wait);
        using var theLock = held.Value;
        return theLock is null ? Refuse([.. held.Problems]) : Say(jobFolder, outFolder, word, theLock);
    }

    private static SewingReport Say(string jobFolder, string outFolder, SewingWord word, JobLock held)
    {
        if (InnerFile.Objection(jobFolder, SewnFolder.Name) is { } refused)
        {
            return Refuse(refused);
        }

        var log = SewingLogFile.Read(jobFolder);
        var plan = PlanOverview.Read(outFolder);
        if (plan.Value is not { } overview || log.Problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Refuse([.. log.Problems, .. plan.Problems]);
        }

        var archive = new SewnArchive(jobFolder);
        if (word.Names is not null || word.Step is not null || word.LeftMm is not null)
        {
            var (lines, why) = word.LeftMm is not null ? LeftMarking.Lines(word, log, overview) : word.Step is not null
                ? FinishingMarking.Lines(word, log, overview) : word.IsScrap ? LengthMarking.OnScrap(word, overview)
                    : NameMarking.Lines(jobFolder, outFolder, word, log, overview);
            if (why is not null)
            {
                return Refuse([.. log.Problems, why]);
            }

            if (word.LengthMm is not null && LengthMarking.Write(jobFolder, outFolder, word, overview) is { } wrong)
            {
                return Refuse([.. log.Problems, wrong]);
            }

            if (word.IsScrap)
            {
                bool isBack = word.Deed == SewingDeed.Mistake;
                var scrap = isBack ? LengthMarking.TakeBack(jobFolder, word, overview) : LengthMarking.Told(word);
                return isBack && scrap is null
                    ? Refuse([.. log.Problems, LengthMarking.NoScrap(word)])
                        : Look(jobFolder, outFolder, null, null) with { MeasuredName = scrap };
            }

            if (word is { Names: not null, Deed: SewingDeed.Sewn })
            {
                SewnFolder.Keep(jobFolder, outFolder);
            }

            // A name that was never sewn has no length either.
            var back = word is { Names: { } range, Deed: SewingDeed.Mistake }
                ? Enumerable.Range(range.First, range.Last - range.First + 1)
                    .Select(n => LengthMarking.TakeBack(jobFolder, word with { Names = (n, n) }, overview)).ToList() : [];
            SewingLogFile.Append(jobFolder, held, lines);
            return Look(jobFolder, outFolder, lines[^1] with { Minutes = word.Minutes, HandMinutes = word.HandMinutes }, null) with
            {
                SaidNames = word.Names is null ? [] : [.. lines.Select(l => l.Hooping)],
                MeasuredName = LengthMarking.Told(word) ?? back.Find(b => b is not null),
            };
        }

        if (Objection(jobFolder, archive, outFolder, word, log, overview) is { } objection)
        {
            return Refuse([.. log.Problems, objection]);
        }

        var healed = Kept(archive, log).SelectMany(k => k.Files.Heal()).Select(Healed).ToList();
        var pieces = word.Deed == SewingDeed.Measured ? SewnStrip.Of(SewnPlan(jobFolder, word.Hooping, overview), word.Hooping) : [];
        string print = word.Deed is SewingDeed.Again or SewingDeed.Patch
            ? SpoiledDrift.Remembered(DriftFile.Read(jobFolder).Value?.All ?? [], SewnPlan(jobFolder, word.Hooping, overview), word.Hooping)
            : pieces.Length > 1 ? SewingEntry.OfStrip(word.Strip!.Value) : "";
        if (word.Deed == SewingDeed.Sewn)
        {
            print = SewingPrint.Of(InnerFile.Bytes(outFolder, OutPaths.NeedlePath(word.Hooping)));
            SewnFolder.Keep(jobFolder, outFolder, word.Hooping);
        }

        var entry = new SewingEntry(
            word.Hooping, word.Deed, word.Minutes, word.HandMinutes, PlainText.Whole(word.Machine), word.MeasuredMm,
            PlainText.Whole(word.When), print, PlainText.Whole(word.Note));
        SewingLogFile.Append(jobFolder, held, entry);
        double? patch = word.Deed == SewingDeed.Patch ? overview.PatchOnClothMm(word.Hooping) : null;
        var look = Look(jobFolder, outFolder, entry, patch);
        return look with { Measured = pieces.FirstOrDefault(p => p.Strip == (word.Strip ?? 1)), Problems = [.. healed, .. look.Problems] };
    }

    private static Problem Healed(string file) => Problem.Note(
        new Where(SewnFolder.Place(file)),
        "This file was not as it was kept; the same one in the out folder was, and has been put in its place.");

    /// <summary>What was kept of every hooping that is sewn.</summary>
    internal static IEnumerable<(int Hooping, KeptHooping Files)> Kept(SewnArchive archive, SewingLog log)
    {
        var planned = log.HasBegun ? archive.Plan(log).Value : null;
        return log.Sewn.Select(h => (h, archive.Hooping(h, log.Last(h)!.Path, planned?.Hoopings.FirstOrDefault(p => p.Number == h))));
    }

    /// <summary>What is no longer whole of all that was kept.</summary>
    internal static IEnumerable<Problem> Faults(SewnArchive archive, SewingLog log)
    {
        foreach (var problem in log.HasBegun ? archive.Plan(log).Problems : [])
        {
            yield return problem.Severity == Severity.CannotUse ? problem with { Severity = Severity.NeedsPerson } : problem;
        }

        foreach (var (hooping, files) in Kept(archive, log))
        {
            if (files.Path is null || NeedlePathReading.Read(files.Path) is null)
            {
                yield return Problem.NeedsPerson(
                    new Where(SewnFolder.Place(OutPaths.NeedlePath(hooping))),
                    $"Hooping {hooping} is sewn, and the needle path that was kept of it is missing or no longer whole.",
                    $"Put the folder “{SewnFolder.Name}” back from a copy, if there is one.");
            }
        }
    }

    /// <summary>The plan that a hooping was sewn from; that of the out folder where it is not kept.</summary>
    private static EarlierPlan SewnPlan(string jobFolder, int hooping, PlanOverview overview) =>
        EarlierPlanFile.Read(jobFolder, SewnFolder.Place(OutPaths.Plan)).Value is { } sewn && sewn.Hoopings.Any(h => h.Number == hooping)
            ? sewn : overview.Plan;

    /// <summary>Why a word cannot be written down; null when it can.</summary>
    private static Problem? Objection(
        string jobFolder, SewnArchive archive, string outFolder, SewingWord word, SewingLog log, PlanOverview plan)
    {
        string number = word.Hooping.ToString(CultureInfo.InvariantCulture);
        var where = new Where(OutPaths.Plan);
        if (plan.Hoopings.IsEmpty && plan.Names.IsEmpty)
        {
            return Problem.CannotUse(
                where, "The plan has no hoopings yet: no name is placed.", "Settle the rows that are held, and run make again.");
        }

        if (plan.Plan.Hoopings.Any(h => h.Number == word.Hooping && !h.HasNeedlePath))
        {
            return Problem.CannotUse(
                where, $"Number {number} has no needle path: its names are keyed in or traced, and each of them is said by itself.",
                $"Say the name’s number: sewn JOB n{plan.Names.First(n => n.Hooping == word.Hooping).Number}.");
        }

        if (plan.Hoopings.IsEmpty)
        {
            return Problem.CannotUse(
                where, $"There is no hooping {number} in the plan: its names are keyed in or traced, and each of them is said by itself.",
                $"Say the name’s number: sewn JOB n{plan.Names[0].Number}.");
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

        if ((MarkCheck.Objection(outFolder, plan, word)
            ?? FilesObjection(outFolder, plan.Plan.Hoopings.First(h => h.Number == word.Hooping))) is { } objection)
        {
            return objection;
        }

        // A plan in which something sewn lies otherwise must never become the one that is gone on from.
        foreach (var (sewn, kept) in Kept(archive, log).Where(k => k.Hooping != word.Hooping))
        {
            if (kept.Path is not null && !IsInOut(outFolder, sewn, kept.Path))
            {
                return Otherwise(sewn);
            }
        }

        // What drift.csv measured lies elsewhere than it was planned, and make has allowed for that.
        bool hasDrifted = DriftFile.Read(jobFolder).Value is { All.IsEmpty: false };
        if (!hasDrifted && log.HasBegun && archive.Plan(log).Value is { } gone && SewnArchive.Moved(gone, plan.Plan, log) is { } moved)
        {
            return Otherwise(moved);
        }

        return log.IsSewn(word.Hooping) && Kept(archive, log).First(k => k.Hooping == word.Hooping).Files.Path is { } before
            && !IsInOut(outFolder, word.Hooping, before)
            ? Problem.CannotUse(
                where, $"Hooping {number} is marked as sewn already, from another needle path than the plan has now.",
                $"If it was sewn a second time, say so first: sewn JOB {number} --again.")
            : null;

        Problem Otherwise(int sewn) => Problem.CannotUse(
            where, $"This plan does not hold hooping {sewn} as it was sewn: it was made before that was marked, or for another job.",
            "Run make, look at the new proofs, and mark what you sew from them.");
    }

    private static bool IsInOut(string outFolder, int hooping, byte[] path) =>
        InnerFile.IsPlain(outFolder, OutPaths.NeedlePath(hooping)) && InnerFile.Bytes(outFolder, OutPaths.NeedlePath(hooping)).AsSpan()
            .SequenceEqual(path);

    /// <summary>Why a hooping's files in the out folder cannot be kept; null when they are those that the plan was made with.</summary>
    private static Problem? FilesObjection(string outFolder, EarlierHooping planned)
    {
        string path = OutPaths.NeedlePath(planned.Number), proof = OutPaths.HoopingProof(planned.Number);
        if ((InnerFile.Objection(outFolder, path) ?? InnerFile.Objection(outFolder, proof)) is { } objection)
        {
            return objection;
        }

        if (!InnerFile.IsPlain(outFolder, path) || !InnerFile.IsPlain(outFolder, proof))
        {
            return Problem.CannotUse(
                new Where(OutPaths.Plan), $"The files of hooping {planned.Number} are not in the out folder, so they cannot be kept.",
                "Run make, or name the folder you sewed from with --out.");
        }

        if (OutManifest.Read(outFolder).HashOf(OutPaths.Plan) is { } written && FileHash.Of(outFolder, OutPaths.Plan) != written)
        {
            return Problem.CannotUse(
                new Where(OutPaths.Plan),
                    "This plan is not as make wrote it: it was changed or spoiled since, so NameBand does not know where the hooping lies.",
                "Run make, compare the proof with the cloth, and say it again.");
        }

        byte[] bytes = InnerFile.Bytes(outFolder, path);
        bool isPath = NeedlePathReading.Read(bytes) is not null && planned.PathPrint is var print
            && (print.Length == 0 || InputFingerprint.Fingerprint(bytes) == print);
        bool isProof = planned.ProofPrint.Length > 0
            ? InputFingerprint.Fingerprint(InnerFile.Bytes(outFolder, proof)) == planned.ProofPrint : !SpoiledFile.Is(outFolder, proof);
        return isPath && isProof ? null : Problem.CannotUse(
            new Where(isPath ? proof : path),
            $"This file of hooping {planned.Number} is not the one that its plan was made with: it is empty, cut off or was changed since. Nothing was kept.",
            "Run make, which makes it again; compare the proof with the cloth, and say it again.");
    }

    private static SewingReport Look(string jobFolder, string outFolder, SewingEntry? said, double? patchMm)
    {
        var log = SewingLogFile.Read(jobFolder);
        var plan = PlanOverview.Read(outFolder);
        if (plan.Value is not { } overview)
        {
            return Refuse([.. log.Problems, .. plan.Problems]);
        }

        ImmutableArray<Problem> problems = [.. log.Problems, .. Faults(new SewnArchive(jobFolder), log)];
        var earlier = EarlierMarks.Read(outFolder);
        var states = overview.Hoopings.Select(h => new HoopingState(h.Number, h.Names, h.Minutes, log.Last(h.Number))
        {
            Mark = h.Mark,
            AsksForMark = !MarkCheck.OldMarks(earlier, h).IsEmpty,
        });
        var status = problems.Any(p => p.Severity == Severity.CannotUse) ? ExitStatus.CannotUse
            : problems.Any(p => p.Severity == Severity.NeedsPerson) ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced;
        return new SewingReport(status, overview.Title, [.. states], log, said, patchMm, problems)
        {
            Names = [.. overview.Names.Select(n => new NameState(n.Number, n.Text, n.Minutes, log.OfNames.Last(n.Number)))],
            Rounds = [.. overview.Plan.Rounds.Select(r => new RoundState(r.Number, log.Finishing.LastOf(r.Number))
            {
                IsSewn = FinishingMarking.NotSewn(r.Number, log, overview).IsEmpty,
            })],
            Steps = FinishingMarking.Steps(overview),
            FinishingMinutes = overview.FinishingLeftMinutes(log.Finishing),
        };
    }

    private static SewingReport Refuse(params ImmutableArray<Problem> problems) =>
        new(ExitStatus.CannotUse, "", [], SewingLog.Empty, null, null, problems);
}

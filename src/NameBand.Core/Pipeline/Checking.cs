using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Asking;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>
/// Holds all that a job consists of against each other: list, plan, files, needle paths, log and what is kept of the sewing.
/// Writes nothing; what it finds is told with what mends it.
/// </summary>
internal sealed class Checking
{
    private readonly string _jobFolder;
    private readonly string _outFolder;
    private readonly List<CheckedPart> _parts = [];
    private readonly List<Problem> _problems = [];

    private Checking(string jobFolder, string outFolder)
    {
        _jobFolder = jobFolder;
        _outFolder = outFolder;
    }

    public static CheckReport Run(string jobFolder, string outFolder)
    {
        if (!Directory.Exists(jobFolder))
        {
            return new CheckReport(ExitStatus.CannotUse, "", [], [Problem.CannotUse(
                new Where(PlainText.Short(jobFolder, 200)), "There is no such folder.", "Give the path of the job’s folder.")]);
        }

        return InnerFile.ObjectionBelow(jobFolder, outFolder) is { } objection
            ? new CheckReport(ExitStatus.CannotUse, "", [], [objection]) : new Checking(jobFolder, outFolder).Report();
    }

    private CheckReport Report()
    {
        var names = Planning.ReadNames(_jobFolder, new FaceShelf(), default);
        CheckJob(names);
        var plan = EarlierPlanFile.Read(_outFolder, OutPaths.Plan, p => p);
        if (InnerFile.IsThere(_outFolder, OutPaths.Plan))
        {
            var told = CheckFolder(new(_outFolder, OutKind.Plan, "Files", "make"));
            CheckPlan(plan);
            CheckPaths(plan.Value, told);
            CheckList(names.Value, plan.Value);
        }
        else
        {
            Part("Plan", null, "not made yet");
        }

        CheckSewing(plan.Value);
        CheckOthers();
        var status = _problems.Any(p => p.Severity != Severity.Note) ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced;
        return new CheckReport(status, names.Value?.Job.Title ?? plan.Value?.Title ?? "", [.. _parts], [.. _problems]);
    }

    private void CheckJob(Result<NamesRead> names)
    {
        // What waits for a decision is told by the command names: it is no fault.
        var faults = names.Problems.Where(p => p.Severity == Severity.CannotUse).ToList();
        _problems.AddRange(faults.Select(p => p with { Severity = Severity.NeedsPerson }));
        Part("Job and list", faults.Count == 0, names.Value is { } read && faults.Count == 0
            ? (Said)$"{Wording.Count(read.Rows.Rows.Length, "row")} in {Wording.Count(read.Job.Lists.Length, "list")} can be read"
            : "cannot be read");
    }

    /// <returns>The files of which it is told that they are not as they were written.</returns>
    private ImmutableHashSet<string> CheckFolder(CheckedFolder folder)
    {
        var found = FolderChecking.Of(folder);
        _parts.Add(found.Part);
        _problems.AddRange(found.Problems);
        return found.Told;
    }

    /// <summary>What other commands have made beside the plan, where it lies when nothing else is said.</summary>
    private void CheckOthers()
    {
        CheckedFolder[] others =
        [
            new(Path.Combine(_jobFolder, Swatching.FolderName), OutKind.Swatch, "Swatch", "swatch"),
            new(Path.Combine(_jobFolder, AskingFiles.FolderName), OutKind.Private, "Letters to owners", "invite"),
            new(Path.Combine(_jobFolder, PublicRun.FolderName), OutKind.Public, "Page for supporters", "public"),
        ];
        foreach (var folder in others.Where(f => InnerFile.ObjectionBelow(_jobFolder, f.FullPath) is null && FolderChecking.IsOurs(f)))
        {
            CheckFolder(folder);
        }
    }

    private void CheckPlan(Result<WrittenPlan> plan)
    {
        if (plan.Value is not { } written)
        {
            _problems.AddRange(plan.Problems.Select(p =>
                p with { Severity = Severity.NeedsPerson, Where = p.Where with { File = Shown(OutPaths.Plan) } }));
            Part("Plan", false, "cannot be read");
            return;
        }

        Said[] faults = [.. PlanAgreement.Faults(written)];
        if (faults.Length > 0)
        {
            Said more = faults.Length > Few.Examples ? (Said)$" And {Wording.Count(faults.Length - Few.Examples, "more fault")} of the kind." : "";
            _problems.Add(Problem.NeedsPerson(
                new Where(Shown(OutPaths.Plan)), Said.Join(" ", faults.Take(Few.Examples)) + more,
                "It was changed by hand, or is a fault of ours. Run make, and check again."));
        }

        Part("Plan", faults.Length == 0, faults.Length > 0 ? "does not agree with itself"
            : (Said)($"{Wording.Count(written.Totals.Names, "name")} on {Wording.Count(written.Rounds.Count, "round")} in " +
                $"{Wording.Count(written.Hoopings.Count, "hooping")}: all sums agree"));
    }

    /// <param name="told">Files of which it is told already that something is wrong with them.</param>
    private void CheckPaths(WrittenPlan? plan, ImmutableHashSet<string> told)
    {
        var hoopings = plan?.Hoopings.Where(h => h.NeedlePath is not null).ToList() ?? [];
        if (hoopings.Count == 0)
        {
            return;
        }

        int[] wrong = [.. hoopings.Where(h => !IsPlanned(h)).Select(h => h.Number)];
        int[] untold = [.. wrong.Where(h => !told.Contains(OutPaths.NeedlePath(h)) && !told.Contains(OutPaths.HoopingProof(h)))];
        if (untold.Length > 0)
        {
            _problems.Add(Problem.NeedsPerson(
                Out(), $"The files of {(untold.Length > 1 ? (Said)"hoopings" : "hooping")} {Numbers(untold)} are not those that the plan was made with.",
                "Do not sew from them. Run make, and look at the new proofs."));
        }

        Part("Needle paths", wrong.Length == 0, wrong.Length == 0
            ? (Said)$"{hoopings.Count}, each the one that the plan was made with"
                : $"{wrong.Length} of {hoopings.Count} {(wrong.Length == 1 ? (Said)"is not that" : "are not those")} of the plan");
    }

    /// <summary>Whether needle path and proof of a hooping are those that its plan was made with, and it has the stitches that
    /// the plan says.</summary>
    private bool IsPlanned(WrittenHooping hooping)
    {
        string path = OutPaths.NeedlePath(hooping.Number), proof = OutPaths.HoopingProof(hooping.Number);
        if (!InnerFile.IsPlain(_outFolder, path) || !InnerFile.IsPlain(_outFolder, proof))
        {
            return false;
        }

        byte[] bytes = InnerFile.Bytes(_outFolder, path);
        return NeedlePathReading.Read(bytes) is { } read && read.Stitches == hooping.Stitches
            && (hooping.NeedlePathPrint is not { } print || InputFingerprint.Fingerprint(bytes) == print)
            && (hooping.ProofPrint is not { } of || InputFingerprint.Fingerprint(InnerFile.Bytes(_outFolder, proof)) == of);
    }

    /// <summary>Whether the list still says what the plan was made from, as far as names go.</summary>
    private void CheckList(NamesRead? names, WrittenPlan? plan)
    {
        if (names is null || plan is null)
        {
            return;
        }

        var now = names.Rows.Rows.Where(r => r.Outcome == RowOutcome.Placed).CountBy(r => r.Text).ToDictionary(r => r.Key, r => r.Value);
        var known = plan.Rows.Where(r => r.Outcome is "placed" or "held").CountBy(r => r.Text).ToDictionary(r => r.Key, r => r.Value);
        string[] gone = [.. plan.Rows.Where(r => r.Outcome == "placed").CountBy(r => r.Text)
            .Where(r => r.Value > now.GetValueOrDefault(r.Key)).Select(r => r.Key)];
        string[] added = [.. now.Where(r => r.Value > known.GetValueOrDefault(r.Key)).Select(r => r.Key)];
        if (gone.Length > 0)
        {
            _problems.Add(Problem.NeedsPerson(
                new Where(Shown(OutPaths.Plan)),
                $"The plan holds {Names(gone)}, and the list as it is now does not: left out, changed or held since.",
                "Run make before you sew or print anything."));
        }

        if (added.Length > 0)
        {
            _problems.Add(Problem.NeedsPerson(
                new Where(Shown(OutPaths.Plan)), $"The list has {Names(added)}, and the plan was made before that.",
                "Run make: it finds a place for them."));
        }

        (int Names, Said Why)[] both = [(gone.Length, "no longer in the list"), (added.Length, "not yet in the plan")];
        Said[] differences = [.. both.Where(d => d.Names > 0).Select(d => (Said)$"{Wording.Count(d.Names, "name")} {d.Why}")];
        Part("Plan and list", differences.Length == 0, differences.Length == 0 ? "the same names" : Wording.List(differences));
    }

    private void CheckSewing(WrittenPlan? plan)
    {
        var log = SewingLogFile.Read(_jobFolder);
        if (!log.HasBegun && log.Problems.IsEmpty)
        {
            Part("Sewing log", null, "nothing is sewn yet");
            return;
        }

        _problems.AddRange(log.Problems.Select(p => p.Severity == Severity.CannotUse ? p with { Severity = Severity.NeedsPerson } : p));
        bool isRead = log.Problems.All(p => p.Severity == Severity.Note);
        Part("Sewing log", isRead, isRead ? (Said)$"{Wording.Count(log.Entries.Length, "line")} can be read" : "has lines that cannot be read");
        CheckKept(log, plan);
    }

    private void CheckKept(SewingLog log, WrittenPlan? plan)
    {
        var archive = new SewnArchive(_jobFolder);
        var faults = SewingLogUpdate.Faults(archive, log).ToList();
        _problems.AddRange(faults);
        var kept = SewingLogUpdate.Kept(archive, log).ToList();
        foreach (var (hooping, files) in kept)
        {
            if (files.Path is { } path && log.Last(hooping)!.Path is { Length: > 0 } said && SewingPrint.Of(path) != said)
            {
                faults.Add(Problem.NeedsPerson(
                    new Where(SewnFolder.Place(OutPaths.NeedlePath(hooping))),
                    $"The needle path that is kept of hooping {hooping} is not the one that the log says it was sewn from.",
                    $"Put the folder “{SewnFolder.Name}” back from a copy, if there is one."));
                _problems.Add(faults[^1]);
            }
        }

        string[] healing = [.. kept.SelectMany(k => k.Files.FromOut.Keys).Order(StringComparer.Ordinal)];
        if (healing.Length > 0)
        {
            faults.Add(Problem.NeedsPerson(
                new Where(SewnFolder.Place(healing[0])),
                $"{FolderChecking.Listed(SewnFolder.Name, healing)} {(healing.Length > 1 ? (Said)"are" : "is")} no longer as kept; " +
                $"the folder of the plan has the same, whole.",
                "Run make: it puts them back."));
            _problems.Add(faults[^1]);
        }

        int[] unknown = plan is null ? [] : [.. log.Sewn.Where(h => plan.Hoopings.All(p => p.Number != h))];
        if (unknown.Length > 0)
        {
            faults.Add(Problem.NeedsPerson(
                new Where(SewingLogFile.FileName),
                $"The log says that hooping {Numbers(unknown)} is sewn, and the plan has no such hooping.",
                "Run make: it takes what is sewn from what was kept."));
            _problems.Add(faults[^1]);
        }

        bool isWhole = faults.All(p => p.Severity == Severity.Note);
        int sewn = log.Sewn.Length, names = log.OfNames.Sewn.Length;
        Said[] counted = [.. sewn > 0 ? [Wording.Count(sewn, "hooping")] : (Said[])[], .. names > 0 ? [Wording.Count(names, "name")] : (Said[])[]];
        Part("What is sewn", isWhole, counted.Length == 0 ? "nothing just now"
            : (Said)$"{Wording.List(counted)}{(isWhole ? (Said)", kept whole and as the log says" : ", not all kept as sewn")}");
    }

    private void Part(Said name, bool? isWhole, Said found) => _parts.Add(new CheckedPart(name, isWhole, found));

    private Where Out() => new(Path.GetFileName(Path.TrimEndingDirectorySeparator(_outFolder)));

    private string Shown(string file) => $"{Path.GetFileName(Path.TrimEndingDirectorySeparator(_outFolder))}/{file}";

    private static Said Names(string[] names) => Wording.List(
        [.. names.Take(Few.Examples).Select(n => (Said)$"“{PlainText.Short(n)}”"),
        .. names.Length > Few.Examples ? [$"{names.Length - Few.Examples} more"] : Array.Empty<Said>()]);

    private static Said Numbers(int[] numbers) => Wording.List(
        [.. numbers.Take(Few.Examples).Select(n => (Said)$"{n}"),
        .. numbers.Length > Few.Examples ? [$"{numbers.Length - Few.Examples} more"] : Array.Empty<Said>()]);
}

using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Output;

/// <summary>The moments of an out folder's renewal at which tests cut it off.</summary>
internal enum OutStep
{
    BuildFolderMade,
    ManifestWritten,
    PersonsFilesCarried,
    Flushed,
    OldMovedAside,
    NewInPlace,
    LateFilesCarried,
    OldRemoved,
}

/// <summary>
/// An out folder on its way: built beside the earlier one, put on the disk, read back, and then put in its place in one
/// step, so that whoever looks finds a whole one, the earlier or the new, a power cut in between or not. Holds the job's lock
/// until disposed; disposed without
/// <see cref="Commit"/> it leaves everything as it was.
/// </summary>
public sealed class OutFolder : IDisposable
{
    /// <summary>Its name in a job, where no other is asked for.</summary>
    public const string Name = "out";

    private readonly OutSiblings _at;
    private readonly ImmutableArray<JobLock> _locks;
    private readonly ImmutableArray<string> _madeParents;
    private readonly Lazy<OutManifest> _earlier;
    private readonly ConcurrentDictionary<string, string> _hashes = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, string> _earlierHashes = new(StringComparer.Ordinal);
    private readonly ConcurrentBag<string> _linked = [];
    private bool _committed;
    private bool _ended;

    private OutFolder(OutSiblings at, ImmutableArray<JobLock> locks, ImmutableArray<string> madeParents)
    {
        _at = at;
        _locks = locks;
        _madeParents = madeParents;
        _earlier = new Lazy<OutManifest>(() => OutManifest.Read(at.Out));
    }

    /// <summary>Full path of the out folder.</summary>
    public string FullPath => _at.Out;

    /// <summary>Full path of the folder to build in; everything in it at <see cref="Commit"/> counts as ours.</summary>
    public string BuildFolder => _at.New;

    internal Action<OutStep>? AtStep { get; init; }

    internal bool WithoutExchange { get; init; }

    /// <summary>
    /// Takes the lock, mends what an interrupted run left, and makes the build folder. Refuses a folder that holds
    /// something and no plan of ours, and places where nothing can be written; nothing is touched then.
    /// </summary>
    /// <param name="outFolder">The folder to renew; it need not exist.</param>
    public static Result<OutFolder> Begin(string jobFolder, string outFolder) => Begin(jobFolder, outFolder, null, false);

    /// <summary>As <see cref="Begin(string, string)"/>, for the folder of a swatch: one that holds a plan is refused.</summary>
    public static Result<OutFolder> BeginSwatch(string jobFolder, string swatchFolder) =>
        Begin(jobFolder, swatchFolder, null, false, OutKind.Swatch);

    /// <summary>The same for a folder of another kind.</summary>
    internal static Result<OutFolder> Begin(string jobFolder, string folder, OutKind kind) => Begin(jobFolder, folder, null, false, kind);

    internal static Result<OutFolder> Begin(
        string jobFolder, string outFolder, Action<OutStep>? atStep, bool withoutExchange, OutKind? kind = null)
    {
        if (InnerFile.ObjectionBelow(jobFolder, outFolder) is { } objection)
        {
            return Result.Fail<OutFolder>(objection);
        }

        var at = OutSiblings.Of(outFolder) is { } found ? found with { Kind = kind ?? OutKind.Plan, Job = jobFolder } : null;
        if (at is null || at.WouldSwallow(jobFolder) || File.Exists(at.Out))
        {
            return Result.Fail<OutFolder>(Problem.CannotUse(
                new Where(outFolder),
                at is not null && File.Exists(at.Out)
                ? "This is a file, not a folder." : "This place cannot be the out folder: it is, or holds, the job itself.",
                "Name a folder of its own with --out, or leave out --out: then it is the folder “out” inside the job."));
        }

        var stamp = OutTaking.PlanStamp(at);
        if (!OutMending.IsNeeded(at) && OutTaking.Refusal(at) is { } refused)
        {
            return Result.Fail<OutFolder>(refused);
        }

        var madeParents = ImmutableArray<string>.Empty;
        var locks = ImmutableArray<JobLock>.Empty;
        try
        {
            madeParents = MakeParents(at.Parent);
            var taken = OutLocks.Take(jobFolder, at);
            if (taken.Value is null)
            {
                RemoveParents(madeParents);
                return Result.Fail<OutFolder>(taken.Problems);
            }

            locks = taken.Value.Locks;
            var problems = OutMending.Mend(at);
            if (problems.All(p => p.Severity != Severity.CannotUse)
                && (!problems.IsEmpty || stamp is null || stamp != OutTaking.PlanStamp(at)) && OutTaking.Refusal(at) is { } refusedNow)
            {
                problems = problems.Add(refusedNow);
            }

            if (problems.Any(p => p.Severity == Severity.CannotUse))
            {
                GiveBack(locks);
                return Result.Fail<OutFolder>(problems);
            }

            if (Directory.Exists(at.Out) && !OutMending.IsEmptyFolder(at.Out) && OutManifest.Format(at.Out, at.Kind) is null)
            {
                problems = problems.Add(Problem.Note(
                    new Where(at.Out), $"The {at.Kind.File} in this folder can no longer be read. So everything is made again."));
            }

            Disk.MakeFolder(at.New);
            var folder = new OutFolder(at, locks, madeParents) { AtStep = atStep, WithoutExchange = withoutExchange };
            atStep?.Invoke(OutStep.BuildFolderMade);
            return Result.Of(folder, problems);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            GiveBack(locks);
            RemoveParents(madeParents);
            return Result.Fail<OutFolder>(Problem.CannotUse(
                new Where(outFolder),
                $"The out folder cannot be written: {e.Message}",
                "Give yourself the right to write beside it, free some room on the disk, or choose another folder with --out."));
        }
    }

    /// <summary>
    /// Puts right what an interrupted run left, if there is anything and nobody is writing just now. For the start of
    /// every command; cheap when all is well.
    /// </summary>
    public static ImmutableArray<Problem> MendInterrupted(string jobFolder, string outFolder) =>
        MendInterrupted(jobFolder, outFolder, OutKind.Plan);

    /// <summary>The same for the folder of a swatch.</summary>
    public static ImmutableArray<Problem> MendInterruptedSwatch(string jobFolder, string swatchFolder) =>
        MendInterrupted(jobFolder, swatchFolder, OutKind.Swatch);

    internal static ImmutableArray<Problem> MendInterrupted(string jobFolder, string outFolder, OutKind kind)
    {
        var at = InnerFile.ObjectionBelow(jobFolder, outFolder) is null ? OutSiblings.Of(outFolder)?.For(jobFolder, kind) : null;
        if (at is null || at.WouldSwallow(jobFolder) || !(OutMending.IsNeeded(at) || OutLocks.AnyLeft(jobFolder, at)))
        {
            return [];
        }

        using var locks = OutLocks.TakeIfFree(jobFolder, at).Value;
        try
        {
            return locks is null ? [] : OutMending.Mend(at);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [Problem.NeedsPerson(
                new Where(at.Out),
                $"An earlier run was interrupted and what it left cannot be cleared away: {e.Message}",
                $"Delete the folder {Path.GetFileName(at.New)} beside the out folder by hand.")];
        }
    }

    /// <summary>Makes a file in the build folder, with its sub-folder; may be called from several threads.</summary>
    /// <param name="relative">As in <see cref="OutPaths"/>.</param>
    public Stream Create(string relative) => Open(relative);

    /// <summary>Makes a file as <see cref="Create(string)"/> does, and returns its fingerprint.</summary>
    public string Create(string relative, Action<Stream> write)
    {
        using var file = Open(relative);
        write(file);
        return file.Fingerprint();
    }

    private PrintedFile Open(string relative) => new(InnerFile.Create(_at.New, relative), hash => _hashes[relative] = hash);

    /// <summary>
    /// Whether the earlier out folder has a file whose bytes are what the fingerprint says. It is read for it: length and
    /// time do not tell that a disk has kept what was written.
    /// </summary>
    public bool HasEarlier(string relative, string fingerprint)
    {
        if (fingerprint.Length == 0 || !InnerFile.IsPlain(_at.Out, relative))
        {
            return false;
        }

        string hash = FileHash.Of(_at.Out, relative);
        _earlierHashes[relative] = hash;
        return InputFingerprint.InWords(hash) == fingerprint;
    }

    /// <summary>A file of the earlier out folder.</summary>
    public byte[] Earlier(string relative) => InnerFile.Bytes(_at.Out, relative);

    /// <summary>
    /// Gives a file for which <see cref="HasEarlier"/> was true a place in the build folder under the same name, without
    /// copying it where the system can. The two are one file until the earlier folder is removed, which changes neither.
    /// </summary>
    public void TakeOver(string relative)
    {
        string full = Path.Combine(_at.New, relative);
        Disk.MakeFolder(Path.GetDirectoryName(full)!);
        if (Disk.TryLink(Path.Combine(_at.Out, relative), full))
        {
            _linked.Add(relative);
        }
        else
        {
            InnerFile.Copy(_at.Out, relative, full);
        }

        _hashes[relative] = _earlierHashes[relative];
    }

    /// <summary>Takes files out of the build folder again, where they are.</summary>
    public void Withdraw(IEnumerable<string> relatives)
    {
        foreach (string relative in relatives)
        {
            Disk.RemoveFile(Path.Combine(_at.New, relative));
        }
    }

    /// <summary>
    /// Takes a person's own files over from the earlier out folder and puts the new one in its place. Returns what
    /// the person should know of her files.
    /// </summary>
    /// <exception cref="IOException">The machine could not; the earlier out folder is as it was.</exception>
    public ImmutableArray<Problem> Commit()
    {
        ObjectDisposedException.ThrowIf(_ended, this);
        OutManifest.Write(_at.New, _hashes);
        AtStep?.Invoke(OutStep.ManifestWritten);
        var notes = new List<Problem>();
        bool renews = Directory.Exists(_at.Out);
        var carry = new CarryOver(renews ? _earlier.Value : OutManifest.Read(_at.New), _at.Out, _at.New);
        if (renews)
        {
            notes.AddRange(carry.Run());
            Disk.SetRightsAs(_at.New, _at.Out);
        }

        AtStep?.Invoke(OutStep.PersonsFilesCarried);
        Disk.FlushTree(_at.New);
        if (OutManifest.Read(_at.New).Fault(_at.New, _linked.ToHashSet(StringComparer.Ordinal)) is { } fault)
        {
            throw new IOException($"The disk gave back other bytes than were written: {fault}");
        }

        AtStep?.Invoke(OutStep.Flushed);
        string? earlier = PutInPlaceOrWait(renews);
        _committed = true;
        AtStep?.Invoke(OutStep.NewInPlace);
        Disk.FlushFolder(_at.Parent);
        if (earlier is not null)
        {
            // Best effort from here on: the new folder stands, and what stays of the earlier one the next start clears away.
            try
            {
                notes.AddRange(carry.Run(earlier, _at.Out));
                var left = carry.MoveStuck(earlier, _at.Out);
                Disk.FlushTree(_at.Out);
                AtStep?.Invoke(OutStep.LateFilesCarried);
                if (left.Count > 0)
                {
                    notes.Add(Problem.NeedsPerson(
                        new Where(earlier),
                        $"“{left[0]}” is not ours and could not be moved into the new out folder, so the earlier one stays.",
                        $"Move it away by hand, then delete the folder {Path.GetFileName(earlier)}."));
                    return [.. notes];
                }

                OutMending.Remove(earlier);
                AtStep?.Invoke(OutStep.OldRemoved);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                notes.Add(Problem.Note(
                    new Where(earlier), $"The earlier out folder could not be removed: {e.Message}",
                    Disk.IsHeld(e) ? "Close what shows its files: the next command then takes it away." : "Delete it by hand."));
            }
        }

        return [.. notes];
    }

    public void Dispose()
    {
        if (_ended)
        {
            return;
        }

        _ended = true;
        try
        {
            if (!_committed && Directory.Exists(_at.New))
            {
                OutMending.Remove(_at.New);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The next start clears it away.
        }

        GiveBack(_locks);
        if (!_committed)
        {
            RemoveParents(_madeParents);
        }
    }

    /// <summary>Leaves everything as a killed process does.</summary>
    internal void AbandonAsIfKilled()
    {
        _ended = true;
        foreach (var held in _locks)
        {
            held.AbandonAsIfKilled();
        }
    }

    private string? PutInPlaceOrWait(bool renews)
    {
        try
        {
            return PutInPlace(renews);
        }
        catch (Exception e) when (Disk.IsHeld(e))
        {
            throw OutWaiting.Leave(_at);
        }
    }

    /// <summary>Returns where the earlier folder lies now, or null when there was none.</summary>
    private string? PutInPlace(bool renews)
    {
        if (!renews)
        {
            Disk.Move(_at.New, _at.Out);
            return null;
        }

        if (!WithoutExchange && Disk.TryExchange(_at.New, _at.Out))
        {
            return _at.New;
        }

        Disk.Move(_at.Out, _at.Old);
        AtStep?.Invoke(OutStep.OldMovedAside);
        try
        {
            Disk.Move(_at.New, _at.Out);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Disk.Move(_at.Old, _at.Out);
            throw;
        }

        return _at.Old;
    }

    private static ImmutableArray<string> MakeParents(string parent)
    {
        var made = ImmutableArray.CreateBuilder<string>();
        for (string? at = parent; at is not null && !Directory.Exists(at); at = Path.GetDirectoryName(at))
        {
            made.Add(at);
        }

        Disk.MakeFolder(parent);
        return made.ToImmutable();
    }

    private static void RemoveParents(ImmutableArray<string> made)
    {
        foreach (string folder in made.Where(OutMending.IsEmptyFolder))
        {
            Disk.RemoveEmptyFolder(folder);
        }
    }

    private static void GiveBack(ImmutableArray<JobLock> locks)
    {
        foreach (var held in locks)
        {
            held.Dispose();
        }
    }
}

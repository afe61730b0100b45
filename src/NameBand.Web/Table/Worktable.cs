using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using NameBand.Pipeline;

namespace NameBand.Web.Table;

/// <summary>
/// The one worktable of a job's folder, shared by all tabs: what the job says, how it is laid out, what is still being
/// counted, and what can be undone. Every change is written to the folder at once; a change during work starts over.
/// </summary>
public sealed class Worktable : IDisposable
{
    /// <summary>Longest time that something waits for the first layout, or for a browser to show it.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(2);

    private readonly Hearers _hearers = new();
    private readonly Lock _lock = new();
    private readonly SemaphoreSlim _saving = new(1, 1);
    private readonly SemaphoreSlim _laying = new(1, 1);
    private readonly History _history = new();
    private readonly FolderWatch _watch;
    private readonly TaskCompletionSource _firstLaid = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _firstDrawn = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private CancellationTokenSource _work = new();
    private CancellationTokenSource? _count;
    private KeptFile _jobFile = KeptFile.None;
    private bool _isEnded;

    public Worktable(string folder)
    {
        Folder = folder;
        Session = new LayoutSession(folder);
        Now = new TableSnapshot(0, 0, false, null, null, true, null, null, []);
        _watch = new FolderWatch(folder, OnFolderChanged);
        Sheets = new SheetKeeper(this);
    }

    /// <summary>Full path of the job's folder.</summary>
    public string Folder { get; }

    /// <summary>How things stand; replaced as a whole.</summary>
    public TableSnapshot Now { get; private set; }

    /// <summary>Told after every new snapshot, from any thread.</summary>
    public event Action? Changed
    {
        add => _hearers.Add(value);
        remove => _hearers.Remove(value);
    }

    /// <summary>Faces that can be chosen.</summary>
    public ImmutableArray<string> FaceNames => Session.FaceNames;

    /// <summary>Headings of the columns of the job's lists, as they stand in them.</summary>
    public ImmutableArray<string> HeadingsOf(BandJob? job) =>
        [.. (job?.Lists ?? []).Select(l => ListPreview.Read(Folder, l).Value).OfType<ListPreview>().SelectMany(p => p.Header)
            .Where(h => h.Length > 0).Distinct()];

    internal LayoutSession Session { get; }

    internal SheetKeeper Sheets { get; }

    /// <summary>Waits for the first layout, but not for long: what is shown first then needs not be drawn twice.</summary>
    public Task FirstLaidAsync() => Task.WhenAny(_firstLaid.Task, Task.Delay(LongestWait));

    /// <summary>The first picture stands in a browser.</summary>
    public void FirstDrawn() => _firstDrawn.TrySetResult();

    /// <summary>Reads the folder for the first time.</summary>
    public void Open()
    {
        _jobFile = JobStore.Read(Folder, JobReader.FileName);
        var lost = _history.TakeUp(Folder, Files());
        Publish(now => now with { UndoLost = lost });
        _watch.Begin();
        StartOver();
    }

    /// <summary>Sets keys of job.json, if the job can be read with them; one step of undo.</summary>
    /// <param name="what">What is done, in words, for undo.</param>
    /// <returns>What is wrong with it; nothing was changed unless this is empty.</returns>
    public Task<ImmutableArray<Problem>> ChangeAsync(Said what, params ImmutableArray<JobEdit> edits) =>
        SaveAsync(() => Change(what, edits, JobReader.Check(Folder, [.. _jobFile.Bytes])));

    /// <summary>The same for an edit that goes on from what the job says: with what it says when its turn has come, which may be
    /// more than what the page shows.</summary>
    public Task<ImmutableArray<Problem>> ChangeAsync(Said what, Func<BandJob, JobEdit> edit) => SaveAsync(() =>
    {
        var asItWas = JobReader.Check(Folder, [.. _jobFile.Bytes]);
        return asItWas.Value is { } job ? Change(what, [edit(job)], asItWas) : asItWas.Problems;
    });

    /// <summary>Writes what is told of the workshop, and sets keys of job.json with it; one step of undo.</summary>
    public Task<ImmutableArray<Problem>> TellWorkshopAsync(Said what, WorkshopAnswers answers, params ImmutableArray<JobEdit> edits) =>
        SaveAsync(() =>
    {
        var before = Files();
        var file = WorkshopEditing.Apply(Folder, answers);
        var asItWas = JobReader.Check(Folder, [.. _jobFile.Bytes]);
        var saved = file.Value is { } told ? JobStore.Save(Folder, WorkshopEditing.FileName, told, before.Workshop) : file;
        if (saved.Value is not { } workshop)
        {
            return saved.Problems;
        }

        var problems = Set(edits, asItWas);
        if (problems.IsEmpty)
        {
            _history.Did(what, before);
            return [];
        }

        // A workshop without the job that it was told with would be half of what was asked.
        JobStore.Save(Folder, WorkshopEditing.FileName, before.Workshop, workshop);
        return problems;
    });

    /// <summary>What is told of the workshop; null: nothing.</summary>
    public WorkshopAnswers? WorkshopTold() => WorkshopEditing.Told(Folder);

    /// <summary>Takes the last change back.</summary>
    public Task<ImmutableArray<Problem>> UndoAsync() =>
        SaveAsync(() => _history.Undo(Files(), Restore), () => _history.UndoWords is not null);

    /// <summary>Does again what was taken back.</summary>
    public Task<ImmutableArray<Problem>> RedoAsync() =>
        SaveAsync(() => _history.Redo(Files(), Restore), () => _history.RedoWords is not null);

    /// <summary>Writes decisions about rows to corrections.csv; one step of undo.</summary>
    public Task<ImmutableArray<Problem>> DecideAsync(Said what, params ImmutableArray<RowDecision> decisions) => SaveAsync(() =>
    {
        var before = Files();
        var content = CorrectionsEditing.Apply(Folder, decisions);
        if (content.Value is not { } file)
        {
            return content.Problems;
        }

        var saved = JobStore.Save(Folder, Corrections.FileName, file, before.Corrections);
        if (saved.Value is null)
        {
            return saved.Problems;
        }

        _history.Did(what, before);
        return [];
    });

    /// <summary>job.json was changed by hand and shall hold.</summary>
    public Task<ImmutableArray<Problem>> TakeUpAsync() => SaveAsync(() =>
    {
        _history.Did("the change made outside", Files());
        _jobFile = JobStore.Read(Folder, JobReader.FileName);
        return [];
    });

    /// <summary>job.json was changed by hand and what the page had shall hold.</summary>
    public Task<ImmutableArray<Problem>> PutBackAsync() => SaveAsync(() =>
    {
        var there = JobStore.Read(Folder, JobReader.FileName);
        var saved = JobStore.Save(Folder, JobReader.FileName, _jobFile, there);
        if (saved.Value is not null)
        {
            _history.Did("putting back the page's own file", Files() with { Job = there });
        }

        return saved.Value is null ? saved.Problems : [];
    });

    /// <summary>Gives up counting the stitches of this layout: the plan can be looked at and changed without.</summary>
    public void StopCounting()
    {
        try
        {
            _count?.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // It has come to its end this moment.
        }
    }

    /// <summary>Reads everything anew and lays it out; what was under way is given up.</summary>
    public void StartOver()
    {
        CancellationToken cancel;
        lock (_lock)
        {
            _work.Cancel();
            _work = new CancellationTokenSource();
            cancel = _work.Token;
        }

        Publish(now =>
            now with
            {
                IsLaying = true,
                Figures = null,
                Counting = null,
                IsCountingStopped = false,
                JobFile = _jobFile,
                HasJobFile = _jobFile.IsThere,
                WorkshopPrint = JobStore.Read(Folder, WorkshopEditing.FileName).Fingerprint,
                Undo = _history.UndoWords,
                Redo = _history.RedoWords
            });
        _ = Task.Run(() => WorkAsync(cancel), CancellationToken.None);
    }

    /// <summary>When this has come back, what was being saved is whole in the folder, and nothing is written there any more.</summary>
    public void Dispose()
    {
        _watch.Dispose();
        Sheets.Dispose();
        _work.Cancel();
        _saving.Wait();
        _isEnded = true;
        _saving.Release();
    }

    private async Task WorkAsync(CancellationToken cancel)
    {
        try
        {
            await _laying.WaitAsync(cancel).ConfigureAwait(false);
            LayReport report;
            try
            {
                report = Session.Lay(cancel);
            }
            finally
            {
                _laying.Release();
            }

            Publish(cancel, now => now with
            {
                LayoutNumber = now.LayoutNumber + 1,
                Job = report.Job,
                Laid = report.Laid,
                IsLaying = false,
                Problems = report.Problems,
                Fault = null,
            });
            _firstLaid.TrySetResult();
            if (report.Laid is { } laid)
            {
                await CountAsync(laid, cancel).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException)
        {
            // A newer change has taken over.
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Publish(cancel, now => now with { IsLaying = false, Laid = null, Fault = Table.Fault.OfReading(e) });
        }
        catch (Exception e)
        {
            Publish(cancel,
                now => now with
                {
                    IsLaying = false,
                    Laid = null,
                    Fault = Table.Fault.InWords(e)
                });
        }
        finally
        {
            _firstLaid.TrySetResult();
        }
    }

    private async Task CountAsync(LaidOutJob laid, CancellationToken cancel)
    {
        // Counting takes all the machine has; whoever has just opened the page sees her names first.
        await Task.WhenAny(_firstDrawn.Task, Task.Delay(LongestWait, cancel)).ConfigureAwait(false);
        cancel.ThrowIfCancellationRequested();
        using var count = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        _count = count;
        try
        {
            var figures =
                laid.Calculate(
                    new Throttled(p => Publish(cancel, now => now with { Counting = p })), count.Token,
                    DateOnly.FromDateTime(DateTime.Now));
            Publish(cancel, now => now with { Figures = figures, Counting = null, Problems = [.. now.Problems, .. figures.Problems] });
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            Publish(cancel, now => now with { Counting = null, IsCountingStopped = true });
        }
        finally
        {
            // A newer count may already stand there.
            Interlocked.CompareExchange(ref _count, null, count);
        }
    }

    private ImmutableArray<Problem> Change(Said what, ImmutableArray<JobEdit> edits, Result<BandJob> asItWas)
    {
        var before = Files();
        var problems = Set(edits, asItWas);
        if (problems.IsEmpty)
        {
            _history.Did(what, before);
        }

        return problems;
    }

    /// <summary>Sets keys of job.json, if the job can be read with them and all else that was written.</summary>
    private ImmutableArray<Problem> Set(ImmutableArray<JobEdit> edits, Result<BandJob> asItWas)
    {
        if (JobEditing.Apply(_jobFile.Bytes.AsSpan(), edits) is not { } bytes)
        {
            return [Problem.CannotUse(
                new Where(JobReader.FileName), "The file is not valid JSON, so nothing could be set in it.", "Mend it first, or undo.")];
        }

        if (NewlyWrong(asItWas, JobReader.Check(Folder, bytes)) is { IsEmpty: false } wrong)
        {
            return wrong;
        }

        if (edits.IsEmpty)
        {
            return [];
        }

        var saved = JobStore.Save(Folder, JobReader.FileName, KeptFile.Of(bytes), _jobFile);
        _jobFile = saved.Value ?? _jobFile;
        return saved.Value is null ? saved.Problems : [];
    }

    /// <summary>What keeps the new job from being used; of several things wrong before, one may be mended after the other.</summary>
    private static ImmutableArray<Problem> NewlyWrong(Result<BandJob> before, Result<BandJob> after)
    {
        var known = before.Problems.Where(p => p.Severity == Severity.CannotUse).Select(p => (p.Where.Key, p.Found)).ToHashSet();
        var wrong = after.Problems.Where(p => p.Severity == Severity.CannotUse).ToImmutableArray();
        return wrong.Length < known.Count && wrong.All(p => known.Contains((p.Where.Key, p.Found))) ? [] : wrong;
    }

    private async Task<ImmutableArray<Problem>> SaveAsync(Func<ImmutableArray<Problem>> save, Func<bool>? isAny = null)
    {
        await _saving.WaitAsync().ConfigureAwait(false);
        try
        {
            if (_isEnded || isAny?.Invoke() == false)
            {
                return [];
            }

            var problems = await Task.Run(save).ConfigureAwait(false);
            if (problems.IsEmpty)
            {
                await Task.Run(() => _history.Keep(Folder, Files())).ConfigureAwait(false);
                _watch.Remember();
            }

            Publish(now => now with { IsChangedOutside = IsChangedOutside() });
            if (problems.IsEmpty)
            {
                StartOver();
            }

            return problems;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [Problem.OfMachine(new Where(Folder), "write", e)];
        }
        finally
        {
            _saving.Release();
        }
    }

    private void OnFolderChanged()
    {
        if (_saving.CurrentCount == 0)
        {
            return;
        }

        bool outside = IsChangedOutside();
        Publish(now => now with { IsChangedOutside = outside });
        if (!outside)
        {
            StartOver();
        }
    }

    private bool IsChangedOutside() => JobStore.Read(Folder, JobReader.FileName).Fingerprint != _jobFile.Fingerprint;

    private JobFiles Files() =>
        new(_jobFile, JobStore.Read(Folder, Corrections.FileName), JobStore.Read(Folder, WorkshopEditing.FileName));

    private ImmutableArray<Problem> Restore(JobFiles from, JobFiles to)
    {
        var problems = PutBack(JobReader.FileName, from.Job, to.Job);
        _jobFile = problems.IsEmpty ? to.Job : _jobFile;
        problems = problems.IsEmpty ? PutBack(Corrections.FileName, from.Corrections, to.Corrections) : problems;
        return problems.IsEmpty ? PutBack(WorkshopEditing.FileName, from.Workshop, to.Workshop) : problems;
    }

    private ImmutableArray<Problem> PutBack(string name, KeptFile from, KeptFile to) => from.Fingerprint == to.Fingerprint ? []
        : JobStore.Save(Folder, name, to, from) is { Value: null } failed ? failed.Problems : [];

    private void Publish(CancellationToken cancel, Func<TableSnapshot, TableSnapshot> change)
    {
        lock (_lock)
        {
            if (cancel.IsCancellationRequested)
            {
                return;
            }

            Now = change(Now) with { Version = Now.Version + 1 };
        }

        _hearers.Tell();
    }

    private void Publish(Func<TableSnapshot, TableSnapshot> change) => Publish(CancellationToken.None, change);
}

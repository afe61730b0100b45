using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>Making the job's files, as the command does; one at a time for all tabs, and it can be stopped.</summary>
public sealed class PrintRun(Worktable table)
{
    private readonly Lock _lock = new();
    private CancellationTokenSource? _stop;

    /// <summary>Told whenever something changed, from any thread.</summary>
    public event Action? Changed;

    public bool IsRunning => _stop is not null;

    /// <summary>How far it has come, or how it ended.</summary>
    public string Said { get; private set; } = "";

    /// <summary>What the last run says a person has to do.</summary>
    public ImmutableArray<Problem> Problems { get; private set; } = [];

    public void Start(Way way)
    {
        lock (_lock)
        {
            if (_stop is not null)
            {
                return;
            }

            _stop = new CancellationTokenSource();
        }

        Tell("making the sheets", []);
        _ = Task.Run(() => Run(way, _stop.Token));
    }

    public void Stop() => _stop?.Cancel();

    private void Run(Way way, CancellationToken cancel)
    {
        string said;
        ImmutableArray<Problem> problems = [];
        try
        {
            var progress = new Throttled(p => Tell(p.Of > 0 ? $"{p.What}: {p.Done} of {p.Of}" : p.What, []));
            var report = way == Way.NeedlePath
                ? Bander.Print(table.Folder, progress: progress, cancel: cancel)
                : Bander.Make(table.Folder, progress: progress, cancel: cancel);
            problems = [.. report.Problems.Where(p => p.Severity != Severity.Note).OrderByDescending(p => p.Severity).Take(20)];
            said = report.Status == ExitStatus.CannotUse ? "Nothing was made." : "Done: the sheets are below.";
        }
        catch (OperationCanceledException)
        {
            said = "Stopped; what was made before is as it was.";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            said = $"The machine could not write: {e.Message}";
        }

        _stop = null;
        Tell(said, problems);
    }

    private void Tell(string said, ImmutableArray<Problem> problems)
    {
        (Said, Problems) = (said, problems);
        Changed?.Invoke();
    }
}

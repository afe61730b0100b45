using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Reports;

namespace NameBand.Web.Table;

/// <summary>Making the job's files, as the commands do; one at a time for all tabs, and it can be stopped.</summary>
public sealed class PrintRun(Worktable table)
{
    private readonly Hearers _hearers = new();
    private readonly Lock _lock = new();
    private CancellationTokenSource? _stop;
    private Said _said = "";

    /// <summary>Told whenever something changed, from any thread.</summary>
    public event Action? Changed
    {
        add => _hearers.Add(value);
        remove => _hearers.Remove(value);
    }

    public bool IsRunning => _stop is not null;

    /// <summary>How far it has come, or how it ended.</summary>
    public string Said => _said.ToString();

    /// <summary>What the last run says a person has to do.</summary>
    public ImmutableArray<Problem> Problems { get; private set; } = [];

    /// <summary>Makes the whole job with its sheets.</summary>
    public void Start(PrintWishes wishes) => Start("making the sheets", (progress, cancel) =>
    {
        var report = Bander.Print(table.Folder, wishes: wishes, progress: progress, cancel: cancel);
        return (report.Status, report.Problems, "Done: the sheets are below.");
    });

    /// <summary>Makes the swatch that is sewn first.</summary>
    public void StartSwatch() => Start("making the swatch", (progress, cancel) =>
    {
        var report = Bander.Swatch(table.Folder, progress: progress, cancel: cancel);
        return (report.Status, report.Problems, "Done: the swatch is below.");
    });

    /// <summary>Writes the letters to the owners; what is said holds no address.</summary>
    public void StartLetters() => Start("writing the letters", (progress, cancel) =>
    {
        var report = Bander.Invite(table.Folder, DateOnly.FromDateTime(DateTime.Now), progress, cancel);
        return (report.Status, report.Problems,
            (Said)$"Done: {Wording.Count(report.Letters, "letter")} in the folder private; {report.Missing} without an answer.");
    });

    /// <summary>Enters what came back.</summary>
    public void StartAnswers() => Start("entering the answers", (_, _) =>
    {
        var report = Bander.EnterAnswers(table.Folder);
        return (report.Status, report.Problems,
            (Said)$"Done: something new of {Wording.Count(report.Heard, "name")}. Make the sheets again, then write the letters again.");
    });

    /// <summary>Makes the page on which supporters find their names.</summary>
    public void StartPublic() => Start("making the page for supporters", (progress, cancel) =>
    {
        var report = Bander.Public(table.Folder, progress: progress, cancel: cancel);
        return (report.Status, report.Problems, (Said)$"Done: {Wording.Count(report.Shown, "name")} on the page, in the folder public.");
    });

    public void Stop() => _stop?.Cancel();

    private void Start(Said what, Func<IProgress<Progress>, CancellationToken, (ExitStatus, ImmutableArray<Problem>, Said)> make)
    {
        lock (_lock)
        {
            if (_stop is not null)
            {
                return;
            }

            _stop = new CancellationTokenSource();
        }

        Tell(what, []);
        _ = Task.Run(() => Run(make, _stop.Token));
    }

    private void Run(
        Func<IProgress<Progress>, CancellationToken, (ExitStatus, ImmutableArray<Problem>, Said)> make, CancellationToken cancel)
    {
        Said said;
        ImmutableArray<Problem> problems = [];
        try
        {
            var progress = new Throttled(p => Tell(p.Of > 0 ? (Said)$"{p.What}: {p.Done} of {p.Of}" : p.What, []));
            var (status, found, done) = make(progress, cancel);
            problems = [.. found.Where(p => p.Severity != Severity.Note).OrderByDescending(p => p.Severity).Take(20)];
            said = status == ExitStatus.CannotUse ? "Nothing was made." : done;
        }
        catch (OperationCanceledException)
        {
            said = "Stopped; what was made before is as it was.";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            said = Fault.OfWriting(e);
        }
        catch (Exception e)
        {
            said = Fault.InWords(e);
        }

        _stop = null;
        Tell(said, problems);
    }

    private void Tell(Said said, ImmutableArray<Problem> problems)
    {
        (_said, Problems) = (said, problems);
        _hearers.Tell();
    }
}

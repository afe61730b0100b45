using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Reports;

namespace NameBand.Web.Table;

/// <summary>The plans there are for the job: looked for once for all tabs, and stale as soon as anything changes.</summary>
public sealed class PlansDesk : IDisposable
{
    private readonly Hearers _hearers = new();
    private readonly Worktable _table;
    private readonly Lock _lock = new();
    private CancellationTokenSource? _stop;
    private long _layout;
    private Said _said = "";

    public PlansDesk(Worktable table)
    {
        _table = table;
        table.Changed += OnTable;
    }

    /// <summary>Told whenever something changed, from any thread.</summary>
    public event Action? Changed
    {
        add => _hearers.Add(value);
        remove => _hearers.Remove(value);
    }

    public bool IsRunning => _stop is not null;

    /// <summary>How far the search has come; empty while none runs.</summary>
    public string Said => _said.ToString();

    /// <summary>What was found; null: nothing was looked for, or the job has changed since.</summary>
    public PlansReport? Found { get; private set; }

    /// <summary>Why nothing could be found.</summary>
    public ImmutableArray<Problem> Problems { get; private set; } = [];

    public void Look()
    {
        CancellationTokenSource stop;
        lock (_lock)
        {
            if (_stop is not null)
            {
                return;
            }

            stop = _stop = new CancellationTokenSource();
            _layout = _table.Now.LayoutNumber;
        }

        Tell(null, [], "looking for plans");
        _ = Task.Run(() => Run(stop.Token));
    }

    public void Stop() => _stop?.Cancel();

    /// <summary>Sets what the plan changes of the job; one step of undo.</summary>
    /// <param name="name">What it is called, for undo.</param>
    /// <param name="more">What is set with it.</param>
    public async Task<ImmutableArray<Problem>> TakeAsync(OfferedPlan plan, Said name, params ImmutableArray<JobEdit> more)
    {
        if (Found is not { } found || !found.Plans.Contains(plan) || _table.Now.IsLaying || _table.Now.LayoutNumber != _layout)
        {
            return [Problem.CannotUse(new Where(), "The job has changed since these plans were found.", "Look for plans once more.")];
        }

        return await _table.ChangeAsync($"taking the plan: {name}", [.. plan.Edits, .. more]);
    }

    public void Dispose()
    {
        _table.Changed -= OnTable;
        _stop?.Cancel();
    }

    private void Run(CancellationToken cancel)
    {
        PlansReport? found = null;
        ImmutableArray<Problem> problems = [];
        Said said = "";
        try
        {
            var report = Bander.Plans(
                _table.Folder, null, new Throttled(p => Tell(Found, [], p.Of > 0 ? (Said)$"{p.What}: {p.Done} of {p.Of}" : p.What)), cancel);
            found = report.AsSet is null ? null : report;
            problems = report.AsSet is null ? report.Problems : [];
        }
        catch (OperationCanceledException)
        {
            said = "Stopped.";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            said = Fault.OfReading(e);
        }
        catch (Exception e)
        {
            said = Fault.InWords(e);
        }

        _stop = null;
        bool isStale = _table.Now.IsLaying || _table.Now.LayoutNumber != _layout;
        Tell(isStale ? null : found, problems, isStale && found is not null ? "The job has changed meanwhile: look once more." : said);
    }

    private void OnTable()
    {
        if (_table.Now.IsLaying && !IsRunning && (Found is not null || !_said.IsEmpty || !Problems.IsEmpty))
        {
            Tell(null, [], "");
        }
    }

    private void Tell(PlansReport? found, ImmutableArray<Problem> problems, Said said)
    {
        (Found, Problems, _said) = (found, problems, said);
        _hearers.Tell();
    }
}

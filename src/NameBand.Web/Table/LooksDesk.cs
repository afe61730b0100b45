using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Pipeline;
using NameBand.Web.Strip;

namespace NameBand.Web.Table;

/// <summary>
/// Her own names in what can be chosen: pictures and heights come first, hours as they are counted. One kind of choice at a time,
/// for all tabs; given up as soon as nobody looks or the job changes.
/// </summary>
public sealed class LooksDesk : IDisposable
{
    private const double MostMm = 95;

    private readonly Worktable _table;
    private readonly LayoutSession _bench;
    private readonly Lock _lock = new();
    private readonly List<string> _pictures = [];
    private readonly SemaphoreSlim _working = new(1, 1);
    private CancellationTokenSource _stop = new();
    private (string Key, long Layout) _of = ("", -1);
    private int _lookers;

    public LooksDesk(Worktable table)
    {
        _table = table;
        _bench = new LayoutSession(table.Folder);
    }

    /// <summary>Told when more is known, from any thread.</summary>
    public event Action? Changed;

    /// <summary>What there is to choose from of the kind that is looked at.</summary>
    internal ImmutableArray<Look> Shown { get; private set; } = [];

    /// <summary>Key of that kind.</summary>
    internal string Key => _of.Key;

    /// <summary>Somebody opens a choice, or its layout has changed.</summary>
    internal void Open(string key, ImmutableArray<string> names)
    {
        CancellationToken stop;
        lock (_lock)
        {
            if (_of == (key, _table.Now.LayoutNumber))
            {
                return;
            }

            _of = (key, _table.Now.LayoutNumber);
            Shown = Looks.Of(key, names);
            _stop.Cancel();
            _stop = new CancellationTokenSource();
            stop = _stop.Token;
        }

        _ = Task.Run(() => WorkAsync(stop), CancellationToken.None);
    }

    internal void Enter() => Interlocked.Increment(ref _lookers);

    /// <summary>Nobody looks any longer: nothing more is worked out.</summary>
    internal void Leave()
    {
        lock (_lock)
        {
            if (--_lookers > 0)
            {
                return;
            }

            _stop.Cancel();
            _of = ("", -1);
        }
    }

    internal string? PictureOf(int number)
    {
        lock (_lock)
        {
            return number > 0 && number <= _pictures.Count ? _pictures[number - 1] : null;
        }
    }

    public void Dispose() => _stop.Cancel();

    private async Task WorkAsync(CancellationToken stop)
    {
        try
        {
            await _working.WaitAsync(stop).ConfigureAwait(false);
            try
            {
                var laid = Draw(stop);
                await CountedAsync(stop).ConfigureAwait(false);
                Count(laid, stop);
            }
            finally
            {
                _working.Release();
            }
        }
        catch (OperationCanceledException)
        {
            // Another choice is looked at, or none.
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The folder cannot be read just now: the worktable says so itself.
        }
    }

    private Dictionary<int, LaidOutJob> Draw(CancellationToken stop)
    {
        var all = new Dictionary<int, LaidOutJob>();
        for (int i = 0; i < Shown.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            var look = Shown[i];
            var laid = look.Colours is null ? _bench.Try(look.Edits, stop).Laid : _table.Now.Laid;
            if (laid is null)
            {
                Put(i, look with { IsImpossible = true }, stop);
                continue;
            }

            string picture = NamePicture.Beginning(laid, MostMm, look.Colours ?? new Dyes(null, null));
            int number;
            lock (_lock)
            {
                _pictures.Add(picture);
                number = _pictures.Count;
            }

            if (look.Colours is null)
            {
                all[i] = laid;
                look = look with
                {
                    HeightMm = laid.Plan.LetterHeightMm,
                    Held = laid.Rows.Rows.Count(r =>
                        r is { Outcome: Names.RowOutcome.Held, HeldFor: Names.HeldFor.Letters or Names.HeldFor.Size }),
                };
            }

            Put(i, look with { Picture = number }, stop);
        }

        return all;
    }

    /// <summary>The plan on the table is counted first: it is what she has.</summary>
    private async Task CountedAsync(CancellationToken stop)
    {
        while (_table.Now is { Figures: null, IsCountingStopped: false, Laid: not null })
        {
            await Task.Delay(200, stop).ConfigureAwait(false);
        }
    }

    private void Count(Dictionary<int, LaidOutJob> laid, CancellationToken stop)
    {
        foreach (var (i, job) in laid)
        {
            var estimate = job.Reckon(null, stop).Estimate;
            Put(i, Shown[i] with { Minutes = (estimate.MachineMinutes.Likely, estimate.HandsOnMinutes.Likely) }, stop);
        }
    }

    private void Put(int at, Look look, CancellationToken stop)
    {
        lock (_lock)
        {
            stop.ThrowIfCancellationRequested();
            Shown = Shown.SetItem(at, look);
        }

        Changed?.Invoke();
    }
}

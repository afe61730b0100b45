using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Pipeline;
using NameBand.Web.Strip;

namespace NameBand.Web.Table;

/// <summary>
/// Her own names in what can be chosen: pictures and heights come first, hours as they are counted. Each kind of choice that somebody
/// looks at is worked out beside the others, one picture at a time; given up as soon as nobody looks or the job changes.
/// </summary>
public sealed class LooksDesk : IDisposable
{
    private const double MostMm = 95; // Of strip in one picture at true size: a name or two of usual letters. Our choice.

    /// <summary>
    /// Pictures that are kept, the newest: a tab that is not drawn anew yet still asks for those before. All that is looked at at once
    /// is under a hundred, and twice that is kept.
    /// </summary>
    private const int MostPictures = 240;

    private readonly Hearers _hearers = new();
    private readonly Worktable _table;
    private readonly LayoutSession _bench;
    private readonly Lock _lock = new();
    private readonly Dictionary<string, Kind> _kinds = new(StringComparer.Ordinal);
    private readonly Dictionary<int, string> _pictures = [];
    private readonly SemaphoreSlim _working = new(1, 1);
    private int _lastPicture;

    public LooksDesk(Worktable table)
    {
        _table = table;
        _bench = new LayoutSession(table.Folder);
    }

    /// <summary>Told when more is known, from any thread.</summary>
    public event Action? Changed
    {
        add => _hearers.Add(value);
        remove => _hearers.Remove(value);
    }

    /// <summary>What there is to choose from of a kind that is looked at; null: it was not opened yet.</summary>
    internal ImmutableArray<Look>? ShownOf(string key)
    {
        lock (_lock)
        {
            return _kinds.TryGetValue(key, out var kind) && kind.Layout >= 0 ? kind.Shown : null;
        }
    }

    /// <summary>Somebody opens a choice, or its layout has changed.</summary>
    internal void Open(string key, ImmutableArray<string> names)
    {
        CancellationToken stop;
        lock (_lock)
        {
            long layout = _table.Now.LayoutNumber;
            if (!_kinds.TryGetValue(key, out var kind) || kind.Layout == layout)
            {
                return;
            }

            // Until it is drawn anew each one is seen as it was; what it brings is another matter.
            var before = kind.Shown.GroupBy(l => l.Word).ToDictionary(g => g.Key, g => g.First());
            kind.Layout = layout;
            kind.Shown = [.. Looks.Of(key, names).Select(
                l => before.TryGetValue(l.Word, out var was) ? l with { Picture = was.Picture, IsHelper = was.IsHelper } : l)];
            stop = kind.Anew();
        }

        _ = Task.Run(() => WorkAsync(key, stop), CancellationToken.None);
    }

    /// <summary>Somebody looks at a kind of choice.</summary>
    internal void Enter(string key)
    {
        lock (_lock)
        {
            if (!_kinds.TryGetValue(key, out var kind))
            {
                _kinds[key] = kind = new Kind();
            }

            kind.Lookers++;
        }
    }

    /// <summary>Where nobody looks at it any longer, nothing more is worked out.</summary>
    internal void Leave(string key)
    {
        lock (_lock)
        {
            if (!_kinds.TryGetValue(key, out var kind) || --kind.Lookers > 0)
            {
                return;
            }

            kind.Stop.Cancel();
            _kinds.Remove(key);
        }
    }

    internal string? PictureOf(int number)
    {
        lock (_lock)
        {
            return _pictures.GetValueOrDefault(number);
        }
    }

    public void Dispose()
    {
        lock (_lock)
        {
            foreach (var kind in _kinds.Values)
            {
                kind.Stop.Cancel();
            }
        }
    }

    private async Task WorkAsync(string key, CancellationToken stop)
    {
        try
        {
            await SortHelpersAsync(key, stop).ConfigureAwait(false);
            var looks = ShownOf(key) ?? [];
            var laid = new LaidOutJob?[looks.Length];
            for (int i = 0; i < looks.Length; i++)
            {
                int at = i;
                await InTurnAsync(looks[at], () => laid[at] = Draw(key, at, looks[at], stop), stop).ConfigureAwait(false);
            }

            await CountedAsync(stop).ConfigureAwait(false);
            for (int i = 0; i < looks.Length; i++)
            {
                int at = i;
                await InTurnAsync(looks[at], () => Count(key, at, laid[at], stop), stop).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException)
        {
            // The job has changed, or nobody looks at it any longer.
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The folder cannot be read just now: the worktable says so itself.
        }
    }

    /// <summary>Says which faces are no choice, before any is drawn: what has been seen to be chosen from does not go again.</summary>
    private async Task SortHelpersAsync(string key, CancellationToken stop)
    {
        if (key != Looks.Face || ShownOf(key) is not { } shown || _table.Now.Laid is not { } laid)
        {
            return;
        }

        string[] names = [.. laid.Plan.Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Text)];
        await _working.WaitAsync(stop).ConfigureAwait(false);
        try
        {
            shown = [.. shown.Select(l => l with { IsHelper = _bench.IsMostlyHelped(l.Word, names) })];
        }
        finally
        {
            _working.Release();
        }

        lock (_lock)
        {
            stop.ThrowIfCancellationRequested();
            if (_kinds.TryGetValue(key, out var kind))
            {
                kind.Shown = shown;
            }
        }

        _hearers.Tell();
    }

    /// <summary>One at a time, so that of two kinds that are looked at neither waits for all of the other; what is laid out already
    /// waits for none.</summary>
    private async Task InTurnAsync(Look look, Action work, CancellationToken stop)
    {
        if (look.Colours is not null)
        {
            work();
            return;
        }

        await _working.WaitAsync(stop).ConfigureAwait(false);
        try
        {
            work();
        }
        finally
        {
            _working.Release();
        }
    }

    /// <summary>Draws what one choice comes to.</summary>
    /// <returns>What it is counted from; null where it cannot be laid out, is not shown, or brings what the job has already.</returns>
    private LaidOutJob? Draw(string key, int at, Look look, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        if (look.IsHelper == true && look.Word != _table.Now.Laid?.Face.Name)
        {
            return null;
        }

        var report = look.Colours is null ? _bench.Try(look.Edits, stop) : null;
        if ((report is null ? _table.Now.Laid : report.Laid) is not { } laid)
        {
            Said why = report?.Problems.FirstOrDefault(p => p.Severity == Severity.CannotUse)?.Found ?? "";
            Put(key, at, look with { IsImpossible = true, Why = why }, null, stop);
            return null;
        }

        string picture = key == Looks.Motif ? NamePicture.Between(laid, MostMm)
            : NamePicture.Beginning(laid, MostMm, look.Colours ?? new Dyes(null, null));
        int held = look.Colours is not null ? 0 : laid.Rows.Rows.Count(r =>
            r is { Outcome: Names.RowOutcome.Held, HeldFor: Names.HeldFor.Letters or Names.HeldFor.Size });
        Put(key, at, look with
        {
            HeightMm = laid.Plan.LetterHeightMm,
            Held = held,
            Gaps = key == Looks.Motif && look.Word.Length > 0 ? laid.Plan.Gaps : null,
        }, picture, stop);
        return look.Colours is null ? laid : null;
    }

    /// <summary>The plan on the table is counted first: it is what she has.</summary>
    private async Task CountedAsync(CancellationToken stop)
    {
        while (_table.Now is { Figures: null, IsCountingStopped: false, Laid: not null })
        {
            await Task.Delay(200, stop).ConfigureAwait(false);
        }
    }

    private void Count(string key, int at, LaidOutJob? job, CancellationToken stop)
    {
        var look = ShownOf(key)?[at];
        if (look is not { IsImpossible: false, HeightMm: not null })
        {
            return;
        }

        // A colour changes nothing of it: its hours are those of the job.
        if ((job?.Calculate(null, stop).Estimate ?? _table.Now.Estimate) is { } estimate)
        {
            Put(key, at, look with { Minutes = (estimate.MachineMinutes.Likely, estimate.HandsOnMinutes.Likely) }, null, stop);
        }
    }

    /// <param name="picture">Taken into the place of the one before; null: it stays.</param>
    private void Put(string key, int at, Look look, string? picture, CancellationToken stop)
    {
        lock (_lock)
        {
            stop.ThrowIfCancellationRequested();
            if (!_kinds.TryGetValue(key, out var kind))
            {
                return;
            }

            if (picture is not null)
            {
                look = look with { Picture = ++_lastPicture };
                _pictures[look.Picture] = picture;
                _pictures.Remove(look.Picture - MostPictures);
            }

            kind.Shown = kind.Shown.SetItem(at, look);
        }

        _hearers.Tell();
    }

    /// <summary>A kind of choice that somebody looks at.</summary>
    private sealed class Kind
    {
        public ImmutableArray<Look> Shown { get; set; } = [];

        /// <summary>Number of the layout that it is of; −1: of none yet.</summary>
        public long Layout { get; set; } = -1;

        public int Lookers { get; set; }

        public CancellationTokenSource Stop { get; private set; } = new();

        public CancellationToken Anew()
        {
            Stop.Cancel();
            Stop = new CancellationTokenSource();
            return Stop.Token;
        }
    }
}

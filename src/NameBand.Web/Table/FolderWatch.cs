namespace NameBand.Web.Table;

/// <summary>Notices when somebody else changes files of the job's folder; looks also by itself, since not every file system
/// tells.</summary>
internal sealed class FolderWatch : IDisposable
{
    private static readonly string[] Endings = [".json", ".csv", ".tsv", ".txt", ".xlsx", ".ttf", ".otf"];
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(700);

    private readonly string _folder;
    private readonly Action _changed;
    private readonly Timer _timer;
    private readonly Lock _lock = new();
    private string _seen = "";

    public FolderWatch(string folder, Action changed)
    {
        _folder = folder;
        _changed = changed;
        _timer = new Timer(_ => Look());
    }

    public void Begin()
    {
        Remember();
        _timer.Change(Pause, Pause);
    }

    /// <summary>What is there now is known.</summary>
    public void Remember()
    {
        lock (_lock)
        {
            _seen = Stamp();
        }
    }

    public void Dispose() => _timer.Dispose();

    private void Look()
    {
        lock (_lock)
        {
            string now = Stamp();
            if (now == _seen)
            {
                return;
            }

            _seen = now;
        }

        try
        {
            _changed();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Another program is writing it just now, or it may not be read: looked at again with the next tick.
            lock (_lock)
            {
                _seen = "";
            }
        }
    }

    private string Stamp()
    {
        try
        {
            var files = new DirectoryInfo(_folder).EnumerateFiles()
                .Where(f => Endings.Contains(f.Extension, StringComparer.OrdinalIgnoreCase))
                .OrderBy(f => f.Name, StringComparer.Ordinal);
            return string.Join('\n', files.Select(f => FormattableString.Invariant($"{f.Name} {f.Length} {f.LastWriteTimeUtc.Ticks}")));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }
}

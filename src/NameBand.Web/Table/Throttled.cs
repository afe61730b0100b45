using NameBand.Reports;

namespace NameBand.Web.Table;

/// <summary>Passes progress on at most ten times a second: more no eye needs, and every one is drawn in every tab.</summary>
internal sealed class Throttled(Action<Progress> tell) : IProgress<Progress>
{
    private const long PauseMs = 100; // A tenth of a second, as above.

    private long _last = Environment.TickCount64;

    public void Report(Progress value)
    {
        long last = Interlocked.Read(ref _last);
        long now = Environment.TickCount64;
        if (now - last >= PauseMs && Interlocked.CompareExchange(ref _last, now, last) == last)
        {
            tell(value);
        }
    }
}

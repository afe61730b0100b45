using Microsoft.Extensions.Hosting;

namespace NameBand.Web.Serving;

/// <summary>
/// Gives memory back when much was asked and then nothing: .NET clears up only while more is wanted, and a page that stands
/// open all night would keep what fifty tabs once took.
/// </summary>
internal sealed class MemoryRest(TimeProvider time) : BackgroundService
{
    private const int ManyRequests = 200; // Requests: fewer leave nothing behind that would be worth a pause. Our choice.
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(10);

    /// <summary>Soon after the last request, and once more when the tabs that lost their line are forgotten.</summary>
    private static readonly TimeSpan[] QuietFor = [TimeSpan.FromSeconds(20), TimeSpan.FromMinutes(4)];

    private long _last = time.GetTimestamp();
    private int _asked;

    /// <summary>Something was asked just now.</summary>
    public void Heard()
    {
        Volatile.Write(ref _last, time.GetTimestamp());
        Interlocked.Increment(ref _asked);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Look, time);
        int rests = 0;
        while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false))
        {
            var quiet = time.GetElapsedTime(Volatile.Read(ref _last));
            if (quiet < QuietFor[0] || Volatile.Read(ref _asked) < ManyRequests)
            {
                rests = 0;
                continue;
            }

            if (quiet >= QuietFor[rests])
            {
                GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
                rests++;
            }

            if (rests == QuietFor.Length)
            {
                Volatile.Write(ref _asked, 0);
                rests = 0;
            }
        }
    }
}

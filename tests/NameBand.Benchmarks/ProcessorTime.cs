using System.Diagnostics;

namespace NameBand.Benchmarks;

/// <summary>Processor time of this process, which a busy machine does not stretch as it does the wall clock.</summary>
internal static class ProcessorTime
{
    public static double Seconds()
    {
        using var process = Process.GetCurrentProcess();
        return process.TotalProcessorTime.TotalSeconds;
    }

    /// <summary>Least of some rounds, in seconds, the first of which also warms up.</summary>
    public static double Best(int rounds, Func<int> work)
    {
        double best = double.PositiveInfinity;
        for (int round = 0; round < rounds; round++)
        {
            double start = Seconds();
            work();
            best = Math.Min(best, Seconds() - start);
        }

        return best;
    }
}

namespace NameBand.Pipeline;

/// <summary>Work on as many cores as there are.</summary>
internal static class Cores
{
    /// <summary>
    /// Does a piece of work for each number. A fault comes out as itself, not wrapped: the edge tells a full disk from a
    /// bug by its type.
    /// </summary>
    /// <param name="cores">At most so many at once; null: all.</param>
    public static void ForEach(int count, CancellationToken cancel, Action<int> body, int? cores = null)
    {
        var options = new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = cores ?? Environment.ProcessorCount };
        try
        {
            Parallel.For(0, count, options, body);
        }
        catch (AggregateException e) when (e.InnerExceptions.Count > 0)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Capture(e.InnerExceptions[0]).Throw();
        }
    }
}

using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Output;

/// <summary>The locks a renewal holds: the job's, and the out folder's own, which another job might name as well.</summary>
internal sealed class OutLocks(ImmutableArray<JobLock> locks) : IDisposable
{
    public ImmutableArray<JobLock> Locks { get; } = locks;

    public static Result<OutLocks> Take(string jobFolder, OutSiblings at) => Take(jobFolder, at, JobLock.Take, JobLock.TakeFile);

    /// <summary>The same without waiting for whoever has one for a moment: for those who only tidy up.</summary>
    public static Result<OutLocks> TakeIfFree(string jobFolder, OutSiblings at) =>
        Take(jobFolder, at, JobLock.TakeIfFree, JobLock.TakeFileIfFree);

    /// <summary>Whether a lock file lies about: held by somebody, or left by a killed process.</summary>
    public static bool AnyLeft(string jobFolder, OutSiblings at) =>
        File.Exists(Path.Combine(jobFolder, JobLock.FileName)) || File.Exists(at.Lock);

    public void Dispose()
    {
        foreach (var held in Locks)
        {
            held.Dispose();
        }
    }

    private static Result<OutLocks> Take(
        string jobFolder, OutSiblings at, Func<string, Result<JobLock>> take, Func<string, string, Result<JobLock>> takeFile)
    {
        // With the out folder elsewhere nothing is written in the job, so a job that cannot be written (a read-only
        // disk) is no hindrance; a job somebody else is writing is.
        string file = Path.Combine(jobFolder, JobLock.FileName);
        var job = take(jobFolder);
        if (job.Value is null && !File.Exists(file))
        {
            job = take(jobFolder); // It may have been given back just now.
        }

        if (job.Value is null && File.Exists(file))
        {
            return Result.Fail<OutLocks>(job.Problems);
        }

        var beside = takeFile(at.Lock, at.Out);
        if (beside.Value is { } second)
        {
            return Result.Of(new OutLocks(job.Value is { } first ? [first, second] : [second]));
        }

        job.Value?.Dispose();
        return Result.Fail<OutLocks>(beside.Problems);
    }
}

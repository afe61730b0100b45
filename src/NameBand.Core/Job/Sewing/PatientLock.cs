using NameBand.Common;

namespace NameBand.Job;

/// <summary>Takes a job's lock, waiting a while for another writer to be done.</summary>
internal static class PatientLock
{
    private const int MostTries = 100; // Some fifty milliseconds apart, five seconds in all: a writer who takes longer stands still.

    /// <param name="wait">Waits a moment, some fifty milliseconds: the core itself has no clock.</param>
    public static Result<JobLock> Take(string jobFolder, Action wait)
    {
        var taken = JobLock.TakeIfFree(jobFolder);
        for (int i = 1; i < MostTries && taken.Value is null && Directory.Exists(jobFolder); i++)
        {
            wait();
            taken = JobLock.TakeIfFree(jobFolder);
        }

        return taken;
    }
}

using NameBand.Common;

namespace NameBand.Job;

/// <summary>Takes a job's lock, waiting a while for another writer to be done.</summary>
public static class PatientLock
{
    private const int Tries = 100;
    private const int WaitMs = 50;

    public static Result<JobLock> Take(string jobFolder)
    {
        var taken = JobLock.Take(jobFolder);
        for (int i = 1; i < Tries && taken.Value is null && Directory.Exists(jobFolder); i++)
        {
            Thread.Sleep(WaitMs);
            taken = JobLock.Take(jobFolder);
        }

        return taken;
    }
}

using System.Globalization;
using NameBand.Job;

namespace NameBand.Tests.JobRoom;

/// <summary>A process that adds to a sewing log and says each number once the disk has it, until it is killed.</summary>
internal static class SewingLogChild
{
    public const string Verb = "log-until-killed";

    public static void Run(string job)
    {
        int next = SewingLogFile.Read(job).Sewn.Length + 1;
        for (; ; next++)
        {
            using (var held = PatientLock.Take(job, () => Thread.Sleep(50)).Value
                ?? throw new InvalidOperationException("The lock was not to be had."))
            {
                SewingLogFile.Append(job, held, new SewingEntry(next, SewingDeed.Sewn, 12, Note: "sewn by the lamp"));
            }

            Console.WriteLine(next.ToString(CultureInfo.InvariantCulture));
        }
    }
}

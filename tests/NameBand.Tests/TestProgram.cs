using System.Globalization;
using NameBand.Tests.Hostile;
using NameBand.Tests.JobRoom;
using NameBand.Tests.OutputRoom;
using NameBand.Tests.WholeLine;

namespace NameBand.Tests;

/// <summary>Lets a test or a benchmark start this assembly as a process of its own.</summary>
internal static class TestProgram
{
    public static int Main(string[] args)
    {
        if (args is [OutFolderChild.Verb, var job, var outFolder, var withoutExchange])
        {
            OutFolderChild.Run(job, outFolder, bool.Parse(withoutExchange));
        }

        if (args is [SewingLogChild.Verb, var jobFolder])
        {
            SewingLogChild.Run(jobFolder);
        }

        if (args is [OutFolderChild.FillDiskVerb, var fullJob])
        {
            return OutFolderChild.FillDisk(fullJob);
        }

        if (args is [Surroundings.Verb])
        {
            return Surroundings.Say();
        }

        if (args is [KilledWork.Verb, var workFolder, var seed])
        {
            KilledWork.Run(workFolder, int.Parse(seed, CultureInfo.InvariantCulture));
        }

        if (args is [ClassRun.ListVerb])
        {
            return ClassRun.List();
        }

        if (args is [ClassRun.Verb, .. var classes])
        {
            // What a test left running must not hold the process.
            Environment.Exit(ClassRun.Run(classes));
        }

        return 64;
    }
}

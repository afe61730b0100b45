using System.Globalization;
using NameBand.Tests.Hostile;
using NameBand.Tests.JobRoom;
using NameBand.Tests.OutputRoom;
using NameBand.Tests.WholeLine;

namespace NameBand.Tests;

/// <summary>Lets a test start this assembly as a process of its own, to be killed.</summary>
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

        return 64;
    }
}

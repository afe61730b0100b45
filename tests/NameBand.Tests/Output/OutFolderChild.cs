using System.Globalization;
using NameBand.Output;

namespace NameBand.Tests.OutputRoom;

/// <summary>A process that renews an out folder over and over until it is killed.</summary>
internal static class OutFolderChild
{
    public const string Verb = "renew-until-killed";

    public static void Run(string job, string outFolder, bool withoutExchange)
    {
        OutFolder.MendInterrupted(job, outFolder);
        Console.WriteLine("renewing");
        for (int round = 0; ; round++)
        {
            int hoopings = 1 + (round * 7 % 23);
            using var folder = OutFolder.Begin(job, outFolder, null, withoutExchange).Value
                ?? throw new InvalidOperationException("The folder cannot be renewed.");
            OutFolderTests.Fill(folder, [.. Enumerable.Range(1, hoopings)]);
            OutFolderTests.Write(folder, OutPaths.ReadMeFirst, hoopings.ToString(CultureInfo.InvariantCulture));
            folder.Commit();
        }
    }
}

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

    public const string FillDiskVerb = "fill-disk";

    /// <summary>On a small disk: makes an out folder, then one that does not fit; says whether the first is still whole.</summary>
    public static int FillDisk(string job)
    {
        string outFolder = Path.Combine(job, "out");
        using (var first = OutFolder.Begin(job, outFolder).Value!)
        {
            OutFolderTests.Fill(first, 1, 2);
            first.Commit();
        }

        string before = Listing(job);
        try
        {
            using var second = OutFolder.Begin(job, outFolder).Value!;
            for (int i = 1; i < 1000; i++)
            {
                OutFolderTests.Write(second, OutPaths.NeedlePath(i), new string('x', 20_000));
            }

            second.Commit();
            Console.WriteLine("the disk was not full");
            return 1;
        }
        catch (IOException e)
        {
            Console.WriteLine(e.Message);
        }

        Console.WriteLine(Listing(job) == before ? "whole" : "not whole:\n" + Listing(job));
        return 0;
    }

    private static string Listing(string folder) => string.Join('\n', Directory
        .EnumerateFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        .Select(f => f + ": " + File.ReadAllText(f)));
}

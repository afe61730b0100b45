using System.Diagnostics;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Benchmarks;

/// <summary>How long it takes to put an out folder's files on the disk: one after another, sixteen at once, all with one
/// question.</summary>
internal static class FlushFigures
{
    private const int Runs = 5;

    public static int Run()
    {
        foreach (var (files, bytes) in new[] { (130, 60_000), (1500, 200_000) })
        {
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{files} files of {bytes} bytes, seconds, {Runs} runs in order"));
            Tell("one after another", files, bytes, OneAfterAnother);
            Tell("sixteen at once", files, bytes, DiskFlush.EachFile);
            Tell("as make does", files, bytes, DiskFlush.Tree);
        }

        return 0;
    }

    private static void Tell(string how, int files, int bytes, Action<string> flush)
    {
        var seconds = new List<double>();
        for (int run = 0; run < Runs; run++)
        {
            string folder = Directory.CreateTempSubdirectory("nameband-flush-").FullName;
            byte[] content = new byte[bytes];
            new Random(run).NextBytes(content);
            for (int i = 0; i < files; i++)
            {
                File.WriteAllBytes(Path.Combine(folder, i.ToString(CultureInfo.InvariantCulture)), content);
            }

            var watch = Stopwatch.StartNew();
            flush(folder);
            seconds.Add(watch.Elapsed.TotalSeconds);
            Directory.Delete(folder, recursive: true);
        }

        Console.WriteLine($"  {how}: {string.Join(" / ", seconds.Order().Select(s => s.ToString("0.000", CultureInfo.InvariantCulture)))}");
    }

    private static void OneAfterAnother(string folder)
    {
        foreach (string file in Directory.GetFiles(folder))
        {
            using var handle = File.OpenHandle(file);
            RandomAccess.FlushToDisk(handle);
        }
    }
}

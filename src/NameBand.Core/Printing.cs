using NameBand.Common;
using NameBand.Output;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;

namespace NameBand;

/// <summary>Makes the sheets to print, each on both papers; on as many cores as there are.</summary>
internal static class Printing
{
    public static Problem NotForThisWay { get; } = Problem.CannotUse(
        new Where("job.json", Key: "way"),
        "The sheets of print are for the way “needlePath”.",
        "Use make: it writes the sheets that go with the way of this job.");

    public static void Run(PacketMatter matter, OutFolder folder, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var sheets = new List<(string File, Action<Stream> Write)>();
        foreach (var paper in Paper.Both)
        {
            sheets.Add((OutPaths.WorkPacket(paper.Word), stream => WorkPacket.Write(stream, paper, matter, cancel)));
            sheets.Add((OutPaths.ProofReading(paper.Word), stream => ProofReadingSheet.Write(stream, paper, matter)));
        }

        sheets.Add((OutPaths.NameFinder, stream => NameFinder.Write(stream, matter.Plan, matter.Job.Lettering.Collation)));
        int done = 0;
        var options = new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = Environment.ProcessorCount };
        Sewing.ForEach(sheets.Count, options, i =>
        {
            Sewing.Write(folder, sheets[i].File, sheets[i].Write);
            progress?.Report(new Progress("printing the sheets", Interlocked.Increment(ref done), sheets.Count));
        });
    }
}

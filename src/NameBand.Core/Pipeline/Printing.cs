using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output;
using NameBand.Output.Packet;
using NameBand.Output.Rehearsal;
using NameBand.Output.Sending;
using NameBand.Output.Sheets;
using NameBand.Output.Tracing;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>
/// Makes the sheets to print, each on both papers, and the pictures to send; on as many cores as there are. The template
/// by hoopings and the packet's pages of hoopings belong to needle paths; what is keyed or traced has its sheet from <c>make</c>.
/// </summary>
internal static class Printing
{
    /// <summary>What was asked for and does not belong to this plan.</summary>
    public static IEnumerable<Problem> NotMade(PrintWishes? wishes, StripPlan plan)
    {
        if (wishes is { Playback: true } && !plan.HasNeedlePaths)
        {
            yield return NoPlayback;
        }

        if (wishes is not null && plan.HasNeedlePaths && plan.Hem.IsCurved)
        {
            yield return NoCurvedTemplate;
        }
    }

    public static Problem NoPlayback { get; } = Problem.Note(
        new Where("job.json", Key: "way"),
        "There is no playback: it shows a needle path, and names that are keyed in or traced have none.",
        "Look at the proofs instead.");

    public static Problem NoCurvedTemplate { get; } = Problem.Note(
        new Where("job.json", Key: "strip.shape"),
        "There is no template of the hoopings for strips that are cut to the curve of the hem.",
        "Lay the proofs of the hoopings under the cloth: they are at true size.");

    /// <param name="sewn">The stitches of a name; origin at the left edge of its width, on its base line.</param>
    /// <returns>How many sheets the paper rehearsal takes, by the word of the paper.</returns>
    public static ImmutableSortedDictionary<string, int> Run(
        PacketMatter matter, PrintWishes wishes, Func<PlacedName, NeedlePath> sewn, OutFolder folder, IProgress<Progress>? progress,
        CancellationToken cancel)
    {
        var sheets = new List<(string File, Action<Stream> Write)>();
        var rehearsal = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        foreach (var paper in Paper.Both)
        {
            sheets.Add((OutPaths.ProofReading(paper.Word), stream => ProofReadingSheet.Write(stream, paper, matter)));
            sheets.Add((OutPaths.NameFinderSheet(paper.Word), stream => NameFinderSheet.Write(stream, paper, matter)));
            sheets.Add((OutPaths.WorkPacket(paper.Word), stream => WorkPacket.Write(stream, paper, matter, cancel)));
            sheets.AddRange(matter.Shares.Select((share, i) =>
                (OutPaths.PersonPacket(i + 1, paper.Word),
                    (Action<Stream>)(stream => PersonPacket.Write(stream, paper, matter, share, cancel)))));
            sheets.Add((OutPaths.PaperRehearsal(paper.Word),
                stream => rehearsal[paper.Word] = RehearsalSheet.Write(stream, paper, matter.Job.Title, matter.Plan, cancel)));
            if (matter.Plan.HasNeedlePaths && !matter.Plan.Hem.IsCurved)
            {
                sheets.Add((OutPaths.HoopingTemplate(paper.Word),
                    stream => Template.WriteHoopings(stream, paper, matter.Job.Title, matter.Plan.OfNeedlePaths, cancel)));
            }
        }

        sheets.Add((OutPaths.NameFinder, stream => NameFinder.Write(stream, matter.Plan, matter.Job.Lettering.Collation)));
        int done = 0;
        Cores.ForEach(sheets.Count, cancel, i =>
        {
            Sewing.Write(folder, sheets[i].File, sheets[i].Write);
            progress?.Report(new Progress("printing the sheets", Interlocked.Increment(ref done), sheets.Count));
        });

        if (wishes.Thanks)
        {
            Thank(matter, sewn, folder, progress, cancel);
        }

        return rehearsal.ToImmutableSortedDictionary(StringComparer.Ordinal);
    }

    private static void Thank(
        PacketMatter matter, Func<PlacedName, NeedlePath> sewn, OutFolder folder, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var names = FoundName.InSewingOrder(matter.Plan).RemoveAll(n => !n.Placed.IsOfList);
        using var captions = new ThanksCaptions(matter.Job.Title, matter.Job.Show.ThanksWidthPixels);
        int done = 0;
        Cores.ForEach(names.Length, cancel, i =>
        {
            var found = names[i];
            Sewing.Write(folder, OutPaths.Thanks(found.Placed.Order), stream =>
                ThankYouPicture.Draw(
                    stream, matter.Plan, found, sewn(found.Placed), matter.Fabric.Thread.DiameterMm, captions));
            progress?.Report(new Progress("drawing the pictures to send", Interlocked.Increment(ref done), names.Length));
        });
        foreach (var paper in Paper.Both)
        {
            Sewing.Write(folder, OutPaths.ThanksCards(paper.Word), stream => ThanksCards.Write(stream, paper, matter, names, sewn));
        }

        Sewing.Write(folder, OutPaths.ThanksTable, stream => ThanksTable.Write(stream, matter.Job.Title, matter.Plan, names));
    }
}

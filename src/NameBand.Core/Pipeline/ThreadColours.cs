using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Pipeline;

/// <summary>What is to be said of the colours of a plan: whether thread shows on cloth, and where a hooping has more than one.</summary>
internal static class ThreadColours
{
    /// <summary>WCAG 2.2, success criterion 1.4.11: what is to be seen has at least this contrast to what it lies on.</summary>
    private const double LeastContrast = 3;

    public static IEnumerable<Problem> Check(BandJob job, StripPlan plan)
    {
        var cloth = job.Colours.OfCloth;
        var inUse = plan.Rounds.SelectMany(r => r.Names).Where(n => !n.IsGone)
            .Select(n => job.Colours.OfThread(job.Groups.Of(n.Lettered.Name.Group)))
            .Distinct().OrderBy(t => t.Number);
        foreach (var thread in inUse)
        {
            double contrast = thread.ContrastRatio(cloth);
            if (contrast < LeastContrast)
            {
                yield return Problem.Note(
                    new Where(JobReader.FileName, Key: ColourKeys.Thread.Path),
                    $"Thread {thread} hardly shows on cloth {cloth}: their contrast is {contrast:0.0} to 1, and names are easy to "
                        + $"see from {LeastContrast:0} to 1.",
                    "Take a darker or lighter thread, or sew the swatch and look at it from where people will stand.");
            }
        }

        if (plan.Threads is { AreSeveral: true } several)
        {
            Said threads = Wording.List([.. several.Threads.Select(t => t.InWords)]);
            Said changes = Wording.Count(several.Changes, "change");
            int inside = several.All.Values.Count(h => h.Order.Length > 1);
            Said within = inside == 0
                ? "" : Said.Plural(inside, $"; {inside} hooping holds more than one", $"; {inside} hoopings hold more than one");
            yield return Problem.Note(
                new Where(JobReader.FileName, Key: LayoutKeys.Groups.Path),
                $"There are {several.Threads.Length} threads, {threads}, and {changes} between them"
                    + $"{within}. They are in the hours and in the order that asks for the fewest.",
                inside == 0 ? "" : "With \"place\": \"ownRound\" a group lies on rounds of its own, and the thread is changed less.");
        }
    }
}

using System.Collections.Immutable;
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
        var threads = plan.Rounds.SelectMany(r => r.Names).Where(n => !n.IsGone).Select(n => job.Colours.OfThread(job.Groups.Of(n.Lettered.Name.Group)))
            .Distinct().OrderBy(t => t.Number);
        foreach (var thread in threads)
        {
            double contrast = thread.ContrastRatio(cloth);
            if (contrast < LeastContrast)
            {
                yield return Problem.Note(
                    new Where(JobReader.FileName, Key: ColourKeys.Thread.Path),
                    FormattableString.Invariant($"Thread {thread} hardly shows on cloth {cloth}: their contrast is {contrast:0.0} to 1, and from {LeastContrast:0} to 1 on a thing is well seen."),
                    "Take a darker or lighter thread, or sew the swatch and look at it from where people will stand.");
            }
        }

        foreach (var hooping in plan.Hoopings)
        {
            ImmutableArray<CssColour> both = [.. Threads(plan, hooping.Segments.SelectMany(s => s.Segment.NamesAndMotifs)).Distinct()];
            if (both.Length > 1)
            {
                yield return Problem.NeedsPerson(
                    new Where(JobReader.FileName, Key: LayoutKeys.Groups.Path),
                    FormattableString.Invariant($"Hooping {hooping.Number} holds names in the threads {Wording.List([.. both.Select(b => b.ToString())])}, and it is planned and drawn in one: nothing stops between them."),
                    "Give each group with a thread of its own \"place\": \"ownRound\", and write \"lanes\": 1 in strip; or take \"thread\" out of the groups.");
                yield break;
            }
        }
    }

    private static IEnumerable<CssColour> Threads(StripPlan plan, IEnumerable<PlacedName> names) => names.Select(n => plan.Colours.OfThread(n) ?? ColourSettings.UsualThread);
}

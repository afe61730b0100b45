using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Job;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>What <c>sewn</c> says: what was written down, what is done, what is to do.</summary>
internal sealed class SewnSummary(Page page, SewingReport report)
{
    private const int MostShown = 10;

    public void Print()
    {
        page.Line(report.Title, tone: Tone.Heading);
        page.Gap();
        if (report.Said is { } said)
        {
            page.Line(Confirmation(said), tone: Tone.Good);
            page.Gap();
        }

        var done = report.Hoopings.Where(h => h.IsSewn).ToList();
        var open = report.Hoopings.Where(h => !h.IsSewn).ToList();
        page.Facts(
        [
            ("Done", done.Count == 0 ? "nothing yet" : $"{Words.Count(done.Count, "hooping")}: {Numbers(done)}", done.Count > 0 ? Tone.Good : Tone.Plain),
            ("To do", open.Count == 0 ? "nothing: all is sewn" : $"{Words.Count(open.Count, "hooping")}: {Numbers(open)}", Tone.Plain),
            ("Time left", TimeLeft(open), Tone.Plain),
        ]);

        var again = report.Hoopings.Where(h => h.IsAgain).ToList();
        if (again.Count > 0)
        {
            page.Gap();
            page.Line("To be sewn again", tone: Tone.AttentionHeading);
            foreach (var hooping in again)
            {
                page.Line($"{hooping.Number.ToString(CultureInfo.InvariantCulture)}: {Wording.List(hooping.Names)}{(hooping.Last!.Deed == SewingDeed.Patch ? ", on a piece of its own" : "")}", 2);
            }
        }

        if (open.Count > 0)
        {
            page.Gap();
            page.Line("Next", tone: Tone.Heading);
            foreach (var hooping in open.Take(MostShown))
            {
                page.Line(string.Create(CultureInfo.InvariantCulture, $"{hooping.Number}: {Wording.List(hooping.Names)}, {hooping.Minutes:0.0} min"), 2);
            }
        }

        if (!report.Problems.IsEmpty)
        {
            page.Gap();
            page.Line("Good to know", tone: Tone.Heading);
            page.Problems(report.Problems, Tone.Attention);
        }
    }

    private string TimeLeft(List<HoopingState> open)
    {
        string finishing = report.FinishingMinutes is { } minutes
            ? $"about {Words.Duration(minutes)} by hand is still ahead, from pressing to sewing down"
            : "the work by hand is still ahead, from pressing to sewing down; run make to have it reckoned";
        return open.Count == 0
            ? $"none at the machine; {finishing}"
            : $"{Words.Duration(open.Sum(h => h.Minutes))} at the machine, as the plan reckons it; "
                + $"make reckons anew with your own pace. After it {finishing}";
    }

    private string Confirmation(SewingEntry said)
    {
        string number = said.Hooping.ToString(CultureInfo.InvariantCulture);
        string minutes = said.Minutes is { } m ? string.Create(CultureInfo.InvariantCulture, $", {m:0.#} minutes at the machine") : "";
        string hands = said.HandMinutes is { } h ? string.Create(CultureInfo.InvariantCulture, $", {h:0.#} by hand") : "";
        return said.Deed switch
        {
            SewingDeed.Sewn => $"Hooping {number}{Names(said.Hooping)} is written down as sewn{minutes}{hands}. Its files are kept in the folder sewn and stay as they are.",
            SewingDeed.Again => $"Hooping {number}{Names(said.Hooping)} is to be sewn again. Run make: names that were changed in the list come out with their new words.",
            SewingDeed.Patch => $"Hooping {number} is to be sewn again on a piece of its own: cut cloth {Words.Both(report.PatchOnClothMm ?? 0)} long, a seam at each end included, and let it into the strip.",
            SewingDeed.Mistake => $"Hooping {number}{Names(said.Hooping)} counts as not sewn.",
            _ => $"The piece of hooping {number} is written down as {Words.Both(said.MeasuredMm ?? 0)} long; {Words.Both(report.Measured?.ExpectedMm ?? 0)} was expected. Run make: the rest is set out by what was measured.",
        };
    }

    /// <summary>Whose hooping it is, to be seen at once where the number was mistyped.</summary>
    private string Names(int hooping)
    {
        var names = report.Hoopings.FirstOrDefault(h => h.Number == hooping)?.Names ?? [];
        return names.IsEmpty ? "" : $", {Wording.List([.. names.Select(n => $"“{n}”")])},";
    }

    private static string Numbers(IEnumerable<HoopingState> hoopings) =>
        Numbers([.. hoopings.Select(h => h.Number)]);

    public static string Numbers(int[] hoopings) => EveningSummary.Numbers([.. hoopings]).Split(' ', 2)[1];
}

using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>sewn</c> says: what was written down, what is done, what is to do.</summary>
internal sealed class SewnSummary(Page page, SewnAnswer answer)
{
    private const int MostShown = 10;

    public void Print()
    {
        page.Line(answer.Title, tone: Tone.Heading);
        page.Gap();
        if (answer.Said is { } said)
        {
            page.Line(Confirmation(said), tone: Tone.Good);
            page.Gap();
        }

        var done = answer.Hoopings.Where(h => h.State == "sewn").ToList();
        var open = answer.Hoopings.Where(h => h.State != "sewn").ToList();
        page.Facts(
        [
            ("Done", done.Count == 0 ? "nothing yet" : Listed(done), done.Count > 0 ? Tone.Good : Tone.Plain),
            ("To do", open.Count == 0 ? "nothing: all is sewn" : Listed(open), Tone.Plain),
            ("Time left", TimeLeft(open), Tone.Plain),
        ]);

        var again = answer.Hoopings.Where(h => h.State == "again").ToList();
        if (again.Count > 0)
        {
            page.Gap();
            page.Line("To be sewn again", tone: Tone.AttentionHeading);
            foreach (var hooping in again)
            {
                string number = hooping.Number.ToString(CultureInfo.InvariantCulture);
                page.Line($"{number}: {Wording.List([.. hooping.Names])}{(hooping.OnItsOwn ? ", on a piece of its own" : "")}", 2);
            }
        }

        if (open.Count > 0)
        {
            page.Gap();
            page.Line("Next", tone: Tone.Heading);
            foreach (var hooping in open.Take(MostShown))
            {
                string names = Wording.List([.. hooping.Names]);
                string line = string.Create(CultureInfo.InvariantCulture, $"{hooping.Number}: {names}, {hooping.Minutes:0.0} min");
                page.Line(line + Marked(hooping), 2);
            }
        }

        if (answer.Problems.Count > 0)
        {
            page.Gap();
            page.Line("Good to know", tone: Tone.Heading);
            page.Problems(answer.Problems, Tone.Attention);
        }
    }

    private string TimeLeft(List<ToldHooping> open)
    {
        string finishing = answer.FinishingMinutes is { } minutes
            ? $"about {Words.Duration(minutes)} by hand is still ahead, from pressing to sewing down"
            : "the work by hand is still ahead, from pressing to sewing down; run make to have it reckoned";
        return open.Count == 0
            ? $"none at the machine; {finishing}"
            : $"{Words.Duration(open.Sum(h => h.Minutes))} at the machine, as the plan reckons it; "
                + $"make reckons anew with your own pace. After it {finishing}";
    }

    private string Confirmation(ToldDeed said)
    {
        string number = said.Hooping.ToString(CultureInfo.InvariantCulture);
        string minutes = said.Minutes is { } m ? string.Create(CultureInfo.InvariantCulture, $", {m:0.#} minutes at the machine") : "";
        string hands = said.HandMinutes is { } h ? string.Create(CultureInfo.InvariantCulture, $", {h:0.#} by hand") : "";
        return said.Deed switch
        {
            "sewn" => $"Hooping {number}{Names(said.Hooping)} is written down as sewn{minutes}{hands}. "
                + "Its files are kept in the folder sewn and stay as they are.",
            "again" => $"Hooping {number}{Names(said.Hooping)} is to be sewn again. "
                + "Run make: names that were changed in the list come out with their new words.",
            "patch" => $"Hooping {number} is to be sewn again on a piece of its own: "
                + $"cut cloth {Words.Both(said.PatchOnClothMm ?? 0)} long, a seam at each end included, and let it into the strip.",
            "mistake" => $"Hooping {number}{Names(said.Hooping)} counts as not sewn.",
            _ => $"The piece of hooping {number} is written down as {Words.Both(said.MeasuredMm ?? 0)} long; "
                + $"{Words.Both(said.ExpectedMm ?? 0)} was expected. Run make: the rest is set out by what was measured.",
        };
    }

    /// <summary>Whose hooping it is, to be seen at once where the number was mistyped.</summary>
    private string Names(int hooping)
    {
        var names = answer.Hoopings.FirstOrDefault(h => h.Number == hooping)?.Names ?? [];
        return names.Count == 0 ? "" : $", {Wording.List([.. names.Select(n => $"“{n}”")])},";
    }

    private static string Marked(ToldHooping hooping) => hooping.Mark is not { } mark ? ""
        : $", mark {mark}{(hooping.AsksForMark ? " (there are older sheets: say it with --mark)" : "")}";

    private static string Listed(List<ToldHooping> hoopings) =>
        $"{Words.Count(hoopings.Count, "hooping")}: {Numbers([.. hoopings.Select(h => h.Number)])}";

    public static string Numbers(IReadOnlyList<int> hoopings) => EveningSummary.Numbers(hoopings).Split(' ', 2)[1];
}

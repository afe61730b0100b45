using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>plans</c> says: the plans line by line, the step to each, and how to take one.</summary>
internal sealed class PlansSummary(Page page, PlansAnswer answer, string job)
{
    /// <summary>Blanks between two columns.</summary>
    private const int Between = 2;

    public void Print()
    {
        page.Line(answer.Title, tone: Tone.Heading);
        page.Gap();
        if (answer.Taken is { } taken)
        {
            Took(answer.Plans.First(p => p.Mark == taken));
            return;
        }

        if (answer.TakenLate is { } late)
        {
            Took(late);
            return;
        }

        if (answer.Compared is { } compared)
        {
            Compare(compared);
            return;
        }

        if (answer.Plans.Count == 0)
        {
            page.Line("No plan was found that can be sewn and attached. This stands in the way of it as it is set:");
        }
        else
        {
            Table();
            Ways();
            Steps();
        }

        Late();
        Rest();
    }

    /// <summary>What can be done for names that came when the garment was finished.</summary>
    private void Late()
    {
        if (answer.Late is not { } late)
        {
            return;
        }

        page.Gap();
        page.Line(
            $"Came when the garment was finished: {string.Join("; ", late.Names.Select(n => PlainText.Short(n, 80)))}", tone: Tone.Heading);
        foreach (var offer in late.Offers)
        {
            string takes = offer.Fits == late.Names.Count ? "" : $", for {offer.Fits} of them";
            string more = offer.More > 0 ? $" Has room for {Words.Count(offer.More, "more name", "more names")} at hardly more work." : "";
            page.Gap();
            page.Hanging("", $"{Wording.AsSentence(offer.Place)[..^1]}{takes}: {Words.Duration(offer.Minutes)}.{more}", 2);
            page.Hanging("→ ", offer.Looks, 4);
            page.Hanging("→ ", offer.Steps, 4);
        }

        if (late.Offers.FirstOrDefault(o => o.Take != "room") is { } first)
        {
            page.Gap();
            page.Line("To take one: the names go into a job of their own, with sheets, hours and log; nothing that is sewn moves.");
            page.Verbatim($"  nameband plans {job} --late {first.Take}");
        }
    }

    private void Table()
    {
        string[] head = ["Mark", "Plan", "Yours", .. Clock("By clock"), "Letters", "Rounds", "To change"];
        string[][] rows =
        [
            head,
            .. answer.Plans.Select(p => Cells(p, p.Mark, Name(p))),
            .. answer.Plain is { } plain ? [Cells(plain, "", Name(plain))] : Array.Empty<string[]>(),
        ];
        int[] widths = [.. head.Select((_, i) => Between + rows.Max(r => Wrapping.Cells(r[i])))];
        foreach (string[] row in rows)
        {
            string lead = string.Concat(row[..^1].Select((c, i) => Wrapping.PadTo(c, widths[i])));
            page.Hanging(lead, row[^1]);
        }
    }

    /// <summary>Who goes which way, where names go several: the many by their number, the few by name.</summary>
    private void Ways()
    {
        foreach (var alike in answer.Plans.Where(p => p.Who is not null)
            .GroupBy(p => string.Join("|", p.Who!.Select(w => $"{w.Way}:{string.Join(",", w.Names)}"))))
        {
            var who = alike.First().Who!;
            page.Gap();
            page.Line($"Who goes which way ({string.Join(", ", alike.Select(p => p.Mark))}):");
            foreach (var (share, i) in who.Select((s, i) => (s, i)))
            {
                var names = share.Names;
                string rest = names.Count > ShortList.Most ? $" and {names.Count - ShortList.Most} more" : "";
                string named = i == 0 && names.Count > ShortList.Most ? "all others" : string.Join(", ", names.Take(ShortList.Most)) + rest;
                page.Hanging("", $"{Words.Count(names.Count, "name")} {share.How}: {named}", 2);
            }
        }
    }

    /// <summary>Where she sits by the machine all the time the clock says what her hours do.</summary>
    private bool HasClock =>
        answer.Plans.Append(answer.Plain).OfType<ToldPlan>().Any(p => Words.Duration(p.HersMinutes) != Words.Duration(p.ElapsedMinutes));

    private string[] Clock(string cell) => HasClock ? [cell] : [];

    private string[] Cells(ToldPlan plan, string mark, string name) =>
    [
        mark, name, Words.Duration(plan.HersMinutes), .. Clock(Words.Duration(plan.ElapsedMinutes)), Height(plan),
        plan.Rounds.ToString(CultureInfo.InvariantCulture),
        plan.Wish == "plain" ? "a measure only" : plan.Keys.Count == 0 ? "nothing" : string.Join(", ", plan.Keys),
    ];

    private void Steps()
    {
        page.Gap();
        string clock = HasClock ? "" : " By the clock they take as long.";
        page.Line($"Yours: work by hand and at a machine that you sit by.{clock}{(answer.Plain is null ? "" : " The plain way is a measure: typed, one line, no hoop.")}");
        foreach (var plan in answer.Plans.Where(p => p.Lines.Count > 0 || p.AlsoWishes.Count > 0))
        {
            page.Gap();
            string also = plan.AlsoWishes.Count > 0 ? $" Also: {string.Join(", ", plan.AlsoWishes.Select(Wish))}." : "";
            page.Hanging($"{plan.Mark}  ", Wording.AsSentence(plan.Why) + also);
            foreach (string line in plan.Lines)
            {
                page.Hanging("→ ", line, 6);
            }

            foreach (string ask in plan.Asks)
            {
                page.Hanging("→ ", ask, 6);
            }

            if (plan.InTheWay.Count > 0)
            {
                page.Hanging("", "In the way stands what you wrote: " + string.Join("; ", plan.InTheWay) + ".", 6);
            }
        }

        string one = (answer.Plans.FirstOrDefault(p => p.Lines.Count > 0) ?? answer.Plans[^1]).Mark;
        page.Gap();
        page.Line("To take one, and to see where its hours come from:");
        page.Verbatim($"  nameband plans {job} --take {one}");
        page.Verbatim($"  nameband plans {job} --why {one}");
    }

    private void Took(ToldPlan plan)
    {
        page.Line(
            plan.Lines.Count == 0
                ? $"{plan.Mark} is the plan as job.json has it; nothing had to be written."
                : $"{plan.Mark} is written into job.json: {Words.Duration(plan.HersMinutes)} of yours, letters {Height(plan)} high.",
            tone: Tone.GoodHeading);
        foreach (string line in plan.Lines.Concat(plan.Asks))
        {
            page.Hanging("→ ", line, 2);
        }

        page.Gap();
        page.Line("Next:");
        page.Verbatim($"  nameband make {job}");
    }

    private void Took(ToldTakenLate late)
    {
        page.Line($"{Wording.AsSentence(late.Place)[..^1]}: {Words.Count(late.Names.Count, "name")} in the job {late.Folder}.",
            tone: Tone.GoodHeading);
        string more = late.Names.Count > 6 ? $" and {late.Names.Count - 6} more" : "";
        page.Hanging("→ ", $"{string.Join("; ", late.Names.Take(6).Select(n => PlainText.Short(n, 80)))}{more}.", 2);
        page.Hanging("→ ", "They are out of the plan of the garment, as corrections.csv says. Nothing that is sewn has moved.", 2);
        page.Gap();
        page.Line("Next:");
        page.Verbatim($"  nameband make {job}");
        page.Verbatim($"  nameband print {job.TrimEnd('/')}/{late.Folder}");
    }

    /// <summary>Act by act, the machine first: minutes of both, and the difference.</summary>
    private void Compare(ToldComparison compared)
    {
        string other = compared.OtherMark.Length > 0 ? compared.OtherMark : "plain";
        string beside = compared.OtherMark.Length > 0 ? $"{other}, as it is set" : "the plain way";
        page.Line($"The work of {compared.Mark} beside that of {beside}.");
        string[][] rows =
        [
            ["minutes", compared.Mark, other, "difference"],
            .. compared.Acts.Select(a => new[]
            {
                (a.By == "machine" ? "machine: " : "") + a.Act, Minutes(a.Minutes), Minutes(a.OtherMinutes), Signed(a.DifferenceMinutes),
            }),
            ["in all", Minutes(compared.Minutes), Minutes(compared.OtherMinutes), Signed(compared.DifferenceMinutes)],
        ];
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(i => rows.Max(r => Wrapping.Cells(r[i])))];
        page.Gap();
        foreach (string[] row in rows)
        {
            string figures = string.Concat(row[1..].Select((c, i) => c.PadLeft(Between + widths[i + 1])));
            page.Verbatim(Wrapping.PadTo(row[0], widths[0]) + figures);
        }
    }

    private void Rest()
    {
        if (answer.Problems.Count > 0)
        {
            page.Gap();
            page.Line("To be known:", tone: Tone.Heading);
            page.Notes(answer.Problems);
        }

        new AssumedLines(page, answer.Assumed).Print();
        if (answer.Reading is { } reading)
        {
            page.Gap();
            page.Note(reading.Text);
            page.Hanging("→ ", "If people will read them, write this into job.json: " + reading.Line, 2);
        }
    }

    private static string Name(ToldPlan plan) => plan.Wish == "asSet" && plan.Lines.Count > 0 ? "as set, mended" : Wish(plan.Wish);

    private static string Wish(string word) => word switch
    {
        "asSet" => "as it is set",
        "fewestHours" => "fewest hours",
        "soonest" => "soonest",
        "biggestLetters" => "largest letters",
        "typedLetters" => "typed letters",
        _ => "the plain way",
    };

    private static string Height(ToldPlan plan) => plan.LetterHeightMm.ToString("0.0", CultureInfo.InvariantCulture) + " mm";

    private static string Minutes(double minutes) => minutes.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Signed(double minutes) => minutes.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);
}

using System.Globalization;
using NameBand.Cli.Commands;
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
        page.Line(Said.Plain(answer.Title), tone: Tone.Heading);
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
            Said takes = offer.Fits == late.Names.Count ? "" : (Said)$", for {offer.Fits} of them";
            Said more = offer.More > 0 ? (Said)$" Has room for {Words.Count(offer.More, "more name", "more names")} at hardly more work." : "";
            page.Gap();
            page.Hanging("", $"{Wording.Capital(offer.Place)}{takes}: {Words.Duration(offer.Minutes)}.{more}", 2);
            page.Hanging("→ ", offer.Looks, 4);
            page.Hanging("→ ", offer.Steps, 4);
        }

        if (late.Offers.FirstOrDefault(o => o.Take != "room") is { } first)
        {
            page.Gap();
            page.Line("To take one: the names go into a job of their own, with sheets, hours and log; nothing that is sewn moves.");
            page.Command(2, PlansCommand.Verb, job, "--late", first.Take);
        }
    }

    private void Table()
    {
        Said[] titles = ["Mark", "Plan", "Yours", .. HasClock ? ["By clock"] : Array.Empty<Said>(), "Letters", "Rounds", "To change"];
        string[] head = [.. titles.Select(t => t.ToString())];
        string[][] rows =
        [
            head,
            .. answer.Plans.Select(p => Cells(p, p.Mark, Name(p).ToString())),
            .. answer.Plain is { } plain ? [Cells(plain, "", Name(plain).ToString())] : Array.Empty<string[]>(),
        ];
        int[] widths = [.. head.Select((_, i) => Between + rows.Max(r => Wrapping.Cells(r[i])))];
        foreach (string[] row in rows)
        {
            string lead = string.Concat(row[..^1].Select((c, i) => Wrapping.PadTo(c, widths[i])));
            page.Hanging(Said.Plain(lead), Said.Plain(row[^1]));
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
                Said rest = names.Count > ShortList.Most ? (Said)$" and {names.Count - ShortList.Most} more" : "";
                Said named = i == 0 && names.Count > ShortList.Most ? "all others" : Said.Plain(string.Join(", ", names.Take(ShortList.Most))) + rest;
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
        mark, name, Words.Duration(plan.HersMinutes).ToString(),
        .. Clock(Words.Duration(plan.ElapsedMinutes).ToString()), Height(plan).ToString(),
        plan.Rounds.ToString(CultureInfo.InvariantCulture),
        (plan.Wish == "plain" ? "a measure only" : plan.Keys.Count == 0 ? "nothing" : Said.Plain(string.Join(", ", plan.Keys)))
            .ToString(),
    ];

    private void Steps()
    {
        page.Gap();
        Said clock = HasClock ? "" : " By the clock they take as long.";
        page.Line($"Yours: work by hand and at a machine that you sit by.{clock}{(answer.Plain is null ? (Said)"" : " The plain way is a measure: typed, one line, no hoop.")}");
        foreach (var plan in answer.Plans.Where(p => p.Lines.Count > 0 || p.AlsoWishes.Count > 0))
        {
            page.Gap();
            Said also = plan.AlsoWishes.Count > 0 ? (Said)$" Also: {Said.Join(", ", plan.AlsoWishes.Select(Wish))}." : "";
            page.Hanging($"{plan.Mark}  ", Wording.AsSentence(plan.Why) + also);
            foreach (var line in plan.Lines)
            {
                page.Hanging("→ ", line, 6);
            }

            foreach (var ask in plan.Asks)
            {
                page.Hanging("→ ", ask, 6);
            }

            if (plan.InTheWay.Count > 0)
            {
                page.Hanging("", $"In the way stands what you wrote: {Said.Join("; ", plan.InTheWay)}.", 6);
            }
        }

        string one = (answer.Plans.FirstOrDefault(p => p.Lines.Count > 0) ?? answer.Plans[^1]).Mark;
        page.Gap();
        page.Line("To take one, and to see where its hours come from:");
        page.Command(2, PlansCommand.Verb, job, "--take", one);
        page.Command(2, PlansCommand.Verb, job, "--why", one);
    }

    private void Took(ToldPlan plan)
    {
        page.Line(
            plan.Lines.Count == 0
                ? (Said)$"{plan.Mark} is the plan as job.json has it; nothing had to be written."
                : $"{plan.Mark} is written into job.json: {Words.Duration(plan.HersMinutes)} of yours, letters {Height(plan)} high.",
            tone: Tone.GoodHeading);
        foreach (var line in plan.Lines.Concat(plan.Asks))
        {
            page.Hanging("→ ", line, 2);
        }

        page.Gap();
        page.Line("Next:");
        page.Command(2, MakeCommand.Verb, job);
    }

    private void Took(ToldTakenLate late)
    {
        page.Line($"{Wording.Capital(late.Place)}: {Words.Count(late.Names.Count, "name")} in the job {late.Folder}.",
            tone: Tone.GoodHeading);
        Said more = late.Names.Count > 6 ? (Said)$" and {late.Names.Count - 6} more" : "";
        page.Hanging("→ ", $"{string.Join("; ", late.Names.Take(6).Select(n => PlainText.Short(n, 80)))}{more}.", 2);
        page.Hanging("→ ", "They are out of the plan of the garment, as corrections.csv says. Nothing that is sewn has moved.", 2);
        page.Gap();
        page.Line("Next:");
        page.Command(2, MakeCommand.Verb, job);
        page.Command(2, PrintCommand.Verb, $"{job.TrimEnd('/')}/{late.Folder}");
    }

    /// <summary>Act by act, the machine first: minutes of both, and the difference.</summary>
    private void Compare(ToldComparison compared)
    {
        Said other = compared.OtherMark.Length > 0 ? Said.Plain(compared.OtherMark) : "plain";
        Said beside = compared.OtherMark.Length > 0 ? (Said)$"{other}, as it is set" : "the plain way";
        page.Line($"The work of {compared.Mark} beside that of {beside}.");
        Said[][] told =
        [
            ["minutes", Said.Plain(compared.Mark), other, "difference"],
            .. compared.Acts.Select(a => new[]
            {
                a.By == "machine" ? (Said)$"machine: {a.Act}" : a.Act, Minutes(a.Minutes), Minutes(a.OtherMinutes),
                Signed(a.DifferenceMinutes),
            }),
            ["in all", Minutes(compared.Minutes), Minutes(compared.OtherMinutes), Signed(compared.DifferenceMinutes)],
        ];
        string[][] rows = [.. told.Select(r => r.Select(c => c.ToString()).ToArray())];
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
            page.Hanging("→ ", $"If people will read them, write this into job.json: {reading.Line}", 2);
        }
    }

    private static Said Name(ToldPlan plan) => plan.Wish == "asSet" && plan.Lines.Count > 0 ? "as set, mended" : Wish(plan.Wish);

    private static Said Wish(string word) => word switch
    {
        "asSet" => "as it is set",
        "fewestHours" => "fewest hours",
        "soonest" => "soonest",
        "biggestLetters" => "largest letters",
        "typedLetters" => "typed letters",
        _ => "the plain way",
    };

    private static Said Height(ToldPlan plan) => $"{plan.LetterHeightMm:0.0} mm";

    private static Said Minutes(double minutes) => $"{minutes:0.0}";

    private static Said Signed(double minutes) => $"{minutes:+0.0;-0.0;0.0}";
}

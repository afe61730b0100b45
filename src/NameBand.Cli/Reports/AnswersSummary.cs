using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>invite --answers</c> says: what was entered, who is missing, and what to do next. Never an address.</summary>
internal static class AnswersSummary
{
    public static void Print(Page page, AnswersAnswer answer)
    {
        page.Line($"{answer.Title}: the owners' answers", tone: Tone.Heading);
        page.Gap();
        List<(Said, Said, Tone)> facts =
        [
            ("Read", $"{Words.Count(answer.Lines, "line")} in {Words.Count(answer.Files, "file")}; something new of {Words.Count(answer.Entered.Count, "name")}", Tone.Plain),
            ("Answers", $"agreed: {answer.Agreed}, change wished: {answer.ChangeWished}, not clear: {answer.Unclear}, missing: {answer.Missing.Count}", Tone.Plain),
        ];
        Add("Entered no", "no", Tone.Attention);
        Add("Not clear", "unclear", Tone.Attention);
        if (answer.Missing.Count > 0)
        {
            facts.Add(("Missing", Named(answer.Missing), Tone.Plain));
        }

        page.Facts(facts);
        page.NeedsAndNotes(answer.Problems, "for you");
        if (answer.Corrections.Count > 0)
        {
            page.Gap();
            page.Line("Wishes are not fulfilled by themselves. These lines in corrections.csv would do it:");
            foreach (string line in answer.Corrections)
            {
                page.Verbatim(line);
            }
        }

        page.Gap();
        page.Line(answer.PlanTouched
            ? "Names left the plan, or wait. Next: make, then invite: reminders.csv then has who is missing."
            : answer.Missing.Count > 0 ? "Next: invite. Then reminders.csv has who is missing." : "Everybody has answered.");

        void Add(Said label, string state, Tone tone)
        {
            string[] names = [.. answer.Entered.Where(e => e.State == state).Select(e => e.Text)];
            if (names.Length > 0)
            {
                facts.Add((label, Named(names), tone));
            }
        }
    }

    private static Said Named(IReadOnlyList<string> names) =>
        Said.Plain(string.Join("; ", names.Take(ShortList.Most).Select(n => PlainText.Short(n, 80))))
        + (names.Count > ShortList.Most ? (Said)$" and {names.Count - ShortList.Most} more" : "");
}

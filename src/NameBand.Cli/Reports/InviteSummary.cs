using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>invite</c> says: how many letters there are, who is missing, and what to do next. Never an address.</summary>
internal static class InviteSummary
{
    public static void Print(Page page, InviteAnswer answer)
    {
        page.Line($"{answer.Title}: asking the owners of the names", tone: Tone.Heading);
        page.Gap();
        Said more = answer.Missing.Count > ShortList.Most ? (Said)$" and {answer.Missing.Count - ShortList.Most} more" : "";
        var missing = Said.Plain(string.Join("; ", answer.Missing.Take(ShortList.Most).Select(n => PlainText.Short(n, 80))));
        Said silence = answer.SilenceLeavesOut ? "left out" : "sewn as it stands";
        List<(Said, Said, Tone)> facts =
        [
            ("Letters", answer.WithoutAddress == 0
                ? (Said)$"{answer.Letters}" : $"{answer.Letters}, of them {answer.WithoutAddress} without an address", Tone.Plain),
            ("Answers", $"agreed: {answer.Agreed}, change wished: {answer.ChangeWished}, missing: {answer.Missing.Count}", Tone.Plain),
            ("Until", answer.AnswerBy is { } day ? (Said)$"{day}; a name without an answer is {silence}" : $"no day is set; a name without an answer is {silence}", Tone.Plain),
        ];
        if (answer.Missing.Count > 0)
        {
            facts.Insert(2, ("Missing", missing + more, Tone.Plain));
        }

        if (answer.Held > 0)
        {
            facts.Add(("Held", $"{Words.Count(answer.Held, "name")} without a letter: the command names says why", Tone.Attention));
        }

        page.Facts(facts);
        page.NeedsAndNotes(answer.Problems, "for you");

        Silent(page, answer);
        page.Gap();
        page.Line(
            $"The letters are in {answer.Folder}: letter.txt is the text, mail-merge.csv joins address, name, picture and place, reminders.csv has who is missing. "
            + $"Nothing is sent, and nothing of that folder is copied anywhere: send it yourself.");
        page.Line(
            $"Write the answers into approvals.csv in the job's folder: agreed, change wished or no under “state”, and yes or no under “web”."
            + $"{(answer.ApprovalsBegun ? (Said)" It was begun for you, with a line for each name." : "")}");
    }

    private static void Silent(Page page, InviteAnswer answer)
    {
        if (!answer.IsPast || answer.Missing.Count == 0)
        {
            return;
        }

        page.Gap();
        page.Line(
            answer.SilenceLeavesOut
                ? "The day is past. As the letters say, a name without an answer is left out; these lines in corrections.csv do it:"
                : "The day is past. As the letters say, a name without an answer is sewn as it stands; there is nothing to do.",
            tone: Tone.Attention);
        foreach (string line in answer.LeaveOutLines)
        {
            page.Verbatim(line);
        }
    }
}

using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>How the names stand with their owners: how many in each state, who is missing, which lines would fulfil wishes.</summary>
internal sealed class ApprovalsSummary(Page page, NamesAnswer answer)
{
    public void Print()
    {
        if (answer.Approvals is not { } names)
        {
            return;
        }

        page.Gap();
        page.Line($"Agreed by their owners: {In("agreed").Count()} of {Words.Count(names.Count, "name")}", tone: Tone.Heading);
        List<(Said, Said, Tone)> facts = [];
        Add("Waiting", "asked", n => Words.Tied(Said.Plain(n.Text)) + (n.Date.Length > 0 ? (Said)$" (asked {n.Date})" : ""));
        Add("Change wished", ToldApproval.ChangeWished, n => n.Wished.Length > 0 ? $"{n.Text}, as {n.Wished}" : Said.Plain(n.Text));
        Add("Not clear", "unclear", n => Said.Plain(n.Text));
        Add("Not asked", "", n => n.Outdated ? $"{n.Text} (agreed to was {n.Asked})" : Said.Plain(n.Text));
        page.Facts([.. facts.DefaultIfEmpty(("", "nobody is missing", Tone.Good))]);
        Lines("Wishes are not fulfilled by themselves. These lines in corrections.csv would do it; --settle writes them:",
            answer.WishedCorrections ?? []);
        var toAdd = answer.ApprovalLinesToAdd ?? [];
        Lines(
            "To write down who was asked and what they say (asked, agreed, change wished), put lines like these into approvals.csv:",
            toAdd.Count > 1 || names.Any(n => n.Asked is null) ? toAdd : []);

        IEnumerable<ToldApproval> In(string state) => names.Where(n => n.State == state);

        void Add(Said label, string state, Func<ToldApproval, Said> inWords)
        {
            var all = In(state).ToList();
            if (all.Count > 0)
            {
                Said more = all.Count > ShortList.Most ? (Said)$" and {all.Count - ShortList.Most} more" : "";
                var named = Said.Join("; ", all.Take(ShortList.Most).Select(
                    n => inWords(n).Changed((text, _) => PlainText.Short(text, 160))));
                facts.Add((label, $"{all.Count}: {named}{more}", Tone.Plain));
            }
        }
    }

    private void Lines(Said heading, IReadOnlyCollection<string> lines)
    {
        if (lines.Count > 0)
        {
            page.Gap();
            page.Line(heading);
            foreach (string line in lines)
            {
                page.Verbatim(line);
            }
        }
    }
}

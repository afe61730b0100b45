using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Cli.Reports;

/// <summary>How the names stand with their owners: how many in each state, who is missing, which lines would fulfil wishes.</summary>
internal sealed class ApprovalsSummary(Page page, ApprovalReport? report)
{
    private const int MostNamed = 12;

    public void Print()
    {
        if (report is null)
        {
            return;
        }

        page.Gap();
        page.Line($"Agreed by their owners: {report.In(ApprovalState.Agreed).Count()} of {Words.Count(report.Names.Length, "name")}", tone: Tone.Heading);
        List<(string, string, Tone)> facts = [];
        Add("Waiting", report.In(ApprovalState.Asked), n => Words.Tied(n.Row.Text) + (n.Line!.Date.Length > 0 ? $" (asked {n.Line.Date})" : ""));
        Add("Change wished", report.In(ApprovalState.ChangeWished), n => n.Line!.Text.Length > 0 ? $"{n.Row.Text}, as {n.Line.Text}" : n.Row.Text);
        Add("Not asked", report.In(ApprovalState.NotAsked), n => n.IsOutdated ? $"{n.Row.Text} (agreed to was {n.Line!.Name})" : n.Row.Text);
        page.Facts([.. facts.DefaultIfEmpty(("", "nobody is missing", Tone.Good))]);
        Lines($"Wishes are not fulfilled by themselves. These lines in corrections.csv would do it:", report.Corrections);
        Lines($"To write down who was asked and what they say (asked, agreed, change wished), put lines like these into {ApprovalsFile.FileName}:", report.LinesToAdd.Length > 1 || report.Names.Any(n => n.Line is null) ? report.LinesToAdd : []);

        void Add(string label, IEnumerable<NameApproval> names, Func<NameApproval, string> inWords)
        {
            var all = names.ToList();
            if (all.Count > 0)
            {
                string more = all.Count > MostNamed ? FormattableString.Invariant($" and {all.Count - MostNamed} more") : "";
                facts.Add((label, $"{all.Count}: {string.Join("; ", all.Take(MostNamed).Select(n => PlainText.Short(inWords(n), 160)))}{more}", Tone.Plain));
            }
        }
    }

    private void Lines(string heading, IReadOnlyCollection<string> lines)
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

using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>What <c>names</c> says: how many rows became what, which are held and how to settle them.</summary>
internal sealed class NamesSummary(Page page, NamesReport report, string jobAsGiven)
{
    public void Print()
    {
        var rows = report.Names?.Rows ?? [];
        page.Line($"{Words.Count(rows.Length, "row")} in the {(rows.Select(r => r.Row.List).Distinct().Count() == 1 ? "list" : "lists")}: {Fates(rows)}.", tone: Tone.Heading);
        PrintPerson();
        PrintRows("Repeats, sewn once", rows.Where(r => r.Outcome == RowOutcome.Merged));
        PrintRows("Left out", rows.Where(r => r.Outcome == RowOutcome.LeftOut));
        PrintChanged(rows.Where(r => r.Outcome == RowOutcome.Placed));
        new ApprovalsSummary(page, report.Approvals).Print();
        PrintNotes();
    }

    private static string Fates(IReadOnlyCollection<ListedRow> rows)
    {
        var parts = new List<string> { $"{Words.Count(rows.Count(r => r.Outcome == RowOutcome.Placed), "name")} to sew" };
        Add(RowOutcome.Held, "held for you to decide");
        Add(RowOutcome.Merged, "merged");
        Add(RowOutcome.LeftOut, "left out");
        return Wording.List(parts);

        void Add(RowOutcome outcome, string words)
        {
            int count = rows.Count(r => r.Outcome == outcome);
            if (count > 0)
            {
                parts.Add(FormattableString.Invariant($"{count} {words}"));
            }
        }
    }

    private void PrintPerson()
    {
        var needs = Needs.Of(report.Names, report.Problems);
        page.Gap();
        if (needs.Count == 0)
        {
            page.Line("Nothing needs a decision.", tone: Tone.Good);
            return;
        }

        page.Line("Held for you to decide", tone: Tone.AttentionHeading);
        page.Problems(needs.All, Tone.Attention);
        string file = $"{jobAsGiven.TrimEnd('/', '\\')}/{Corrections.FileName}";
        var waiting = report.Names?.Rows.Where(r => r.WaitsForDecision).ToList() ?? [];
        if (report.Written is { } written)
        {
            page.Gap();
            page.Line(written == 0
                ? waiting.Count == 0
                    ? "No row waits for a decision, so nothing was written."
                    : $"All questions stand in {file} already. Fill in its column “decision”: keep, change or leave out."
                : $"{Words.Count(written, "question")} written into {file}. "
                    + "Fill in the column “decision” of each: keep, change (with the name under “text”) or leave out. "
                    + "Where lines have the same mark under “alike”, “keep all” or “leave out all” in one of them is enough.");
        }
        else if (!report.LinesToAdd.IsEmpty)
        {
            page.Gap();
            page.Line($"To settle them, add lines like these to {file}, and choose keep, change or leave out in each:");
            foreach (string line in report.LinesToAdd)
            {
                page.Verbatim(line);
            }
        }

        if (report.Written is null && waiting.Exists(r => r.DecidedIn == 0 || r.IsDecidedForElse))
        {
            page.Gap();
            page.Line("This writes the questions into it for you to fill in:");
            page.Verbatim($"nameband names {jobAsGiven} --settle");
        }
    }

    private void PrintRows(string heading, IEnumerable<ListedRow> rows)
    {
        bool isFirst = true;
        foreach (var row in rows)
        {
            if (isFirst)
            {
                page.Gap();
                page.Line(heading, tone: Tone.Heading);
                isFirst = false;
            }

            string name = row.Text.Length > 0 ? $"“{PlainText.Short(row.Text, 80)}”" : "no name";
            page.Line($"{row.Row}, {name}{(row.Reason.Length > 0 ? ": " + row.Reason : "")}", 2);
        }
    }

    private void PrintChanged(IEnumerable<ListedRow> rows) =>
        PrintRows("Changed a little", rows.Where(r => !r.Notes.IsEmpty).Select(r => r with { Reason = string.Join("; ", r.Notes) }));

    private void PrintNotes()
    {
        var notes = report.Problems.Where(p => p.Severity == Severity.Note).ToList();
        if (notes.Count > 0)
        {
            page.Gap();
            page.Line("Good to know", tone: Tone.Heading);
            page.Notes(notes);
        }
    }
}

using NameBand.Cli.Commands;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>names</c> says: how many rows became what, which are held and how to settle them.</summary>
internal sealed class NamesSummary(Page page, NamesAnswer answer, string jobAsGiven)
{
    public void Print()
    {
        var lists = Said.Plural(answer.Lists ?? 0, "list", "lists");
        page.Line($"{Words.Count(answer.Rows?.All ?? 0, "row")} in the {lists}: {Fates()}.", tone: Tone.Heading);
        PrintPerson();
        PrintRows("Repeats, sewn once", answer.Repeats);
        PrintRows("Left out", answer.LeftOut);
        PrintRows("Changed a little", answer.Changed);
        new ApprovalsSummary(page, answer).Print();
        PrintNotes();
    }

    private Said Fates()
    {
        var parts = new List<Said> { $"{Words.Count(answer.Rows?.Placed ?? 0, "name")} to sew" };
        Add(answer.Rows?.Held, "held for you to decide");
        Add(answer.Rows?.Merged, "merged");
        Add(answer.Rows?.LeftOut, "left out");
        return Wording.List(parts);

        void Add(int? count, Said words)
        {
            if (count > 0)
            {
                parts.Add($"{count} {words}");
            }
        }
    }

    private void PrintPerson()
    {
        page.Gap();
        if (answer.WishesWritten > 0)
        {
            page.Line($"{Words.Count(answer.WishesWritten, "wish", "wishes")} of approvals.csv written into {answer.SettledIn}: these names are sewn as their owners wish.");
        }

        if (answer.Needs.Count == 0)
        {
            page.Line("Nothing needs a decision.", tone: Tone.Good);
            return;
        }

        page.Line("Held for you to decide", tone: Tone.AttentionHeading);
        page.Problems(answer.Problems.Take(answer.Needs.Count), Tone.Attention);
        string file = $"{jobAsGiven.TrimEnd('/', '\\')}/{answer.SettledIn}";
        if (answer.Written is { } written)
        {
            page.Gap();
            page.Line(written == 0
                ? answer.Waiting == 0
                    ? "No row waits for a decision, so nothing was written."
                    : (Said)$"All questions stand in {file} already. Fill in its column “decision”: keep, change or leave out."
                : (Said)($"{Words.Count(written, "question")} written into {file}. "
                    + $"Fill in the column “decision” of each: keep, change (with the name under “text”) or leave out. "
                    + $"Where lines have the same mark under “alike”, “keep all” or “leave out all” in one of them is enough."));
        }
        else if (answer.LinesToAdd.Count > 0)
        {
            page.Gap();
            page.Line($"To settle them, add lines like these to {file}, and choose keep, change or leave out in each:");
            foreach (string line in answer.LinesToAdd)
            {
                page.Verbatim(line);
            }
        }

        if (answer.Written is null && answer.Unasked > 0)
        {
            page.Gap();
            page.Line("This writes the questions into it for you to fill in:");
            page.Command(0, NamesCommand.Verb, jobAsGiven, "--settle");
        }
    }

    private void PrintRows(Said heading, IReadOnlyList<ToldRow>? rows)
    {
        if (rows is not { Count: > 0 })
        {
            return;
        }

        page.Gap();
        page.Line(heading, tone: Tone.Heading);
        foreach (var row in rows)
        {
            Said name = row.Text.Length > 0 ? (Said)$"“{PlainText.Short(row.Text, 80)}”" : "no name";
            page.Line($"{new RowRef(row.List, row.Line).InWords}, {name}{(!row.Reason.IsEmpty ? (Said)$": {row.Reason}" : "")}", 2);
        }
    }

    private void PrintNotes()
    {
        var notes = answer.Problems.Where(p => p.Severity == Severity.Note).ToList();
        if (notes.Count > 0)
        {
            page.Gap();
            page.Line("Good to know", tone: Tone.Heading);
            page.Notes(notes);
        }
    }
}

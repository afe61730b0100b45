using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>check</c> says: each part in a line, then what is wrong and what mends it.</summary>
internal static class CheckSummary
{
    public static void Print(Page page, CheckAnswer answer)
    {
        if (answer.Title.Length > 0)
        {
            page.Line(Said.Plain(answer.Title), tone: Tone.Heading);
            page.Gap();
        }

        page.Facts([.. answer.Parts.Select(p =>
            (p.Name, p.Found, p.Whole switch { true => Tone.Good, false => Tone.Bad, null => Tone.Plain }))]);
        page.Gap();
        var wrong = answer.Problems.Where(p => p.Severity != Severity.Note).ToList();
        if (wrong.Count == 0)
        {
            page.Line("All that is there is whole and agrees.", tone: Tone.Good);
        }
        else
        {
            page.Line("To be mended", tone: Tone.AttentionHeading);
            page.Problems(wrong, Tone.Attention);
        }

        if (answer.Problems.Count > wrong.Count)
        {
            page.Gap();
            page.Line("Good to know", tone: Tone.Heading);
            page.Notes(answer.Problems.Where(p => p.Severity == Severity.Note));
        }
    }
}

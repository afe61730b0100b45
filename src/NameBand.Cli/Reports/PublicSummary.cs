using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>public</c> says: who is on the page, who is not, and where it lies.</summary>
internal static class PublicSummary
{
    public static void Print(Page page, PublicAnswer answer)
    {
        page.Line($"{answer.Title}: a page for supporters to find their names", tone: Tone.Heading);
        page.Gap();
        var size = Words.Tied($"{answer.PageBytes / 1e6:0.00} MB");
        List<(Said, Said, Tone)> facts =
        [
            ("Shown", $"{Words.Count(answer.Shown, "name")} whose owners said yes to the web", Tone.Plain),
            ("Said no", $"{Words.Count(answer.Refusing, "name")}, sewn and not shown", Tone.Plain),
            ("Not asked", $"{Words.Count(answer.Unanswered, "name")} without an answer, sewn and not shown", Tone.Plain),
            ("Size", size, Tone.Plain),
        ];
        if (answer.Photos > 0)
        {
            facts.Insert(3, ("Photos", $"{Words.Count(answer.Photos, "photo")} on which everybody said yes", Tone.Plain));
        }

        page.Facts(facts);
        page.NeedsAndNotes(answer.Problems, "for you to ask");

        page.Gap();
        page.Line(
            $"It is in {answer.Folder}. Open index.html there, or put the folder on a web space. "
            + $"When somebody says no later, make it again and replace what lies on the web.");
    }
}

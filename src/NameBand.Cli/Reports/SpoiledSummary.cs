using NameBand.Cli.Commands;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>sewn --spoiled</c> says: the ways to meet a name that went wrong, with their work.</summary>
internal static class SpoiledSummary
{
    public static void Print(Page page, SpoiledAnswer answer, string job)
    {
        page.Line($"{answer.Title}: {answer.Spoiled} went wrong", tone: Tone.Heading);
        page.Gap();
        page.Line($"{string.Join("; ", answer.Names.Select(n => PlainText.Short(n, 80)))}. The work is that of one name; nothing is "
            + $"logged yet.");
        foreach (var way in answer.Ways)
        {
            page.Gap();
            page.Hanging("", $"{way.What}: {Words.Duration(way.Minutes)}{(way.Sound ? (Said)"" : ", and the cloth does not bear it")}.", 2);
            page.Hanging("→ ", way.Why, 4);
            page.Hanging("→ ", way.Steps, 4);
            page.Command(4, SewnCommand.Verb, job, way.Say);
        }

        page.Gap();
        page.Line("A name that is misspelt: mend the list or corrections.csv first. What is sewn again then gets the new words.");
    }
}

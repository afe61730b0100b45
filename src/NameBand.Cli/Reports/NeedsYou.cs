using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>Why a command that only calculates ends with status 1: what must be decided before the job can be sewn as it is set.</summary>
internal static class NeedsYou
{
    public static void Print(Page page, CommandAnswer answer)
    {
        var needs = answer.Problems.Where(p => p.Severity == Severity.NeedsPerson).ToList();
        if (answer.Status != 1)
        {
            return;
        }

        page.Gap();
        page.Line("As the job is set now, this needs a decision before you sew", tone: Tone.AttentionHeading);
        page.Problems(needs.Take(ShortList.MostOfSeveral), Tone.Attention);
        if (!answer.IsSoundButForTheDay)
        {
            bool isAllSaid = needs.Count is > 0 and <= ShortList.MostOfSeveral;
            page.Line(isAllSaid ? "The command make says more." : "The command make names all of it.", 2);
        }
    }
}

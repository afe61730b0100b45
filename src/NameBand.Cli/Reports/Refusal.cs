using NameBand.Cli.Terminal;
using NameBand.Common;

namespace NameBand.Cli.Reports;

/// <summary>What is said when the input cannot be used.</summary>
internal static class Refusal
{
    public static void Print(Page page, IReadOnlyList<Problem> problems, Said outcome)
    {
        var stopping = problems.Where(p => p.Severity == Severity.CannotUse).ToList();
        var others = problems.Where(p => p.Severity != Severity.CannotUse).ToList();
        page.Line(
            stopping.Count == 1
                ? (Said)$"{outcome}. Fix this first:"
                : $"{outcome}. Fix these {Words.Count(stopping.Count, "thing")} first:",
            tone: Tone.BadHeading);
        page.Problems(stopping, Tone.Bad);
        if (others.Count > 0)
        {
            page.Gap();
            page.Line("Seen on the way:");
            page.Problems(others, Tone.Attention);
        }
    }
}

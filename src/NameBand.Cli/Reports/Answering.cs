using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>Gives an answer to whoever asked: the one record as JSON, as a refusal, or in prose.</summary>
internal static class Answering
{
    /// <param name="outcome">What a refusal begins with.</param>
    /// <param name="prose">Prints an answer that is no refusal.</param>
    public static int Give<T>(CliHost host, bool asJson, CommandAnswer answer, Said outcome, Action<Page, T> prose)
        where T : CommandAnswer
    {
        if (asJson)
        {
            host.Output.Writer.WriteLine(AnswerJson.Of(answer));
        }
        else if (answer is T given && IsGiven(given))
        {
            prose(new Page(host.Output), given);
        }
        else
        {
            Refusal.Print(new Page(host.Errors), answer.Problems, outcome);
        }

        return answer.Status;
    }

    /// <summary>How the sewing stands is shown as long as it can be told, whatever else is wrong.</summary>
    private static bool IsGiven(CommandAnswer answer) =>
        answer is SewnAnswer sewn ? sewn.Hoopings.Count > 0 || sewn.Names is { Count: > 0 } : !answer.IsRefused;
}

using NameBand.Cli.Commands;
using NameBand.Cli.Terminal;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>Answers a command that makes an out folder: as JSON, as a refusal, or as a summary.</summary>
internal static class MakeAnswer
{
    /// <param name="after">Printed under the summary; empty for nothing.</param>
    public static int Give(CliHost host, MakeCommand.Settings settings, MakeReport report, string after = "")
    {
        if (settings.Json)
        {
            ReportJson.Write(host.Output.Writer, report);
        }
        else if (report.Status == ExitStatus.CannotUse)
        {
            Refusal.Print(new Page(host.Errors), report.Problems);
        }
        else
        {
            var page = new Page(host.Output);
            new MakeSummary(page, report, settings.Job).Print();
            if (after.Length > 0)
            {
                page.Gap();
                page.Line(after);
            }
        }

        return (int)report.Status;
    }
}

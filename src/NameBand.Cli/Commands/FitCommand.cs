using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class FitCommand(CliHost host) : Command<JobSettings>
{
    public const string Verb = "fit";

    public override int Execute(CommandContext context, JobSettings settings, CancellationToken cancellationToken)
    {
        FitReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Fit(settings.Job, progress, cancellationToken);
        }

        if (settings.Json)
        {
            FitJson.Write(host.Output.Writer, report);
        }
        else if (report.Status == ExitStatus.CannotUse)
        {
            Refusal.Print(new Page(host.Errors), report.Problems, "Nothing can be fitted");
        }
        else
        {
            FitSummary.Print(new Page(host.Output), report);
        }

        return (int)report.Status;
    }
}

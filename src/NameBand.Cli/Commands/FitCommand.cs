using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using NameBand.Reports.Answers;
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

        return Answering.Give<FitAnswer>(host, settings.Json, report.Answer, "Nothing can be fitted", FitSummary.Print);
    }
}

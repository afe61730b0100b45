using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class NamesCommand(CliHost host) : Command<JobSettings>
{
    public const string Verb = "names";

    public override int Execute(CommandContext context, JobSettings settings, CancellationToken cancellationToken)
    {
        var report = Bander.CheckNames(settings.Job);
        if (settings.Json)
        {
            ReportJson.Write(host.Output.Writer, report);
        }
        else if (report.Status == ExitStatus.CannotUse)
        {
            Refusal.Print(new Page(host.Errors), report.Problems, "The lists could not be checked");
        }
        else
        {
            new NamesSummary(new Page(host.Output), report, settings.Job).Print();
        }

        return (int)report.Status;
    }
}

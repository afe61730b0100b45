using System.ComponentModel;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class NamesCommand(CliHost host) : Command<NamesCommand.Settings>
{
    public const string Verb = "names";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var report = settings.Settle ? Bander.SettleNames(settings.Job) : Bander.CheckNames(settings.Job);
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

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--settle")]
        [Description("Write the questions into corrections.csv, one line each, for you to fill in the decision.")]
        public bool Settle { get; init; }
    }
}

using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class NamesCommand(CliHost host) : Command<NamesCommand.Settings>
{
    public const string Verb = "names";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var report = settings.Settle ? Bander.SettleNames(settings.Job) : Bander.CheckNames(settings.Job);
        return Answering.Give<NamesAnswer>(
            host, settings.Json, report.Answer, "The lists could not be checked",
            (page, answer) => new NamesSummary(page, answer, settings.Job).Print());
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--settle")]
        [Told("Write the questions into corrections.csv, one line each, for you to fill in the decision.")]
        public bool Settle { get; init; }
    }
}

using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class CheckCommand(CliHost host) : Command<CheckCommand.Settings>
{
    public const string Verb = "check";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken) =>
        Answering.Give<CheckAnswer>(
            host, settings.Json, Bander.Check(settings.Job, settings.Out).Answer, "The job could not be checked", CheckSummary.Print);

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--out <DIR>")]
        [Told("The folder that make wrote (default: JOB/out).")]
        public string? Out { get; init; }
    }
}

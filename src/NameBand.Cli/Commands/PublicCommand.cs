using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class PublicCommand(CliHost host) : Command<PublicCommand.Settings>
{
    public const string Verb = "public";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        PublicReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Public(settings.Job, settings.Out, progress, cancellationToken);
        }

        return Answering.Give<PublicAnswer>(host, settings.Json, report.Answer, "No page was made", PublicSummary.Print);
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--out <DIR>")]
        [Told("The folder to make (default: JOB/public).")]
        public string? Out { get; init; }
    }
}

using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class FacesCommand(CliHost host) : Command<FacesCommand.Settings>
{
    public const string Verb = "faces";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        return Answering.Give<FacesAnswer>(
            host, settings.Json, Bander.Faces().Answer, "No faces can be shown", FacesSummary.Print);
    }

    internal sealed class Settings : CommandSettings
    {
        [CommandOption("--json")]
        [Told("Write the faces as one JSON object to standard output, and nothing else there.")]
        public bool Json { get; init; }
    }
}

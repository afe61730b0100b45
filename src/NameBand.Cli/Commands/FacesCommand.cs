using System.ComponentModel;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class FacesCommand(CliHost host) : Command<FacesCommand.Settings>
{
    public const string Verb = "faces";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var faces = Bander.Faces();
        bool isUsable = faces.IsUsable && faces.Value!.Faces.Length > 0;
        if (settings.Json)
        {
            ReportJson.Write(host.Output.Writer, faces);
        }
        else if (!isUsable)
        {
            Refusal.Print(new Page(host.Errors), faces.Problems, "No faces can be shown");
        }
        else
        {
            FacesSummary.Print(new Page(host.Output), faces);
        }

        return (int)(isUsable ? ExitStatus.AllPlaced : ExitStatus.CannotUse);
    }

    internal sealed class Settings : CommandSettings
    {
        [CommandOption("--json")]
        [Description("Write the faces as one JSON object to standard output, and nothing else there.")]
        public bool Json { get; init; }
    }
}

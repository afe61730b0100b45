using System.ComponentModel;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class MakeCommand(CliHost host) : Command<MakeCommand.Settings>
{
    public const string Verb = "make";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        MakeReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Make(settings.Job, settings.Out, progress, cancellationToken);
        }

        return MakeAnswer.Give(host, settings, report);
    }

    internal class Settings : JobSettings
    {
        [CommandOption("--out <DIR>")]
        [Description("The folder to make; the job's own folder “out” where it is not given.")]
        public string? Out { get; init; }
    }
}

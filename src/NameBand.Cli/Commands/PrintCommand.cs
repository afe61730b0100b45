using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class PrintCommand(CliHost host) : Command<MakeCommand.Settings>
{
    public const string Verb = "print";

    public override int Execute(CommandContext context, MakeCommand.Settings settings, CancellationToken cancellationToken)
    {
        MakeReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Print(settings.Job, settings.Out, progress, cancellationToken);
        }

        string sheets = Path.Combine(settings.Out ?? Path.Combine(settings.Job, "out"), "sheets");
        return MakeAnswer.Give(
            host, settings, report, $"The sheets to print are in {sheets}. Print them at 100 % and measure the squares on the first page.");
    }
}

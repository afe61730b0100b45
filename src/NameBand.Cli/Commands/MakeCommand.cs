using System.ComponentModel;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
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

        if (settings.Json)
        {
            ReportJson.Write(host.Output.Writer, report);
        }
        else if (report.Status == ExitStatus.CannotUse)
        {
            Refusal.Print(new Page(host.Errors), report.Problems);
        }
        else
        {
            new MakeSummary(new Page(host.Output), report, settings.Job).Print();
        }

        return (int)report.Status;
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--out <DIR>")]
        [Description("The folder to make; the job's own folder “out” where it is not given.")]
        public string? Out { get; init; }
    }
}

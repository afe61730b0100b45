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
            var page = new Page(host.Output);
            new MakeSummary(page, report, settings.Job).Print();
            page.Gap();
            page.Line($"The sheets to print are in {Path.Combine(settings.Out ?? Path.Combine(settings.Job, "out"), "sheets")}. Print them at 100 % and measure the squares on the first page.");
        }

        return (int)report.Status;
    }
}

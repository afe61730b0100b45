using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports;
using NameBand.Reports.Answers;
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
            report = Bander.Make(settings.Job, settings.Out, progress, cancellationToken, settings.Afresh);
        }

        return Give(host, settings, report);
    }

    /// <param name="after">Printed under the prose; empty for nothing.</param>
    internal static int Give(CliHost host, Settings settings, MakeReport report, Said? after = null) =>
        Answering.Give<MakeAnswer>(host, settings.Json, report.Answer, "Nothing was made", (page, answer) =>
        {
            new MakeSummary(page, answer, settings.Job).Print();
            if (after is { IsEmpty: false })
            {
                page.Gap();
                page.Line(after);
            }
        });

    internal class Settings : JobSettings
    {
        [CommandOption("--out <DIR>")]
        [Told("The folder to make (default: JOB/out).")]
        public string? Out { get; init; }

        [CommandOption("--afresh")]
        [Told("Choose again what the job leaves free, such as strips side by side, and forget what the earlier plan had.")]
        public bool Afresh { get; init; }
    }
}

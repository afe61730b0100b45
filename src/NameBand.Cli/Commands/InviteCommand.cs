using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class InviteCommand(CliHost host) : Command<JobSettings>
{
    public const string Verb = "invite";

    public override int Execute(CommandContext context, JobSettings settings, CancellationToken cancellationToken)
    {
        InviteReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Invite(settings.Job, DateOnly.FromDateTime(DateTime.Now), progress, cancellationToken);
        }

        return Answering.Give<InviteAnswer>(host, settings.Json, report.Answer, "No letter was written", InviteSummary.Print);
    }
}

using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class InviteCommand(CliHost host) : Command<InviteCommand.Settings>
{
    public const string Verb = "invite";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Answers)
        {
            return Answering.Give<AnswersAnswer>(
                host, settings.Json, Bander.EnterAnswers(settings.Job).Answer, "No answer was entered", AnswersSummary.Print);
        }

        InviteReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Invite(settings.Job, DateOnly.FromDateTime(DateTime.Now), progress, cancellationToken);
        }

        return Answering.Give<InviteAnswer>(host, settings.Json, report.Answer, "No letter was written", InviteSummary.Print);
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--answers")]
        [Told(
            "Enter what came back: every answers….csv in the folder “private” goes into approvals.csv. You are asked about what is "
            + "given twice, changed or not clear.")]
        public bool Answers { get; init; }
    }
}

using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class HoursCommand(CliHost host) : Command<HoursCommand.Settings>
{
    public const string Verb = "hours";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        double? evening = null;
        if (settings.Evening is { } text)
        {
            if (!Duration.TryParseMinutes(text, out double minutes, out Said why))
            {
                return Usage.Refuse(host, $"--evening: {why} Write for example --evening 2h.");
            }

            evening = minutes;
        }

        HoursReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Hours(settings.Job, evening, progress, cancellationToken, DateOnly.FromDateTime(DateTime.Now));
        }

        return Answering.Give<HoursAnswer>(
            host, settings.Json, report.Answer, "Nothing was made", (page, answer) => new HoursSummary(page, answer).Print());
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--evening <TIME>")]
        [Told("Divide the hoopings among evenings of this length, such as 2h.")]
        public string? Evening { get; init; }
    }
}

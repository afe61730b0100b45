using System.ComponentModel;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports;
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
            if (!Duration.TryParseMinutes(text, out double minutes, out string why))
            {
                return Usage.Refuse(host, $"--evening: {why} Write for example --evening 2h.");
            }

            evening = minutes;
        }

        HoursReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Reckon(settings.Job, evening, progress, cancellationToken);
        }

        if (settings.Json)
        {
            HoursJson.Write(host.Output.Writer, report);
        }
        else if (report.Status == ExitStatus.CannotUse)
        {
            Refusal.Print(new Page(host.Errors), report.Problems);
        }
        else
        {
            new HoursSummary(new Page(host.Output), report).Print();
        }

        return (int)report.Status;
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--evening <TIME>")]
        [Description("Deal the hoopings out to evenings of this length, such as 2h.")]
        public string? Evening { get; init; }
    }
}

using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;
using Spectre.Console;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class MeasureCommand(CliHost host) : Command<MeasureCommand.Settings>
{
    public const string Verb = "measure";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var report = Bander.Measure(settings.Job, settings.SizeGiven, settings.Lines);
        return Answering.Give<MeasureAnswer>(
            host, settings.Json, report.Answer, "Nothing was made",
            (page, answer) => new MeasureSummary(page, answer, settings.Job).Print());
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--size <HEIGHT>")]
        [Told("Which of the machine's letter heights, such as \"8 mm\" (default: the first of letters.sizes).")]
        public string? Size { get; init; }

        [CommandOption("--lines <COUNT>")]
        [Told("The most lines to sew; letters that get none are estimated.")]
        public int? Lines { get; init; }

        public Length? SizeGiven => Size is not null && Length.TryParse(Size, out var size, out _) ? size : null;

        public override ValidationResult Validate()
        {
            if (Size is not null && !Length.TryParse(Size, out _, out Said why))
            {
                return Refused($"--size: {why}");
            }

            return Lines is < 6 or > 1000
                ? Refused("--lines takes a whole number from 6 to 1000.")
                : ValidationResult.Success();
        }
    }
}

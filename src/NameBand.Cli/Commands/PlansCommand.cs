using System.Diagnostics;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Reports;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class PlansCommand(CliHost host) : Command<PlansCommand.Settings>
{
    public const string Verb = "plans";

    /// <summary>What it was called at first.</summary>
    public const string OtherVerb = "fit";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (new[] { settings.Take, settings.Why, settings.Late }.Count(o => o is not null) > 1)
        {
            return Usage.Refuse(host, "--take, --why and --late do not go together: look first, then take one thing.");
        }

        PlansReport report;
        var clock = Stopwatch.StartNew();
        using (var progress = new ProgressLine(host.Errors))
        {
            report = settings.Take is { } mark ? Bander.TakePlan(settings.Job, mark, progress, cancellationToken)
                : settings.Late is { } place ? Bander.TakeLate(settings.Job, place, progress, cancellationToken)
                : Bander.Plans(settings.Job, settings.Why, progress, cancellationToken);
        }

        double seconds = Math.Round(clock.Elapsed.TotalSeconds, 1);
        var answer = report.Answer is PlansAnswer found ? found with { Seconds = seconds } : report.Answer;
        return Answering.Give<PlansAnswer>(
            host, settings.Json, answer, settings is { Take: null, Late: null } ? "There is no plan" : "Nothing was taken",
            (page, told) => new PlansSummary(page, told, settings.Job).Print());
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--take <MARK>")]
        [Told("Write what the plan of this mark changes into job.json; the rest of the file stays as it is.")]
        public string? Take { get; init; }

        [CommandOption("--late <PLACE>")]
        [Told(
            "For names that came when the garment was finished: make a job of its own for them, as a label or partRound, "
            + "in a folder inside this one.")]
        public string? Late { get; init; }

        [CommandOption("--why <MARK>")]
        [Told("List the work of the plan of this mark beside that of the plan as it is set.")]
        public string? Why { get; init; }
    }
}

using System.ComponentModel;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class SwatchCommand(CliHost host) : Command<SwatchCommand.Settings>
{
    public const string Verb = "swatch";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Measured is null)
        {
            return settings.Set
                ? Usage.Refuse(host, "--set goes with a length: swatch JOB --measured 99.2 --set.")
                : Make(settings, cancellationToken);
        }

        // A reading from a ruler is in millimetres unless it says otherwise.
        if (!Length.TryParse(settings.Measured + " mm", out var measured, out _)
            && !Length.TryParse(settings.Measured, out measured, out string why))
        {
            return Usage.Refuse(host, $"--measured: {why}");
        }

        return measured.Mm > 0 ? Read(settings, measured) : Usage.Refuse(host, "--measured: the marks are farther apart than nothing.");
    }

    private int Make(Settings settings, CancellationToken cancel)
    {
        SwatchReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            report = Bander.Swatch(settings.Job, settings.Out, progress, cancel);
        }

        return Answering.Give<SwatchAnswer>(
            host, settings.Json, report.Answer, "Nothing was made",
            (page, answer) => SwatchSummary.Print(page, answer, settings.Job, settings.Out));
    }

    private int Read(Settings settings, Length measured)
    {
        var report = Bander.ReadSwatch(settings.Job, settings.Out, measured, settings.Set);
        return Answering.Give<ShorteningAnswer>(
            host, settings.Json, report.Answer, "Nothing was set",
            (page, answer) => SwatchSummary.Print(page, answer, settings.Job, settings.Out));
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--measured <LENGTH>")]
        [Description("What you measure between the swatch's crosses after sewing and pressing, such as 99.2.")]
        public string? Measured { get; init; }

        [CommandOption("--set")]
        [Description("With --measured: write the shortening into job.json; the rest of the file stays as it is.")]
        public bool Set { get; init; }

        [CommandOption("--out <DIR>")]
        [Description("The swatch's folder; the job's own folder “swatch” where it is not given.")]
        public string? Out { get; init; }
    }
}

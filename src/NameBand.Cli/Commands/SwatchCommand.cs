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
        if (settings.Columns is { } columns)
        {
            return settings.Measured is not null || settings.Under is not null
                ? Usage.Refuse(host, "--columns and --measured are two readings: say one, then the other.")
                : SwatchSizes.Parse(columns) is { } sizes ? ReadColumns(settings, sizes)
                : Usage.Refuse(host, "--columns: write width x length of each column, in mm: \"1.2x9.1 4.1x9.2 1.2x9.1 4.1x9.2\".");
        }

        if (settings.Measured is null)
        {
            return settings.Set || settings.Under is not null
                ? Usage.Refuse(
                    host, $"{(settings.Set ? "--set" : "--under")} goes with a length: swatch JOB --measured 99.2 {(settings.Set ? (Said)"--set" : "--under 62")}.")
                : Make(settings, cancellationToken);
        }

        // A reading from a ruler is in millimetres unless it says otherwise.
        if (!IsLength(settings.Measured, out var measured, out Said why))
        {
            return Usage.Refuse(host, $"--measured: {why}");
        }

        Length under = default;
        if (settings.Under is { } said && !IsLength(said, out under, out why))
        {
            return Usage.Refuse(host, $"--under: {why}");
        }

        return measured.Mm > 0 ? Read(settings, measured, settings.Under is null ? null : under)
            : Usage.Refuse(host, "--measured: the marks are farther apart than nothing.");
    }

    private static bool IsLength(string text, out Length length, out Said why) =>
        Length.TryParse(text + " mm", out length, out why) || Length.TryParse(text, out length, out why);

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

    private int Read(Settings settings, Length measured, Length? under)
    {
        var report = Bander.ReadSwatch(settings.Job, settings.Out, measured, settings.Set, under);
        return Answering.Give<ShorteningAnswer>(
            host, settings.Json, report.Answer, "Nothing was set",
            (page, answer) => SwatchSummary.Print(page, answer, settings.Job, settings.Out));
    }

    private int ReadColumns(Settings settings, IReadOnlyList<(Length Width, Length Length)> sizes)
    {
        var report = Bander.ReadSwatchColumns(settings.Job, settings.Out, sizes, settings.Set);
        return Answering.Give<PullAnswer>(
            host, settings.Json, report.Answer, "Nothing was set",
            (page, answer) => SwatchSummary.Print(page, answer, settings.Job, settings.Out));
    }

    internal sealed class Settings : JobSettings
    {
        [CommandOption("--measured <LENGTH>")]
        [Told("What you measure between the swatch's crosses after sewing and pressing, such as 99.2.")]
        public string? Measured { get; init; }

        [CommandOption("--under <LENGTH>")]
        [Told("With --measured, where no hoop holds the cloth: how much of it lies under stitches, such as 62.")]
        public string? Under { get; init; }

        [CommandOption("--columns <SIZES>")]
        [Told("Width and length of the swatch's columns after pressing, such as \"1.2x9.1 4.1x9.2 1.2x9.1 4.1x9.2\".")]
        public string? Columns { get; init; }

        [CommandOption("--set")]
        [Told("With --measured or --columns: write what comes of it into job.json; the rest of the file stays as it is.")]
        public bool Set { get; init; }

        [CommandOption("--out <DIR>")]
        [Told("The swatch's folder (default: JOB/swatch).")]
        public string? Out { get; init; }
    }
}

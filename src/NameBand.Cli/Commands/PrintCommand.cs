using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class PrintCommand(CliHost host) : Command<PrintCommand.Settings>
{
    public const string Verb = "print";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        MakeReport report;
        using (var progress = new ProgressLine(host.Errors))
        {
            var wishes = new PrintWishes(settings.Thanks, settings.Playback);
            report = Bander.Print(settings.Job, settings.Out, wishes, progress, cancellationToken, settings.Afresh);
        }

        string folder = settings.Out ?? Path.Combine(settings.Job, "out");
        Said after = $"The sheets to print are in {Path.Combine(folder, "sheets")}. "
            + $"Print them at 100 % and measure the squares on the first page.";
        if (report.RehearsalSheets.Count > 0)
        {
            var sheets = Said.Join("; ", report.RehearsalSheets.Select(
                s => (Said)$"paper-rehearsal-{s.Key}.pdf ({s.Value} {Said.Plural(s.Value, "sheet", "sheets")})"));
            after += $" Paper rehearsal, to pin on the garment before you sew: {sheets}.";
        }

        if (settings.Thanks)
        {
            after += $" The pictures to send are in {Path.Combine(folder, "thanks")}; "
                + $"thanks.csv there says which is whose, and stays with you.";
        }

        return MakeCommand.Give(host, settings, report, after);
    }

    internal sealed class Settings : MakeCommand.Settings
    {
        [CommandOption("--thanks")]
        [Told("Also a picture of each name, to send to its owner.")]
        public bool Thanks { get; init; }

        [CommandOption("--playback")]
        [Told("Also a moving picture of each needle path.")]
        public bool Playback { get; init; }
    }
}

using System.ComponentModel;
using System.Globalization;
using NameBand.Cli.Reports;
using NameBand.Common;
using NameBand.Job;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class SewnCommand(CliHost host) : Command<SewnCommand.Settings>
{
    public const string Verb = "sewn";

    private const double MostMinutes = 24 * 60;

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Wrong(settings, out double? measuredMm) is { } wrong)
        {
            return Usage.Refuse(host, wrong);
        }

        var report = Bander.Sewn(settings.Job, settings.Out, Word(settings, measuredMm), () => Thread.Sleep(50));
        return Answering.Give<SewnAnswer>(
            host, settings.Json, report.Answer, settings.Hooping is null ? "It cannot be told" : "Nothing was written down",
            (page, answer) => new SewnSummary(page, answer).Print());
    }

    private static SewingWord? Word(Settings settings, double? measuredMm)
    {
        if (settings.Hooping is not { } hooping)
        {
            return null;
        }

        var deed = settings.Patch ? SewingDeed.Patch
            : settings.Again ? SewingDeed.Again
            : settings.Mistake ? SewingDeed.Mistake
            : measuredMm is not null ? SewingDeed.Measured : SewingDeed.Sewn;
        return new SewingWord(
            hooping, deed, settings.Minutes, settings.Hands, settings.Machine ?? "", measuredMm,
            DateTime.Now.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture), settings.Note ?? "")
        {
            Strip = settings.Strip,
            IsSure = settings.Sure,
            Mark = settings.Mark ?? "",
        };
    }

    private static string? Wrong(Settings settings, out double? measuredMm)
    {
        measuredMm = null;
        bool saysSewn = settings.Minutes is not null || settings.Hands is not null || settings.Machine is not null
            || settings.Mark is not null;
        bool saysElse = settings.Again || settings.Patch || settings.Mistake;
        if (settings.Hooping is null && (saysSewn || saysElse || settings.Measured is not null || settings.Note is not null))
        {
            return "Say which hooping: sewn JOB 12 …";
        }

        if (settings.Hooping is < 1)
        {
            return "Hoopings are numbered from 1.";
        }

        if ((saysSewn && (saysElse || settings.Measured is not null)) || (saysElse && settings.Measured is not null)
            || (settings.Mistake && (settings.Again || settings.Patch)))
        {
            return "Say one thing at a time: sewn (with --minutes), --again, --patch, --mistake or --measured.";
        }

        if (settings.Mark is not null && !SheetMarks.IsMark(SheetMarks.AsWritten(settings.Mark)))
        {
            return "--mark: a mark is four letters and figures, such as 7RT2, after the word mark on the sheet; "
                + "0, 1, I and O are never among them.";
        }

        if (settings.Measured is null && (settings.Strip is not null || settings.Sure))
        {
            return "--strip and --sure go with a length: sewn JOB 12 --measured \"131 mm\" --strip 2";
        }

        if (settings.Strip is < 1)
        {
            return "Strips are numbered from 1, the uppermost in the hoop.";
        }

        if (new[] { settings.Minutes, settings.Hands }.Any(m => m is { } minutes && !(minutes is > 0 and <= MostMinutes)))
        {
            return "Minutes are a number above 0 and up to 1440, with a point as the decimal mark.";
        }

        if (settings.Measured is { } text)
        {
            if (!Length.TryParse(text, out var length, out string why))
            {
                return $"--measured: {why}";
            }

            if (length.Mm <= 0)
            {
                return "--measured: a piece is longer than nothing.";
            }

            measuredMm = length.Mm;
        }

        return null;
    }

    internal sealed class Settings : JobSettings
    {
        [CommandArgument(1, "[HOOPING]")]
        [Description("The number of the hooping; without one the command shows how things stand.")]
        public int? Hooping { get; init; }

        [CommandOption("--minutes <MINUTES>")]
        [Description("What it took at the machine, from start to last stitch.")]
        public double? Minutes { get; init; }

        [CommandOption("--hands <MINUTES>")]
        [Description("What hooping, setting straight, tearing away and clipping took.")]
        public double? Hands { get; init; }

        [CommandOption("--machine <NAME>")]
        [Description("The machine it was sewn on, where there are several.")]
        public string? Machine { get; init; }

        [CommandOption("--mark <SIGNS>")]
        [Description("The four signs after the word mark on the sheet it was sewn from.")]
        public string? Mark { get; init; }

        [CommandOption("--measured <LENGTH>")]
        [Description("Length of the sewn and pressed piece, first name's left edge to last name's right edge.")]
        public string? Measured { get; init; }

        [CommandOption("--strip <NUMBER>")]
        [Description("With --measured: which strip of the hooping, from the top, where it holds several.")]
        public int? Strip { get; init; }

        [CommandOption("--sure")]
        [Description("With --measured: it was measured twice and is so, though it is farther off than cloth usually is.")]
        public bool Sure { get; init; }

        [CommandOption("--again")]
        [Description("It was spoiled: plan to sew it again where it was.")]
        public bool Again { get; init; }

        [CommandOption("--patch")]
        [Description("It was spoiled and the strip is cut: sew it again on a piece of its own.")]
        public bool Patch { get; init; }

        [CommandOption("--mistake")]
        [Description("It was marked by mistake and is not sewn.")]
        public bool Mistake { get; init; }

        [CommandOption("--note <TEXT>")]
        [Description("A remark to keep in the log.")]
        public string? Note { get; init; }

        [CommandOption("--out <DIR>")]
        [Description("The folder it was sewn from; the job's own folder “out” where it is not given.")]
        public string? Out { get; init; }
    }
}

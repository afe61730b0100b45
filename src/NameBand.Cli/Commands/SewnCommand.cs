using System.Globalization;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
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

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var what = SewnWhat.Read(settings.What);
        double? measuredMm = null;
        if (settings.What is { } word && what is null)
        {
            return Usage.RefuseWord(
                host, Verb, $"“{PlainText.Short(word)}” is not the number of a hooping, nor of names with an n before it.");
        }

        Said? wrong = Wrong(settings, what, out measuredMm);
        if (wrong is not null)
        {
            return Usage.Refuse(host, wrong);
        }

        if (settings.Spoiled)
        {
            bool isName = what!.Names is not null;
            var advice = Bander.Spoiled(settings.Job, settings.Out, isName ? what.Names!.Value.First : what.Hooping, isName);
            return Answering.Give<SpoiledAnswer>(
                host, settings.Json, advice.Answer, "The state cannot be shown",
                (page, answer) => SpoiledSummary.Print(page, answer, settings.Job));
        }

        var report = Bander.Sewn(settings.Job, settings.Out, Word(settings, what, measuredMm), () => Thread.Sleep(50));
        bool isSaid = what is not null || settings.Step is not null || settings.Left is not null;
        return Answering.Give<SewnAnswer>(
            host, settings.Json, report.Answer, isSaid ? "Nothing was logged" : "The state cannot be shown",
            (page, answer) => new SewnSummary(page, answer).Print());
    }

    private static SewingWord? Word(Settings settings, SewnWhat? what, double? measuredMm)
    {
        string now = DateTime.Now.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);
        if (settings.Step is { } step)
        {
            return new SewingWord(0, settings.Done is null ? SewingDeed.Undone : SewingDeed.Done, When: now, Note: settings.Note ?? "")
            {
                Step = FinishingWords.Read(step),
                Round = settings.Round ?? 0,
            };
        }

        if (settings.LeftTold() is { IsSuccess: true } left)
        {
            return new SewingWord(
                0, SewingDeed.Left, When: now, Note: settings.Note ?? "")
            { LeftMm = left.Mm, Round = settings.Round ?? 0 };
        }

        if (what is not { } said)
        {
            return null;
        }

        var deed = settings.Patch ? SewingDeed.Patch
            : settings.Again ? SewingDeed.Again
            : settings.Mistake ? SewingDeed.Mistake
            : measuredMm is not null ? SewingDeed.Measured : SewingDeed.Sewn;
        return new SewingWord(
            said.Hooping, deed, settings.Minutes, settings.Hands, settings.Machine ?? "", measuredMm, now, Note(settings))
        {
            Names = said.Names,
            Strip = settings.Strip,
            IsSure = settings.Sure,
            LengthMm = settings.LengthTold() is { IsSuccess: true } told ? told.Mm : null,
            Blank = settings.Blank ?? "",
            IsScrap = settings.Scrap,
            Mark = settings.Mark ?? "",
        };
    }

    private static string Note(Settings settings) =>
        settings.By is { Length: > 0 } by
            ? SewingEntry.NoteBy(PlainText.Short(PlainText.OneLine(by), 60), settings.Note ?? "") : settings.Note ?? "";

    private static Said? Wrong(Settings settings, SewnWhat? what, out double? measuredMm)
    {
        measuredMm = null;
        if (WrongStep(settings) is { } wrong)
        {
            return wrong;
        }

        if (settings.Left is not null)
        {
            return null;
        }

        if (settings.Spoiled
            && (what is null || settings.Again || settings.Patch || settings.Mistake || settings.Minutes is not null
            || settings.Measured is not null))
        {
            return "--spoiled asks about one hooping or name and logs nothing: sewn JOB 12 --spoiled";
        }

        bool saysSewn = settings.Minutes is not null || settings.Hands is not null || settings.Machine is not null
            || settings.Mark is not null;
        bool saysElse = settings.Again || settings.Patch || settings.Mistake;
        if (what is null && settings.Step is null
            && (saysSewn || saysElse || settings.Measured is not null || settings.Note is not null || settings.By is not null))
        {
            return "Say which hooping, or which name: sewn JOB 12 …, sewn JOB n12 …";
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

        if (WrongLength(settings, what) is { } wrongLength)
        {
            return wrongLength;
        }

        if (settings.Measured is null && (settings.Strip is not null || settings.Sure))
        {
            return "--strip and --sure go with a length: sewn JOB 12 --measured \"131 mm\" --strip 2";
        }

        if (settings.Strip is < 1)
        {
            return "Strips are numbered from 1, the uppermost in the hoop.";
        }

        if (new[] { settings.Minutes, settings.Hands }.Any(m => m is { } minutes && !(minutes is > 0 and <= Duration.MinutesPerDay)))
        {
            return "Minutes are a number above 0 and up to 1440, with a point as the decimal mark.";
        }

        if (settings.Measured is { } text)
        {
            if (!Length.TryParse(text, out var length, out Said why))
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

    /// <summary>What is wrong with the length of a typed name; null where nothing is.</summary>
    private static Said? WrongLength(Settings settings, SewnWhat? what)
    {
        if (settings is { Length: null, Scrap: true, Mistake: true, Blank: null } && what?.Names is { } taken)
        {
            return taken.First == taken.Last && settings.Minutes is null && settings.Hands is null ? null
                : "The length of one name on a scrap is taken back by itself: sewn JOB n1 --scrap --mistake";
        }

        if (settings.Length is null)
        {
            return settings.Scrap || settings.Blank is not null
                ? "--scrap and --blank go with a length: sewn JOB n1 --length \"63 mm\" --scrap" : null;
        }

        if (what?.Names is not { } names || names.First != names.Last)
        {
            return "--length is of one typed name: sewn JOB n1 --length \"63 mm\"";
        }

        if (settings.Again || settings.Patch || settings.Mistake || settings.Measured is not null)
        {
            return "Say one thing at a time: a --length, --again, --mistake or --measured.";
        }

        return settings.LengthTold() is { IsSuccess: false } told ? (Said)$"--length: {told.Why}" : null;
    }

    /// <summary>What is wrong with a step of finishing; null where nothing is.</summary>
    private static Said? WrongStep(Settings settings)
    {
        if (settings.Done is not null && settings.Undone is not null)
        {
            return "Say one thing at a time: --done or --undone.";
        }

        if (settings.Left is not null)
        {
            bool isAlone = settings.What is null && settings.Step is null && settings.Measured is null && settings.Length is null
                && settings.Minutes is null;
            return !isAlone ? "A bare length is said by itself: sewn JOB --left \"812 mm\" --round 2"
                : settings.Round is < 1 ? "Rounds are numbered from 1, the lowest."
                : settings.LeftTold() is { IsSuccess: false } told ? (Said)$"--left: {told.Why}" : null;
        }

        if (settings.Step is not { } step)
        {
            return settings.Round is null ? null : "--round goes with a step of finishing, or with --left: sewn JOB --done pin --round 2";
        }

        string words = string.Join(", ", FinishingWords.All.Select(FinishingWords.Of));
        bool saysMore = settings.What is not null || settings.Minutes is not null || settings.Hands is not null
            || settings.Machine is not null
            || settings.Mark is not null || settings.Again || settings.Patch || settings.Mistake || settings.Measured is not null;
        return saysMore ? "A step of finishing is said by itself: sewn JOB --done pin --round 2"
            : settings.Round is < 1 ? "Rounds are numbered from 1, the lowest."
            : FinishingWords.Read(step) is null ? (Said)$"A step of finishing is one of {words}." : null;
    }

    internal sealed class Settings : JobSettings
    {
        [CommandArgument(1, "[WHAT]")]
        [Told(
            "The number of a hooping, such as 12, or of a name that is keyed in or traced, such as n12 or n3-n8; without one the command shows how things stand.")]
        public string? What { get; init; }

        [CommandOption("--done <STEP>")]
        [Told(
            "A step of finishing is done: tear, press, cut, join, turn, tuck, pin, lower or upper (sewn down at that edge). Those before it count as done too.")]
        public string? Done { get; init; }

        [CommandOption("--undone <STEP>")]
        [Told("That step, and those after it, are still to be done after all.")]
        public string? Undone { get; init; }

        [CommandOption("--round <NUMBER>")]
        [Told("With --done, --undone or --left: of that round alone, the lowest being 1.")]
        public int? Round { get; init; }

        /// <summary>The step of finishing that is spoken of; null for none.</summary>
        public string? Step => Done ?? Undone;

        [CommandOption("--left <LENGTH>")]
        [Told(
            "Of typed names sewn and pinned on the garment: the bare length that is left, from where the last one ends to the end of the round. The rest is spread into it.")]
        public string? Left { get; init; }

        /// <summary>The bare length as it was told.</summary>
        public (bool IsSuccess, double Mm, Said Why) LeftTold() => Read(Left, "what is left bare is longer than nothing.");

        [CommandOption("--minutes <MINUTES>")]
        [Told("What it took at the machine, from start to last stitch.")]
        public double? Minutes { get; init; }

        [CommandOption("--hands <MINUTES>")]
        [Told("What hooping, setting straight, keying in, tearing away and clipping took.")]
        public double? Hands { get; init; }

        [CommandOption("--machine <NAME>")]
        [Told("The machine it was sewn on, where there are several.")]
        public string? Machine { get; init; }

        [CommandOption("--by <NAME>")]
        [Told("Who sewed it, where there are several of you.")]
        public string? By { get; init; }

        [CommandOption("--mark <SIGNS>")]
        [Told("The four signs after the word mark on the sheet it was sewn from.")]
        public string? Mark { get; init; }

        [CommandOption("--measured <LENGTH>")]
        [Told("Length of the sewn and pressed piece, first name's left edge to last name's right edge.")]
        public string? Measured { get; init; }

        [CommandOption("--length <LENGTH>")]
        [Told("Of a typed name such as n1: how long it came out, first letter's left edge to last letter's right edge.")]
        public string? Length { get; init; }

        [CommandOption("--blank <PLACES>")]
        [Told("With --length: where its first word ended and its second began, from the left edge: \"31 mm, 38 mm\".")]
        public string? Blank { get; init; }

        [CommandOption("--scrap")]
        [Told(
            "With --length: it was sewn on a scrap; the length counts, the name is not sewn. With --mistake: the last length told so counts no longer.")]
        public bool Scrap { get; init; }

        /// <summary>The length as it was told.</summary>
        public (bool IsSuccess, double Mm, Said Why) LengthTold() => Read(Length, "a name is longer than nothing.");

        private static (bool IsSuccess, double Mm, Said Why) Read(string? told, Said nothing) => told is null
            ? (false, 0, "") : Common.Length.TryParse(told, out var length, out Said why) && length.Mm > 0
                ? (true, length.Mm, "") : (false, 0, !why.IsEmpty ? why : nothing);

        [CommandOption("--strip <NUMBER>")]
        [Told("With --measured: which strip of the hooping, from the top, where it holds several.")]
        public int? Strip { get; init; }

        [CommandOption("--sure")]
        [Told("With --measured: it was measured twice and is so, though it is farther off than cloth usually is.")]
        public bool Sure { get; init; }

        [CommandOption("--spoiled")]
        [Told(
            "Only asks: what can be done about a hooping, or a name, that was misspelt or went wrong, with the work of each way and what the cloth bears.")]
        public bool Spoiled { get; init; }

        [CommandOption("--again")]
        [Told("It was spoiled: plan to sew it again where it was.")]
        public bool Again { get; init; }

        [CommandOption("--patch")]
        [Told("It was spoiled and the strip is cut: sew it again on a piece of its own.")]
        public bool Patch { get; init; }

        [CommandOption("--mistake")]
        [Told("It was marked by mistake and is not sewn.")]
        public bool Mistake { get; init; }

        [CommandOption("--note <TEXT>")]
        [Told("A remark to keep in the log.")]
        public string? Note { get; init; }

        [CommandOption("--out <DIR>")]
        [Told("The folder it was sewn from (default: JOB/out).")]
        public string? Out { get; init; }
    }
}

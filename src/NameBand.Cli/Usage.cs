using System.Globalization;
using NameBand.Cli.Commands;
using NameBand.Cli.Terminal;
using NameBand.Common;
using Spectre.Console.Cli;

namespace NameBand.Cli;

/// <summary>Says what is wrong with a command line, and what was probably meant.</summary>
internal static class Usage
{
    private static readonly Dictionary<string, string[]> Options = new(StringComparer.Ordinal)
    {
        [NamesCommand.Verb] = ["--settle", "--json", "--help"],
        [PlansCommand.Verb] = ["--take", "--why", "--late", "--json", "--help"],
        [SwatchCommand.Verb] = ["--measured", "--under", "--set", "--out", "--json", "--help"],
        [MeasureCommand.Verb] = ["--size", "--lines", "--json", "--help"],
        [InviteCommand.Verb] = ["--answers", "--json", "--help"],
        [MakeCommand.Verb] = ["--out", "--afresh", "--json", "--help"],
        [HoursCommand.Verb] = ["--evening", "--json", "--help"],
        [PrintCommand.Verb] = ["--out", "--thanks", "--playback", "--json", "--help"],
        [PageCommand.Verb] = ["--port", "--no-browser", "--lend", "--help"],
        [SewnCommand.Verb] =
        [
            "--minutes", "--hands", "--machine", "--by", "--mark", "--measured", "--strip", "--sure", "--length", "--blank", "--scrap",
                "--left", "--round",
            "--again", "--patch", "--mistake", "--spoiled", "--done", "--undone", "--note", "--out", "--json", "--help",
        ],
        [PublicCommand.Verb] = ["--out", "--json", "--help"],
        [CheckCommand.Verb] = ["--out", "--json", "--help"],
        [FacesCommand.Verb] = ["--json", "--help"],
    };

    public static Said Commands { get; } = $"The commands are {Wording.List([.. Options.Keys])}; --help says more.";

    /// <summary>Options that take a word after them.</summary>
    private static readonly string[] WithWord =
        ["--out", "--evening", "--size", "--lines", "--minutes", "--hands", "--machine", "--measured", "--strip", "--note", "--port",
            "--take", "--why", "--late"];

    private static readonly string[] WithNumber = ["--lines", "--minutes", "--hands", "--strip", "--port"];

    /// <summary>What the command line library would let pass; null when there is nothing.</summary>
    public static Said? Check(string[] args) => args switch
    {
        [] => "No command was given.",
        [.., "--out"] => "--out needs the path of a folder after it.",
        [.., var last] when WithWord.Contains(last) => (Said)$"{last} needs a word after it.",
        _ when args.Any(string.IsNullOrWhiteSpace) => "One of the words on the command line is empty.",
        _ when args.Contains("--") => "“--” means nothing to NameBand.",
        _ => null,
    };

    public static int Refuse(CliHost host, Said found)
    {
        var page = new Page(host.Errors);
        page.Line(found, tone: Tone.Bad);
        page.Line(Commands);
        return CliApp.WrongUsage;
    }

    /// <summary>Refuses a word of a command with the command's form.</summary>
    public static int RefuseWord(CliHost host, string verb, Said found)
    {
        var page = new Page(host.Errors);
        page.Line(found, tone: Tone.Bad);
        page.Line($"Write: nameband {Form(verb)}");
        return CliApp.WrongUsage;
    }

    public static int Refuse(CliHost host, string[] args, CommandAppException error)
    {
        string verb = args.FirstOrDefault(a => !a.StartsWith('-')) ?? "";
        args = [.. args.Select(a => a == PlansCommand.OtherVerb && verb == a ? PlansCommand.Verb : a)];
        verb = verb == PlansCommand.OtherVerb ? PlansCommand.Verb : verb;
        if (!Options.TryGetValue(verb, out string[]? options))
        {
            string wrong = verb.Length > 0 ? verb : args[0];
            string[] known = verb.Length > 0 ? [.. Options.Keys] : ["--help", "--version"];
            Said guess = NearestWord.Find(wrong, known) is { } near ? (Said)$" Did you mean {near}?" : "";
            return Refuse(host, $"“{PlainText.Short(wrong)}” is not {(verb.Length > 0 ? (Said)"a command" : "an option")} of NameBand.{guess}");
        }

        return RefuseWord(host, verb, Found(verb, options, args, error));
    }

    private static Said Found(string verb, string[] options, string[] args, CommandAppException error)
    {
        string[] rest = [.. args.SkipWhile(a => a != verb).Skip(1)];
        if (rest.FirstOrDefault(a => a.StartsWith('-') && !options.Contains(a.Split('=')[0])) is { } option)
        {
            Said guess = NearestWord.Find(option.Split('=')[0], options) is { } near ? (Said)$" Did you mean {near}?" : "";
            return $"“{PlainText.Short(option)}” is not an option of {verb}.{guess}";
        }

        if (rest.Zip(rest.Skip(1))
            .FirstOrDefault(p => WithNumber.Contains(p.First) && !double.TryParse(p.Second, CultureInfo.InvariantCulture, out _))
            is { First: not null } wrong)
        {
            return $"{wrong.First} needs a number after it, with a point as the decimal mark, and “{PlainText.Short(wrong.Second)}” is none.";
        }

        string[] folders = [.. rest.Where((a, i) => !a.StartsWith('-') && (i == 0 || !WithWord.Contains(rest[i - 1])))];
        return folders.Length switch
        {
            > 0 when verb == FacesCommand.Verb => (Said)$"faces takes no job, and “{PlainText.Short(folders[0])}” is one word too many.",
            0 => $"{verb} needs the path of a job's folder.",
            1 => Said.Plain(error.Message),
            2 when verb == SewnCommand.Verb => Said.Plain(error.Message),
            _ => $"{verb} takes one job, and “{PlainText.Short(folders[1])}” is one too many. A path with blanks in it stands in quotes.",
        };
    }

    private static Said Form(string verb) => verb switch
    {
        MakeCommand.Verb => "make JOB [--out DIR] [--json]",
        NamesCommand.Verb => "names JOB [--settle] [--json]",
        SewnCommand.Verb =>
            "sewn JOB [HOOPING | nNAME | nFIRST-nLAST] [--minutes N] [--hands N] [--machine NAME] [--by NAME] [--mark SIGNS] [--again | --patch | --mistake | --measured LENGTH [--strip N] [--sure] | --length LENGTH [--blank PLACES] [--scrap] | --scrap --mistake] [--done STEP | --undone STEP] [--round N] [--note TEXT] [--out DIR] [--json]",
        HoursCommand.Verb => "hours JOB [--evening TIME] [--json]",
        PlansCommand.Verb => "plans JOB [--take MARK | --why MARK | --late PLACE] [--json]",
        PrintCommand.Verb => "print JOB [--out DIR] [--thanks] [--playback] [--json]",
        InviteCommand.Verb => "invite JOB [--answers] [--json]",
        PublicCommand.Verb => "public JOB [--out DIR] [--json]",
        PageCommand.Verb => "page JOB [--port N] [--no-browser] [--lend]",
        SwatchCommand.Verb => "swatch JOB [--out DIR] [--measured LENGTH [--set]] [--columns SIZES [--set]] [--json]",
        MeasureCommand.Verb => "measure JOB [--size HEIGHT] [--lines COUNT] [--json]",
        CheckCommand.Verb => "check JOB [--out DIR] [--json]",
        _ => "faces [--json]",
    };
}

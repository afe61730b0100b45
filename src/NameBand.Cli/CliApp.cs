using System.Globalization;
using System.Text;
using NameBand.Cli.Commands;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports;
using NameBand.Reports.Answers;
using Spectre.Console.Cli;

namespace NameBand.Cli;

/// <summary>The command line: verbs, options, exit statuses, and the one place where exceptions are caught.</summary>
internal static class CliApp
{
    /// <summary>The command line itself is wrong (EX_USAGE of sysexits.h).</summary>
    public const int WrongUsage = 64;

    /// <summary>A fault in NameBand itself (EX_SOFTWARE of sysexits.h).</summary>
    public const int OwnFault = 70;

    private const string VersionOption = "--version";

    /// <summary>In the order of the work: --help lists them so.</summary>
    private static readonly (string Verb, Action<IConfigurator> Add)[] Verbs =
    [
        (NamesCommand.Verb, c => c.AddCommand<NamesCommand>(NamesCommand.Verb).WithDescription(Told(
            "Checks the lists of a job and says what became of every row; writes nothing."))),
        (PlansCommand.Verb, c => c.AddCommand<PlansCommand>(PlansCommand.Verb).WithAlias(PlansCommand.OtherVerb).WithDescription(Told(
            "Finds the plans that can be sewn, with hours, letters and rounds of each, to choose from; "
            + "writes only what --take is told to."))),
        (SwatchCommand.Verb, c => c.AddCommand<SwatchCommand>(SwatchCommand.Verb).WithDescription(Told(
            "Makes a small test piece to sew before the real cloth, and reads what it showed."))),
        (MeasureCommand.Verb, c => c.AddCommand<MeasureCommand>(MeasureCommand.Verb).WithDescription(Told(
            "Measures a machine's own letters: writes the lines to sew, then works out the alphabet."))),
        (InviteCommand.Verb, c => c.AddCommand<InviteCommand>(InviteCommand.Verb).WithDescription(Told(
            "Writes the letters that ask the owners of the names, into the folder private; sends nothing."))),
        (MakeCommand.Verb, c => c.AddCommand<MakeCommand>(MakeCommand.Verb).WithDescription(Told(
            "Makes the plan, the proofs and the needle paths of a job."))),
        (HoursCommand.Verb, c => c.AddCommand<HoursCommand>(HoursCommand.Verb).WithDescription(Told(
            "Calculates the hours, what to buy and which evening sews what; writes nothing."))),
        (PrintCommand.Verb, c => c.AddCommand<PrintCommand>(PrintCommand.Verb).WithDescription(Told(
            "Does what make does, and writes the sheets to print."))),
        (PageCommand.Verb, c => c.AddCommand<PageCommand>(PageCommand.Verb).WithDescription(Told(
            "Opens the worktable: a page in the browser on this computer, to plan, check and sew by."))),
        (SewnCommand.Verb, c => c.AddCommand<SewnCommand>(SewnCommand.Verb).WithDescription(Told(
            "Logs that a hooping is sewn, and shows what is done and what is to do."))),
        (PublicCommand.Verb, c => c.AddCommand<PublicCommand>(PublicCommand.Verb).WithDescription(Told(
            "Makes a page on which supporters find their names: of those who said yes to it, and of nobody else."))),
        (CheckCommand.Verb, c => c.AddCommand<CheckCommand>(CheckCommand.Verb).WithDescription(Told(
            "Says whether list, plan, files, sewing log and what is sewn are whole and agree; writes nothing."))),
        (FacesCommand.Verb, c => c.AddCommand<FacesCommand>(FacesCommand.Verb).WithDescription(Told(
            "Lists the letter faces that travel with the program, with the height from which each can be sewn."))),
    ];

    public static int Run(string[] args, CliHost host)
    {
        bool wantsJson = args.Contains("--json");
        try
        {
            if (args is [VersionOption])
            {
                // Asked by scripts, and answered before anything is got ready that it does not need.
                host.Output.WriteLine(ProgramVersion.Text);
                return Told(host, args, (int)ExitStatus.AllPlaced);
            }

            if (!HasCharacterTables())
            {
                return Say(
                    host, wantsJson, (int)ExitStatus.CannotUse, "The tables of the world's letters (ICU) are missing on this machine.",
                    "Without them NameBand cannot tell whether two names are the same. "
                    + "Install libicu, and unset DOTNET_SYSTEM_GLOBALIZATION_INVARIANT.");
            }

            return Usage.Check(args) is { } wrong ? Usage.Refuse(host, wrong) : Told(host, args, App(host, args).Run(args, host.Cancel));
        }
        catch (CommandAppException error)
        {
            return Usage.Refuse(host, args, error);
        }
        catch (OperationCanceledException)
        {
            return Say(host, wantsJson, host.StoppedStatus, "Stopped. Your earlier output is unchanged.", "");
        }
        catch (RefusedEntryException error)
        {
            return Say(host, wantsJson, (int)ExitStatus.CannotUse, error.Problem.Found, error.Problem.Mend);
        }
        catch (Exception error) when (IsOutOfMemory(error))
        {
            return Say(
                host, wantsJson, (int)ExitStatus.CannotUse, "There is too little memory for this job on this computer just now.",
                "Nothing half-made is left behind. Close other programs and start again, or split the list into two jobs.");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            var refused = Problem.OfMachine(new Where(), "read or write", error);
            return Say(host, wantsJson, (int)ExitStatus.CannotUse, refused.Found, $"Nothing half-made is left behind. {refused.Mend}");
        }
        catch (Exception error)
        {
            string details = host.ShowsFaultDetails ? error.ToString() : $"{error.GetType().Name}: {error.Message}";
            return Say(
                host, wantsJson, OwnFault, "This is a fault in NameBand, not in your files.",
                $"Nothing half-made is left behind. Please report it with these words: {details}");
        }
    }

    /// <summary>The status of a command whose answer may not have been taken: it is not as if nothing had been done.</summary>
    private static int Told(CliHost host, string[] args, int status)
    {
        host.Output.Writer.Flush();
        if (host.AnswerRefusal() is not { } refusal || status is not ((int)ExitStatus.AllPlaced or (int)ExitStatus.NeedsPerson))
        {
            return status;
        }

        var page = new Page(host.Errors);
        page.Line($"The report could not be written: {refusal}", tone: Tone.Bad);
        bool writes = args.Any(a => a is MakeCommand.Verb or PrintCommand.Verb or SewnCommand.Verb or SwatchCommand.Verb
            or MeasureCommand.Verb or PublicCommand.Verb or InviteCommand.Verb or "--settle" or "--take");
        page.Line(writes
            ? "The command did what you asked; only its report is missing. Do not run it a second time."
            : "Free some room there, then ask again.");
        return (int)(writes ? ExitStatus.NeedsPerson : ExitStatus.CannotUse);
    }

    /// <summary>Wherever memory ran out, in a task or while something was got ready for its first use.</summary>
    private static bool IsOutOfMemory(Exception error) =>
        error is OutOfMemoryException || (error is AggregateException many && many.InnerExceptions.Any(IsOutOfMemory))
        || (error.InnerException is { } inner && IsOutOfMemory(inner));

    /// <summary>
    /// The command line library takes every command apart that it is told of, whichever is called: so it is told of the one that is asked
    /// for, and of all where none of them is.
    /// </summary>
    private static CommandApp App(CliHost host, string[] args)
    {
        var app = new CommandApp();
        app.Configure(config =>
        {
            config.SetApplicationName("nameband");
            config.SetApplicationVersion(ProgramVersion.Text);
            config.SetApplicationCulture(CultureInfo.InvariantCulture);
            config.UseStrictParsing();
            config.PropagateExceptions();
            config.ConfigureConsole(host.Output.HelpConsole());
            config.Settings.Registrar.RegisterInstance(host);
            bool isKnown = args is [var verb, ..] && Verbs.Any(v => v.Verb == verb);
            foreach (var (name, add) in Verbs)
            {
                if (!isKnown || name == args[0])
                {
                    add(config);
                }
            }

            config.AddExample(MakeCommand.Verb, "samples/lantern-walk");
            config.AddExample(PageCommand.Verb, "my-job");
            config.AddExample(MakeCommand.Verb, "my-job", "--out", "my-job/second-try");
        });
        return app;
    }

    /// <summary>For the command line library, which keeps texts as they are.</summary>
    private static string Told(Said text) => text.ToString();

    private static int Say(CliHost host, bool wantsJson, int status, Said found, Said mend)
    {
        if (wantsJson)
        {
            host.Output.Writer.WriteLine(AnswerJson.Of(RefusedAnswer.Of(status, [Problem.CannotUse(new Where(), found, mend)])));
            return status;
        }

        var page = new Page(host.Errors);
        page.Line(found, tone: status == host.StoppedStatus ? Tone.Plain : Tone.Bad);
        if (!mend.IsEmpty)
        {
            page.Line(mend);
        }

        return status;
    }

    /// <summary>False in .NET's invariant mode, which skips normalisation and collation without a word.</summary>
    private static bool HasCharacterTables()
    {
        try
        {
            return "\u00e4".Normalize(NormalizationForm.FormD).Length == 2
                && !CultureInfo.GetCultureInfo("sv").EnglishName.StartsWith("Invariant", StringComparison.Ordinal)
                && CultureInfo.GetCultureInfo("sv").CompareInfo.Compare("z", "\u00e4") < 0;
        }
        catch (CultureNotFoundException)
        {
            return false;
        }
    }
}

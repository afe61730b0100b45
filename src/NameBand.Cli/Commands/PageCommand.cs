using System.ComponentModel;
using System.Diagnostics;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports;
using NameBand.Web.Machine;
using NameBand.Web.Serving;
using Spectre.Console;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal sealed class PageCommand(CliHost host) : Command<PageCommand.Settings>
{
    public const string Verb = "page";

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var page = new Page(host.Output);
        if (!Directory.Exists(settings.Job))
        {
            new Page(host.Errors)
                .Line($"There is no folder {PlainText.Short(settings.Job, 200)}. Make an empty one, or give the path of a job.",
                    tone: Tone.Bad);
            return (int)ExitStatus.CannotUse;
        }

        var options = new PageOptions(Path.GetFullPath(settings.Job), settings.Port, settings.Lend) { StartLine = StartLine(settings) };
        try
        {
            PageServer.RunAsync(options, at => Tell(page, at, settings), cancellationToken).GetAwaiter().GetResult();
        }
        catch (PortException e)
        {
            new Page(host.Errors).Line(e.InWords, tone: Tone.Bad);
            return (int)ExitStatus.CannotUse;
        }

        return (int)ExitStatus.AllPlaced;
    }

    private static void Tell(Page page, PageAddress at, Settings settings)
    {
        page.Line("The worktable is open on this computer only, at this address. Press Ctrl+C here to close it.");
        page.Verbatim(at.Url);
        page.Line("Anyone with this address can see all names and change everything. Do not pass it on.");
        page.Notes(at.Notes);
        if (at.LendUrl is { } lent)
        {
            page.Line($"Lent to your network: the view at the machine alone, at {lent}, with the code {at.LendCode}, good for one screen and {LendDesk.Holding.Minutes} minutes.");
            page.Line(
                "It is not encrypted: anyone else on that network could read the names as they are shown. "
                + "Lend it on a network of your own.");
        }

        if (!settings.NoBrowser && at.Opener is { } opener)
        {
            OpenBrowser(opener);
        }
    }

    /// <summary>This very program on this very folder, as one line for a terminal.</summary>
    private static string StartLine(Settings settings)
    {
        string program = Environment.ProcessPath ?? "nameband";
        bool isBuilt = Path.GetFileNameWithoutExtension(program).Equals("dotnet", StringComparison.OrdinalIgnoreCase);
        IEnumerable<string> words =
            [program, .. isBuilt ? [Environment.GetCommandLineArgs()[0]] : Array.Empty<string>(), Verb, Path.GetFullPath(settings.Job)];
        string port = settings.Port == 0 ? "" : FormattableString.Invariant($" --port {settings.Port}");
        return string.Join(' ', words.Select(Quoted)) + port + (settings.Lend ? " --lend" : "");
    }

    private static string Quoted(string word) => word.All(c => char.IsAsciiLetterOrDigit(c) || c is '/' or '.' or '-' or '_') ? word
        : OperatingSystem.IsWindows() ? $"\"{word}\"" : $"'{word.Replace("'", @"'\''", StringComparison.Ordinal)}'";

    /// <param name="file">Leads to the address, which so does not stand in the list of what runs on this computer.</param>
    private static void OpenBrowser(string file)
    {
        try
        {
            using var opened = Process.Start(new ProcessStartInfo(file) { UseShellExecute = true });
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException or FileNotFoundException)
        {
            // No browser on this machine: the address was said.
        }
    }

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<JOB>")]
        [Told("The job's folder; an empty one begins a new job.")]
        public required string Job { get; init; }

        [CommandOption("--port <N>")]
        [Told("The port to answer on (default: a free one).")]
        public int Port { get; init; }

        [CommandOption("--no-browser")]
        [Told("Print the address and do not open a browser.")]
        public bool NoBrowser { get; init; }

        [CommandOption("--lend")]
        [Told("Serve the view at the machine, and nothing else, to your own network under a one-time code.")]
        public bool Lend { get; init; }

        /// <summary>The lent view answers on the next port.</summary>
        public override ValidationResult Validate() => Port < 0 || Port > (Lend ? 65534 : 65535)
            ? JobSettings.Refused("--port takes a number from 0 to 65535, and to 65534 with --lend.")
            : ValidationResult.Success();
    }
}

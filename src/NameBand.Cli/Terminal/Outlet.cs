using Spectre.Console;

namespace NameBand.Cli.Terminal;

/// <summary>Standard output or standard error: a writer, and what may be sent through it.</summary>
internal sealed class Outlet(TextWriter writer, bool hasColour = false, bool isTerminal = false, int width = Outlet.WidthOfFiles)
    : IDisposable
{
    /// <summary>Lines are broken here when nobody's window says otherwise.</summary>
    public const int WidthOfFiles = 100;

    private const int WidestTextCells = 110; // Cells: eyes lose the next line where one is much longer (common practice, no source).

    public TextWriter Writer => writer;

    public bool IsTerminal => isTerminal;

    /// <summary>Cells in a line of the terminal.</summary>
    public int Width => isTerminal ? width : WidthOfFiles;

    /// <summary>Cells in a line of text: long lines are hard to read, however wide the window.</summary>
    public int TextWidth => Math.Min(Width, WidestTextCells);

    /// <summary>For the help pages of the command line library.</summary>
    public IAnsiConsole HelpConsole()
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = hasColour ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = hasColour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
            Out = new AnsiConsoleOutput(writer),
        });
        console.Profile.Width = TextWidth;
        return console;
    }

    /// <summary>Writes one line as it is, which must be free of control characters.</summary>
    public void WriteLine(string line, Tone tone = Tone.Plain) =>
        writer.WriteLine(hasColour && tone != Tone.Plain && line.Length > 0 ? $"\u001b[{Code(tone)}m{line}\u001b[0m" : line);

    public void Dispose() => writer.Flush();

    /// <summary>Parameters of the SGR control sequence, ECMA-48 8.3.117.</summary>
    private static string Code(Tone tone) => tone switch
    {
        Tone.Heading => "1",
        Tone.Quiet => "2",
        Tone.Good => "32",
        Tone.GoodHeading => "1;32",
        Tone.Attention => "33",
        Tone.AttentionHeading => "1;33",
        Tone.Bad => "31",
        Tone.BadHeading => "1;31",
        _ => "0",
    };
}

using NameBand.Cli;
using NameBand.Cli.Terminal;

namespace NameBand.Tests.CommandLine;

/// <summary>One run of the command line inside the test's own process.</summary>
internal sealed record CliRun(int Status, string Out, string Errors)
{
    public static CliRun Of(params string[] args) => Of(new CancellationTokenSource(), args);

    public static CliRun Of(CancellationTokenSource stop, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        using var host = new CliHost(new Outlet(output), new Outlet(errors), stop: stop);
        int status = CliApp.Run(args, host);
        return new CliRun(status, output.ToString(), errors.ToString());
    }

    /// <summary>The errors on one line, so that a test need not know where lines break.</summary>
    public string ErrorsOnOneLine => OnOneLine(Errors);

    public string OutOnOneLine => OnOneLine(Out);

    private static string OnOneLine(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}

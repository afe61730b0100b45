using System.Runtime.InteropServices;
using System.Text;
using NameBand.Cli.Terminal;

namespace NameBand.Cli;

/// <summary>What the command line is connected to: where it writes, how wide that is, and how it is told to stop.</summary>
internal sealed class CliHost : IDisposable
{
    private readonly CancellationTokenSource _stop;
    private readonly List<IDisposable> _signals = [];
    private PosixSignal? _stoppedBy;

    public CliHost(Outlet output, Outlet errors, bool showsFaultDetails = false, CancellationTokenSource? stop = null)
    {
        Output = output;
        Errors = errors;
        ShowsFaultDetails = showsFaultDetails;
        _stop = stop ?? new CancellationTokenSource();
    }

    public Outlet Output { get; }

    public Outlet Errors { get; }

    /// <summary>Why some of the answer could not be written; null when all was.</summary>
    public Func<string?> AnswerRefusal { get; init; } = () => null;

    /// <summary>Whether a fault of NameBand itself is shown with its stack, for whoever mends it.</summary>
    public bool ShowsFaultDetails { get; }

    public CancellationToken Cancel => _stop.Token;

    /// <summary>The exit status of a run that was told to stop: 128 and the signal's number, as shells do.</summary>
    public int StoppedStatus => _stoppedBy == PosixSignal.SIGTERM ? 143 : 130;

    public static CliHost OfThisProcess()
    {
        UseUtf8OnWindows();
        bool isDumb = Environment.GetEnvironmentVariable("TERM") == "dumb";
        bool isPlain = isDumb || !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        int width = WindowWidth();
        var answers = new AnswerStream(Console.OpenStandardOutput());
        var host = new CliHost(
            new Outlet(Utf8(answers), !Console.IsOutputRedirected && !isPlain, !Console.IsOutputRedirected, width),
            new Outlet(
                Utf8(new AnswerStream(Console.OpenStandardError())), !Console.IsErrorRedirected && !isPlain,
                !Console.IsErrorRedirected && !isDumb, width),
            Environment.GetEnvironmentVariable("NAMEBAND_DEBUG") is { Length: > 0 })
        {
            AnswerRefusal = () => answers.Refusal,
        };
        host.StopOn(PosixSignal.SIGINT);
        host.StopOn(PosixSignal.SIGTERM);
        return host;
    }

    public void Dispose()
    {
        foreach (var signal in _signals)
        {
            signal.Dispose();
        }

        Output.Dispose();
        Errors.Dispose();
        _stop.Dispose();
    }

    /// <summary>The first signal asks the work to end cleanly; a second one ends the process at once.</summary>
    private void StopOn(PosixSignal signal) => _signals.Add(PosixSignalRegistration.Create(signal, context =>
    {
        if (_stoppedBy is null)
        {
            _stoppedBy = signal;
            context.Cancel = true;
            _stop.Cancel();
        }
    }));

    private static StreamWriter Utf8(Stream stream) => new(stream, new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };

    private static void UseUtf8OnWindows()
    {
        if (OperatingSystem.IsWindows())
        {
            try
            {
                Console.OutputEncoding = Encoding.UTF8;
            }
            catch (IOException)
            {
                // There is no console: what reads the pipe gets UTF-8 all the same.
            }
        }
    }

    private static int WindowWidth()
    {
        try
        {
            return Console.IsOutputRedirected && Console.IsErrorRedirected ? Outlet.WidthOfFiles : Math.Max(20, Console.WindowWidth);
        }
        catch (IOException)
        {
            return Outlet.WidthOfFiles;
        }
    }
}

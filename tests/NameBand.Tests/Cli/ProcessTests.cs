using System.Diagnostics;
using System.Text;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>The command line as a process of its own: bytes, environment, signals.</summary>
public class ProcessTests
{
    private const string Job = """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 } }""";

    [Fact]
    public void Output_is_UTF_8_without_a_mark_whatever_the_locale()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nŁucja Brzoza\nłucja brzoza\n");

        var (status, output, errors) = Run(["names", folder.FullPath], ("LC_ALL", "de_DE.ISO-8859-1"), ("LANG", "de_DE.ISO-8859-1"));

        Assert.Equal((1, ""), (status, errors));
        Assert.StartsWith("2 rows in the list", output, StringComparison.Ordinal);
        Assert.Contains("“łucja brzoza”", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_command_line_and_bad_input_have_their_statuses()
    {
        Assert.Equal(64, Run(["mkae", "x"]).Status);
        Assert.Equal(2, Run(["make", "no-such-job"]).Status);
        Assert.Equal(0, Run(["--version"]).Status);
    }

    [Fact]
    public void A_language_that_writes_commas_changes_nothing()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\n");

        var german = Run(["make", folder.FullPath], ("LC_ALL", "de_DE.UTF-8"), ("TZ", "Pacific/Kiritimati"));
        byte[] first = File.ReadAllBytes(folder["out/plan.json"]);
        Directory.Delete(folder["out"], recursive: true);
        var plain = Run(["make", folder.FullPath], ("LC_ALL", "C"), ("TZ", "UTC"));

        Assert.Equal(plain, german);
        Assert.Equal(0, plain.Status);
        Assert.Equal(first, File.ReadAllBytes(folder["out/plan.json"]));
    }

    [Fact]
    public void Piped_output_has_no_escape_codes_even_where_colour_is_asked_for()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\n");

        var run = Run(["make", folder.FullPath], ("TERM", "xterm-256color"), ("COLORTERM", "truecolor"), ("GITHUB_ACTIONS", "true"));

        Assert.DoesNotContain('\u001b', run.Out + run.Errors);
        Assert.DoesNotContain('\r', run.Out + run.Errors);
    }

    [Fact]
    public void Without_the_tables_of_letters_nothing_is_done_by_halves()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\n");

        var run = Run(["make", folder.FullPath], ("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "1"));

        Assert.Equal((2, ""), (run.Status, run.Out));
        Assert.StartsWith("The tables of the world's letters (ICU) are missing on this machine.", run.Errors, StringComparison.Ordinal);
        Assert.False(Path.Exists(folder["out"]));
    }

    [SkippableFact]
    public void Output_that_cannot_be_written_is_told_in_words()
    {
        Skip.IfNot(File.Exists("/dev/full"), "skipped: needs /dev/full (Linux has it)");
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\n");

        string said = Outside.OutsideTool.Run(
            "sh", ["-c", $"\"$1\" \"$2\" names \"$3\" 2>&1 >/dev/full; echo status $?", "sh", DotNet(), Path.Combine(AppContext.BaseDirectory, "nameband.dll"), folder.FullPath]);

        Assert.StartsWith("The machine could not read or write: ", said, StringComparison.Ordinal);
        Assert.EndsWith("status 2\n", said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
    }

    private static (int Status, string Out, string Errors) Run(string[] args, params (string Key, string Value)[] environment)
    {
        var start = new ProcessStartInfo(DotNet())
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            StandardOutputEncoding = new UTF8Encoding(false, throwOnInvalidBytes: true),
            StandardErrorEncoding = new UTF8Encoding(false, throwOnInvalidBytes: true),
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "nameband.dll"));
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        foreach (var (key, value) in environment)
        {
            start.Environment[key] = value;
        }

        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(2)), "nameband did not end.");
        return (process.ExitCode, output, errors.Result);
    }

    private static string DotNet() => Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host ? host : "dotnet";
}

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

        var (status, output, errors) =
            CliProcess.Run(["names", folder.FullPath], ("LC_ALL", "de_DE.ISO-8859-1"), ("LANG", "de_DE.ISO-8859-1"));

        Assert.Equal((1, ""), (status, errors));
        Assert.StartsWith("2 rows in the list", output, StringComparison.Ordinal);
        Assert.Contains("“łucja brzoza”", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_command_line_and_bad_input_have_their_statuses()
    {
        Assert.Equal(64, CliProcess.Run(["mkae", "x"]).Status);
        Assert.Equal(2, CliProcess.Run(["make", "no-such-job"]).Status);

        // What makes no use of the tables of the world's letters does not wait for them.
        Assert.Equal(0, CliProcess.Run(["--version"], ("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "1")).Status);
    }

    [Fact]
    public void A_language_that_writes_commas_changes_nothing()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\n");

        var german = CliProcess.Run(["make", folder.FullPath], ("LC_ALL", "de_DE.UTF-8"), ("TZ", "Pacific/Kiritimati"));
        byte[] first = File.ReadAllBytes(folder["out/plan.json"]);
        Directory.Delete(folder["out"], recursive: true);
        var plain = CliProcess.Run(["make", folder.FullPath], ("LC_ALL", "C"), ("TZ", "UTC"));

        Assert.Equal(plain, german);
        Assert.Equal(0, plain.Status);
        Assert.Equal(first, File.ReadAllBytes(folder["out/plan.json"]));
    }

    [Fact]
    public void Piped_output_has_no_escape_codes_even_where_colour_is_asked_for()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\n");

        var run = CliProcess.Run(
            ["make", folder.FullPath], ("TERM", "xterm-256color"), ("COLORTERM", "truecolor"), ("GITHUB_ACTIONS", "true"));

        Assert.DoesNotContain('\u001b', run.Out + run.Errors);
        Assert.DoesNotContain('\r', run.Out + run.Errors);
    }

    [Fact]
    public void Without_the_tables_of_letters_nothing_is_done_by_halves()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\n");

        var run = CliProcess.Run(["make", folder.FullPath], ("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "1"));

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
            "sh", ["-c", $"\"$1\" \"$2\" names \"$3\" 2>&1 >/dev/full; echo status $?", "sh", CliProcess.DotNet, CliProcess.Program,
            folder.FullPath]);

        Assert.StartsWith("The report could not be written: ", said, StringComparison.Ordinal);
        Assert.EndsWith("status 2\n", said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--port", "70000")]
    [InlineData("--port", "65535", "--lend")]
    public void A_port_that_there_is_not_is_a_wrong_command_line(params string[] options)
    {
        using var job = new TemporaryFolder();
        var run = CliProcess.Run(["page", job.FullPath, "--no-browser", .. options]);
        Assert.Equal(64, run.Status);
        Assert.Contains("--port takes a number", run.Errors, StringComparison.Ordinal);
    }
}

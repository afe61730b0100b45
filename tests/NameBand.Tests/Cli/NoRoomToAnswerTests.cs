using NameBand.Job;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>An answer that cannot be written undoes nothing, and is not as if nothing had been done; memory may run out.</summary>
public class NoRoomToAnswerTests
{
    private const string Job = """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 } }""";

    [SkippableFact]
    public void What_is_said_of_a_hooping_is_told_as_done_though_nobody_takes_the_answer()
    {
        Skip.IfNot(File.Exists("/dev/full"), "skipped: needs /dev/full (a place that takes no answer)");
        OutsideTool.Require("bash", "bash");
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\nBo Reed\n");
        foreach (var (command, status) in new[] { ("make", 1), ("sewn", 1), ("names", 2), ("swatch", 1), ("print", 1) })
        {
            string[] more = command == "sewn" ? ["1"] : [];
            string errors = Full([command, folder.FullPath, .. more]);
            Assert.EndsWith($"status {status}\n", errors, StringComparison.Ordinal);
            Assert.Contains("The report could not be written", errors, StringComparison.Ordinal);
            Assert.Contains(status == 1 ? "did what you asked" : "ask again", errors, StringComparison.Ordinal);
        }

        Assert.Single(SewingLogFile.Read(folder.FullPath).Entries);
        Assert.True(File.Exists(folder["out/plan.json"]));
    }

    [SkippableFact]
    public void Errors_that_nobody_takes_stop_nothing()
    {
        Skip.IfNot(File.Exists("/dev/full"), "skipped: needs /dev/full (a place that takes no answer)");
        OutsideTool.Require("bash", "bash");
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\nBo Reed\n");
        OutsideTool.Run("bash", ["-c", "\"$@\" 2>/dev/full", "bash", CliProcess.DotNet, CliProcess.Program, "make", folder.FullPath]);
        Assert.True(File.Exists(folder["out/plan.json"]));
    }

    [Fact]
    public void Memory_that_runs_out_is_said_and_leaves_the_earlier_output()
    {
        const string HeapOf23Mb = "1700000"; // Hexadecimal, as .NET wants it. With more, it clears up for a minute before it gives up.
        using var folder = new TemporaryFolder().With("job.json", Job.Replace("60 cm", "60 m", StringComparison.Ordinal))
            .With("names.csv",
                "Name\n" + string.Concat(Enumerable.Range(1, 3000)
                .Select(i => $"Ada Marsh {(char)('a' + (i % 26))}{(char)('a' + (i / 26 % 26))}{(char)('a' + (i / 676))}\n")));
        var run = CliProcess.Run(["make", folder.FullPath], ("DOTNET_GCHeapHardLimit", HeapOf23Mb), ("DOTNET_DbgEnableMiniDump", "0"));
        Assert.True(run.Status == 2, $"{run.Status}: {run.Errors}");
        Assert.Contains("too little memory", run.Errors, StringComparison.Ordinal);
        Assert.Equal(
            ["job.json", "names.csv"],
            Directory.EnumerateFileSystemEntries(folder.FullPath).Select(e => Path.GetFileName(e)).Order(StringComparer.Ordinal));
    }

    private static string Full(string[] args) => OutsideTool.Run(
        "bash", ["-c", "\"$@\" 2>&1 >/dev/full; echo \"status $?\"", "bash", CliProcess.DotNet, CliProcess.Program, .. args]);
}

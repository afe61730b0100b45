using System.Runtime.Versioning;
using NameBand.Tests.CommandLine;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>Another account of the computer has put something into the out folder; the command runs without root's right to open
/// everything.</summary>
public class OtherAccountTests
{
    private const string Job =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 }, "strip": { "rounds": "asNeeded" } }""";

    /// <summary>A closed file is carried over unread, still the other account's; a closed folder is named, and the output stays
    /// as it was.</summary>
    [SkippableFact]
    [SupportedOSPlatform("linux")]
    public void What_another_account_closes_in_the_out_folder_is_carried_over_or_named()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "skipped: needs Linux (accounts and their rights)");
        OutsideTool.Require("setpriv", "util-linux");
        OutsideTool.Require("bash", "bash");
        bool isRoot = OutsideTool.Run("id", ["-u"]).Trim() == "0";
        Skip.If(!isRoot && Environment.GetEnvironmentVariable("CI") is null, "skipped: needs root (to give a file to another account)");
        Assert.True(isRoot, "This check must run here, and needs root.");
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\nBo Reed\n");
        Make(folder, 0);
        string theirs = folder["out/theirs.txt"];
        Give(theirs, () => File.WriteAllText(theirs, "not yours"), UnixFileMode.UserRead | UnixFileMode.UserWrite);
        string owner = Owner(theirs);
        Assert.NotEqual(Owner(folder["out/plan.json"]), owner);

        File.AppendAllText(folder["names.csv"], "Cai Holm\n");
        Make(folder, 0);
        Assert.Contains("Cai Holm", File.ReadAllText(folder["out/plan.json"]));
        Assert.Equal("not yours", File.ReadAllText(theirs));
        Assert.Equal(owner, Owner(theirs));
        Assert.Equal(
            ["job.json", "names.csv", "out"],
            Directory.EnumerateFileSystemEntries(folder.FullPath).Select(e => Path.GetFileName(e)).Order(StringComparer.Ordinal));

        string closed = folder["out/closed"];
        Give(closed, () => Directory.CreateDirectory(closed), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        File.AppendAllText(folder["names.csv"], "Di Rush\n");
        string errors = Make(folder, 2);
        Assert.Contains("“closed” in the out folder is closed to you", errors);
        Assert.DoesNotContain("room on the disk", errors, StringComparison.Ordinal);
        Assert.DoesNotContain("Di Rush", File.ReadAllText(folder["out/plan.json"]));
    }

    private static string Make(TemporaryFolder folder, int status)
    {
        string said = OutsideTool.Run("bash", [
            "-c", "\"$@\" 2>&1; echo \"status $?\"", "bash",
            "setpriv", "--bounding-set=-all", "--inh-caps=-all", CliProcess.DotNet, CliProcess.Program, "make", folder.FullPath]);
        Assert.EndsWith(FormattableString.Invariant($"status {status}\n"), said, StringComparison.Ordinal);
        return string.Join(' ', said.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
    }

    [SupportedOSPlatform("linux")]
    private static void Give(string path, Action make, UnixFileMode mode)
    {
        make();
        File.SetUnixFileMode(path, mode);
        OutsideTool.Run("chown", ["nobody", path]);
    }

    private static string Owner(string path) => OutsideTool.Run("stat", ["-c", "%U", path]).Trim();
}

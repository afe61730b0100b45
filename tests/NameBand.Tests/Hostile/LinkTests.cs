using NameBand.Job;
using NameBand.Tests.CommandLine;
using NameBand.Tests.Outside;
using NameBand.Tests.SewingOn;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>No link and no special file inside a job is followed, wherever it leads.</summary>
public sealed class LinkTests
{
    private const string Secret = "hunter2-of-somebody-else";
    private const string Windows = "skipped: needs the right to make links";

    [SkippableFact]
    public void A_link_in_the_place_of_the_folder_of_what_is_sewn_leaves_what_it_leads_to_as_it_was()
    {
        Skip.If(OperatingSystem.IsWindows(), Windows);
        using var elsewhere = new TemporaryFolder().With("plan.json", Secret);
        using var job = new SewnJob(SewnJob.TenNames);
        job.Make();
        Directory.CreateSymbolicLink(job["sewn"], elsewhere.FullPath);

        var run = CliRun.Of("sewn", job.Folder, "1");

        Assert.Equal(2, run.Status);
        Assert.Contains(
            "“sewn” is a link to another place, and no link inside a job is followed.", run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Equal(Secret, File.ReadAllText(elsewhere["plan.json"]));
        Assert.Equal([elsewhere["plan.json"]], Directory.GetFileSystemEntries(elsewhere.FullPath));
        Assert.False(File.Exists(job[SewingLogFile.FileName]));
    }

    [SkippableTheory]
    [InlineData("job.json")]
    [InlineData("names.csv")]
    [InlineData("corrections.csv")]
    [InlineData("approvals.csv")]
    [InlineData("drift.csv")]
    [InlineData("sewing-log.csv")]
    [InlineData("sewn/plan.json")]
    [InlineData("out/plan.json")]
    [InlineData("out/needle-paths/hooping-001.csv")]
    [InlineData("out/proofs/hooping-001.png")]
    [InlineData("out/changes.csv")]
    [InlineData("out/.made-by-nameband.json")]
    [InlineData(".nameband-lock")]
    [InlineData(".nameband-unfinished")]
    public void What_a_link_leads_to_is_neither_shown_nor_written_nor_copied(string file)
    {
        Skip.If(OperatingSystem.IsWindows(), Windows);
        using var elsewhere = new TemporaryFolder().With("secret.txt", Secret + "\n" + Secret + ",x\n");
        string secret = File.ReadAllText(elsewhere["secret.txt"]);
        using var job = new SewnJob(SewnJob.TenNames);
        job.Make();
        if (file.StartsWith("sewn/", StringComparison.Ordinal))
        {
            job.Say(2);
        }

        Directory.CreateDirectory(Path.GetDirectoryName(job[file])!);
        File.Delete(job[file]);
        File.CreateSymbolicLink(job[file], elsewhere["secret.txt"]);
        foreach (string[] args in new string[][] { ["sewn", job.Folder, "1"], ["sewn", job.Folder], ["names", job.Folder],
            ["make", job.Folder], ["hours", job.Folder] })
        {
            var run = CliRun.Of(args);
            Assert.DoesNotContain(Secret, run.Out + run.Errors, StringComparison.Ordinal);
            Assert.True(run.Status is 0 or 1 or 2, run.Errors);
        }

        Assert.Equal(secret, File.ReadAllText(elsewhere["secret.txt"]));
        var plain = new DirectoryInfo(job.Folder).EnumerateFiles("*", SearchOption.AllDirectories).Where(f => f.LinkTarget is null);
        Assert.All(plain, f => Assert.DoesNotContain(Secret, File.ReadAllText(f.FullName), StringComparison.Ordinal));
    }

    [SkippableFact]
    public void A_link_that_leads_back_is_carried_over_and_not_gone_round()
    {
        Skip.If(OperatingSystem.IsWindows(), Windows);
        using var job = new SewnJob(SewnJob.TenNames);
        job.Make();
        Directory.CreateSymbolicLink(job["out/loop"], ".");
        Directory.CreateSymbolicLink(job["out/proofs/up"], "..");
        Assert.NotNull(job.Say(1).Said);
        Assert.Equal(
            [".made-by-nameband.json", "needle-paths/hooping-001.csv", "plan.json", "proofs/hooping-001.png"],
            Directory.EnumerateFiles(job["sewn"], "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(job["sewn"], f))
            .Order(StringComparer.Ordinal));
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        Assert.Equal(".", new DirectoryInfo(job["out/loop"]).LinkTarget);
        Assert.DoesNotContain("loop", File.ReadAllText(job["out/.made-by-nameband.json"]), StringComparison.Ordinal);
    }

    [SkippableTheory]
    [InlineData("out/needle-paths/hooping-001.csv")]
    [InlineData("out/proofs/hooping-001.png")]
    [InlineData("out/plan.json")]
    [InlineData("out/.made-by-nameband.json")]
    [InlineData("out/worksheet.csv")]
    [InlineData("out/somebodys.pipe")]
    [InlineData("sewn/plan.json")]
    [InlineData("sewn/needle-paths/hooping-001.csv")]
    [InlineData("sewn/.made-by-nameband.json")]
    [InlineData("sewn")]
    [InlineData("sewing-log.csv")]
    [InlineData(".nameband-lock")]
    [InlineData(".nameband-unfinished")]
    public async Task A_pipe_makes_no_command_wait(string file)
    {
        OutsideTool.Require("mkfifo", "coreutils");
        using var job = new SewnJob(SewnJob.TenNames);
        job.Make();
        if (file.StartsWith("sewn/", StringComparison.Ordinal))
        {
            job.Say(1);
        }

        Directory.CreateDirectory(Path.GetDirectoryName(job[file])!);
        File.Delete(job[file]);
        OutsideTool.Run("mkfifo", [job[file]]);
        var runs = Task.Run(() =>
            new[] { CliRun.Of("sewn", job.Folder, "1"), CliRun.Of("sewn", job.Folder), CliRun.Of("make", job.Folder) });
        Assert.True(await Task.WhenAny(runs, Task.Delay(TimeSpan.FromMinutes(3))) == runs, $"{file} was waited for");
        Assert.All(await runs, r => Assert.True(r.Status is 0 or 1 or 2, r.Errors));
    }
}

using System.Text;
using NameBand.Job;
using NameBand.Output;
using Xunit;

namespace NameBand.Tests.JobRoom;

public class JobLockTests
{
    [SkippableFact]
    public void What_a_link_in_the_locks_place_leads_to_is_not_written_to()
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs the right to make links");
        using var folder = new TemporaryFolder().With("job/job.json", "{}").With("letter.txt", "my own words");
        File.CreateSymbolicLink(folder["job/.nameband-lock"], folder["letter.txt"]);
        using (var held = JobLock.Take(folder["job"]).Value)
        {
            Assert.NotNull(held);
            Assert.Null(JobLock.Take(folder["job"]).Value);
        }

        Assert.Equal("my own words", File.ReadAllText(folder["letter.txt"]));
        Assert.Equal(["job.json"], Directory.EnumerateFiles(folder["job"]).Select(f => Path.GetFileName(f)));
    }

    [SkippableFact]
    public void A_log_that_is_a_link_is_refused_and_what_it_leads_to_stays()
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs the right to make links");
        using var folder = new TemporaryFolder()
            .With("job/job.json",
                """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "400 mm" }, "lettering": { "height": "8 mm" } }""")
            .With("job/names.csv", "name\nOrla Penhale\n").With("letter.txt", "");
        Bander.Make(folder["job"]);
        File.CreateSymbolicLink(folder["job/sewing-log.csv"], folder["letter.txt"]);
        var said = Bander.Sewn(folder["job"], null, new SewingWord(1, SewingDeed.Sewn, When: "2026-11-25T20:00"), () => { });
        Assert.Equal(ExitStatus.CannotUse, said.Status);
        Assert.Contains("link", said.Problems[0].Found.English, StringComparison.Ordinal);
        Assert.Equal("", File.ReadAllText(folder["letter.txt"]));
    }

    /// <summary>The page lays a job out anew, and mends what a killed run left, while its maker goes on changing the job.</summary>
    [Fact]
    public async Task Whoever_only_reads_a_job_keeps_nobody_from_changing_it()
    {
        using var folder = new TemporaryFolder().With("job/job.json", "{}");
        using var isDone = new CancellationTokenSource();
        var reader = Task.Run(() =>
        {
            while (!isDone.IsCancellationRequested)
            {
                Assert.Empty(OutFolder.MendInterrupted(folder["job"], folder["job/out"]));
            }
        });
        var before = JobStore.Read(folder["job"], "job.json");
        for (int i = 0; i < 3000; i++)
        {
            var saved = JobStore.Save(folder["job"], "job.json", KeptFile.Of(Encoding.ASCII.GetBytes($"{{ \"format\": {i} }}")), before);
            Assert.True(saved.Value is not null, $"change {i}: {string.Join(' ', saved.Problems.Select(p => p.Found.English))}");
            before = saved.Value;
        }

        await isDone.CancelAsync();
        await reader;
    }
}

using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>A pipe that nobody writes to, in the place of a file of ours, is answered and never waited for.</summary>
public class PipeTests
{
    private const int PatienceSeconds = 60;

    [SkippableTheory]
    [InlineData("names.csv", ExitStatus.CannotUse)]
    [InlineData("job.json", ExitStatus.CannotUse)]
    [InlineData("corrections.csv", null)]
    [InlineData("approvals.csv", null)]
    [InlineData("drift.csv", null)]
    [InlineData("sewing-log.csv", null)]
    [InlineData("sewn/plan.json", ExitStatus.CannotUse)]
    [InlineData("out/plan.json", ExitStatus.CannotUse)]
    [InlineData("face.ttf", ExitStatus.CannotUse)]
    public async Task A_pipe_is_not_waited_for(string file, ExitStatus? status)
    {
        OutsideTool.Require("mkfifo", "coreutils");
        foreach (bool linked in new[] { false, true })
        {
            using var folder = Job(file);
            PutPipe(folder[file], linked);
            var run = Task.Run(() => Bander.Make(folder.FullPath));
            Assert.True(await Task.WhenAny(run, Task.Delay(TimeSpan.FromSeconds(PatienceSeconds))) == run, $"{file} was waited for");
            var report = await run;
            Assert.True(status is null || report.Status == status, $"{file}: {report.Status}");
        }
    }

    /// <summary>A page that has the job on its table looks at its files again and again.</summary>
    [SkippableTheory]
    [InlineData("names.csv")]
    [InlineData("corrections.csv")]
    [InlineData("approvals.csv")]
    [InlineData("face.ttf")]
    public async Task A_page_does_not_wait_for_a_pipe_either(string file)
    {
        OutsideTool.Require("mkfifo", "coreutils");
        using var folder = Job(file);
        var bench = new LayoutSession(folder.FullPath);
        bench.Lay();
        PutPipe(folder[file], linked: false);
        var run = Task.Run(() => bench.Lay());
        Assert.True(await Task.WhenAny(run, Task.Delay(TimeSpan.FromSeconds(PatienceSeconds))) == run, $"{file} was waited for");
        await run;
    }

    private static TemporaryFolder Job(string file)
    {
        var folder = new TemporaryFolder();
        folder.With("names.csv", "name\r\nOrla Penhale\r\n");
        folder.With(
            "job.json",
            $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "400 mm" }, "lettering": { "height": 8, "face": "{{(file == "face.ttf" ? file : "Nunito Bold")}}", "agreedFirst": true } }""");
        if (file == "sewn/plan.json")
        {
            folder.With(
                "sewing-log.csv", "hooping,what,minutes,hand_minutes,machine,measured_mm,when,path,note,check\r\n1,sewn,8,,,,,,,\r\n");
        }

        return folder;
    }

    private static void PutPipe(string path, bool linked)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.Delete(path);
        string pipe = linked ? path + ".pipe" : path;
        OutsideTool.Run("mkfifo", [pipe]);
        if (linked)
        {
            File.CreateSymbolicLink(path, pipe);
        }
    }
}

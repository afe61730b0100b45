using NameBand.Common;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>Jobs that cannot be used: status 2, a fault with its mend, and nothing written.</summary>
public class BadJobTests
{
    private const string List = "Name\nOttilie Marshall\nBram Sedgewick\n";
    private const string Hem = "\"hem\": { \"length\": \"1 m\", \"turn\": 0 }";

    [Theory]
    [InlineData("no hem", """{ "format": 1, "lists": ["names.csv"] }""")]
    [InlineData("cut off", """{ "format": 1, "lists": ["nam""")]
    [InlineData("unknown key", """{ "format": 1, "lists": ["names.csv"], HEM, "lettring": {} }""")]
    [InlineData("newer format", """{ "format": 2, "lists": ["names.csv"], HEM }""")]
    [InlineData("negative length", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "-3 m" } }""")]
    [InlineData("unknown unit", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3 ells" } }""")]
    [InlineData("zero length", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": 0 } }""")]
    [InlineData("absurd length", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "90000 m" } }""")]
    [InlineData("not a number", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": NaN } }""")]
    [InlineData("turn-in eats the strip", """{ "format": 1, "lists": ["names.csv"], HEM, "strip": { "turnIn": "1 in" } }""")]
    [InlineData("list missing", """{ "format": 1, "lists": ["other.csv"], HEM }""")]
    [InlineData("list outside", """{ "format": 1, "lists": ["../names.csv"], HEM }""")]
    [InlineData("face unknown", """{ "format": 1, "lists": ["names.csv"], HEM, "lettering": { "face": "Nunitto Bold" } }""")]
    [InlineData("face broken", """{ "format": 1, "lists": ["names.csv"], HEM, "lettering": { "face": "broken.ttf" } }""")]
    [InlineData("face outside", """{ "format": 1, "lists": ["names.csv"], HEM, "lettering": { "face": "../x.ttf" } }""")]
    [InlineData("cloth unknown", """{ "format": 1, "lists": ["names.csv"], HEM, "fabric": "quilting coton" }""")]
    [InlineData("list empty", """{ "format": 1, "lists": ["empty.csv"], HEM }""")]
    [InlineData("list binary", """{ "format": 1, "lists": ["picture.csv"], HEM }""")]
    public void A_job_that_cannot_be_used_is_refused_whole(string what, string job)
    {
        using var folder = new TemporaryFolder()
            .With("job.json", job.Replace("HEM", Hem, StringComparison.Ordinal))
            .With("names.csv", List)
            .With("empty.csv", "")
            .With("picture.csv", [0x89, (byte)'P', (byte)'N', (byte)'G', 0, 0, 1, 2])
            .With("broken.ttf", "<html>not a face</html>");
        string[] before = Directory.GetFileSystemEntries(folder.FullPath);
        var report = Bander.Make(folder.FullPath);
        Assert.True(report.Status == ExitStatus.CannotUse, what);
        Assert.Null(report.OutFolder);
        var fault = report.Problems.First(p => p.Severity == Severity.CannotUse);
        Assert.NotEmpty(fault.Where.ToString());
        Assert.NotEmpty(fault.Mend.English);
        Assert.Equal(before.Order(), Directory.GetFileSystemEntries(folder.FullPath).Order());
    }

    [Fact]
    public void A_missing_folder_is_refused() =>
        Assert.Equal(ExitStatus.CannotUse, Bander.Make(Path.Combine(Path.GetTempPath(), "no-such-job-" + Guid.NewGuid())).Status);

    [Fact]
    public void A_list_over_fifty_megabytes_is_refused()
    {
        using var folder = new TemporaryFolder().With("job.json", $$"""{ "format": 1, "lists": ["names.csv"], {{Hem}} }""");
        using (var list = File.Create(folder["names.csv"]))
        {
            list.SetLength((50 * 1024 * 1024) + 1);
        }

        Assert.Equal(ExitStatus.CannotUse, Bander.Make(folder.FullPath).Status);
    }

    [Fact]
    public void A_folder_with_someone_elses_files_is_not_written_to()
    {
        using var folder = new TemporaryFolder()
            .With("job.json", $$"""{ "format": 1, "lists": ["names.csv"], {{Hem}} }""")
            .With("names.csv", List)
            .With("holiday/photo.txt", "mine");
        var report = Bander.Make(folder.FullPath, folder["holiday"]);
        Assert.Equal(ExitStatus.CannotUse, report.Status);
        Assert.Equal(["photo.txt"], Directory.GetFileSystemEntries(folder["holiday"]).Select(Path.GetFileName));
    }

    [Fact]
    public void A_run_that_is_stopped_leaves_the_earlier_output_as_it_was()
    {
        using var folder = new TemporaryFolder()
            .With("job.json", $$"""{ "format": 1, "lists": ["names.csv"], {{Hem}} }""")
            .With("names.csv", List);
        Assert.Equal(ExitStatus.AllPlaced, Bander.Make(folder.FullPath).Status);
        var earlier = MadeFolder.Bytes(folder["out"]);
        File.AppendAllText(folder["names.csv"], "Ngozi Farrow-Bell\n");

        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => Bander.Make(folder.FullPath, null, new StopAt(stop), stop.Token));
        Assert.Equal(earlier, MadeFolder.Bytes(folder["out"]));
        Assert.Equal(
            ["job.json", "names.csv", "out"],
            Directory.GetFileSystemEntries(folder.FullPath).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(3, Bander.Make(folder.FullPath).Plan!.NameCount);
    }

    private sealed class StopAt(CancellationTokenSource stop) : IProgress<Progress>
    {
        public void Report(Progress value)
        {
            if (value.Done > 0)
            {
                stop.Cancel();
            }
        }
    }
}

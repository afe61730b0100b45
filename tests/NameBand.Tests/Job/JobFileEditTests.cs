using System.Text;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

public class JobFileEditTests
{
    private static string With(string json) =>
        Encoding.UTF8.GetString(JobFileEdit.With(Encoding.UTF8.GetBytes(json), "strip", "shortening", "0.008"));

    [Theory]
    [InlineData("{ \"strip\": { \"shortening\": 0.01, \"rounds\": 2 } }", "{ \"strip\": { \"shortening\": 0.008, \"rounds\": 2 } }")]
    [InlineData("{ \"strip\": { \"rounds\": 2 } }", "{ \"strip\": { \"shortening\": 0.008, \"rounds\": 2 } }")]
    [InlineData("{ \"strip\": {} }", "{ \"strip\": { \"shortening\": 0.008 } }")]
    [InlineData("{\"strip\":{\"rounds\":2}}", "{\"strip\":{\"shortening\": 0.008, \"rounds\":2}}")]
    [InlineData("{\r\n  \"format\": 1\r\n}\r\n", "{\r\n  \"strip\": { \"shortening\": 0.008 },\r\n  \"format\": 1\r\n}\r\n")]
    [InlineData(
        "{\n\t\"title\": \"strip { shortening\",\n\t\"strip\": {\n\t\t\"rounds\": 2\n\t}\n}",
        "{\n\t\"title\": \"strip { shortening\",\n\t\"strip\": {\n\t\t\"shortening\": 0.008,\n\t\t\"rounds\": 2\n\t}\n}")]
    [InlineData("\ufeff{ \"strip\": { \"shortening\" : \t1e-2 } }", "\ufeff{ \"strip\": { \"shortening\" : \t0.008 } }")]
    [InlineData(
        "{ \"hem\": { \"shortening\": 1 }, \"strip\": { \"shortening\": 2 } }",
        "{ \"hem\": { \"shortening\": 1 }, \"strip\": { \"shortening\": 0.008 } }")]
    public void Only_the_figure_changes(string before, string after)
    {
        Assert.Equal(after, With(before));
        using var whole = System.Text.Json.JsonDocument.Parse(With(before).TrimStart('\ufeff'));
        Assert.Equal(0.008, whole.RootElement.GetProperty("strip").GetProperty("shortening").GetDouble());
    }

    [Fact]
    public void Setting_it_twice_is_setting_it_once() => Assert.Equal(With("{ \"a\": 1 }"), With(With("{ \"a\": 1 }")));

    [Fact]
    public void A_file_in_another_encoding_or_a_link_is_left_alone()
    {
        using var wide = new TemporaryFolder().With("job.json", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("{}")]);
        byte[] before = File.ReadAllBytes(wide["job.json"]);
        Assert.Equal(Severity.CannotUse, JobFileEdit.SetNumber(wide.FullPath, "strip", "shortening", "0.008")!.Severity);
        Assert.Equal(before, File.ReadAllBytes(wide["job.json"]));

        using var linked = new TemporaryFolder().With("real.json", "{}");
        File.CreateSymbolicLink(linked["job.json"], linked["real.json"]);
        Assert.NotNull(JobFileEdit.SetNumber(linked.FullPath, "strip", "shortening", "0.008"));
        Assert.Equal("{}", File.ReadAllText(linked["real.json"]));
    }

    [Fact]
    public void Nothing_stays_beside_the_file_and_its_rights_stay()
    {
        using var folder = new TemporaryFolder().With("job.json", "{ }");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(folder["job.json"], UnixFileMode.UserRead | UnixFileMode.UserWrite);
        }

        Assert.Null(JobFileEdit.SetNumber(folder.FullPath, "strip", "shortening", "0.008"));

        Assert.Equal([folder["job.json"]], Directory.GetFiles(folder.FullPath));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(folder["job.json"]));
        }
    }
}

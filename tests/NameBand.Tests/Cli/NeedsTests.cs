using System.Text.Json;
using NameBand.Pipeline.Stages;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>
/// A fault of the whole job is not to be missed among held rows: it stands before them, uncut, in what <c>make</c> says, in
/// its JSON, in plan.json and in the page to read first.
/// </summary>
public class NeedsTests
{
    private const int HeldRows = 30;
    private const string TooLong = "The names need ";

    [Theory]
    [InlineData("needlePath")]
    [InlineData("traced")]
    public void A_fault_of_the_whole_job_stands_before_many_held_rows_everywhere(string way)
    {
        using var folder = Folder(way);
        var said = CliRun.Of("make", folder.FullPath);
        Assert.Equal((1, ""), (said.Status, said.Errors));
        AssertFirst(said.OutOnOneLine, "names.csv, line ");
        AssertFirst(string.Join(
            ' ', File.ReadAllText(folder["out/read-me-first.txt"]).Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)),
            "names.csv, line ");
        Assert.Contains(
            $"and {HeldRows - 12} more rows are held; plan.json has them all, under problems.", said.OutOnOneLine,
            StringComparison.Ordinal);

        using var plan = JsonDocument.Parse(File.ReadAllBytes(folder["out/plan.json"]));
        using var answer = JsonDocument.Parse(CliRun.Of("make", folder.FullPath, "--json").Out);
        var kept = Texts(plan.RootElement, "text");
        Assert.StartsWith(TooLong, kept[0].Text, StringComparison.Ordinal);
        Assert.Equal(HeldRows, kept.Count(p => p.IsOfRow));
        Assert.Equal([.. kept.OrderBy(p => p.IsOfRow)], kept);
        Assert.Equal(kept, Texts(answer.RootElement, "found"));
        Assert.All(
            kept.Where(p => !p.IsOfRow), p => Assert.Contains(p.Text, said.OutOnOneLine.Replace('\u00a0', ' '), StringComparison.Ordinal));
    }

    [Fact]
    public void However_many_faults_the_whole_job_has_each_is_told()
    {
        using var folder = new TemporaryFolder()
            .With("names.csv",
                "name\n" + string.Concat(Enumerable.Range(0, 80)
                .Select(i => $"Bo Reed {(char)('A' + (i / 26))}{(char)('a' + (i % 26))}\n")));
        string hems = string.Join(", ", Enumerable.Repeat("\"60 mm\"", 16));
        folder.With(
            "job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": [{{hems}}] }, "strip": { "rounds": 16 }, "way": "traced" }""");
        string said = CliRun.Of("make", folder.FullPath).OutOnOneLine;
        Assert.All(Enumerable.Range(1, 16), round => Assert.Contains($" {round}. round {round} ", said, StringComparison.Ordinal));
        Assert.DoesNotContain(" more", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_that_needs_nobody_says_nothing_of_it_in_its_files()
    {
        using var folder = new TemporaryFolder().With("names.csv", "name\nBo Reed\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "600 mm" } }""");
        Assert.Equal(0, CliRun.Of("make", folder.FullPath).Status);
        using var plan = JsonDocument.Parse(File.ReadAllBytes(folder["out/plan.json"]));
        Assert.Equal(0, plan.RootElement.GetProperty("problems").GetArrayLength());
        Assert.DoesNotContain("Before anything else", File.ReadAllText(folder["out/read-me-first.txt"]), StringComparison.Ordinal);
    }

    private static TemporaryFolder Folder(string way)
    {
        // Signs that no letter face has are held, each row for itself.
        string held =
            string.Concat(Enumerable.Range(0, HeldRows).Select(i => $"Wenna {(char)('A' + (i / 26))}{(char)('a' + (i % 26))} \u26f5\n"));
        return new TemporaryFolder().With("names.csv", "name\n" + held + "Ilse Varga\nTobiah Quill\n")
            .With("job.json",
                $$"""{ "format": 1, "way": "{{way}}", "lists": ["names.csv"], "hem": { "length": "100 mm" }, "lettering": { "height": "10 mm" } }""");
    }

    private static void AssertFirst(string text, string row)
    {
        int fault = text.IndexOf(TooLong, StringComparison.Ordinal);
        int held = text.IndexOf(row, StringComparison.Ordinal);
        Assert.True(fault >= 0 && held > fault, $"The fault at {fault}, the first held row at {held}.");
    }

    private static List<(string Text, bool IsOfRow)> Texts(JsonElement root, string key) =>
    [
        .. root.GetProperty("problems").EnumerateArray().Where(p => p.GetProperty("severity").GetString() != "note")
            .Select(p => (p.GetProperty(key).GetString()!, p.GetProperty("where").TryGetProperty("line", out _))),
    ];
}

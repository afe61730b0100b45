using NameBand.Job;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>What can be undone is there after a restart.</summary>
public class HistoryFileTests
{
    private static TemporaryFolder Folder() => new TemporaryFolder()
        .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" } }""")
        .With("names.csv", "name\nOttilie Marsh\nBram Sedgewick\n");

    private static Worktable Open(TemporaryFolder folder)
    {
        var table = new Worktable(folder.FullPath);
        table.Open();
        return table;
    }

    private static string Job(TemporaryFolder folder) => File.ReadAllText(folder["job.json"]);

    [Fact]
    public async Task Steps_are_undone_and_done_again_after_a_restart()
    {
        using var folder = Folder();
        string first = Job(folder);
        using (var table = Open(folder))
        {
            Assert.Empty(await table.ChangeAsync("one", JobEdit.Text("title", "One")));
            Assert.Empty(await table.ChangeAsync("two", JobEdit.Text("title", "Two")));
            Assert.Empty(await table.ChangeAsync("three", JobEdit.Text("title", "Three")));
            Assert.Empty(await table.UndoAsync());
        }

        using (var table = Open(folder))
        {
            Assert.Equal(("two", "three"), (table.Now.Undo, table.Now.Redo));
            Assert.Empty(await table.RedoAsync());
            Assert.Contains("Three", Job(folder), StringComparison.Ordinal);
            Assert.Empty(await table.UndoAsync());
            Assert.Empty(await table.UndoAsync());
        }

        using (var table = Open(folder))
        {
            Assert.Empty(await table.UndoAsync());
            Assert.Equal(first, Job(folder));
            Assert.Null(table.Now.Undo);
        }
    }

    /// <summary>Stopped while it saves: job.json without its step of undo would be half of it, and nothing may come afterwards.</summary>
    [Fact]
    public async Task A_page_that_ends_while_it_saves_ends_when_all_is_saved()
    {
        using var folder = Folder();
        var table = Open(folder);
        var saving = table.ChangeAsync("one", JobEdit.Text("title", "One"));
        table.Dispose();
        Assert.Contains("One", Job(folder), StringComparison.Ordinal);
        Assert.Equal(["one"], HistoryFile.Read(folder.FullPath).Steps!.Back.Select(s => s.What));
        Assert.Empty(await saving);
        Assert.Empty(await table.ChangeAsync("two", JobEdit.Text("title", "Two")));
        Assert.DoesNotContain("Two", Job(folder), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_changed_outside_between_is_a_step_of_its_own()
    {
        using var folder = Folder();
        using (var table = Open(folder))
        {
            await table.ChangeAsync("one", JobEdit.Text("title", "One"));
            await table.ChangeAsync("two", JobEdit.Text("title", "Two"));
            await table.UndoAsync();
        }

        string one = Job(folder);
        folder.With("job.json", one.Replace("One", "By hand", StringComparison.Ordinal));
        using var again = Open(folder);
        Assert.Equal(("the change made outside", null), (again.Now.Undo, again.Now.Redo));
        Assert.Empty(await again.UndoAsync());
        Assert.Equal(one, Job(folder));
        Assert.Equal("one", again.Now.Undo);
    }

    [Theory]
    [InlineData("")]
    [InlineData("no JSON")]
    [InlineData("null")]
    [InlineData("""{ "Format": 1 }""")]
    [InlineData("""{ "Format": 1, "Files": { "AB": "AAAA" }, "Now": { "What": "", "Files": [] }, "Back": [], "Forth": [] }""")]
    [InlineData("""{ "Format": 1, "Files": {}, "Now": { "What": "", "Files": ["none", "none"] }, "Back": [{}], "Forth": null }""")]
    public async Task A_damaged_file_is_told_and_undo_begins_anew(string damaged)
    {
        using var folder = Folder().With(HistoryFile.Name, damaged);
        using var table = Open(folder);
        Assert.Null(table.Now.Undo);
        Assert.Contains("undo starts again from here", table.Now.UndoLost!.English, StringComparison.Ordinal);
        Assert.Empty(await table.ChangeAsync("one", JobEdit.Text("title", "One")));
        Assert.Equal("one", table.Now.Undo);
        Assert.False(HistoryFile.Read(folder.FullPath).IsDamaged);
    }

    /// <summary>All of it can be read, and one content is not that of its fingerprint: it would be brought back as hers.</summary>
    [Fact]
    public async Task A_content_that_is_not_what_was_kept_is_never_brought_back()
    {
        using var folder = Folder();
        using (var table = Open(folder))
        {
            Assert.Empty(await table.ChangeAsync("one", JobEdit.Text("title", "One")));
        }

        Assert.False(HistoryFile.Read(folder.FullPath).IsDamaged);
        string kept = File.ReadAllText(folder[HistoryFile.Name]);
        string held = Convert.ToBase64String(File.ReadAllBytes(folder["job.json"])).Replace("+", "\\u002B", StringComparison.Ordinal);
        Assert.Contains(held, kept, StringComparison.Ordinal);
        string other = Convert.ToBase64String("{ \"format\": 1, \"title\": \"Two\" }"u8.ToArray());
        File.WriteAllText(folder[HistoryFile.Name], kept.Replace(held, other, StringComparison.Ordinal));
        Assert.True(HistoryFile.Read(folder.FullPath).IsDamaged);
        using var after = Open(folder);
        Assert.Null(after.Now.Undo);
    }

    [Fact]
    public async Task A_link_in_its_place_is_not_followed_and_long_steps_go_the_oldest_first()
    {
        using var folder = Folder().With("elsewhere.txt", "somebody's");
        File.CreateSymbolicLink(folder[HistoryFile.Name], folder["elsewhere.txt"]);
        using (var table = Open(folder))
        {
            Assert.Empty(await table.ChangeAsync("one", JobEdit.Text("title", "One")));
            Assert.Equal("somebody's", File.ReadAllText(folder["elsewhere.txt"]));
        }

        File.Delete(folder[HistoryFile.Name]);
        var big = Enumerable.Range(0, 4).Select(
            i => ($"step {i}", new JobFiles(KeptFile.Of(new byte[2_000_000 + i]), KeptFile.None, KeptFile.None))).ToList();
        HistoryFile.Keep(folder.FullPath, new HistoryFile.Steps(big[0].Item2, [.. big], []));
        Assert.Equal(["step 3"], HistoryFile.Read(folder.FullPath).Steps!.Back.Select(s => s.What));
        Assert.True(new FileInfo(folder[HistoryFile.Name]).Length <= 8_000_000);
    }
}

using System.Runtime.Versioning;
using NameBand.Web.Serving;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>The secret of a job's worktable: the same from one start to the next, and nobody else's.</summary>
[UnsupportedOSPlatform("windows")]
public sealed class PageKeyStoreTests : IDisposable
{
    private const UnixFileMode ForOne = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly TemporaryFolder _data = new();
    private readonly TemporaryFolder _job = new();

    private string Folder => _data["nameband"];

    private string File => Assert.Single(Directory.GetFiles(Folder, "*.key"));

    public void Dispose()
    {
        _data.Dispose();
        _job.Dispose();
    }

    [Fact]
    public void A_start_finds_the_secret_and_the_port_of_the_one_before()
    {
        var first = Store().Of(_job.FullPath);
        Assert.Equal(0, first.Port);
        Assert.NotNull(Store().Keep(_job.FullPath, first, 41234, "http://127.0.0.1:41234/open/x"));

        var second = Store().Of(_job.FullPath + Path.DirectorySeparatorChar);

        Assert.Equal(first.Key.Word, second.Key.Word);
        Assert.Equal(first.Key.Cookie, second.Key.Cookie);
        Assert.Equal(41234, second.Port);
        Assert.Null(second.Doubt);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_job.FullPath));
    }

    [Fact]
    public void Each_job_has_a_secret_of_its_own_of_which_nothing_tells_another_part()
    {
        var one = Store().Of(_job["one"]).Key;
        var two = Store().Of(_job["two"]).Key;

        Assert.NotEqual(one.Word, two.Word);
        Assert.False(two.Opens(one.Word));
        Assert.True(one.Opens(one.Word.Replace("-", "", StringComparison.Ordinal).ToUpperInvariant()));
        Assert.False(one.Opens(one.Word[..^1]));
        Assert.False(one.Opens(""));
        Assert.Matches("^([a-hjkmnp-z02-9]{5}-){3}[a-hjkmnp-z02-9]{5}$", one.Word);
        Assert.DoesNotContain(Convert.ToHexStringLower(one.ToBytes()), one.Cookie, StringComparison.Ordinal);
        Assert.NotEqual(PageKey.New().Word, PageKey.New().Word);
    }

    [SkippableFact]
    public void Only_this_account_may_read_what_is_kept()
    {
        RequireModes();
        var kept = Store().Of(_job.FullPath);
        string opener = Store().Keep(_job.FullPath, kept, 41234, "http://127.0.0.1:41234" + PageKey.Way + kept.Key.Word)!;

        Assert.Equal(ForOne | UnixFileMode.UserExecute, System.IO.File.GetUnixFileMode(Folder));
        Assert.Equal(ForOne, System.IO.File.GetUnixFileMode(File));
        Assert.Equal(ForOne, System.IO.File.GetUnixFileMode(opener));
        Assert.Contains(kept.Key.Word, System.IO.File.ReadAllText(opener), StringComparison.Ordinal);
        Assert.Equal(3, Directory.GetFiles(Folder).Length);
    }

    [SkippableTheory]
    [InlineData(UnixFileMode.GroupRead)]
    [InlineData(UnixFileMode.OtherRead)]
    [InlineData(UnixFileMode.OtherWrite)]
    public void A_file_that_others_may_open_is_not_trusted_any_longer(UnixFileMode more)
    {
        RequireModes();
        var first = Store().Of(_job.FullPath);
        System.IO.File.SetUnixFileMode(File, ForOne | more);

        var second = Store().Of(_job.FullPath);

        Assert.NotEqual(first.Key.Word, second.Key.Word);
        Assert.Contains("made again", second.Doubt!.Found.English, StringComparison.Ordinal);
        Assert.Equal(ForOne, System.IO.File.GetUnixFileMode(File));
        Assert.Equal(second.Key.Word, Store().Of(_job.FullPath).Key.Word);
    }

    [SkippableTheory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_link_is_neither_read_nor_written_through(bool isSound)
    {
        RequireModes();
        var first = Store().Of(_job.FullPath);
        string path = File, elsewhere = _job["elsewhere"];
        string there = isSound ? System.IO.File.ReadAllText(path) : "her letter\n";
        System.IO.File.WriteAllText(elsewhere, there);
        System.IO.File.SetUnixFileMode(elsewhere, ForOne);
        System.IO.File.Delete(path);
        System.IO.File.CreateSymbolicLink(path, elsewhere);

        var second = Store().Of(_job.FullPath);

        Assert.NotEqual(first.Key.Word, second.Key.Word);
        Assert.Equal(there, System.IO.File.ReadAllText(elsewhere));
        Assert.Null(new FileInfo(path).LinkTarget);
        Assert.Equal(second.Key.Word, Store().Of(_job.FullPath).Key.Word);
    }

    [SkippableFact]
    public void A_folder_that_others_may_open_or_that_is_a_link_keeps_no_secret()
    {
        RequireModes();
        Directory.CreateDirectory(Folder);
        System.IO.File.SetUnixFileMode(Folder, ForOne | UnixFileMode.UserExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute);
        var wide = Store().Of(_job.FullPath);
        Assert.Contains($"chmod 700 '{Folder}'", wide.Doubt!.Mend.English, StringComparison.Ordinal);
        Assert.Null(Store().Keep(_job.FullPath, wide, 41234, "http://127.0.0.1:41234/"));
        Assert.Empty(Directory.EnumerateFileSystemEntries(Folder));

        Directory.Delete(Folder);
        Directory.CreateDirectory(_job["away"], ForOne | UnixFileMode.UserExecute);
        Directory.CreateSymbolicLink(Folder, _job["away"]);
        Assert.NotNull(Store().Of(_job.FullPath).Doubt);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_job["away"]));
    }

    [Fact]
    public void An_account_without_a_data_folder_has_a_secret_for_one_run()
    {
        var store = new PageKeyStore(null);
        var first = store.Of(_job.FullPath);

        Assert.NotEqual(first.Key.Word, store.Of(_job.FullPath).Key.Word);
        Assert.Contains("is not kept", first.Doubt!.Found.English, StringComparison.Ordinal);
        Assert.Null(store.Keep(_job.FullPath, first, 41234, "http://127.0.0.1:41234/"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("1\n00\n0\n")]
    [InlineData("2\n{0}\n0\n")]
    [InlineData("1\n{0}\n65536\n")]
    [InlineData("1\n{0}\n-1\n")]
    [InlineData("1\n{0}\n")]
    public void A_file_that_is_spoilt_is_made_anew(string text)
    {
        Store().Of(_job.FullPath);
        System.IO.File.WriteAllText(File, text.Replace("{0}", new string('a', 64), StringComparison.Ordinal));

        var kept = Store().Of(_job.FullPath);

        Assert.NotEqual(new PageKey(Convert.FromHexString(new string('a', 64))).Word, kept.Key.Word);
        Assert.Equal(kept.Key.Word, Store().Of(_job.FullPath).Key.Word);
    }

    [Fact]
    public void Many_that_start_at_once_have_one_secret()
    {
        for (int round = 0; round < 20; round++)
        {
            string job = _job["round " + round];
            var found = new KeptKey[8];
            using var together = new Barrier(found.Length);
            var threads = Enumerable.Range(0, found.Length).Select(i => new Thread(() =>
            {
                together.SignalAndWait();
                found[i] = Store().Of(job);
            })).ToList();
            threads.ForEach(t => t.Start());
            threads.ForEach(t => t.Join());

            Assert.All(found, f => Assert.Null(f.Doubt?.Found));
            Assert.Single(found.Select(f => f.Key.Word).Distinct());
        }

        Assert.Empty(Directory.GetFiles(Folder, "*.new"));
    }

    private static void RequireModes() => Skip.If(OperatingSystem.IsWindows(), "skipped: needs rights of files as Unix has them");

    private PageKeyStore Store() => new(Folder);
}

using System.Text;
using System.Text.Json;
using Xunit;

namespace NameBand.Tests.House;

/// <summary>What a stranger looks for first in a repository is there, and says what is so.</summary>
public sealed class RepositoryTests
{
    private static readonly string[] Projects =
        ["src/NameBand.Cli", "src/NameBand.Core", "src/NameBand.Web", "tests/NameBand.Tests", "tests/NameBand.Browser",
            "tests/NameBand.Benchmarks"];

    /// <summary>Renewed with <c>NAMEBAND_RENEW_NOTICES=1</c>, after a package or a face has changed.</summary>
    [Fact]
    public void Notices_and_the_bill_of_materials_are_those_of_the_lock_files_and_faces()
    {
        var packages = Notices.Packages();
        Assert.True(packages.Count(p => p.Ships) > 15 && packages.Exists(p => !p.Ships));
        Assert.All(packages, p => Assert.True(p.Licence.Length > 0 && p.Authors.Length > 0, p.Id));
        foreach (
            var (file, text) in new[] { (Notices.NoticesFile, Notices.NoticesText(packages)),
            (Notices.BillFile, Notices.Bill(packages, Version())) })
        {
            if (Environment.GetEnvironmentVariable("NAMEBAND_RENEW_NOTICES") == "1")
            {
                File.WriteAllText(Path.Combine(Repository.Root, file), text);
            }

            Assert.True(Repository.Read(file) == text,
                $"{file} is not what the packages and faces say: renew it with NAMEBAND_RENEW_NOTICES=1.");
        }
    }

    /// <summary>Scripts that others made lie there as they were published, each with the licence.</summary>
    [Fact]
    public void Scripts_of_others_are_unchanged()
    {
        Assert.Equal(Notices.Scripts.Select(s => s.File).Append("LICENSE.txt").Order(StringComparer.Ordinal),
            Directory.GetFiles(Path.Combine(Repository.Root, Notices.ScriptFolder)).Select(f => Path.GetFileName(f)!)
                .Order(StringComparer.Ordinal));
        Assert.All(Notices.Scripts, s => Assert.Equal(s.Sha256, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(
            File.ReadAllBytes(Path.Combine(Repository.Root, Notices.ScriptFolder, s.File))))));
        Assert.Contains("| three | MIT |", Repository.Read("docs/dependencies.md"), StringComparison.Ordinal);
    }

    /// <summary>A lock file names versions and hashes, and no place to fetch them from.</summary>
    [Fact]
    public void Every_project_locks_its_packages()
    {
        Assert.Equal(Projects.Order(StringComparer.Ordinal),
            Repository.Files("", ".csproj").Select(f => Path.GetDirectoryName(f.Path)!.Replace('\\', '/'))
            .Where(f => !f.EndsWith("FastStart", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        foreach (string project in Projects)
        {
            string text = Repository.Read($"{project}/packages.lock.json");
            Assert.DoesNotContain("://", text, StringComparison.Ordinal);
            using var locked = JsonDocument.Parse(text);
            Assert.All(locked.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(f => f.Value.EnumerateObject()),
                p => Assert.True(p.Value.GetProperty("type").GetString() == "Project"
                    || p.Value.GetProperty("contentHash").GetString()!.Length == 88, p.Name));
        }
    }

    /// <summary>Where the sources lay when it was built would make another program of the same sources; two-builds.sh compares two
    /// builds whole.</summary>
    [Theory]
    [InlineData("NameBand.Core.dll")]
    [InlineData("NameBand.Web.dll")]
    [InlineData("nameband.dll")]
    public void The_program_does_not_tell_where_it_was_built(string library)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, library));
        string place = Path.GetFileName(Path.TrimEndingDirectorySeparator(Repository.Root)) + Path.DirectorySeparatorChar + "src";
        Assert.True(bytes.AsSpan().IndexOf("/nameband/src/"u8) > 0);
        Assert.All(new[] { Encoding.UTF8, Encoding.Unicode }, e => Assert.True(bytes.AsSpan().IndexOf(e.GetBytes(place)) < 0, place));
    }

    [Fact]
    public void The_version_is_one_and_the_changelog_knows_it()
    {
        Assert.Equal(Version(), typeof(Bander).Assembly.GetName().Version!.ToString(3));
        Assert.StartsWith($"# Changes\n\n## {Version()}\n", Repository.Read("CHANGELOG.md"), StringComparison.Ordinal);
        Assert.StartsWith("MIT License\n", Repository.Read("LICENSE"), StringComparison.Ordinal);
        using var sdk = JsonDocument.Parse(Repository.Read("global.json"));
        Assert.Equal("latestFeature", sdk.RootElement.GetProperty("sdk").GetProperty("rollForward").GetString());
    }

    private static string Version() =>
        System.Text.RegularExpressions.Regex.Match(Repository.Read("Directory.Build.props"), "<Version>([^<]+)</Version>").Groups[1].Value;
}

using System.Text.RegularExpressions;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.Docs;

/// <summary>docs/README.md says where everything is, and is held to it.</summary>
public sealed partial class IndexTests
{
    private static readonly string[] Shelves = Repository.Read("docs/README.md").Split("\n## ");

    [Fact]
    public void Every_page_stands_on_one_shelf()
    {
        var listed = Page().Matches(Repository.Read("docs/README.md")).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(listed.Distinct(), listed);
        Assert.Equal(
            Directory.GetFiles(Path.Combine(Repository.Root, "docs"), "*.md").Select(f => Path.GetFileName(f))
                .Where(f => f != "README.md").Order(StringComparer.Ordinal),
            listed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Everything_at_the_top_of_the_repository_is_told()
    {
        string[] passing = [".git", "bin", "obj", "bundles", "TestResults", ".vs", ".idea"];
        var there = Directory.GetFileSystemEntries(Repository.Root).Select(e => Path.GetFileName(e))
            .Where(e => !passing.Contains(e)).Order(StringComparer.Ordinal);
        string told = Shelves.Single(s => s.StartsWith("The repository", StringComparison.Ordinal));
        Assert.Equal(there, Place().Matches(told).Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal));
    }

    /// <summary>Words as a reader counts them; tables and commands count too.</summary>
    [Fact]
    public void What_makers_are_to_read_stays_short()
    {
        string shelf = Shelves.Single(s => s.StartsWith("For makers: to read", StringComparison.Ordinal));
        int words = Page().Matches(shelf).Sum(m =>
            Repository.Read("docs/" + m.Groups[1].Value).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.InRange(words, 5000, 9000);
    }

    [GeneratedRegex(@"^\| \[[\w-]+\.md\]\(([\w-]+\.md)\) \|", RegexOptions.Multiline)]
    private static partial Regex Page();

    [GeneratedRegex(@"^\| `([\w.-]+)` \|", RegexOptions.Multiline)]
    private static partial Regex Place();
}

using System.Text.RegularExpressions;
using NameBand.Job;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>docs/job-file.md says of every key what the reader does with it, and its examples are read.</summary>
public partial class JobFilePageTests
{
    private static readonly string Page = Repository.Read("docs/job-file.md");

    [Fact]
    public void Every_key_stands_on_the_page_as_the_reader_takes_it() =>
        Assert.Equal(
            JobKeys.All.Select(k => $"{k.Path} | {k.Takes} | {k.DefaultText}").Order(StringComparer.Ordinal),
            Row().Matches(Page).Select(m => $"{m.Groups[1].Value} | {m.Groups[2].Value} | {m.Groups[3].Value.Trim('`')}")
            .Order(StringComparer.Ordinal));

    [Fact]
    public void The_examples_of_the_page_are_jobs()
    {
        var examples = Example().Matches(Page);
        Assert.Equal(2, examples.Count);
        Assert.All(examples, e => Assert.Empty(JobReaderTests.ReadAll(e.Groups[1].Value).Problems));
    }

    [Fact]
    public void The_sample_of_the_repository_is_a_job() =>
        Assert.Empty(JobReader.Read(Path.Combine(Repository.Root, "samples", "lantern-walk")).Problems);

    [GeneratedRegex(@"^\| `([\w.]+)` \| ([^|]*) \| ([^|]*) \| [^|]*\w[^|]* \|\r?$", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(@"```json\s(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}

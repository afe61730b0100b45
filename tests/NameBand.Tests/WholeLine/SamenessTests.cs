using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>The built command line gives the same bytes whatever the number of cores, the culture, the time zone and the working
/// folder.</summary>
public class SamenessTests
{
    [SkippableFact]
    public void The_surroundings_are_those_the_processes_find()
    {
        Skip.If(OperatingSystem.IsWindows(),
            "skipped: needs a system that takes culture and time zone from the environment (Linux, macOS)");
        using var job = new TemporaryFolder();
        Assert.All(Surroundings.All(job), s => Assert.Equal(s.Expected(), s.Found()));
    }

    [Theory]
    [InlineData("lantern-walk", 2)]
    [InlineData("quay-banner", 2)]
    [InlineData("boat-banner", 2)]
    public void Every_byte_of_a_sample_is_the_same(string sample, int surroundings)
    {
        using var job = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "samples", sample)))
        {
            File.Copy(file, job[Path.GetFileName(file)]);
        }

        Compare(job, surroundings);
    }

    [Fact]
    public void Every_byte_of_a_list_from_right_to_left_is_the_same()
    {
        using var job = new TemporaryFolder()
            .With("job.json", """
                { "format": 1, "title": "فوانيس النهر", "lists": ["names.csv"], "hem": { "length": "1.2 m", "turn": 0.75 },
                  "strip": { "rounds": "asNeeded" }, "lettering": { "order": "alphabetical", "collation": "ar" },
                  "files": { "svg": true, "program": true, "loadMap": true } }
                """)
            .With("names.csv", "Name\nنور الحداد\nليلى السعيد\nيوسف ابن عمر\nנועה לוי\nאיתן פרץ\nIlıca Iğdır\n");
        // Pictures of thanks and playbacks are the same work for sixty names as for seven.
        Compare(job, 2, "--thanks", "--playback");
    }

    private static void Compare(TemporaryFolder job, int surroundings, params string[] more)
    {
        SortedDictionary<string, byte[]>? first = null;
        string said = "";
        foreach (var around in Surroundings.All(job).Take(surroundings))
        {
            string to = job[$"made{Guid.NewGuid():N}"];
            var run = around.Print(job.FullPath, to, more);
            Assert.True(run.Status is 0 or 1, run.Errors);
            var made = MadeFolder.Bytes(to);
            string shown = Path.GetRelativePath(around.WorkingFolder, to);
            string saidHere = run.Out.Replace("./" + shown, "OUT", StringComparison.Ordinal)
                .Replace(shown, "OUT", StringComparison.Ordinal);
            string shownJob = Path.GetRelativePath(around.WorkingFolder, job.FullPath);
            saidHere = Unwrapped(saidHere).Replace($"sewn {shownJob} ", "sewn JOB ", StringComparison.Ordinal);
            Directory.Delete(to, recursive: true);
            if (first is null)
            {
                (first, said) = (made, saidHere);
                Assert.Contains("plan.json", made.Keys);
                Assert.Contains(made.Keys, k => k.EndsWith(".pdf", StringComparison.Ordinal));
                continue;
            }

            Assert.Equal(first.Keys, made.Keys);
            Assert.All(first, file => Assert.True(file.Value.AsSpan().SequenceEqual(made[file.Key]), $"{file.Key} differs with {around}"));
            Assert.Equal(said, saidHere);
        }
    }

    /// <summary>Without line breaks, which fall elsewhere in a longer path.</summary>
    private static string Unwrapped(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}

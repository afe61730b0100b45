using System.Text.Json;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>What programs read of a word that was said: of which hooping or round, and of nothing else.</summary>
public sealed class SewnAnswerTests
{
    [Fact]
    public void A_word_is_told_of_the_hooping_or_the_round_that_it_was_said_of()
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "0.7 m", "turn": 0.5 }, "strip": { "rounds": 2 } }""");
        int hoopings = Bander.Make(folder.FullPath).Plan!.Hoopings.Length;
        Assert.True(hoopings > 1, "one hooping");

        Assert.Equal("deed sewn, hooping 1, minutes 7", Said("1", "--minutes", "7"));
        for (int hooping = 2; hooping <= hoopings; hooping++)
        {
            Said(hooping.ToString(System.Globalization.CultureInfo.InvariantCulture));
        }

        Assert.Equal("deed done, round 2, step cut", Said("--done", "cut", "--round", "2"));
        Assert.Equal("deed undone, round 2, step cut", Said("--undone", "cut", "--round", "2"));
        Assert.Equal("deed done, round 0, step press", Said("--done", "press"));

        string Said(params string[] words)
        {
            var run = CliRun.Of(["sewn", folder.FullPath, .. words, "--json"]);
            Assert.True(run.Status is 0 or 1, run.Out + run.Errors);
            using var told = JsonDocument.Parse(run.Out);
            return string.Join(", ", told.RootElement.GetProperty("said").EnumerateObject().Select(p => $"{p.Name} {p.Value}"));
        }
    }
}

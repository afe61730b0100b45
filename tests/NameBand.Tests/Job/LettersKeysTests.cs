using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>The keys of the ways without a file.</summary>
public class LettersKeysTests
{
    [Fact]
    public void All_of_them_are_read()
    {
        var job = JobReaderTests.ReadAll("""
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m" }, "way": "machineLetters",
              "letters": { "alphabet": "mine.csv", "sizes": ["9 mm", "6 mm"], "spacings": [0.5, "1 mm"], "gap": "0.8 mm", "has": "ABC",
                "holds": 20, "keepsLeadingBlanks": true, "forgetsWhenOff": false, "feed": "fromLeft", "tops": "left", "mirrored": true,
                "hooped": true, "readingError": 1, "secondsPerKey": 3, "positioningMinutes": 2 },
              "traced": { "mirrored": true, "sewn": "byHand", "follow": "outline", "mmPerMinute": 40 } }
            """).Value!;
        var letters = job.Letters;
        Assert.Equal([9.0, 6.0], letters.Sizes.Select(s => s.Mm));
        Assert.Equal([0.5, 1.0], letters.Spacings.Select(s => s.Mm));
        Assert.Equal(("mine.csv", 0.8, "ABC", 20), (letters.Alphabet, letters.Gap!.Value.Mm, letters.Has, letters.Holds));
        Assert.Equal(
            (true, false, StripFeed.FromLeft, false),
            (letters.KeepsLeadingBlanks, letters.ForgetsWhenOff, letters.Feed, letters.TopsRight));
        Assert.Equal(
            (true, true, 1.0, 3.0, 2.0),
            (letters.Mirrored, letters.Hooped, letters.ReadingError.Mm, letters.SecondsPerKey, letters.PositioningMinutes));
        Assert.Equal(new TracedSettings(true, true, true, 40), job.Traced);
    }

    [Fact]
    public void A_machine_without_sizes_is_refused_and_other_ways_need_none()
    {
        var machine =
            JobReaderTests.ReadAll("""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3 m" }, "way": "machineLetters" }""");
        Assert.Contains(machine.Problems, p => p.Where.Key == "letters.sizes" && p.Found.English.Contains("letter heights"));
        var path = JobReaderTests.ReadAll("""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3 m" } }""");
        Assert.Empty(path.Problems);
        Assert.Equal(250, path.Value!.Traced.PaceMmPerMinute);
        Assert.Null(path.Value.Letters.Holds);
    }

    [Fact]
    public void An_alphabet_outside_the_folder_is_refused()
    {
        var read = JobReaderTests.ReadAll(
            """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3 m" }, "letters": { "alphabet": "../x.csv" } }""");
        Assert.Contains(read.Problems, p => p.Where.Key == "letters.alphabet" && p.Found.English.Contains("outside"));
    }
}

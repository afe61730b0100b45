using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Cloth;
using NameBand.Lettering;
using NameBand.Lettering.Smallness;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchingRoom;
using NameBand.Tests.WholeLine;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>Advice that helps when it is followed, and figures that are those of the program.</summary>
public class TooLargeTests
{
    [Theory]
    [InlineData("height", "14 mm")]
    [InlineData("height", "60 mm")]
    [InlineData("least", "60 mm")]
    public void Letters_set_too_large_are_answered_by_the_height_that_fits(string key, string value)
    {
        using var folder = MadeFolder.CopySample();
        string job = Regex.Replace(File.ReadAllText(folder["job.json"]), "\"lettering\": \\{[^}]*\\},?", "");
        string With(string mm) =>
            job.Replace("\"format\": 1,", $"\"format\": 1, \"lettering\": {{ \"{key}\": \"{mm}\" }},", StringComparison.Ordinal);
        folder.With("job.json", With(value));
        using var answer = JsonDocument.Parse(CliRun.Of("make", folder.FullPath, "--json").Out);
        var first = answer.RootElement.GetProperty("problems")[0];
        Assert.Equal($"lettering.{key}", first.GetProperty("where").GetProperty("key").GetString());
        Assert.Contains("too large", first.GetProperty("found").GetString(), StringComparison.Ordinal);
        string mend = first.GetProperty("mend").GetString()!;
        string height = Regex.Match(mend, "Write \"" + key + "\": \"([0-9.]+ mm)\"").Groups[1].Value;
        Assert.All(
            answer.RootElement.GetProperty("held").EnumerateArray(),
            h => Assert.DoesNotContain("shorter form", h.GetProperty("reason").GetString(), StringComparison.Ordinal));

        // Followed, the advice places every name.
        folder.With("job.json", With(height));
        Assert.Equal(0, CliRun.Of("make", folder.FullPath).Status);
    }

    [Fact]
    public void Where_nothing_is_placed_no_round_fits_its_hem()
    {
        using var folder = new TemporaryFolder().With("names.csv", "name\nTobiah Quill\n")
            .With("job.json",
                """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "600 mm" }, "lettering": { "height": "60 mm" } }""");
        var run = CliRun.Of("make", folder.FullPath);
        Assert.Equal(1, run.Status);
        Assert.DoesNotContain("fits its hem", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.DoesNotContain("they match", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("nothing lies on it", run.OutOnOneLine, StringComparison.Ordinal);
    }

    /// <summary>In a group of larger letters it may fit by its own, where no height that all can have would do.</summary>
    [Fact]
    public void A_name_of_a_larger_group_is_told_by_how_much_its_own_letters_fit()
    {
        using var folder = new TemporaryFolder().With("names.csv", "name,gift\nWilhelmina Bartholomew,100\n").With("job.json", """
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m", "turn": 0 }, "lettering": { "height": "7 mm" },
              "columns": { "group": "gift" }, "groups": [ { "name": "patrons", "from": 50, "heightFactor": 2 } ] }
            """);
        string reason = Bander.Make(folder.FullPath).Names!.Rows[0].Reason.English;
        Assert.DoesNotContain("shorter form", reason, StringComparison.Ordinal);
        string factor = Regex.Match(reason, "Use smaller letters for it alone: with \"heightFactor\": ([0-9.]+) in").Groups[1].Value;
        folder.With("job.json", File.ReadAllText(folder["job.json"]).Replace(
            "\"columns\"", $"\"names\": [ {{ \"name\": \"Wilhelmina Bartholomew\", \"heightFactor\": {factor} }} ], \"columns\"",
            StringComparison.Ordinal));
        Assert.Equal(0, CliRun.Of("make", folder.FullPath).Status);
    }

    [Fact]
    public void A_name_that_no_sewable_height_would_fit_is_still_asked_to_be_shorter()
    {
        using var folder = new TemporaryFolder().With("names.csv", "name\nBartholomew Featherstonehaugh-Cholmondeley the Younger\n")
            .With("job.json",
                """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "600 mm" }, "lettering": { "height": "14 mm" } }""");
        Assert.Contains("Agree a shorter form with its owner", CliRun.Of("make", folder.FullPath).OutOnOneLine, StringComparison.Ordinal);
    }

    /// <summary>The answer to a word where a number is wanted is itself taken: as a number without quotes, or as the word in
    /// quotes.</summary>
    [Theory]
    [InlineData("\"two\"")]
    [InlineData("0")]
    public void A_wrong_number_of_rounds_is_answered_by_what_is_taken(string rounds)
    {
        using var folder = new TemporaryFolder().With("names.csv", "name\nBo Reed\n");
        string Job(string value) =>
            $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "600 mm", "turn": 0 }, "strip": { "rounds": {{value}} } }""";
        folder.With("job.json", Job(rounds));
        var run = CliRun.Of("names", folder.FullPath);
        Assert.Equal(2, run.Status);
        Assert.Contains("from 1 to 200, or \"asNeeded\".", run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.DoesNotContain("\"asNeeded\" without quotes", run.ErrorsOnOneLine, StringComparison.Ordinal);
        foreach (string taken in new[] { "1", "200", "\"asNeeded\"" })
        {
            folder.With("job.json", Job(taken));
            Assert.Equal(0, CliRun.Of("names", folder.FullPath).Status);
        }
    }

    /// <summary>Of a face drawn with one pen, letters are run just below the height that <c>faces</c> says, and sewn in satin
    /// just above.</summary>
    [Fact]
    public void The_height_from_which_faces_promises_satin_is_the_one_at_which_it_begins()
    {
        using var json = JsonDocument.Parse(CliRun.Of("faces", "--json").Out);
        double from = json.RootElement.GetProperty("faces").EnumerateArray()
            .Single(f => f.GetProperty("name").GetString() == "Routed Gothic").GetProperty("satinFromMm").GetDouble();
        var letter = Shelf.Name("routed-gothic", "I");
        Assert.True(IsRun(0.94 * from));
        Assert.False(IsRun(1.06 * from));
        string said = CliRun.Of("faces").OutOnOneLine.Replace('\u00a0', ' ');
        Assert.Contains(string.Create(
            CultureInfo.InvariantCulture, $"comes out {Fabric.NarrowestSatinMm:0.0} mm wide as sewn on {FaceReport.Cloth.Name}"), said,
            StringComparison.Ordinal);
        Assert.DoesNotContain("1 mm, the narrowest", said, StringComparison.Ordinal);

        bool IsRun(double heightMm) => new Stitcher(FaceReport.Cloth, heightMm).Sewn(letter.Pieces.Single().Piece).IsRun;
    }

    /// <summary>Two names that reach equally high: without the first alone the letters grow by nothing, and no height is said of
    /// it.</summary>
    [Fact]
    public void A_height_without_a_name_is_told_only_where_it_is_another()
    {
        using var folder = new TemporaryFolder().With("names.csv", "name\nÅsa Marsh\nÅke Reed\nTom Holm\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m" } }""");
        string said = CliRun.Of("make", folder.FullPath).OutOnOneLine.Replace('\u00a0', ' ');
        string height = Regex.Match(said, "letters ([0-9.]+ mm) ").Groups[1].Value;
        Assert.Contains("its accents or tall letters reach highest. · ", said, StringComparison.Ordinal);
        Assert.Contains("Without this one too letters could be ", said, StringComparison.Ordinal);
        Assert.DoesNotContain($"letters could be {height} high", said, StringComparison.Ordinal);
    }

    /// <summary>A heading stands in no list, and on no line of one.</summary>
    [Fact]
    public void A_heading_that_keeps_the_letters_small_is_called_one()
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name,Paid\nAnna Marsh,10\nBo Reed,20\n")
            .With("job.json", """
                { "format": 1, "lists": ["names.csv"], "columns": { "group": "Paid" }, "hem": { "length": "2 m", "turn": 0 },
                  "groups": [{ "name": "friends", "values": ["20"], "place": "first", "heading": "Ågot’s friends" }] }
                """);
        string said = CliRun.Of("make", folder.FullPath).OutOnOneLine;
        Assert.Contains("“Ågot’s friends” (job.json, a heading): its accents", said, StringComparison.Ordinal);
        Assert.DoesNotContain("job.json, line", said, StringComparison.Ordinal);
    }
}

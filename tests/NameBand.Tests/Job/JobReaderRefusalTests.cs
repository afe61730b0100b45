using System.Text;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>Each wrong job.json is refused with the place, what is wrong and what to do.</summary>
public class JobReaderRefusalTests
{
    public static TheoryData<string, string, string, string> BrokenKeys => new()
    {
        // What stands in the file beside the list and hem; place; found; mend.
        { "\"titel\": \"x\"", "job.json, line 3, column 3, titel", "does not know the key titel", "Did you mean title?" },
        { "\"strip\": { \"cutwith\": 50 }", "strip.cutwith", "does not know the key strip.cutwith", "Did you mean strip.cutWidth?" },
        { "\"cutWidth\": 50", "cutWidth", "does not know the key cutWidth", "Did you mean strip.cutWidth, in the group “strip”?" },
        { "\"turnin\": 50", "turnin", "does not know the key turnin", "Did you mean strip.turnIn" },
        { "\"letters\": { \"height\": 10 }", "letters.height", "does not know", "Did you mean lettering.height, in the group “lettering”?" },
        { "\"strip\": { \"height\": 10 }", "strip.height", "does not know", "Did you mean lettering.height, in the group “lettering”?" },
        { "\"bobin\": { \"height\": 10 }", "bobin", "does not know the key bobin", "Did you mean bobbin?" },
        { "\"height\": 10", "height", "does not know", "Did you mean lettering.height, in the group “lettering”?" },
        { "\"hoop\": { \"title\": 5 }", "hoop.title", "does not know", "Did you mean title, outside any group?" },
        { "\"sequins\": true", "sequins", "does not know the key sequins", "The keys here are " },
        { "\"hoop\": { \"sequins\": true }", "hoop.sequins", "does not know", "The keys in hoop are across, along, hold, spare." },
        { "\"format\": 2", "format", "is of format 2, and this NameBand reads format 1", "newer NameBand" },
        { "\"format\": \"1\"", "format", "takes a whole number, and this is the text “1”", "without quotes" },
        { "\"format\": 0", "format", "format is 0", "from 1 to 1" },
        { "\"title\": 5", "title", "title must be text, and this is the number 5.", "double quotes" },
        { "\"title\": \" \"", "title", "title is empty.", "Write something" },
        { "\"title\": \"a\", \"title\": \"b\"", "title", "title appears here a second time; the first is on line 3.", "Keep one" },
        { "\"strip\": 5", "strip", "takes a group of keys in { }, and this is the number 5", "Write for example" },
        { "\"way\": \"needlepath\"", "way", "takes \"needlePath\" or \"machineLetters\" or \"traced\"", "Did you mean \"needlePath\"?" },
        { "\"way\": null", "way", "and this is null.", "Write \"needlePath\"" },
        { "\"strip\": { \"cutWidth\": -50 }", "strip.cutWidth", "“-50” is negative.", "minus sign" },
        { "\"strip\": { \"cutWidth\": \"-2 in\" }", "strip.cutWidth", "“-2 in” is negative.", "minus sign" },
        { "\"strip\": { \"cutWidth\": 0 }", "strip.cutWidth", "strip.cutWidth is 0 mm.", "from 5 mm to 1 m" },
        { "\"strip\": { \"cutWidth\": 1e400 }", "strip.cutWidth", "“1e400” is more than 10 km.", "its unit" },
        { "\"strip\": { \"cutWidth\": \"50\" }", "strip.cutWidth", "“50” has no unit.", "\"50 mm\"" },
        { "\"strip\": { \"cutWidth\": \"2 elephants\" }", "strip.cutWidth", "“elephants” is not a unit", "mm, cm, m, in, ft and yd" },
        { "\"strip\": { \"cutWidth\": \"2 m\" }", "strip.cutWidth", "strip.cutWidth is 2 m.", "from 5 mm to 1 m" },
        { "\"strip\": { \"cutWidth\": [50] }", "strip.cutWidth", "takes a length, and this is a list in [ ].", "such as \"2 in\"" },
        { "\"strip\": { \"turnIn\": \"1 in\" }", "strip.turnIn",
        "Two turn-ins of 25.4 mm (1 in) use up the whole cut width of 50.8 mm (2 in).", "Turn in less" },
        { "\"strip\": { \"margin\": \"12.7 mm\" }", "strip.margin", "leave nothing for letters", "margin or the turn-in smaller" },
        { "\"strip\": { \"margin\": \"12 mm\" }", "strip.margin", "leave only 1.4 mm for letters", "cut the strip wider" },
        { "\"strip\": { \"shortening\": 0.1 }", "strip.shortening", "strip.shortening is 0.1.", "from 0 to just below 0.1" },
        { "\"strip\": { \"shortening\": -0.01 }", "strip.shortening", "is -0.01.", "from 0" },
        { "\"strip\": { \"rounds\": 0 }", "strip.rounds", "strip.rounds is 0.", "from 1 to 200" },
        { "\"strip\": { \"rounds\": 1.5 }", "strip.rounds", "strip.rounds is 1.5.", "a whole number" },
        { "\"strip\": { \"rounds\": 201 }", "strip.rounds", "is 201.", "to 200" },
        { "\"strip\": { \"rounds\": \"two\" }", "strip.rounds", "and this is the text “two”.", "without quotes, from 1 to 200" },
        { "\"strip\": { \"rounds\": 2 }", "hem.circlePart", "hem.circlePart is not given", "Add \"circlePart\" to hem" },
        { "\"strip\": { \"rounds\": \"asNeeded\" }", "hem.circlePart", "hem.circlePart is not given", "0 for a straight edge" },
        { "\"strip\": { \"sewn\": false }", "strip.sewn", "and this is false.", "beforeCutting" },
        { "\"lettering\": { \"height\": \"largst\" }", "lettering.height", "this is the text “largst”", "Did you mean \"largest\"?" },
        { "\"lettering\": { \"height\": \"2 mm\" }", "lettering.height", "lettering.height is 2 mm.", "from 3 mm to 200 mm" },
        { "\"lettering\": { \"least\": \"201 mm\" }", "lettering.least", "is 201 mm.", "to 200 mm" },
        { "\"lettering\": { \"spread\": \"yes\" }", "lettering.spread", "takes true or false, and this is the text “yes”.",
        "without quotes" },
        { "\"lettering\": { \"collation\": \"klingon\" }", "lettering.collation", "“klingon” is not a language", "\"und\"" },
        { "\"lettering\": { \"face\": \"../x.ttf\" }", "lettering.face", "“../x.ttf” lies outside the job's folder.", "Copy the file" },
        { "\"hoop\": { \"spare\": \"80 mm\" }", "hoop.spare", "leaves nothing to sew in.", "hoop.spare smaller" },
        { "\"hoop\": { \"spare\": \"71 mm\" }", "hoop.spare", "leaves only 18 mm to sew in.", "hoop.along" },
        { "\"machine\": { \"stitchesPerMinute\": 0 }", "machine.stitchesPerMinute", "is 0.", "from 10 to 5000" },
        { "\"hands\": { \"joinMinutes\": \"6\" }", "hands.joinMinutes", "and this is the text “6”.", "without quotes" },
        { "\"hands\": { \"restAllowance\": 1.5 }", "hands.restAllowance", "is 1.5.", "from 0 to 1" },
    };

    public static TheoryData<string, string, string, string> BrokenHems => new()
    {
        { "{}", "hem", "does not say how long the hem is", "\"length\": \"3.66 m\"" },
        { "\"3.66 m\"", "hem", "takes a group of keys in { }, and this is the text “3.66 m”.", "\"hem\": { \"length\": \"3.66 m\" }" },
        { "{ \"length\": \"3,66 m\" }", "hem.length", "“3,66 m” has a comma", "Write a point" },
        { "{ \"length\": [] }", "hem.length", "is an empty list", "one for each round" },
        { "{ \"length\": [\"3 m\", true] }", "hem.length", "Entry 2 of hem.length must be a length, and this is true.", "such as" },
        { "{ \"length\": [\"3 m\", \"2.9 m\"] }", "hem.length", "hem.length has 2 lengths, and strip.rounds is 1.", "\"rounds\": 2" },
        { "{ \"length\": \"3 m\", \"skirt\": { \"turn\": 1, \"waist\": \"70 cm\", \"length\": \"60 cm\" } }", "hem.skirt",
        "both hem.length and hem.skirt", "Keep hem.length" },
        { "{ \"skirt\": { \"turn\": 1, \"waist\": \"70 cm\" } }", "hem.skirt.length", "hem.skirt.length is missing.", "Add" },
        { "{ \"skirt\": { \"turn\": 0, \"waist\": \"70 cm\", \"length\": \"60 cm\" } }", "hem.skirt.turn", "is 0.", "above 0 to 2" },
        { "{ \"skirt\": { \"turn\": 2.1, \"waist\": \"70 cm\", \"length\": \"60 cm\" } }", "hem.skirt.turn", "is 2.1.", "above 0 to 2" },
        { "{ \"skirt\": { \"turn\": 1, \"waist\": \"70 cm\", \"length\": \"60 cm\", \"takenUp\": \"5 m\" } }", "hem.skirt.takenUp",
        "take up 5 m, and the whole hem is 4.47 m.", "Check" },
        { "{ \"turn\": 1, \"skirt\": { \"turn\": 1, \"waist\": \"70 cm\", \"length\": \"60 cm\" } }", "hem.turn",
            "hem.turn goes with a measured hem.length", "Remove hem.turn." },
        { "{ \"length\": \"3 m\", \"turn\": -1 }", "hem.turn", "is -1.", "from 0 to 2" },
        { "{ \"length\": \"1 mm\" }", "hem.length", "is 1 mm.", "from 50 mm to 1000 m" },
    };

    public static TheoryData<string, string, string> BrokenLists => new()
    {
        { "[]", "is an empty list", "at least one" },
        { "\"names.csv\"", "takes a list of texts", "Put it in brackets: [\"names.csv\"]." },
        { "[5]", "Entry 1 of lists must be text, and this is the number 5.", "double quotes" },
        { "[\"names.csv\", \"./names.csv\"]", "“names.csv” is named twice.", "once" },
        { "[\"../names.csv\"]", "“../names.csv” lies outside the job's folder.", "Copy the file" },
        { "[\"a/../../names.csv\"]", "lies outside", "Copy" },
        { "[\"..\\\\names.csv\"]", "lies outside", "Copy" },
        { "[\"/etc/passwd\"]", "“/etc/passwd” lies outside", "Copy" },
        { "[\"C:\\\\names.csv\"]", "lies outside", "Copy" },
        { "[\"C:names.csv\"]", "lies outside", "Copy" },
        { "[\"\\\\\\\\host\\\\share\\\\names.csv\"]", "lies outside", "Copy" },
        { "[\"~/names.csv\"]", "lies outside", "Copy" },
        { "[\"nmaes.csv\"]", "There is no file “nmaes.csv”", "There is “names.csv”: is that the one?" },
        { "[\"sub\"]", "“sub” is a folder.", "Name the file inside it." },
        { "[\"na\\u0000mes.csv\"]", "control characters", "ordinary characters" },
    };

    public static TheoryData<string, int, int, string> NotJson => new()
    {
        { "{ \"format\": 1,\n  \"lists\": [\"names.csv\"", 2, 24, "The file ends in the middle" },
        { "{ \"format\": 1, \"lists\": [\"nam", 1, 30, "The file ends in the middle" },
        { "{ \"format\": 1,\n  // the list\n \"lists\": [] }", 2, 3, "There is a comment here" },
        { "{ \"format\": 1, # x\n \"lists\": [] }", 1, 16, "There is a comment here" },
        { "{ \"format\": 1,\n}", 2, 1, "There is a comma before this } with nothing after it." },
        { "{ \"lists\": [\"names.csv\",] }", 1, 25, "There is a comma before this ]" },
        { "{ \"format\": 1,, }", 1, 15, "There is a comma here with nothing before it." },
        { "{ 'format': 1 }", 1, 3, "Text stands in straight double quotes" },
        { "{ “format”: 1 }", 1, 3, "Text stands in straight double quotes, and this is “." },
        { "{ \"format\": 1 \"title\": \"x\" }", 1, 15, "A comma or a colon is missing before this." },
        { "{ format: 1 }", 1, 3, "“format” stands here without quotes." },
        { "{ \"format\": NaN }", 1, 13, "“NaN” stands here without quotes." },
        { "{ \"format\": -Infinity }", 1, 14, "“Infinity” stands here without quotes." },
        { "{ \"format\": .5 }", 1, 13, "This is not a number as JSON writes it." },
        { "{ \"format\": 01 }", 1, 14, "This is not a number as JSON writes it" },
        { "{ \"title\": \"Lantern\nwalk\" }", 1, 20, "A text runs over the end of its line" },
        { "{ \"title\": \"C:\\names\\walk\" }", 1, 22, "a \\ stands here" },
        { "[1]", 1, 1, "must hold a group of keys in { }, and this is a list in [ ]." },
        { "\"x\"", 1, 1, "this is the text “x”" },
        { "{} {}", 1, 4, "cannot stand here" },
        { "{ \"title\": \"\\ud800\" }", 1, 12, "half of a character" },
        { "PK\u0003\u0004", 1, 1, "“PK” stands here without quotes." },
    };

    [Theory]
    [MemberData(nameof(BrokenKeys))]
    public void A_wrong_key_or_value_is_refused(string extra, string place, string found, string mend) =>
        AssertRefused($$"""
            { "lists": ["names.csv"],
              "hem": { "length": "3.66 m" },
              {{extra}} }
            """, place, found, mend);

    [Theory]
    [MemberData(nameof(BrokenHems))]
    public void A_wrong_hem_is_refused(string hem, string place, string found, string mend) =>
        AssertRefused($$"""{ "format": 1, "lists": ["names.csv"], "hem": {{hem}} }""", place, found, mend);

    [Theory]
    [MemberData(nameof(BrokenLists))]
    public void A_wrong_list_is_refused(string lists, string found, string mend) =>
        AssertRefused($$"""{ "format": 1, "lists": {{lists}}, "hem": { "length": 3660 } }""", "lists", found, mend);

    [Theory]
    [MemberData(nameof(NotJson))]
    public void What_is_not_JSON_is_refused_with_line_and_column(string text, int line, int column, string found)
    {
        var problem = Assert.Single(JobReaderTests.ReadAll(text).Problems, p => p.Severity == Severity.CannotUse);

        Assert.Contains(found, problem.Found.English, StringComparison.Ordinal);
        Assert.Equal(("job.json", line, column), (problem.Where.File, problem.Where.Line, problem.Where.Column));
        Assert.NotEmpty(problem.Mend.English);
    }

    [Fact]
    public void All_that_is_wrong_is_said_at_once_in_the_order_of_the_file()
    {
        var result = JobReaderTests.ReadAll("""
            {
              "titel": "x",
              "lists": ["none.csv"],
              "hem": { "length": "3 lieues" },
              "strip": { "rounds": 0, "cutWidth": -1 }
            }
            """);

        Assert.Null(result.Value);
        Assert.Equal(
            ["titel", "lists", "hem.length", "strip.rounds", "strip.cutWidth"],
            result.Problems.Where(p => p.Severity == Severity.CannotUse).Select(p => p.Where.Key));
        Assert.Equal([2, 3, 4, 5, 5], result.Problems.Where(p => p.Where.Line is not null).Select(p => p.Where.Line!.Value));
    }

    [Theory]
    [InlineData("""{ "format": 1, "list": ["names.csv"], "hem": { "length": 3660 } }""", "list")]
    [InlineData("""{ "format": 1, "lists": ["names.csv"], "hme": { "length": 3660 } }""", "hme")]
    [InlineData("""{ "format": 1, "lists": ["names.csv"], "hem": { "lenght": 3660 } }""", "hem.lenght")]
    [InlineData("""{ "format": 1, "lists": ["names.csv"], "hem": { "length": 3660, "trun": 1 }, "strip": { "rounds": 2 } }""", "hem.trun")]
    public void A_misspelt_key_is_not_called_missing_too(string json, string key) =>
        Assert.Equal(key, Assert.Single(JobReaderTests.ReadAll(json).Problems).Where.Key);

    [Fact]
    public void A_newer_format_is_refused_by_name_before_its_unknown_keys_are()
    {
        var problem = Assert.Single(JobReaderTests.ReadAll("""{ "format": 7, "threads": [] }""").Problems);
        Assert.Contains("format 7", problem.Found.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "The file is empty.")]
    [InlineData(" \r\n\t", "The file is empty.")]
    [InlineData("\uFEFF", "The file is empty.")]
    public void An_empty_file_is_refused(string text, string found) =>
        Assert.Equal(found, Assert.Single(JobReaderTests.ReadAll(text).Problems).Found);

    /// <summary>What is said fits what is wrong.</summary>
    [Theory]
    [InlineData("""{ "format": 1, { "length": "3 m" } }""", "A key is missing before this {.")]
    [InlineData("""{ { "format": 1 } }""", "A key is missing before this {.")]
    [InlineData(
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "keepClear": [] } }""", "such as [\"40 mm at 400 mm\"]")]
    [InlineData(
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "keepClear": 60 } }""", "such as [\"40 mm at 400 mm\"]")]
    [InlineData("""{ "format": 1, "lists": [], "hem": { "length": "60 cm" } }""", "such as [\"names.csv\"]")]
    public void The_advice_is_of_the_key_it_is_about(string json, string says) =>
        Assert.Contains(JobReaderTests.ReadAll(json).Problems, p => $"{p.Found} {p.Mend}".Contains(says, StringComparison.Ordinal));

    [Fact]
    public void Deep_nesting_is_refused()
    {
        string deep = "{ \"lists\": " + new string('[', 50_000);
        var problem = Assert.Single(JobReaderTests.ReadAll(deep).Problems);
        Assert.Contains("far too deep", problem.Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void A_huge_file_is_refused() =>
        AssertOnly(f => f.With(JobReader.FileName, new string(' ', 1_000_001)), "over 1 MB");

    [Fact]
    public void A_file_that_is_not_UTF_8_is_refused_with_its_place()
    {
        byte[] latin1 = Encoding.Latin1.GetBytes("{ \"format\": 1,\n  \"title\": \"Märchen\" }");
        var problem = AssertOnly(f => f.With(JobReader.FileName, latin1), "not saved as UTF-8");
        Assert.Equal((2, 14), (problem.Where.Line, problem.Where.Column));
    }

    [Fact]
    public void A_folder_without_a_job_is_refused() => AssertOnly(f => f, "There is no job.json in this folder.");

    [Fact]
    public void A_folder_called_job_json_is_refused() =>
        AssertOnly(f => f.With("job.json/x", ""), "job.json is a folder here");

    [Fact]
    public void A_missing_folder_is_refused() =>
        Assert.Contains(
            "There is no such folder.", Assert.Single(JobReader.Read("no/such/folder").Problems).Found.English, StringComparison.Ordinal);

    [Fact]
    public void Another_file_is_no_job()
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\n");
        Assert.Contains("a job is a folder", Assert.Single(JobReader.Read(folder["names.csv"]).Problems).Found.English, StringComparison.Ordinal);
    }

    /// <summary>No file can be called so, and asking the system for it is an error of another kind.</summary>
    [Fact]
    public void A_name_that_no_file_can_have_is_a_file_that_is_not_there()
    {
        using var folder = new TemporaryFolder().With(
            JobReader.FileName, $$"""{ "format": 1, "lists": ["{{new string('n', 280)}}.csv"], "hem": { "length": 3660 } }""");

        var problem = Assert.Single(JobReader.Read(folder.FullPath).Problems);

        Assert.StartsWith("There is no file “nnn", problem.Found.English, StringComparison.Ordinal);
        Assert.Equal("lists", problem.Where.Key);
    }

    [SkippableTheory]
    [InlineData("names.csv")]
    [InlineData("sub/names.csv")]
    public void A_link_is_refused(string list)
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs symbolic links (Windows asks for a special right)");
        using var outside = new TemporaryFolder().With("names.csv", "Name\nAda\n");
        using var folder = new TemporaryFolder().With(
            JobReader.FileName, $$"""{ "format": 1, "lists": ["{{list}}"], "hem": { "length": 3660 } }""");
        if (list.StartsWith("sub", StringComparison.Ordinal))
        {
            Directory.CreateSymbolicLink(folder["sub"], outside.FullPath);
        }
        else
        {
            File.CreateSymbolicLink(folder["names.csv"], outside["names.csv"]);
        }

        var problem = Assert.Single(JobReader.Read(folder.FullPath).Problems);
        Assert.Contains("is a link to another place", problem.Found.English, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void A_link_within_the_folder_is_refused_too()
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs symbolic links (Windows asks for a special right)");
        using var folder = new TemporaryFolder().With("real.csv", "Name\nAda\n").With(
            JobReader.FileName, """{ "format": 1, "lists": ["names.csv"], "hem": { "length": 3660 } }""");
        File.CreateSymbolicLink(folder["names.csv"], folder["real.csv"]);

        Assert.Contains("“names.csv” is a link", Assert.Single(JobReader.Read(folder.FullPath).Problems).Found.English, StringComparison.Ordinal);
    }

    private static Problem AssertOnly(Func<TemporaryFolder, TemporaryFolder> filled, string found)
    {
        using var folder = filled(new TemporaryFolder());
        var result = JobReader.Read(folder.FullPath);
        Assert.Null(result.Value);
        var problem = Assert.Single(result.Problems);
        Assert.Contains(found, problem.Found.English, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Mend.English);
        return problem;
    }

    private static void AssertRefused(string json, string place, string found, string mend)
    {
        var result = JobReaderTests.ReadAll(json);
        Assert.Null(result.Value);
        var problem = Assert.Single(result.Problems, p => p.Severity == Severity.CannotUse);
        Assert.EndsWith(place, problem.Where.ToString(), StringComparison.Ordinal);
        Assert.Contains(found, problem.Found.English, StringComparison.Ordinal);
        Assert.Contains(mend, problem.Mend.English, StringComparison.Ordinal);
    }
}

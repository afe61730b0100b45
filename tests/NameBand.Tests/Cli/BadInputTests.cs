using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>Input that cannot be used: status 2, the fault and its mend in words, nothing written, no stack trace.</summary>
public class BadInputTests
{
    private const string Job = """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1 m" } }""";

    private static readonly Dictionary<string, (Action<TemporaryFolder> Spoil, string Found, string Mend)> Faults = new()
    {
        ["no job.json"] = (f => File.Delete(f["job.json"]), "There is no job.json in this folder.", "Write one"),
        ["job.json cut off"] = (f => f.With("job.json", Job[..40]), "The file ends in the middle", "cut off"),
        ["job.json empty"] = (f => f.With("job.json", ""), "The file is empty.", "Write at least"),
        ["job.json with a comment"] = (f => f.With("job.json", "// x\n" + Job), "There is a comment here", "Remove the comment."),
        ["unknown key"] =
            (f => f.With("job.json", Job.Replace("hem", "hmm", StringComparison.Ordinal)), "does not know the key hmm",
            "Did you mean hem?"),
        ["negative length"] = (Hem("\"-1 m\""), "is negative", "minus sign"),
        ["NaN length"] = (Hem("NaN"), "“NaN” stands here without quotes", "double quotes"),
        ["NaN length as text"] = (Hem("\"NaN m\""), "“NaN m” is not a length", "Write a number and a unit"),
        ["zero length"] = (Hem("0"), "hem.length is 0 mm.", "Give a length from 50 mm"),
        ["absurd length"] = (Hem("\"9999999 km\""), "“km” is not a unit", "mm, cm, m, in, ft and yd"),
        ["endless length"] = (Hem("1e999"), "is more than 10 km", "unit"),
        ["unknown unit"] = (Hem("\"3 cubits\""), "“cubits” is not a unit", "mm, cm, m, in, ft and yd"),
        ["turn-in that eats the strip"] = (Add("\"strip\": { \"turnIn\": \"1 in\" }"), "use up the whole cut width", "cut the strip wider"),
        ["list missing"] = (f => File.Delete(f["names.csv"]), "There is no file “names.csv”", "Put it there"),
        ["list empty"] = (f => f.With("names.csv", ""), "empty", "Save"),
        ["list binary"] = (f => f.With("names.csv", [0x50, 0x4B, 3, 4, 0, 0, 0, 0, 8, 0, 0xFF, 0xFE, 0, 1, 2, 3]), "names.csv", "save it as .xlsx, or as .csv"),
        ["list over 50 MB"] = (f => f.With("names.csv", "Name\n" + new string('a', 50_000_001)), "bigger than 50 MB", "right file"),
        ["list outside"] =
            (f => f.With("job.json", Job.Replace("names.csv", "../names.csv", StringComparison.Ordinal)), "lies outside the job's folder",
            "Copy the file"),
        ["no such face"] =
            (Add("\"lettering\": { \"face\": \"Nunto Bold\" }"), "There is no face “Nunto Bold”", "Did you mean “Nunito Bold”?"),
        ["face file missing"] =
            (Add("\"lettering\": { \"face\": \"mine.ttf\" }"), "There is no font file “mine.ttf” in the job's folder.", "Put it there"),
        ["face broken"] =
            (f => { f.With("mine.ttf", "this is not a font"); Add("\"lettering\": { \"face\": \"mine.ttf\" }")(f); },
            "The font file “mine.ttf” cannot be used", "Choose another font file"),
        ["face outside"] = (Add("\"lettering\": { \"face\": \"../mine.ttf\" }"), "lies outside the job's folder", "Copy the file"),
        ["unknown cloth"] = (Add("\"fabric\": \"chain mail\""), "chain mail", "quilting cotton"),
        ["a machine without its letter heights"] = (Add("\"way\": \"machineLetters\""), "does not say which letter heights", "\"sizes\""),
    };

    public static TheoryData<string> Names => [.. Faults.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Bad_input_is_refused_in_words_and_nothing_is_written(string name)
    {
        var (spoil, found, mend) = Faults[name];
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda Marsh\nBo Reed\n");
        spoil(folder);
        string[] before = Everything(folder);

        var run = CliRun.Of("make", folder.FullPath);

        Assert.Equal((2, ""), (run.Status, run.Out));
        Assert.StartsWith("Nothing was made. Fix this first:\n", run.Errors, StringComparison.Ordinal);
        Assert.Contains(found, run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Contains(mend, run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Contains("→ ", run.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", run.Errors, StringComparison.Ordinal);
        Assert.Equal(before, Everything(folder));
    }

    [Fact]
    public void A_missing_folder_is_refused()
    {
        var run = CliRun.Of("make", "no/such/job");

        Assert.Equal(
            new CliRun(2, "", """
                Nothing was made. Fix this first:
                  1. no/such/job
                     There is no such folder.
                     → Give the path of a folder that holds job.json.

                """.ReplaceLineEndings("\n")),
            run);
    }

    [Fact]
    public void Several_faults_are_said_at_once_and_counted()
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\nAda\n").With("job.json", """
            { "format": 1, "lists": ["nmaes.csv"],
              "hem": { "length": "3 cubits", "trun": 1 } }
            """);

        var run = CliRun.Of("make", folder.FullPath);

        Assert.Equal(
            """
            Nothing was made. Fix these 3 things first:
              1. job.json, line 1, column 16, lists
                 There is no file “nmaes.csv” in the job's folder.
                 → There is “names.csv”: is that the one?
              2. job.json, line 2, column 12, hem.length
                 “cubits” is not a unit of length NameBand knows.
                 → The units are mm, cm, m, in, ft and yd.
              3. job.json, line 2, column 34, hem.trun
                 NameBand does not know the key hem.trun.
                 → Did you mean hem.turn?

            """.ReplaceLineEndings("\n"),
            run.Errors);
    }

    [Fact]
    public void An_output_folder_that_is_not_ours_is_refused_and_left_alone()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda\n").With("photos/me.txt", "mine");

        var run = CliRun.Of("make", folder.FullPath, "--out", folder["photos"]);

        Assert.Equal((2, ""), (run.Status, run.Out));
        Assert.Equal(["me.txt"], Directory.GetFileSystemEntries(folder["photos"]).Select(f => Path.GetFileName(f)!));
        Assert.Equal("mine", File.ReadAllText(folder["photos/me.txt"]));
    }

    [Fact]
    public void An_output_folder_that_cannot_be_written_is_refused()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nAda\n").With("file", "x");

        var run = CliRun.Of("make", folder.FullPath, "--out", folder["file"] + "/below");

        Assert.Equal((2, ""), (run.Status, run.Out));
        Assert.DoesNotContain("   at ", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_and_json_are_refused_in_the_same_way()
    {
        using var folder = new TemporaryFolder().With("job.json", "{").With("names.csv", "Name\nAda\n");

        var names = CliRun.Of("names", folder.FullPath);
        var json = CliRun.Of("names", folder.FullPath, "--json");

        Assert.Equal((2, ""), (names.Status, names.Out));
        Assert.StartsWith("The lists could not be checked. Fix this first:", names.Errors, StringComparison.Ordinal);
        Assert.Equal((2, ""), (json.Status, json.Errors));
        Assert.Contains("\"severity\": \"cannotUse\"", json.Out, StringComparison.Ordinal);
    }

    private static Action<TemporaryFolder> Hem(string length) =>
        f => f.With("job.json", Job.Replace("\"1 m\"", length, StringComparison.Ordinal));

    private static Action<TemporaryFolder> Add(string key) => f => f.With("job.json", Job[..^2] + ", " + key + " }");

    private static string[] Everything(TemporaryFolder folder) =>
        [.. Directory.EnumerateFileSystemEntries(folder.FullPath, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];
}

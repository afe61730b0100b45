using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json;
using NameBand.Cloth;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.CommandLine;

public class SwatchTests
{
    private const string Job =
        """{ "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "0.7 m" }, "lettering": { "height": "8 mm" } }""";

    private static readonly string[] Names = ["Tamsin Marsh", "Wyn Adeyemi", "Mabel Quill", "Maddock Wren"];

    private static TemporaryFolder Folder(string job = Job, params string[] names) => new TemporaryFolder()
        .With("job.json", job)
        .With("names.csv", "Name\n" + string.Join('\n', names.Length > 0 ? names : Names) + "\n");

    [Fact]
    public void It_says_what_is_on_the_swatch()
    {
        using var folder = Folder();
        var run = CliRun.Of("swatch", folder.FullPath);

        Assert.Equal((0, ""), (run.Status, run.Errors));
        string said = run.OutOnOneLine.Replace(folder.FullPath, "JOB", StringComparison.Ordinal);
        Assert.StartsWith(
            "Lantern walk: a swatch on quilting cotton Word “Mde”: of the commonest letters on your list those with the longest strokes; nobody's name"
            + " A 0.34, 0.40, 0.46 and 0.52 mm between crossings on one side B 0.10, 0.20, 0.30 and 0.40 mm pull compensation C 6.4, 8.0 and 10.0 mm letter height"
            + " D columns 1.5 and 4.5 mm wide, upright and level, to be measured Marks two crosses 100 mm apart Time about ",
            Regex(said), StringComparison.Ordinal);
        Assert.EndsWith(
            "It is in JOB/swatch. Print swatch-a4.pdf, or swatch-letter.pdf on American paper. "
            + "Sew it, press it, and measure from cross to cross. "
            + "Then write what you measured: nameband swatch JOB --measured 99.2 "
            + "Measure the columns too, and write the width and the length of each: "
            + "nameband swatch JOB --columns \"1.2x9.1 4.2x9.1 1.2x9.1 4.2x9.1\"",
            said, StringComparison.Ordinal);
    }

    /// <summary>The word depends on the letters' shapes only; it stands in the golden text as one example.</summary>
    private static string Regex(string said) =>
        System.Text.RegularExpressions.Regex.Replace(said, "“[^”]{3,4}”", "“Mde”");

    [Fact]
    public void The_folder_holds_paths_proofs_and_sheets_and_comes_out_alike_each_time()
    {
        using var folder = Folder();
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath).Status);
        var first = Read(folder["swatch"]);
        Assert.Equal(
            ["needle-paths/swatch-01.csv", "proofs/swatch-01.png", "swatch-a4.pdf", "swatch-letter.pdf", "swatch.json"],
            first.Keys.Where(k => !k.StartsWith('.')).Order(StringComparer.Ordinal));
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath).Status);
        Assert.Equal(first, Read(folder["swatch"]));
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Fact]
    public void All_needle_points_lie_in_the_field_and_the_marks_are_100_mm_apart()
    {
        using var folder = Folder();
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath).Status);
        string[] lines = File.ReadAllText(folder["swatch/needle-paths/swatch-01.csv"]).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("step,x_mm,y_mm,action", lines[0]);
        var steps = lines.Skip(1).Select(l => l.Split(',')).Select(c => (X: Number(c[1]), Y: Number(c[2]), Action: c[3])).ToList();
        Assert.Equal("jump", steps[0].Action);
        Assert.Equal("end", steps[^1].Action);
        Assert.All(steps, s => Assert.InRange(s.X, 0, 150));
        Assert.All(steps, s => Assert.InRange(s.Y, -45, 45));
        for (int i = 0; i < steps.Count - 1; i++)
        {
            if (steps[i].Action == "jump" && steps[i + 1].Action != "jump")
            {
                Assert.Equal(("stitch", steps[i].X, steps[i].Y), (steps[i + 1].Action, steps[i + 1].X, steps[i + 1].Y));
            }
        }

        // The crosses come first: the middle of each is met by its third needle point.
        int stop = steps.FindIndex(s => s.Action == "stop");
        var marks = steps.Take(stop).Where(s => s.Action == "stitch").ToList();
        Assert.Equal(10, marks.Count);
        Assert.Equal(100, marks[7].X - marks[2].X, 3);
        Assert.Equal(marks[2].Y, marks[7].Y);

        using var json = JsonDocument.Parse(File.ReadAllBytes(folder["swatch/swatch.json"]));
        var samples = json.RootElement.GetProperty("samples").EnumerateArray().ToList();
        Assert.Equal(11, samples.Count);
        foreach (char row in "ABC")
        {
            Assert.Single(samples, s => s.GetProperty("label").GetString()![0] == row && s.GetProperty("asTheJob").GetBoolean());
        }
    }

    [Fact]
    public void The_proof_prints_at_true_size()
    {
        using var folder = Folder();
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath).Status);
        byte[] png = File.ReadAllBytes(folder["swatch/proofs/swatch-01.png"]);
        int at = png.AsSpan().IndexOf("pHYs"u8);
        Assert.Equal(8000u, BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at + 4)));
        Assert.Equal(1, png[at + 12]);
        Assert.Equal((150 + 8) * 8, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
    }

    [Fact]
    public void Nobodys_name_is_sewn_on_a_scrap()
    {
        string[] names = ["Mde", "Mda", "Mad Mda", "MDE", "Mea", "Mae", "Mde Mdea", "Dam", "Mdea"];
        using var folder = Folder(Job, names);
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath).Status);
        using var json = JsonDocument.Parse(File.ReadAllBytes(folder["swatch/swatch.json"]));
        string word = json.RootElement.GetProperty("word").GetString()!;
        Assert.DoesNotContain(word, names.SelectMany(n => n.Split(' ')), StringComparer.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("60 mm", "60 mm", "crosses 40 mm")]
    [InlineData("70 mm", "100 mm", "crosses 50 mm")]
    public void A_small_hoop_gets_a_shorter_swatch_and_is_told_so(string along, string across, string said)
    {
        using var folder =
            Folder(Job.Replace(
                "\"hem\"", $"\"hoop\": {{ \"along\": \"{along}\", \"across\": \"{across}\" }}, \"hem\"", StringComparison.Ordinal), "Wyn",
                "Mab");
        var run = CliRun.Of("swatch", folder.FullPath);
        Assert.Contains("The field of this hoop is small", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains(said, run.OutOnOneLine, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hoop_without_room_is_refused_and_nothing_is_written()
    {
        using var folder =
            Folder(Job.Replace("\"hem\"", "\"hoop\": { \"along\": \"130 mm\", \"across\": \"45 mm\" }, \"hem\"", StringComparison.Ordinal));
        var run = CliRun.Of("swatch", folder.FullPath);

        Assert.Equal(2, run.Status);
        Assert.Contains("too small for a swatch", run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["swatch"]));
    }

    [Fact]
    public void A_strangers_folder_and_the_out_folder_are_left_alone()
    {
        using var folder = Folder();
        folder.With("swatch/mine.txt", "mine");
        Assert.Equal(2, CliRun.Of("swatch", folder.FullPath).Status);
        Assert.Equal(["mine.txt"], Read(folder["swatch"]).Keys);

        Assert.True(CliRun.Of("make", folder.FullPath).Status <= 1);
        var made = Read(folder["out"]);
        var run = CliRun.Of("swatch", folder.FullPath, "--out", folder["out"]);
        Assert.Equal(2, run.Status);
        Assert.Contains("no swatch.json of ours", run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Equal(made, Read(folder["out"]));

        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath, "--out", folder["test-piece"]).Status);
        Assert.Equal(2, CliRun.Of("make", folder.FullPath, "--out", folder["test-piece"]).Status);
        Assert.Equal(made, Read(folder["out"]));
    }

    [Fact]
    public void A_persons_notes_in_the_swatch_folder_stay()
    {
        using var folder = Folder();
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath).Status);
        folder.With("swatch/what-i-saw.txt", "A2 is best");
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath).Status);
        Assert.Equal("A2 is best", File.ReadAllText(folder["swatch/what-i-saw.txt"]));
    }

    [Fact]
    public void The_measured_length_is_said_and_only_set_when_asked()
    {
        using var folder = Folder();
        var said = CliRun.Of("swatch", folder.FullPath, "--measured", "99.2");
        Assert.Equal(0, said.Status);
        Assert.Equal(
            "Of 100 mm 99.2 mm are left: the shortening is 0.008, or 0.8 %. Misreading by half a millimetre changes it by 0.005."
            + " job.json allows for 0.01. To write it there: nameband swatch JOB --measured 99.2 --set",
            said.OutOnOneLine.Replace(folder.FullPath, "JOB", StringComparison.Ordinal));
        Assert.Equal(Job, File.ReadAllText(folder["job.json"]));

        var set = CliRun.Of("swatch", folder.FullPath, "--measured", "99.2 mm", "--set");
        Assert.Equal(0, set.Status);
        Assert.Contains("job.json now has it; it was 0.01.", set.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal("{ \"strip\": { \"shortening\": 0.008 }, " + Job[2..], File.ReadAllText(folder["job.json"]));
        var report = CliRun.Of("swatch", folder.FullPath, "--measured", "3.9 in", "--json");
        using var json = JsonDocument.Parse(report.Out);
        Assert.Equal(0.0094, json.RootElement.GetProperty("shortening").GetDouble(), 9);
        Assert.Equal(0.008, json.RootElement.GetProperty("before").GetDouble(), 9);
    }

    /// <summary>Two columns of unlike width in both directions, as a cloth leaves them that draws in harder across the strip.</summary>
    [Fact]
    public void The_measured_columns_give_the_figures_of_the_cloth_and_are_only_set_when_asked()
    {
        using var folder = Folder();
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath).Status);
        using var json = JsonDocument.Parse(File.ReadAllBytes(folder["swatch/swatch.json"]));
        var columns = json.RootElement.GetProperty("columns").EnumerateArray()
            .Select(c => (
                Label: c.GetProperty("label").GetString(), Level: c.GetProperty("level").GetBoolean(),
                Width: c.GetProperty("widthMm").GetDouble(), Length: c.GetProperty("lengthMm").GetDouble())).ToList();
        Assert.Equal(["D1", "D2", "D3", "D4"], columns.Select(c => c.Label));
        Assert.All(columns.Zip([1.5, 4.5, 1.5, 4.5]), c => Assert.InRange(c.First.Width, c.Second - 0.02, c.Second + 0.02));
        Assert.All(columns, c => Assert.InRange(c.Length, 8.9, 9.4));
        Assert.Equal([false, false, true, true], columns.Select(c => c.Level));

        var pull = FabricTable.Find("quilting cotton")!.Pull with { GrowingPart = 0.7 };
        pull = pull.WithAcross(1.5);
        string sizes = string.Join(' ', columns.Select(c => string.Create(
            CultureInfo.InvariantCulture,
            $"{c.Width - (0.6 * (c.Level ? pull.Factor(c.Width, 0, 1) : pull.Factor(c.Width, 1, 0))):0.000}x{c.Length + 0.16:0.000}")));
        var said = CliRun.Of("swatch", folder.FullPath, "--columns", sizes);
        Assert.Equal((0, ""), (said.Status, said.Errors));
        Assert.StartsWith(
            "Your cloth draws in 0.3 mm on each side of a column 2 mm wide."
            + " 70 % of that grows with the length of the stitches; the rest is the same at any width."
            + " Stitches across the strip draw 1.5 times as hard as those along it. Ends grow by 0.08 mm.",
            said.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(Job, File.ReadAllText(folder["job.json"]));

        var set = CliRun.Of("swatch", folder.FullPath, "--columns", sizes, "--set", "--json");
        using var answer = JsonDocument.Parse(set.Out);
        Assert.Equal(0.7, answer.RootElement.GetProperty("pullGrowth").GetDouble(), 9);
        var stitches = JobReader.Read(folder.FullPath).Value!.Stitches;
        Assert.Equal(
            (0.3, 0.7, 1.5, 0.08), (stitches.PullCompensationMm, stitches.PullGrowthPart, stitches.PullAcrossFactor, stitches.PushMm));
        Assert.EndsWith(Job[2..], File.ReadAllText(folder["job.json"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, "satin does not come out wider", "2x9 4.3x9 1.3x9 4.3x9")]
    [InlineData(2, "less than half is left", "1.3x9 2x9")]
    [InlineData(2, "sewn 9", "1.3x7 4.3x9")]
    [InlineData(2, "3 columns were measured", "1.3x9 4.3x9 1.3x9")]
    [InlineData(64, "width x length", "1.3 by 9")]
    public void Columns_that_cannot_be_are_refused(int status, string said, string sizes)
    {
        using var folder = Folder();
        folder.With("swatch/swatch.json", """
            { "columns": [
              { "label": "D1", "level": false, "widthMm": 1.5, "lengthMm": 9.1 },
              { "label": "D2", "level": false, "widthMm": 4.5, "lengthMm": 9.1 },
              { "label": "D3", "level": true, "widthMm": 1.5, "lengthMm": 9.1 },
              { "label": "D4", "level": true, "widthMm": 4.5, "lengthMm": 9.1 } ] }
            """);
        var run = CliRun.Of("swatch", folder.FullPath, "--columns", sizes, "--set");
        Assert.Equal(status, run.Status);
        Assert.Contains(said, run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Equal(Job, File.ReadAllText(folder["job.json"]));
    }

    /// <summary>A swatch of version 0.1 has no columns: what it can tell is read for ever, the rest asks for a new one.</summary>
    [Theory]
    [InlineData("{ \"format\": 1, \"marksApartMm\": 100 }")]
    [InlineData("{ \"marksApartMm\": 100, \"columns\": [ 1, 2 ] }")]
    [InlineData("{ \"marksApartMm\": 100, \"columns\": [ { \"label\": \"D1\" } ] }")]
    [InlineData("{ \"marksApartMm\": 100, \"columns\": \"many\" }")]
    public void A_swatch_without_columns_is_read_for_its_crosses_and_told_to_be_made_again(string text)
    {
        using var folder = Folder();
        folder.With("swatch/swatch.json", text);
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath, "--measured", "99.2").Status);
        var run = CliRun.Of("swatch", folder.FullPath, "--columns", "1.3x9 4.3x9");
        Assert.Equal(2, run.Status);
        Assert.Contains("has no columns to be measured", run.ErrorsOnOneLine, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, "cloth does not grow", "--measured", "102")]
    [InlineData(2, "no plan should allow for", "--measured", "80")]
    [InlineData(64, "--measured", "--measured", "much")]
    [InlineData(64, "farther apart than nothing", "--measured", "0")]
    [InlineData(64, "needs a word after it", "--measured")]
    [InlineData(64, "--set goes with a length", "--set")]
    public void What_cannot_be_is_refused_and_nothing_changes(int status, string said, params string[] words)
    {
        using var folder = Folder();
        var run = CliRun.Of(["swatch", folder.FullPath, .. words]);

        Assert.Equal(status, run.Status);
        Assert.Contains(said, run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Equal(Job, File.ReadAllText(folder["job.json"]));
        Assert.False(Directory.Exists(folder["swatch"]));
    }

    [Theory]
    [InlineData("traced", "trace and sew names between them")]
    [InlineData("machineLetters", "The lines of the command measure are your swatch")]
    public void The_ways_without_a_needle_path_are_told_what_to_do(string way, string said)
    {
        using var folder =
            Folder(Job.Replace(
                "\"hem\"", $"\"way\": \"{way}\", \"letters\": {{ \"sizes\": [\"8 mm\"] }}, \"hem\"", StringComparison.Ordinal));
        var run = CliRun.Of("swatch", folder.FullPath);

        Assert.Equal(2, run.Status);
        Assert.Contains(said, run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["swatch"]));
        Assert.Equal(0, CliRun.Of("swatch", folder.FullPath, "--measured", "99.2", "--under", "62", "--set").Status);
    }

    [Theory]
    [InlineData("{ \"marksApartMm\": \"a\", \"word\": 1, \"samples\": 0, \"format\": 1 }")]
    [InlineData("{ \"marksApartMm\": 1e300 }")]
    [InlineData("[[[")]
    [InlineData("")]
    public void A_broken_swatch_json_is_not_believed(string text)
    {
        using var folder = Folder();
        folder.With("swatch/swatch.json", text);
        var run = CliRun.Of("swatch", folder.FullPath, "--measured", "99");

        Assert.Equal(0, run.Status);
        Assert.StartsWith("Of 100 mm", run.Out.Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static SortedDictionary<string, string> Read(string folder) => new(
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .ToDictionary(f => Path.GetRelativePath(folder, f).Replace('\\', '/'), f => Convert.ToBase64String(File.ReadAllBytes(f))),
        StringComparer.Ordinal);
}

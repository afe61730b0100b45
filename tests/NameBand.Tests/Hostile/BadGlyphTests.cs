using NameBand.Tests.CommandLine;
using NameBand.Tests.WholeLine;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>
/// A face with one bad letter: whoever has it in the name is told of face and letter, and all others are made. The face is
/// made here, so that the letter is as bad as can be.
/// </summary>
public class BadGlyphTests
{
    private const string Job =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 }, "lettering": { "face": "bad.ttf", "height": 10 } }""";

    private static readonly (int X, int Y)[] Bar = [(50, 0), (50, 700), (200, 700), (200, 0)];

    /// <param name="said">What the row's reason has to say of the letter; empty where it is sewn, if not as satin.</param>
    [Theory]
    [InlineData("empty", "draws nothing for it")]
    [InlineData("no area", "draws nothing for it")]
    [InlineData("speck", "draws nothing for it")]
    [InlineData("enormous", "reaches more than 20 times the size of the letters away")]
    [InlineData("far away", "reaches more than 20 times the size of the letters away")]
    [InlineData("100,000 points", "has more than 8000 points")]
    [InlineData("1,500 rings over one another", "lies over itself too many times")]
    [InlineData("noise", "lies over itself too many times")]
    public void A_letter_that_cannot_be_drawn_holds_its_name_and_no_other(string kind, string said)
    {
        using var job = JobWith(kind);

        var run = CliRun.Of("make", job.FullPath);

        Assert.Equal(1, run.Status);
        Assert.Contains("names.csv, line 3, “IXI”", run.OutOnOneLine, StringComparison.Ordinal);
        var rows = new MadeFolder(job["out"]).Rows.ToList();
        Assert.Equal(["placed", "held", "placed"], rows.Select(r => r.GetProperty("outcome").GetString()!));
        string reason = rows[1].GetProperty("reason").GetString()!;
        Assert.Contains("Lantern Trial", reason, StringComparison.Ordinal);
        Assert.Contains("X (U+0058)", reason, StringComparison.Ordinal);
        Assert.Contains(said, reason, StringComparison.Ordinal);
    }

    /// <param name="said">What is told of the letter that is sewn all the same.</param>
    [Theory]
    [InlineData("crosses itself", "The outline of “[IX]+” in the face Lantern Trial cannot be read as strokes")]
    [InlineData("200 specks", "“[IX]+” in the face Lantern Trial is made of 1[0-9][0-9] separate parts")]
    public void A_letter_that_comes_out_badly_is_sewn_and_named(string kind, string said)
    {
        using var job = JobWith(kind);

        var run = CliRun.Of("make", job.FullPath);

        Assert.Equal(1, run.Status);
        Assert.Matches(said, run.OutOnOneLine);
        var made = new MadeFolder(job["out"]);
        Assert.All(made.Rows, r => Assert.Equal("placed", r.GetProperty("outcome").GetString()));
        Assert.Equal(3, made.Names.Count());
    }

    [Fact]
    public void A_hairline_beside_thick_strokes_is_sewn_and_asked_about()
    {
        using var job = JobWith("hairline");

        var run = CliRun.Of("make", job.FullPath);

        Assert.Equal((1, ""), (run.Status, run.Errors));
        Assert.Contains("1 thing needs a decision", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("“IXI”", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(3, new MadeFolder(job["out"]).Names.Count());
    }

    /// <summary>A face that has a few letters of a script only is no help to read names in: another one does it, and that is
    /// said.</summary>
    [Fact]
    public void Letters_from_another_face_than_the_chosen_one_are_told_of()
    {
        using var job = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nIHI\nAda\n");
        File.WriteAllBytes(job["bad.ttf"], new FaceMaker("Lantern Trial").With('I', 250, Bar).With('H', 600, Bar).ToBytes());

        var run = CliRun.Of("make", job.FullPath);

        Assert.Contains("so every name is sewn in another face: “IHI” (", run.OutOnOneLine, StringComparison.Ordinal);
    }

    private static TemporaryFolder JobWith(string kind)
    {
        var face = new FaceMaker("Lantern Trial");
        foreach (char letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz")
        {
            face.With(letter, 250, Bar);
        }

        face.With('H', 600, Bar, [(400, 0), (400, 700), (550, 700), (550, 0)], [(200, 300), (200, 420), (400, 420), (400, 300)])
            .With('X', 600, Bad(kind));
        var job = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nIHI\nIXI\nHIH\n");
        File.WriteAllBytes(job["bad.ttf"], face.ToBytes());
        return job;
    }

    private static (int X, int Y)[][] Bad(string kind) => kind switch
    {
        "empty" => [],
        "crosses itself" => [[(0, 0), (500, 700), (500, 0), (0, 700), (400, -100), (100, 300), (600, 350)]],
        "no area" => [[(0, 0), (500, 0), (250, 0)]],
        "speck" => [[(300, 300), (300, 301), (301, 301)]],
        "hairline" => [[(50, 0), (52, 700), (54, 700), (52, 0)]],
        "enormous" => [[(-32000, -32000), (-32000, 32000), (32000, 32000), (32000, -32000)]],
        "far away" => [[(31000, 31000), (31000, 31700), (31150, 31700), (31150, 31000)]],
        "100,000 points" => [.. Enumerable.Range(0, 2).Select(_ => Zigzag(50_000))],
        "1,500 rings over one another" => [.. Enumerable.Range(0, 1500).Select(i => Square(i % 50, i / 50, 500))],
        "200 specks" => [.. Enumerable.Range(0, 200).Select(i => Square(50 * (i % 15), 50 * (i / 15), 30))],
        "noise" => [Noise(400)],
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    private static (int X, int Y)[] Square(int x, int y, int side) => [(x, y), (x, y + side), (x + side, y + side), (x + side, y)];

    private static (int X, int Y)[] Zigzag(int points) => [.. Enumerable.Range(0, points).Select(i => (i % 600, i % 2 == 0 ? 0 : 700))];

    private static (int X, int Y)[] Noise(int points)
    {
        var random = new Random(20261127);
        return [.. Enumerable.Range(0, points).Select(_ => (random.Next(600), random.Next(700)))];
    }
}

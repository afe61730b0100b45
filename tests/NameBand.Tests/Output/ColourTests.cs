using NameBand.Common;
using NameBand.Job;
using NameBand.Output.Drawing;
using NameBand.Tests.CommandLine;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>Cloth and thread have their true colours in every picture, and whether one shows on the other is judged.</summary>
public class ColourTests
{
    private static TemporaryFolder Job(string more, string hem = "400 mm") => new TemporaryFolder()
        .With("names.csv", "Name,Gift\nAda Marsh,1\nBo Reed,90\n")
        .With("job.json",
            $$"""{ "lists": ["names.csv"], "hem": { "length": "{{hem}}", "turn": 0 }, "lettering": { "height": "9 mm" }, "thanks": { "width": 320 }{{more}} }""");

    /// <summary>The formula of WCAG 2.2 (relative luminance, contrast ratio), worked out apart with Python's fractions.</summary>
    [Theory]
    [InlineData("#000000", "white", 21)]
    [InlineData("#767676", "#ffffff", 4.5422)]
    [InlineData("navy", "gold", 11.4143)]
    [InlineData("ivory", "#f5efe2", 1.1357)]
    [InlineData("#2e4c8e", "#2e4c8e", 1)]
    public void Contrast_is_that_of_the_formula(string one, string other, double expected)
    {
        Assert.True(CssColour.TryParse(one, out var a));
        Assert.True(CssColour.TryParse(other, out var b));
        Assert.Equal(expected, a.ContrastRatio(b), 0.001);
        Assert.Equal(expected, b.ContrastRatio(a), 0.001);
    }

    [Fact]
    public void Every_picture_shows_cloth_and_thread_as_the_job_has_them()
    {
        using var job = Job(""", "colours": { "cloth": "#5a2010", "thread": "gold" }""");
        Assert.InRange(CliRun.Of("print", job.FullPath, "--thanks").Status, 0, 1);
        foreach (string file in new[] { "proofs/hooping-001.png", "proofs/round-01.png", "thanks/name-0001.png" })
        {
            using var picture = Image.Load<Rgb24>(job["out/" + file]);
            var (cloth, thread, indigo) = (0, 0, 0);
            for (int i = 0; i < picture.Width * picture.Height; i++)
            {
                var p = picture[i % picture.Width, i / picture.Width];
                cloth += Math.Abs(p.R - 90) < 9 && Math.Abs(p.G - 32) < 5 && Math.Abs(p.B - 16) < 4 ? 1 : 0;
                thread += p.R > 150 && p.G > 120 && p.B < 60 ? 1 : 0;
                indigo += ProofPicture.IsIndigo(p) ? 1 : 0;
            }

            int all = picture.Width * picture.Height;
            Assert.True(cloth > all / 20 && thread > all / 500, $"{file}: {cloth} and {thread} of {all}");
            Assert.True(indigo < thread / 20, $"{file}: {indigo} of indigo");
        }
    }

    [Theory]
    [InlineData(""", "colours": { "thread": "ivory" }""", "contrast is 1.1 to 1")]
    [InlineData(""", "colours": { "thread": "navy", "cloth": "#101060" }""", "hardly shows on cloth #101060")]
    public void Thread_that_hardly_shows_is_a_note(string colours, string said)
    {
        using var job = Job(colours);
        Assert.Contains(Bander.Plans(job.FullPath).Problems.Concat(Bander.CheckNames(job.FullPath).Problems)
            .Concat(Bander.Hours(job.FullPath).Problems),
            p => p.Severity == Severity.Note && p.Found.English.Contains(said, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(""", "colours": { "cloth": "darkgren" }""", "Did you mean \"darkgreen\"?")]
    [InlineData(""", "colours": { "thread": "#12345" }""", "is no colour")]
    [InlineData(""", "columns": { "group": "Gift" }, "groups": [{ "name": "a", "rest": true, "thread": "url(x)" }]""", "groups[1].thread")]
    public void What_is_no_colour_is_refused(string colours, string said)
    {
        using var job = Job(colours);
        var run = CliRun.Of("names", job.FullPath);
        Assert.Equal(2, run.Status);
        Assert.Contains(said, run.ErrorsOnOneLine, StringComparison.Ordinal);
    }

    /// <summary>What is written on dark cloth is light, so that it can be read there.</summary>
    [Fact]
    public void Ink_can_be_read_on_any_cloth()
    {
        foreach (string word in CssColour.KnownWords)
        {
            Assert.True(CssColour.TryParse(word, out var cloth));
            var palette = DyePalette.Of(new(new ColourSettings(cloth), GroupSettings.None));
            Assert.True(CssColour.Of(palette.Own(Palette.Ink)).ContrastRatio(cloth) >= 3, word);
        }
    }
}

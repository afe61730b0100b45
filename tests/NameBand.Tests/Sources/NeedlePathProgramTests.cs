using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Stitching;
using NameBand.Tests.JobRoom;
using NameBand.Tests.OutputRoom;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// Needle paths as programs, read back by a small reader of ISO 6983-1's grammar (from memory): a program stands between
/// two %, a block is a line, a word is an address letter and a number with an explicit decimal sign, what stands in
/// parentheses is passed over, G and F stay in force until changed.
/// </summary>
public sealed partial class NeedlePathProgramTests
{
    [Fact]
    public void Every_step_comes_back_point_by_point()
    {
        var (text, path) = Written(ProgramSettings.Usual);
        var read = Read(text, ProgramSettings.Usual);
        Assert.Equal(path.Steps.Length, read.Count);
        for (int i = 0; i < read.Count; i++)
        {
            Assert.Equal(i + 1, read[i].Number);
            Assert.Equal(path.Steps[i].Action, read[i].Action);
            Assert.True(path.Steps[i].At.DistanceTo(read[i].At) < 0.00071, $"step {i + 1}: {path.Steps[i].At} is not {read[i].At}");
        }
    }

    [Fact]
    public void A_stitch_takes_as_long_as_the_pace_says()
    {
        var (text, path) = Written(ProgramSettings.Usual);
        var read = Read(text, ProgramSettings.Usual);
        for (int i = 1; i < read.Count; i++)
        {
            double lengthMm = path.Steps[i].At.DistanceTo(path.Steps[i - 1].At);
            if (read[i].Action == NeedleAction.Stitch && lengthMm > 0.5)
            {
                Assert.Equal(1 / 600.0, lengthMm / read[i].Feed, 0.00001);
            }
        }
    }

    [Fact]
    public void The_words_of_another_machine_can_be_set()
    {
        var job = JobReaderTests.ReadAll(
            """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m", "turn": 0 }, "program": { "start": "G90 G21", "needle": "M3 S90", "feed": 1200 }, "files": { "program": true } }""");
        Assert.Empty(job.Problems);
        Assert.True(job.Value!.Files.Program);
        var (text, path) = Written(job.Value.Program);
        Assert.Contains("\nG90 G21\n", text, StringComparison.Ordinal);
        Assert.Equal(path.Stitches, text.Split("\nM3 S90\n").Length - 1);
        Assert.Single(Word().Matches(text), m => m.Value.StartsWith('F'));
    }

    [Theory]
    [InlineData("M21\\nM02")]
    [InlineData("(hello)")]
    [InlineData("needle")]
    [InlineData("M")]
    public void What_is_no_word_of_a_program_is_refused(string word) =>
        Assert.Contains(
            JobReaderTests.ReadAll(
                $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m", "turn": 0 }, "program": { "needle": "{{word}}" } }""").Problems,
            p => p.Found.English.Contains("program.needle", StringComparison.Ordinal));

    private static (string Text, NeedlePath Path) Written(ProgramSettings words)
    {
        var plan = OutSample.Plan();
        var path = OutSample.Path(plan, plan.Hoopings[0]);
        using var stream = new MemoryStream();
        NeedlePathProgram.Write(stream, plan.Hoopings[0], path, words, 600);
        return (Encoding.ASCII.GetString(stream.ToArray()), path);
    }

    private static List<(int Number, NeedleAction Action, Point At, double Feed)> Read(string text, ProgramSettings words)
    {
        string[] blocks = text.Split('\n');
        Assert.Equal(("%", "%", ""), (blocks[0], blocks[^2], blocks[^1]));
        var steps = new List<(int, NeedleAction, Point, double)>();
        var at = new Point(0, 0);
        var (motion, feed, pending) = (-1, 0.0, 0);
        foreach (string block in blocks[1..^2].Select(b => Comment().Replace(b, "")).Where(b => b.Length > 0))
        {
            Assert.Matches(@"^([A-Z][+-]?\d+(\.\d+)? ?)+$", block);
            var said = Word().Matches(block)
                .Select(m => (Letter: m.Value[0], Number: double.Parse(m.Value.AsSpan(1), CultureInfo.InvariantCulture))).ToList();
            int number = (int)said.FirstOrDefault(w => w.Letter == 'N').Number;
            foreach (var (letter, value) in said)
            {
                motion = letter == 'G' && value is 0 or 1 ? (int)value : motion;
                feed = letter == 'F' ? value : feed;
                at = letter == 'X' ? new Point(value, at.YMm) : letter == 'Y' ? new Point(at.XMm, value) : at;
            }

            if (said.Any(w => w.Letter is 'X' or 'Y'))
            {
                Assert.Equal(0, pending);
                pending = motion == 1 ? number : 0;
                if (motion == 0)
                {
                    steps.Add((number, NeedleAction.Jump, at, 0));
                }
            }
            else if (block == words.Needle)
            {
                steps.Add((pending, NeedleAction.Stitch, at, feed));
                pending = 0;
            }
            else if (number > 0)
            {
                string word = block[(block.IndexOf(' ', StringComparison.Ordinal) + 1)..];
                var action = word == words.Trim ? NeedleAction.Trim : word == words.Stop ? NeedleAction.Stop : NeedleAction.End;
                Assert.True(action != NeedleAction.End || word == words.End);
                steps.Add((number, action, at, 0));
            }
        }

        return steps;
    }

    [GeneratedRegex(@"\([^()]*\)")]
    private static partial Regex Comment();

    [GeneratedRegex(@"[A-Z][+-]?\d+(\.\d+)?")]
    private static partial Regex Word();
}

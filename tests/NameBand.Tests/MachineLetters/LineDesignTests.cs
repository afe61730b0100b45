using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Measuring;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

public class LineDesignTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(26)]
    [InlineData(44)]
    [InlineData(56)]
    public void The_lines_determine_every_letter_and_the_gap_and_there_are_few_of_them(int count)
    {
        var machine = new FakeMachine(count, FakeMachine.Alphabet(count).Append(" "));
        var plan = machine.Design();
        string[] letters = [.. machine.WidthMm.Keys];
        Assert.All(WidthSolver.Determined(WidthSolver.Counts([.. plan.Lines], letters)), Assert.True);
        Assert.Empty(plan.Left);
        Assert.True(plan.Lines.Length <= (1.3 * (count + 1)) + 5, $"{plan.Lines.Length} lines for {count + 1} letters");
    }

    [Fact]
    public void No_line_is_too_long_or_begins_or_ends_with_a_blank_and_the_choice_never_changes()
    {
        Gen.Select(Gen.Int[2, 56], Gen.Int[4, 14], Gen.Double[30, 150]).Sample(
            (count, most, longest) =>
            {
                var machine = new FakeMachine(count, FakeMachine.Alphabet(count).Append(" "));
                var bounds = new LineBounds(longest, most);
                var lines = machine.Design(bounds).Lines;
                Assert.All(lines, l => Assert.InRange(l.Letters.Count, 1, most));
                Assert.All(lines, l => Assert.True(l.Letters.Sum(x => machine.FaceMm[x] + 1) <= longest + 8));
                Assert.All(lines, l => Assert.Equal(l.Text.Trim(), l.Text));
                Assert.Equal(lines.Select(l => l.Text), machine.Design(bounds).Lines.Select(l => l.Text));
            },
            seed: "0000KeyInLn1", iter: 60);
    }

    [Fact]
    public void Two_letters_never_share_both_of_their_mixed_lines()
    {
        var machine = new FakeMachine(3, FakeMachine.Alphabet(45));
        var lines = machine.Design().Lines;
        var mixed = lines.Where(l => l.Counts.Count > 1).ToList();
        var pairs = machine.WidthMm.Keys
            .Select(x => string.Join(',', mixed.Where(l => l.Counts.ContainsKey(x)).Select(l => l.Number))).ToList();
        Assert.All(pairs, p => Assert.Equal(2, p.Split(',').Length));
        Assert.Equal(pairs.Count, pairs.Distinct().Count());
    }

    /// <summary>Lines of random letters, as many and as long as ours, leave the letters less certain.</summary>
    [Fact]
    public void Random_lines_of_the_same_length_are_worse()
    {
        const int Count = 20;
        var machine = new FakeMachine(4, FakeMachine.Alphabet(Count));
        var lines = machine.Design().Lines;
        string[] letters = [.. machine.WidthMm.Keys];
        double ours = MeanVariance(WidthSolver.Counts([.. lines], letters));
        var random = new Random(99);
        int compared = 0;
        for (int i = 0; i < 300; i++)
        {
            var other = lines.Select(l => l with
            {
                Text = string.Concat(Enumerable.Range(0, l.Letters.Count).Select(_ => letters[random.Next(Count)])),
            });
            var counts = WidthSolver.Counts([.. other], letters);
            if (WidthSolver.Determined(counts).All(d => d))
            {
                Assert.True(MeanVariance(counts) > ours);
                compared++;
            }
        }

        Assert.True(compared > 30, $"Only {compared} designs at random tell all widths.");
    }

    private static double MeanVariance(Matrix<double> counts) =>
        counts.TransposeThisAndMultiply(counts).Inverse().Diagonal().Average();
}

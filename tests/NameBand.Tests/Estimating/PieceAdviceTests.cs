using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace NameBand.Tests.Estimating;

/// <summary>What cloth is said to do where the strip is joined from pieces does when it is.</summary>
public partial class PieceAdviceTests
{
    [Theory]
    [InlineData("3.66 m", 1, "", "0.25")]
    [InlineData("5 m", 1, "", "0")]
    [InlineData("2.2 m", 1, "", "0")]
    [InlineData("4 m", 2, "", "0")]
    [InlineData("5 m", 1, ", \"joinAllowance\": \"120 mm\"", "0")]
    public void Joined_from_the_pieces_that_are_advised_it_takes_the_cloth_that_was_promised(
        string hem, int rounds, string joins, string shrinkage)
    {
        var advised = Cloth(hem, rounds, joins, shrinkage);
        var found = Advice().Match(advised.Needed);
        Assert.True(found.Success, advised.Needed);
        var joined = Cloth(hem, rounds, $"{joins}, \"piece\": \"{found.Groups[1].Value} mm\"", shrinkage);

        // It may be joined from one piece more than was reckoned with, and then takes a little less.
        double promisedM = double.Parse(found.Groups[2].Value, CultureInfo.InvariantCulture);
        Assert.InRange(joined.Amount, promisedM - 0.25, promisedM + 1e-9);
        Assert.True(promisedM + 0.5 <= advised.Amount + 1e-9, "Joins are advised only where they save half a metre.");
        Assert.DoesNotContain("would do", joined.Needed, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"in pieces of at most (\d+) mm \(.*\) (.+) m would do$")]
    private static partial Regex Advice();

    private static (string Needed, double Amount) Cloth(string hem, int rounds, string more, string shrinkage)
    {
        using var job = new TemporaryFolder()
            .With("names.csv", "name\n" + string.Concat(Enumerable.Range(0, 24).Select(i => $"{(char)('A' + i)}nna Quill\n")))
            .With("job.json", $$"""
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "{{hem}}", "turn": 0 }, "strip": { "rounds": {{rounds}}{{more}} },
                  "lettering": { "height": "9 mm" }, "shop": { "clothShrinkage": {{shrinkage}} } }
                """);
        var line = Bander.Hours(job.FullPath).Shopping!.Lines.Single(l => l.What == "cloth");
        return (line.Needed.English, line.Amount);
    }
}

using NameBand.Common;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Cloth that stays blank under the widest gap is told, but not where the last round simply ends with the list.</summary>
public class BlankRoundTests
{
    [Theory]
    [InlineData("\"asNeeded\"", "1")]
    [InlineData("2", "1 2")]
    public void Blank_rounds_are_told_but_for_a_last_one_that_ends_with_the_list(string rounds, string told)
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "name\nOttilie Marsh-Sedgewick of Quay\nBartholomew Penhale of the Mill\nWilhelmina Farrow of the Lock\n")
            .With("job.json", $$"""
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "360 mm", "turn": 0, "closed": false },
                  "strip": { "rounds": {{rounds}} }, "lettering": { "height": "6.5 mm", "order": "listed", "mostGap": "12 mm" } }
                """);
        var made = Bander.Hours(folder.FullPath);
        var blank = made.Problems.Where(p => p.Where.Key == "lettering.mostGap").ToList();
        Assert.All(blank, p => Assert.Equal(Severity.NeedsPerson, p.Severity));
        Assert.Equal(told, string.Join(' ', blank.Select(p => p.Found.English.Split("of round ")[1].Split(' ')[0])));
    }
}

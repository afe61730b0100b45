using System.Text.Json;
using NameBand.Common;
using NameBand.Tests.House;
using NameBand.Tests.WholeLine;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// An open list of names through the whole line. Source: @faker-js/faker 10.6.0 (MIT, licence beside the list), six
/// made-up people of each of its locales, drawn with seed 20261125: 442 names in some twenty scripts. Seven whose full name a known
/// person bears have another family name of their locale.
/// </summary>
public class NameListTests
{
    [Fact]
    public void Names_of_many_locales_are_placed_or_held_with_a_reason_and_none_is_lost()
    {
        using var folder = new TemporaryFolder().With(
            "job.json",
            """{ "format": 1, "lists": ["names.csv"], "columns": { "name": "name" }, "hem": { "length": "3.66 m", "turn": 0.75 }, "strip": { "rounds": "asNeeded" }, "lettering": { "height": 9 } }""");
        File.Copy(
            Path.Combine(Repository.Root, "tests", "NameBand.Tests", "Sources", "Data", "names-of-many-locales.csv"), folder["names.csv"]);
        var report = Bander.Make(folder.FullPath);
        Assert.NotNull(report.OutFolder);
        var made = new MadeFolder(report.OutFolder);
        made.Check(longestOnClothMm: 150, shortening: 0.01, zoneMm: 17.4);

        Assert.Equal(442, made.Rows.Count());
        Assert.All(made.Rows.Where(r => Outcome(r) != "placed"), r => Assert.NotEmpty(r.GetProperty("reason").GetString()!));
        Assert.True(made.Rows.Count(r => Outcome(r) == "placed") >= 420, string.Join('\n', made.Rows.Where(r => Outcome(r) == "held")));
        Assert.Equal(
            made.Rows.Where(r => Outcome(r) == "placed").Select(r => r.GetProperty("text").GetString()),
            made.Names.Select(n => n.GetProperty("text").GetString()));
        Assert.DoesNotContain(report.Problems, p => p.Severity == Severity.CannotUse);
    }

    private static string Outcome(JsonElement row) => row.GetProperty("outcome").GetString()!;
}

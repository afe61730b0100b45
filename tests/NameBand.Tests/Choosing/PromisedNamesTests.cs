using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Reports;
using Xunit;

namespace NameBand.Tests.ChoosingRoom;

/// <summary>No plan is offered that has no place for a name which another one has a place for.</summary>
public sealed class PromisedNamesTests
{
    private static readonly string[] Names = ["Ada Marsh", "Bo Reed", "Jory Pengelly", "Dov Tarn", "Åsa Quigley", "Fenna Weir"];

    [Fact]
    public void Where_a_strip_is_too_narrow_for_some_names_every_plan_has_a_place_for_all()
    {
        var report = Plans("\"height\": \"6 mm\"", "\"cutWidth\": \"44 mm\", \"turnIn\": \"16 mm\", \"margin\": \"2.5 mm\"");
        int placed = report.AsSet!.Plan.NameCount;
        Assert.InRange(placed, 1, Names.Length - 1);

        Assert.All(report.Plans, p => Assert.Equal(Names.Length, p.Plan.NameCount));
        var mended = report.Plans[0];
        Assert.Equal(["strip.cutWidth"], mended.Edits.Select(e => e.Path));
        Assert.Equal(
            $"{Names.Length - placed} of {Names.Length} names are too large for the strip or for the hoop.", mended.Mends.English);
    }

    [Fact]
    public void Letters_that_are_too_large_are_mended_with_the_largest_that_fit()
    {
        var report = Plans("\"height\": \"14 mm\"", "\"cutWidth\": \"51 mm\", \"turnIn\": \"16 mm\", \"margin\": \"2.5 mm\"");
        Assert.Equal(0, report.AsSet!.Plan.NameCount);

        var mended = report.Plans[0];
        Assert.Equal(["lettering.height"], mended.Edits.Select(e => e.Path));
        Assert.Equal(HeightBound.SewingZone, mended.Plan.Bound);
        Assert.Equal(Names.Length, mended.Plan.NameCount);

        // Larger ones on a wider strip are judged by the hours of what can be sewn, and not of none.
        var largest = report.Plans.Single(p => p.Wishes.Contains(PlanWish.BiggestLetters));
        Assert.True(largest.Plan.LetterHeightMm > mended.Plan.LetterHeightMm + 1, $"{largest.Plan.LetterHeightMm} {mended.Plan.LetterHeightMm}");
    }

    [Fact]
    public void Where_no_plan_has_a_place_for_a_name_the_one_as_it_is_set_is_offered_as_it_is()
    {
        var report = Plans("\"height\": \"6 mm\"", "\"cutWidth\": \"51 mm\"", string.Join(" ", Enumerable.Repeat("Wenna", 20)));
        Assert.Equal(Names.Length, report.AsSet!.Plan.NameCount);

        Assert.Empty(report.Plans[0].Edits);
        Assert.Equal("", report.Plans[0].Mends.English);
        Assert.All(report.Plans, p => Assert.Equal(Names.Length, p.Plan.NameCount));
        Assert.Contains(report.Problems, p => p.Found.English == "1 row waits for your decision, and no plan counts what waits.");
    }

    /// <summary>A machine's letters cannot be made smaller: the strip is made wider, and where no strip is wide enough nothing is
    /// offered that would leave all names out.</summary>
    [Theory]
    [InlineData("20 mm", 1, "strip.cutWidth")]
    [InlineData("60 mm", 0, "")]
    public void Letters_of_a_machine_that_are_too_large_want_a_wider_strip(string size, int plans, string key)
    {
        var report = Plans("\"order\": \"alphabetical\"", $"\"cutWidth\": \"51 mm\" }}, \"way\": \"machineLetters\", \"letters\": {{ \"sizes\": [\"{size}\"]");
        Assert.Equal(plans, report.Plans.Length);
        if (plans == 0)
        {
            Assert.Contains(report.Problems, p => p.Found.English == "5 of 5 names are too large for the strip or for the hoop.");
        }
        else
        {
            Assert.Equal([key], report.Plans[0].Edits.Select(e => e.Path));
            Assert.Equal(Names.Length - 1, report.Plans[0].Plan.NameCount); // Without the one whose letter no machine is known to have.
        }
    }

    [Fact]
    public void Where_all_names_wait_there_is_no_plan_to_take()
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name,Leave out\nAda Marsh,perhaps\nBo Reed,yes\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m", "circlePart": 0 } }""");
        var report = Bander.Plans(folder.FullPath);
        Assert.Empty(report.Plans);
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Contains(
            report.Problems,
            p => p.Severity == Severity.NeedsPerson && p.Found.English.StartsWith("No name is to be sewn yet", StringComparison.Ordinal));
        Assert.Contains(report.Problems, p => p.Found.English == "1 row waits for your decision, and no plan counts what waits.");
    }

    private static PlansReport Plans(string lettering, string strip, params string[] more)
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name\n" + string.Join('\n', Names.Concat(more)) + "\n")
            .With("job.json", $$"""
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m", "turn": 0 },
                  "lettering": { {{lettering}} }, "strip": { "rounds": 1, {{strip}} } }
                """);
        return Bander.Plans(folder.FullPath);
    }
}

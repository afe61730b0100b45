using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>The keys of the hours, the shopping and the evenings.</summary>
public class WorkKeysTests
{
    [Fact]
    public void What_is_not_given_is_as_the_records_have_it()
    {
        var job = JobReaderTests.ReadAll("""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m" } }""").Value!;
        Assert.Equal(new BobbinSettings(), job.Bobbin);
        Assert.Equal(new ShopSettings(), job.Shop);
        Assert.False(job.Prices.Any);
        Assert.Equal(0.1, job.Machine.BreaksPer1000Stitches);
        Assert.Null(job.EveningMinutes);
    }

    [Fact]
    public void All_of_them_are_read()
    {
        var job = JobReaderTests.ReadAll("""
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m" }, "evening": "1 h 30 min",
              "strip": { "keepFree": "1 ft" },
              "machine": { "slowAbove": "5 mm", "shortBelow": "0.5 mm", "breaksPer1000Stitches": 0.2, "names": ["blue", "grey"] },
              "bobbin": { "capacity": "55 m" }, "shop": { "units": "yards", "spool": "1100 yd", "threadWaste": 0.2 },
              "prices": { "currency": "kr", "spool": 49.5, "hour": 200 } }
            """).Value!;
        Assert.Equal(90, job.EveningMinutes);
        Assert.Equal(304.8, job.KeepFree.Mm, 9);
        Assert.Equal((5, 0.5, 0.2), (job.Machine.SlowAboveMm, job.Machine.ShortBelowMm, job.Machine.BreaksPer1000Stitches));
        Assert.Equal(["blue", "grey"], job.Machine.Names.AsEnumerable());
        Assert.Equal(55, job.Bobbin.HoldsM, 9);
        Assert.False(job.Shop.Metric);
        Assert.Equal(1005.84, job.Shop.SpoolM, 6);
        Assert.Equal(("kr", 49.5, 200.0), (job.Prices.Currency, job.Prices.Spool!.Value, job.Prices.Hour!.Value));
    }

    [Theory]
    [InlineData("""{ "evening": "two hours" }""", "evening", "two hours")]
    [InlineData("""{ "evening": "-2h" }""", "evening", "-2h")]
    [InlineData("""{ "bobbin": { "core": "19.5 mm" } }""", "bobbin", "no room")]
    [InlineData("""{ "machine": { "names": ["blue", "Blue"] } }""", "machine.names", "same name")]
    [InlineData("""{ "prices": { "spool": -3 } }""", "prices.spool", "-3")]
    [InlineData("""{ "strip": { "keepfree": 30 } }""", "strip.keepfree", "does not know")]
    public void A_wrong_one_is_named(string part, string key, string words)
    {
        var result = JobReaderTests.ReadAll("""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m" }, """
            + part.TrimStart('{', ' '));
        var problem = Assert.Single(result.Problems, p => p.Severity == Severity.CannotUse);
        Assert.Equal(key, problem.Where.Key);
        Assert.Contains(words, problem.Found.English, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Mend.English);
    }

    [Theory]
    [InlineData("2h", 120)]
    [InlineData("1 h 30 min", 90)]
    [InlineData("90min", 90)]
    [InlineData("2.5 hours", 150)]
    public void Times_are_read_as_people_write_them(string text, double minutes)
    {
        Assert.True(Duration.TryParseMinutes(text, out double read, out _));
        Assert.Equal(minutes, read, 9);
    }

    [Theory]
    [InlineData("")]
    [InlineData("2")]
    [InlineData("30 min 2 h")]
    [InlineData("1.2.3 h")]
    [InlineData("0 min")]
    [InlineData("25 h")]
    public void Others_are_not(string text)
    {
        Assert.False(Duration.TryParseMinutes(text, out _, out Said why));
        Assert.NotEmpty(why.English);
    }
}

using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.PlanFileRoom;

/// <summary>A plan.json that was changed by hand or by a stranger is refused in words, whatever stands in it.</summary>
public sealed class BadPlanTests
{
    private const string Whole = "tests/NameBand.Tests/Data/version-0.1/changed/out/plan.json";

    [Theory]
    [InlineData("""$.strip.shortening""", "1e999")]
    [InlineData("""$.letterHeightExactMm""", "-1e999")]
    [InlineData("""$.hoopings[0].sewnAs.letterHeightExactMm""", "1e400")]
    [InlineData("""$.letterHeightMm""", "1e300")]
    [InlineData("""$.rounds[0].lengthMm""", "\"long\"")]
    [InlineData("""$.rounds[0].segments[0]""", "null")]
    [InlineData("""$.rounds[0].segments[0].names[0]""", "null")]
    [InlineData("""$.rounds[0].segments[0].names[0].text""", "null")]
    [InlineData("""$.rounds[0].segments[0].names[0].order""", "99999999999999")]
    [InlineData("""$.rounds[0].segments[0].names""", "{}")]
    [InlineData("""$.rounds[0].segments[1].gone[0]""", "null")]
    [InlineData("""$.hoopings""", "null")]
    [InlineData("""$.hoopings[1].segments[0]""", "null")]
    [InlineData("""$.hoopings[1].number""", "1.5")]
    [InlineData("""$.hoopings[1].number""", "1")]
    [InlineData("""$.cloths[0].pieces[0]""", "null")]
    [InlineData("""$.hoopings[0].measured[0]""", "null")]
    [InlineData("""$.hoopings[0].measured""", "7")]
    [InlineData("""$.rows""", "\"none\"")]
    [InlineData("""$.rows[0]""", "null")]
    [InlineData("""$.totals""", "[]")]
    public void What_is_no_plan_is_refused_and_thrown_about_nowhere(string at, string value)
    {
        using var folder = new TemporaryFolder().With("plan.json", Spoilt(at, value));
        var read = PlanOverview.Read(folder.FullPath);
        Assert.Null(read.Value);
        Assert.Contains("not a whole plan", Assert.Single(read.Problems).Found.English, StringComparison.Ordinal);

        // A number that stands twice keeps nobody from being compared.
        Assert.Equal(value == "1", new PreviousOutput(folder.FullPath).Names is not null);
    }

    [Theory]
    [InlineData("\"title\": \"twice\",\n  \"title\":")]
    [InlineData("\"more\": { \"deep\": [] },\n  \"title\":")]
    public void A_member_that_stands_twice_is_refused_and_an_unknown_one_is_passed_over(string members)
    {
        string plan = Repository.Read(Whole).Replace("\"title\":", members, StringComparison.Ordinal);
        using var folder = new TemporaryFolder().With("plan.json", plan);
        Assert.Equal(members.Contains("more", StringComparison.Ordinal), PlanOverview.Read(folder.FullPath).Value is not null);
    }

    [Fact]
    public void Nothing_and_rubbish_are_refused()
    {
        byte[] whole = File.ReadAllBytes(Path.Combine(Repository.Root, Whole));
        byte[][] all =
        [
            [], "null"u8.ToArray(), "[]"u8.ToArray(), "{}"u8.ToArray(), [0xFF, 0xFE], whole[..(whole.Length / 2)],
            Encoding.UTF8.GetBytes(new string('[', 5000)),
        ];
        Assert.All(all, bytes => Assert.ThrowsAny<JsonException>(() => PlanJson.Read(bytes)));
        Assert.Equal("Lantern walk: the boatman's apron", PlanJson.Read(whole).Title);
    }

    /// <summary>The plan with one value exchanged for what JSON text cannot be made to hold by a library.</summary>
    private static string Spoilt(string at, string value)
    {
        const string Mark = "the value to be spoilt";
        var plan = JsonNode.Parse(Repository.Read(Whole))!;
        var steps = at[2..].Split('.', '[').ToList();
        JsonNode node = plan;
        foreach (string step in steps[..^1])
        {
            node = step.EndsWith(']') ? node[int.Parse(step[..^1], CultureInfo.InvariantCulture)]! : node[step]!;
        }

        string last = steps[^1];
        if (last.EndsWith(']'))
        {
            node[int.Parse(last[..^1], CultureInfo.InvariantCulture)] = Mark;
        }
        else
        {
            Assert.True(node.AsObject().ContainsKey(last), at);
            node[last] = Mark;
        }

        return plan.ToJsonString().Replace($"\"{Mark}\"", value, StringComparison.Ordinal);
    }
}

using System.Globalization;
using System.Text;
using System.Text.Json;
using NameBand.Names;
using NameBand.Output;
using NameBand.PlanFile;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class PlanJsonTests
{
    [Fact]
    public void EveryKeyOfTheFormatIsThere()
    {
        using var json = Parse();
        var root = json.RootElement;
        Assert.Equal(1, root.GetProperty("format").GetInt32());
        Keys(root, "format", "title", "hem", "strip", "letterHeightMm", "rounds", "hoopings", "totals", "rows");
        Keys(root.GetProperty("hem"), "lengthMm");
        Keys(root.GetProperty("strip"), "finishedWidthMm", "totalLengthMm", "differenceMm", "matchesHem");
        var round = root.GetProperty("rounds")[0];
        Keys(round, "number", "lengthMm", "hemMm", "segments");
        Keys(round.GetProperty("segments")[0], "number", "startMm", "lengthMm", "clothStartMm", "names");
        Keys(round.GetProperty("segments")[0].GetProperty("names")[0], "text", "list", "line", "startMm", "widthMm");
        var hooping = root.GetProperty("hoopings")[2];
        Keys(hooping, "number", "segments", "needlePath", "proof", "stitches", "minutes");
        Keys(hooping.GetProperty("segments")[0], "number", "xMm", "yMm");
        Assert.Equal("needle-paths/hooping-003.csv", hooping.GetProperty("needlePath").GetString());
        Assert.Equal("proofs/hooping-003.png", hooping.GetProperty("proof").GetString());
        Keys(
            root.GetProperty("totals"),
            "names", "segments", "hoopings", "stitches", "jumps", "trims", "machineMinutes", "handsOnMinutes", "needleThreadM",
            "bobbinThreadM");
        Keys(root.GetProperty("rows")[0], "list", "line", "outcome", "text", "reason");
    }

    [Fact]
    public void WhoAddsTheNumbersInTheFileArrivesAtItsSums()
    {
        using var json = Parse();
        var root = json.RootElement;
        var rounds = root.GetProperty("rounds").EnumerateArray().ToList();
        decimal lengths = rounds.Sum(r => r.GetProperty("lengthMm").GetDecimal());
        decimal hems = rounds.Sum(r => r.GetProperty("hemMm").GetDecimal());
        var strip = root.GetProperty("strip");
        Assert.Equal(lengths, strip.GetProperty("totalLengthMm").GetDecimal());
        Assert.Equal(lengths - hems, strip.GetProperty("differenceMm").GetDecimal());
        Assert.Equal(9.555m, lengths - hems); // 390.123 - 380.568 (rounded first) + 400 - 400
        Assert.False(strip.GetProperty("matchesHem").GetBoolean());

        var totals = root.GetProperty("totals");
        var segments = rounds.SelectMany(r => r.GetProperty("segments").EnumerateArray()).ToList();
        int placed = root.GetProperty("rows").EnumerateArray().Count(r => r.GetProperty("outcome").GetString() == "placed");
        Assert.Equal(placed, totals.GetProperty("names").GetInt32());
        Assert.Equal(placed, segments.Sum(s => s.GetProperty("names").GetArrayLength()));
        Assert.Equal(segments.Count, totals.GetProperty("segments").GetInt32());
        Assert.Equal(
            root.GetProperty("hoopings").EnumerateArray().Sum(h => h.GetProperty("stitches").GetInt32()),
            totals.GetProperty("stitches").GetInt32());
        foreach (var segment in segments)
        {
            Assert.Equal(
                segment.GetProperty("startMm").GetDouble() / (1 - OutSample.Shortening), segment.GetProperty("clothStartMm").GetDouble(),
                0.0015);
        }

        Assert.Equal(
            ["held", "leftOut", "merged", "placed"],
            root.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("outcome").GetString()!).Distinct()
            .Order(StringComparer.Ordinal));
    }

    [Fact]
    public void NamesStayReadableAndComeBackExactly()
    {
        string text = Encoding.UTF8.GetString(Bytes());
        foreach (string name in new[] { "Zdeněk Holub", "今井 さくら", "Ngozi O'Farrow", "=Pell & <Sons>", "“Lantern” walk – 行列" })
        {
            Assert.Contains(name, text, StringComparison.Ordinal);
        }

        Assert.DoesNotContain('\r', text);
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
        using var json = Parse();
        Assert.Equal("=Pell & <Sons>", json.RootElement.GetProperty("rows")[4].GetProperty("text").GetString());
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void BytesAreTheSameUnderAnyCulture(string culture)
    {
        byte[] here = Bytes();
        var plan = OutSample.Plan();
        string path = NeedlePathCsvTests.Text(OutSample.Path(plan, plan.Hoopings[0]));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(here, Bytes());
            Assert.Equal(path, NeedlePathCsvTests.Text(OutSample.Path(plan, plan.Hoopings[0])));
            Assert.Equal("proofs/hooping-1234.png", OutPaths.HoopingProof(1234));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void PlanAndRowsThatDoNotBelongTogetherAreABug()
    {
        var plan = OutSample.Plan();
        var rows = OutSample.Rows(plan);
        var short1 = rows.SetItem(0, rows[0] with { Outcome = RowOutcome.LeftOut });
        Assert.Throws<InvalidOperationException>(
            () => PlanJson.Write(Stream.Null, "t", plan, OutSample.Estimate(plan), new PlanFound(short1)));
    }

    private static byte[] Bytes()
    {
        var plan = OutSample.Plan();
        using var stream = new MemoryStream();
        PlanJson.Write(stream, "“Lantern” walk – 行列", plan, OutSample.Estimate(plan), new PlanFound(OutSample.Rows(plan)));
        return stream.ToArray();
    }

    private static JsonDocument Parse() => JsonDocument.Parse(Bytes());

    private static void Keys(JsonElement element, params string[] keys) =>
        Assert.All(keys, key => Assert.True(element.TryGetProperty(key, out _), $"The key {key} is missing."));
}

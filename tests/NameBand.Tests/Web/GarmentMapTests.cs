using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using NameBand.Job;
using NameBand.Pipeline;
using NameBand.Web.Strip;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>What the page draws the hanging garment from.</summary>
public sealed class GarmentMapTests : IDisposable
{
    private const string Hostile = "Wenna <b>&\"</title>";

    private readonly TemporaryFolder _folder = new TemporaryFolder()
        .With("job.json",
            """
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m", "circlePart": 0.5 }, "strip": { "rounds": 2 },
              "lettering": { "height": "8 mm" } }
            """)
        .With("names.csv", $"name\nOttilie Marsh\nBram Farrow\n\"{Hostile.Replace("\"", "\"\"", StringComparison.Ordinal)}\"\nJory Tarn\n");

    public void Dispose() => _folder.Dispose();

    /// <summary>It has no name in it, its lines are as long as their cloth, and names fill in as they are sewn.</summary>
    [Fact]
    public void Its_lines_are_as_long_as_their_cloth_and_names_fill_in_as_they_are_sewn()
    {
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(_folder.FullPath).Status);
        var laid = new LayoutSession(_folder.FullPath).Lay().Laid!;
        Assert.Equal(4, laid.Plan.NameCount);
        string text = Json(laid);
        Assert.DoesNotContain("Ottilie", text, StringComparison.Ordinal);
        using var map = JsonDocument.Parse(text);
        Assert.Equal("skirt", map.RootElement.GetProperty("kind").GetString());
        Assert.Empty(map.RootElement.GetProperty("sewn").EnumerateArray());
        var strips = map.RootElement.GetProperty("strips").EnumerateArray().ToList();
        foreach (var (strip, round) in strips.Zip(laid.Plan.Rounds))
        {
            double[] along = [.. strip.GetProperty("along").EnumerateArray().Select(a => a.GetDouble())];
            Assert.Equal(laid.Plan.Hem.RoundMm(round.Number), along[^1], 0.5);
            double[] points = [.. strip.GetProperty("lower").GetProperty("points").EnumerateArray().Select(a => a.GetDouble())];
            Assert.Equal(along.Length * 2, points.Length);
            // What is drawn between its points is hardly shorter than the cloth.
            double drawn = Enumerable.Range(1, along.Length - 1).Sum(i => Math.Sqrt(
                Math.Pow(points[2 * i] - points[(2 * i) - 2], 2) + Math.Pow(points[(2 * i) + 1] - points[(2 * i) - 1], 2)));
            Assert.InRange(drawn, 0.995 * along[^1], along[^1] + 0.5);
        }

        Bander.Sewn(_folder.FullPath, null, new SewingWord(1, SewingDeed.Sewn), () => { });
        laid = new LayoutSession(_folder.FullPath).Lay().Laid!;
        using var again = JsonDocument.Parse(Json(laid));
        var sewn = again.RootElement.GetProperty("sewn").EnumerateArray().Select(n => n.GetInt32()).ToList();
        var first = laid.Plan.Hoopings[0].Segments.SelectMany(s => s.Segment.Names).ToList();
        Assert.Equal(
            first.OrderBy(n => n.Order),
            StripMap.SewnOn(laid.Plan).Where((_, i) => sewn.Contains(i)).Select(s => s.Name).OrderBy(n => n.Order));
        Flat(laid, sewn);
    }

    /// <summary>Flat, every name is seen from the front or from the back, as it is written.</summary>
    private static void Flat(LaidOutJob laid, List<int> sewn)
    {
        var names = XDocument.Parse(GarmentDrawing.Svg(laid)).Descendants().Where(e => e.Attribute("data-name") is not null).ToList();
        var all = StripMap.SewnOn(laid.Plan).ToList();
        Assert.Equal(Enumerable.Range(0, all.Count), names.Select(Number).Distinct().Order());
        Assert.Equal(sewn, names.Where(e => e.Attribute("data-sewn") is not null).Select(Number).Distinct().Order());
        Assert.All(names, e => Assert.Equal(all[Number(e)].Name.Lettered.Name.Text, e.Value));
        Assert.Contains(names, e => e.Value == Hostile);
        static int Number(XElement e) => int.Parse(e.Attribute("data-name")!.Value, CultureInfo.InvariantCulture);
    }

    private static string Json(LaidOutJob laid)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            GarmentMap.Write(json, 1, laid);
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}

using System.Text.Json;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>plan.json tells a name's length at the edge of a curved strip and on its base line.</summary>
public sealed class CurvedBaseLineTests
{
    /// <summary>Arcs of one angle are to each other as their radii (Euclid, Elements VI.33): the base line lies half the finished width
    /// and its own height above the edge, nearer the middle of the circle. Room is kept along the edge before the base line is known, for
    /// letters in the middle of the strip: hence the hundredths.</summary>
    [Fact]
    public void A_name_is_as_much_shorter_on_its_base_line_as_that_circle_is_smaller()
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\n")
            .With("job.json", """
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "0.9 m", "circlePart": 0.75, "closed": false },
                  "strip": { "shape": "curved", "turnIn": "3/8 in" } }
                """);
        Bander.Make(folder.FullPath);
        using var plan = JsonDocument.Parse(File.ReadAllBytes(folder["out/plan.json"]));
        double finishedMm = plan.RootElement.GetProperty("strip").GetProperty("finishedWidthMm").GetDouble();
        int names = 0;
        foreach (var round in plan.RootElement.GetProperty("rounds").EnumerateArray())
        {
            double radiusMm = round.GetProperty("radiusMm").GetDouble();
            foreach (var name in round.GetProperty("segments").EnumerateArray().SelectMany(s => s.GetProperty("names").EnumerateArray()))
            {
                double Mm(string key) => name.GetProperty(key).GetDouble();
                double inwardMm = (finishedMm / 2) + Mm("baselineYMm");
                Assert.InRange((Mm("onBaseLineMm") / Mm("widthMm")) - ((radiusMm - inwardMm) / radiusMm), -0.015, 0.015);
                Assert.InRange(Mm("onBaseLineMm") / Mm("widthMm"), 0.94, 0.98);
                Assert.True(inwardMm > 8, "the base line lies at the edge");
                names++;
            }
        }

        Assert.Equal(3, names);
    }
}

using System.Globalization;
using System.Xml.Linq;
using NameBand.Output;
using NameBand.Stitching;
using NameBand.Tests.OutputRoom;
using NameBand.Tests.Outside;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;
using Point = NameBand.Common.Point;

namespace NameBand.Tests.Sources;

/// <summary>
/// Needle paths as SVG, read back by an XML reader point by point, and drawn by librsvg (Debian librsvg2-bin): SVG 1.1
/// (second edition), 7.7 viewBox, 8.3 path data.
/// </summary>
public sealed class NeedlePathSvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Every_run_of_stitches_comes_back_point_by_point()
    {
        var (xml, path) = Written();
        var expected = Runs(path).ToList();
        var read = xml.Descendants(Svg + "path").Select(p => Points(p.Attribute("d")!.Value)).ToList();
        Assert.Equal(expected.Count, read.Count);
        foreach (var (run, back) in expected.Zip(read))
        {
            Assert.Equal(run.Count, back.Count);
            Assert.All(run.Zip(back), p => Assert.True(p.First.DistanceTo(p.Second) < 0.00071, $"{p.First} is not {p.Second}"));
        }

        Assert.Equal(path.Stitches, read.Sum(r => r.Count));
    }

    [Fact]
    public void The_drawing_is_the_sewing_field_in_millimetres_and_names_are_safe()
    {
        var (xml, _) = Written(hooping: 2);
        Assert.Equal(("160mm", "100mm"), (xml.Root!.Attribute("width")!.Value, xml.Root.Attribute("height")!.Value));
        Assert.Equal("160 100", string.Join(' ', xml.Root.Attribute("viewBox")!.Value.Split(' ').Skip(2)));
        Assert.Equal("=Pell & <Sons>, Ngozi O'Farrow", xml.Root.Element(Svg + "desc")!.Value);
    }

    /// <summary>Drawn at 10 pixels a millimetre, there is thread where the first name's first column is, and none beside.</summary>
    [SkippableFact]
    public void Librsvg_draws_it_where_the_needle_goes()
    {
        OutsideTool.Require("rsvg-convert", "librsvg2-bin");
        var (xml, path) = Written();
        using var folder = new TemporaryFolder();
        xml.Save(folder["hooping.svg"]);
        byte[] png = OutsideTool.RunForBytes(
            "rsvg-convert", ["-d", "254", "-p", "254", "--background-color", "white", folder["hooping.svg"]]);
        using var picture = Image.Load<L8>(png);
        Assert.Equal((1600, 1000), (picture.Width, picture.Height));

        double[] view = [.. xml.Root!.Attribute("viewBox")!.Value.Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
        var satin = path.Steps.Where(s => s.Kind == StitchKind.Satin).Select(s => s.At).ToList();
        byte At(double xMm, double yMm) => picture[(int)((xMm - view[0]) * 10), (int)((-yMm - view[1]) * 10)].PackedValue;
        Assert.All(satin.Take(40).Skip(5), p => Assert.InRange(At(p.XMm, p.YMm), 0, 150));
        Assert.Equal(255, At(satin.Min(p => p.XMm) - 1, 0));
    }

    private static (XDocument Xml, NeedlePath Path) Written(int hooping = 0)
    {
        var plan = OutSample.Plan();
        var path = OutSample.Path(plan, plan.Hoopings[hooping]);
        using var stream = new MemoryStream();
        NeedlePathSvg.Write(stream, plan, plan.Hoopings[hooping], path, 0.4);
        stream.Position = 0;
        return (XDocument.Load(stream), path);
    }

    private static IEnumerable<List<Point>> Runs(NeedlePath path)
    {
        var run = new List<Point>();
        foreach (var step in path.Steps)
        {
            if (step.Action == NeedleAction.Stitch)
            {
                run.Add(step.At);
            }
            else if (run.Count > 0)
            {
                yield return run;
                run = [];
            }
        }
    }

    private static List<Point> Points(string d)
    {
        Assert.StartsWith("M", d, StringComparison.Ordinal);
        return [.. d[1..].Split('L').Select(p => p.Split(',')).Select(p => new Point(
            double.Parse(p[0], CultureInfo.InvariantCulture), -double.Parse(p[1], CultureInfo.InvariantCulture)))];
    }
}

using System.Globalization;
using System.Text.Json;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>An out folder read back from its files alone, and what must always be true of one.</summary>
internal sealed class MadeFolder
{
    private const double SlightMm = 0.0021;

    private readonly string _folder;

    public MadeFolder(string folder)
    {
        _folder = folder;
        Plan = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "plan.json"))).RootElement;
    }

    public JsonElement Plan { get; }

    public static string SampleFolder => Path.Combine(Repository.Root, "samples", "lantern-walk");

    /// <summary>A copy of the sample's own files in a folder of the test's.</summary>
    public static TemporaryFolder CopySample()
    {
        var folder = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(SampleFolder))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        return folder;
    }

    public IEnumerable<JsonElement> Rounds => Plan.GetProperty("rounds").EnumerateArray();

    public IEnumerable<JsonElement> Segments => Rounds.SelectMany(r => r.GetProperty("segments").EnumerateArray());

    public IEnumerable<JsonElement> Names => Segments.SelectMany(s => s.GetProperty("names").EnumerateArray());

    public IEnumerable<JsonElement> Rows => Plan.GetProperty("rows").EnumerateArray();

    public static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();

    /// <summary>Bytes of every file, by relative path.</summary>
    public static SortedDictionary<string, byte[]> Bytes(string folder) => new(
        Directory.GetFiles(folder, "*", SearchOption.AllDirectories)
            .ToDictionary(f => Path.GetRelativePath(folder, f).Replace('\\', '/'), File.ReadAllBytes),
        StringComparer.Ordinal);

    /// <summary>Sums, orders, limits and places as the file formats promise them.</summary>
    public void Check(double longestOnClothMm, double shortening, double zoneMm)
    {
        var strip = Plan.GetProperty("strip");
        var totals = Plan.GetProperty("totals");
        double length = Rounds.Sum(r => Number(r, "lengthMm"));
        Assert.Equal(length, Number(strip, "totalLengthMm"), 6);
        Assert.Equal(length - Rounds.Sum(r => Number(r, "hemMm")), Number(strip, "differenceMm"), 6);
        Assert.Equal(Names.Count(), totals.GetProperty("names").GetInt32());
        Assert.Equal(Names.Count(), Rows.Count(r => r.GetProperty("outcome").GetString() == "placed"));
        Assert.Equal(Segments.Count(), Segments.Select(s => s.GetProperty("number").GetInt32()).Distinct().Count());

        foreach (var round in Rounds)
        {
            CheckRound(round, longestOnClothMm, shortening);
        }

        var segments = Segments.ToDictionary(s => s.GetProperty("number").GetInt32());
        int stitches = 0;
        int jumps = 0;
        int trims = 0;
        foreach (var hooping in Plan.GetProperty("hoopings").EnumerateArray())
        {
            var path = PathRows(hooping.GetProperty("needlePath").GetString()!);
            CheckPath(path);
            CheckPlaces(Straightened(path, hooping), hooping, segments, shortening, zoneMm, Number(strip, "finishedWidthMm") / 2);
            int here = path.Count(r => r.Action == "stitch");
            Assert.Equal(here, hooping.GetProperty("stitches").GetInt32());
            stitches += here;
            jumps += path.Where((r, i) => r.Action == "jump" && (i == 0 || path[i - 1].Action != "jump")).Count() - 1;
            trims += path.Count(r => r.Action == "trim");
            Assert.True(File.Exists(Path.Combine(_folder, hooping.GetProperty("proof").GetString()!)));
        }

        Assert.Equal(
            (stitches, jumps, trims),
            (totals.GetProperty("stitches").GetInt32(), totals.GetProperty("jumps").GetInt32(), totals.GetProperty("trims").GetInt32()));
    }

    /// <summary>
    /// Needle points of a curved hooping put back on a straight strip, by the geometry that docs/files.md states; marks
    /// stay where they are. A letter is turned and not bent, so it may lean out of its place by what <see cref="LeanMm"/> says.
    /// </summary>
    private List<PathRow> Straightened(List<PathRow> path, JsonElement hooping)
    {
        if (!Plan.GetProperty("strip").TryGetProperty("shape", out _))
        {
            return path;
        }

        int firstName = path.FindIndex(r => r.Action == "stop");
        var arcs = hooping.GetProperty("segments").EnumerateArray().Select(ArcOf).ToList();
        return [.. path.Select((row, i) =>
        {
            if (i <= firstName)
            {
                return row;
            }

            var (arc, along, y) = arcs.Select(a => (Arc: a, a.AlongMm(row), YMm: a.OffMm(row))).MinBy(a => Math.Abs(a.YMm));
            var near = arc.Places.MinBy(p => Math.Max(p.Left - along, along - p.Right));
            Assert.InRange(along, near.Left - LeanMm, near.Right + LeanMm);
            return row with { X = arc.XMm + Math.Clamp(along, near.Left, near.Right), Y = arc.YMm + y };
        })];
    }

    private Arc ArcOf(JsonElement hooped)
    {
        int number = hooped.GetProperty("number").GetInt32();
        var round = Rounds.Single(r => r.GetProperty("segments").EnumerateArray().Any(s => s.GetProperty("number").GetInt32() == number));
        var segment = round.GetProperty("segments").EnumerateArray().Single(s => s.GetProperty("number").GetInt32() == number);
        double radius = Number(round, "radiusMm");
        double shortening = Number(Plan.GetProperty("strip"), "shortening");
        return new Arc(
            Number(hooped, "xMm"), Number(hooped, "yMm"), radius, radius - (Number(Plan.GetProperty("strip"), "finishedWidthMm") / 2),
            Number(segment, "lengthMm") / 2 / radius,
            [.. segment.GetProperty("names").EnumerateArray().Select(n =>
            {
                double left = (Number(n, "startMm") - Number(segment, "startMm")) / (1 - shortening);
                return (left, left + Number(n, "widthMm"));
            })]);
    }

    /// <summary>One strip of a curved hooping, in the frame of its own chord.</summary>
    private sealed record Arc(
        double XMm, double YMm, double RadiusMm, double CentreMm, double Half, List<(double Left, double Right)> Places)
    {
        public double AlongMm(PathRow row) => (Math.Atan2(AcrossMm(row), DownMm(row)) + Half) * RadiusMm;

        public double OffMm(PathRow row) => CentreMm - Math.Sqrt((AcrossMm(row) * AcrossMm(row)) + (DownMm(row) * DownMm(row)));

        private double AcrossMm(PathRow row) => row.X - XMm - (CentreMm * Math.Sin(Half));

        private double DownMm(PathRow row) => (CentreMm * Math.Cos(Half)) - (row.Y - YMm);
    }

    private const double LeanMm = 0.2;

    private static void CheckRound(JsonElement round, double longestOnClothMm, double shortening)
    {
        double end = double.NegativeInfinity;
        foreach (var segment in round.GetProperty("segments").EnumerateArray())
        {
            double start = Number(segment, "startMm");
            Assert.InRange(Number(segment, "lengthMm") / (1 - shortening), 0, longestOnClothMm + SlightMm);
            Assert.InRange(Number(segment, "clothStartMm") - (start / (1 - shortening)), -SlightMm, SlightMm);
            foreach (var name in SewnIn(segment).OrderBy(n => Number(n, "startMm")))
            {
                Assert.True(Number(name, "startMm") > end, "two of what is sewn lie over each other");
                end = Number(name, "startMm") + Number(name, "widthMm");
                Assert.InRange(Number(name, "startMm"), start - SlightMm, double.MaxValue);
                Assert.InRange(end, 0, start + Number(segment, "lengthMm") + SlightMm);
            }
        }

        Assert.InRange(end, double.NegativeInfinity, Number(round, "lengthMm") + SlightMm);
    }

    /// <summary>Names, and the headings and motifs that are sewn with them.</summary>
    public static IEnumerable<JsonElement> SewnIn(JsonElement segment) =>
        new[] { "names", "headings", "motifs" }.SelectMany(key => segment.TryGetProperty(key, out var list) ? list.EnumerateArray() : []);

    private static void CheckPath(List<PathRow> path)
    {
        Assert.Equal("jump", path[0].Action);
        Assert.Equal("end", path[^1].Action);
        for (int i = 1; i < path.Count; i++)
        {
            var (before, row) = (path[i - 1], path[i]);
            Assert.Equal(i + 1, row.Step);
            if (row.Action is "trim" or "stop" or "end" || (before.Action == "jump" && row.Action != "jump"))
            {
                Assert.Equal((before.X, before.Y), (row.X, row.Y));
            }

            Assert.True(before.Action != "jump" || row.Action is "jump" or "stitch", "a run of jumps ends with a stitch");
            Assert.True(before.Action != "trim" || row.Action is "jump" or "stop" or "end", "after a trim the needle jumps");
        }
    }

    private static void CheckPlaces(
        List<PathRow> path, JsonElement hooping, Dictionary<int, JsonElement> segments, double shortening, double zoneMm,
        double halfWidthMm)
    {
        var hooped = hooping.GetProperty("segments").EnumerateArray()
            .Select(s => (X: Number(s, "xMm"), Y: Number(s, "yMm"), Segment: segments[s.GetProperty("number").GetInt32()])).ToList();
        var boxes = hooped.SelectMany(h => SewnIn(h.Segment).Select(n =>
        {
            double left = h.X + ((Number(n, "startMm") - Number(h.Segment, "startMm")) / (1 - shortening));
            return (Left: left - SlightMm, Right: left + Number(n, "widthMm") + SlightMm, h.Y);
        })).ToList();
        foreach (var row in path.Where(r => r.Action == "stitch"))
        {
            var here = hooped.MinBy(h => Math.Abs(row.Y - h.Y));
            if (Math.Abs(row.Y - here.Y) > halfWidthMm)
            {
                Assert.InRange(row.X, here.X - SlightMm, here.X + Number(here.Segment, "lengthMm") + SlightMm);
            }
            else
            {
                Assert.InRange(row.Y - here.Y, (-zoneMm / 2) - SlightMm, (zoneMm / 2) + SlightMm);
                Assert.Contains(boxes, b => b.Y == here.Y && row.X >= b.Left && row.X <= b.Right);
            }
        }
    }

    private List<PathRow> PathRows(string relative)
    {
        string text = File.ReadAllText(Path.Combine(_folder, relative));
        string[] lines = text.Split("\r\n");
        Assert.Equal("step,x_mm,y_mm,action", lines[0]);
        Assert.Equal("", lines[^1]);
        return [.. lines[1..^1].Select(l =>
        {
            string[] cells = l.Split(',');
            return new PathRow(
                int.Parse(cells[0], CultureInfo.InvariantCulture), double.Parse(cells[1], CultureInfo.InvariantCulture),
                double.Parse(cells[2], CultureInfo.InvariantCulture), cells[3]);
        })];
    }

    private readonly record struct PathRow(int Step, double X, double Y, string Action);
}

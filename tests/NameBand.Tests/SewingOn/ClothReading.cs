using System.Globalization;
using System.Text.Json;

namespace NameBand.Tests.SewingOn;

/// <summary>
/// A reader of an out folder that knows nothing but its files: where every stitch lies on its piece of flat cloth, and what
/// must never be so.
/// </summary>
internal sealed class ClothReading
{
    private const double SlightMm = 0.02;

    private readonly string _folder;
    private readonly JsonElement _plan;
    private readonly double _stretch;
    private readonly double _halfWidthMm;

    public ClothReading(string folder)
    {
        _folder = folder;
        using var json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "plan.json")));
        _plan = json.RootElement.Clone();
        _stretch = 1 / (1 - Number(_plan.GetProperty("strip"), "shortening"));
        _halfWidthMm = Number(_plan.GetProperty("strip"), "finishedWidthMm") / 2;
    }

    public IReadOnlyList<int> Hoopings => [.. _plan.GetProperty("hoopings").EnumerateArray().Select(h => Whole(h, "number"))];

    public IReadOnlyList<string> Placed =>
        [.. All(_plan, "rounds").SelectMany(r => All(r, "segments")).SelectMany(s => All(s, "names"))
        .Select(n => n.GetProperty("text").GetString()!)];

    public IReadOnlyList<(string Text, string Outcome, string Reason)> Rows =>
        [.. All(_plan, "rows")
            .Select(r => (r.GetProperty("text").GetString()!, r.GetProperty("outcome").GetString()!,
            r.GetProperty("reason").GetString()!))];

    /// <summary>Names with the number that stands beside them on the proofs, where they end, and their hooping.</summary>
    public IReadOnlyList<(int Order, string Text, double EndMm, int Hooping)> Ends
    {
        get
        {
            var hoopingOf = All(_plan, "hoopings")
                .SelectMany(h => All(h, "segments").Select(s => (Segment: Whole(s, "number"), Hooping: Whole(h, "number"))))
                .ToDictionary(p => p.Segment, p => p.Hooping);
            return [.. All(_plan, "rounds").SelectMany(r => All(r, "segments")).SelectMany(s => All(s, "names").Select(n =>
                (Whole(n, "order"), n.GetProperty("text").GetString()!, Number(n, "startMm") + Number(n, "widthMm"),
                    hoopingOf[Whole(s, "number")])))];
        }
    }

    /// <summary>Length on the cloth of a hooping's uppermost strip, between the outer edges of its names.</summary>
    public double LengthMm(int hooping)
    {
        var segment = Segment(Whole(All(Hooping(hooping), "segments").MaxBy(s => Number(s, "yMm")), "number")).Segment;
        var names = All(segment, "names").ToList();
        double first = names.Min(n => Number(n, "startMm"));
        return names.Max(n => ((Number(n, "startMm") - first) * _stretch) + Number(n, "widthMm"));
    }

    /// <summary>Everything that is wrong, in words; empty where all is well.</summary>
    /// <param name="sewn">What is on the cloth: its files are those of the folder “sewn”.</param>
    public IEnumerable<string> Faults(
        string jobFolder, IReadOnlyCollection<int> sewn, (double AlongMm, double AcrossMm, double SpareMm) field, double zoneMm)
    {
        var inks = new List<Ink>();
        foreach (int number in Hoopings)
        {
            bool isSewn = sewn.Contains(number);
            var path = Stitches(Path.Combine(
                isSewn ? Path.Combine(jobFolder, "sewn") : _folder, "needle-paths",
                FormattableString.Invariant($"hooping-{number:000}.csv")));
            var read = Read(number, path, isSewn);
            inks.AddRange(read.Inks);
            foreach (string fault in read.Faults.Concat(isSewn ? [] : OfField(number, path, field, zoneMm)))
            {
                yield return fault;
            }
        }

        foreach (var ink in inks.Where(i => !sewn.Contains(i.Hooping)))
        {
            foreach (var other in inks.Where(o =>
                o.Hooping != ink.Hooping && o.Cloth == ink.Cloth && o.Lane == ink.Lane && o.ToMm > ink.FromMm + SlightMm
                && o.FromMm < ink.ToMm - SlightMm))
            {
                yield return FormattableString.Invariant(
                    $"hooping {ink.Hooping} is stitched from {ink.FromMm:0.00} to {ink.ToMm:0.00} mm of cloth {ink.Cloth}, lane {ink.Lane}, over {(sewn.Contains(other.Hooping) ? "sewn " : "")}hooping {other.Hooping}, {other.FromMm:0.00} to {other.ToMm:0.00} mm");
            }
        }
    }

    /// <summary>A run of thread along a lane with no clear cloth in it.</summary>
    private sealed record Ink(int Hooping, int Cloth, int Lane, double FromMm, double ToMm);

    private readonly record struct Stitch(double X, double Y, bool IsMark, bool Goes);

    private (List<Ink> Inks, List<string> Faults) Read(int number, List<Stitch> path, bool isSewn)
    {
        var hooping = Hooping(number);
        var inks = new List<Ink>();
        var faults = new List<string>();
        var lanes = All(hooping, "segments").Select(s => (X: Number(s, "xMm"), Y: Number(s, "yMm"), At: Segment(Whole(s, "number"))))
            .ToList();
        int cloth = Whole(hooping, "cloth");
        foreach (var lane in lanes)
        {
            var own = All(_plan, "cloths").Where(c => Whole(c, "number") == cloth).SelectMany(c => All(c, "pieces"))
                .Where(p => Whole(p, "round") == lane.At.Round).OrderBy(p => Number(p, "startMm")).ToList();
            var piece = own.FindLast(p => Number(p, "startMm") <= Number(lane.At.Segment, "startMm") + SlightMm);
            piece = isSewn && piece.ValueKind == JsonValueKind.Undefined ? own.FirstOrDefault() : piece;
            if (piece.ValueKind == JsonValueKind.Undefined)
            {
                faults.Add(FormattableString.Invariant(
                    $"hooping {number} lies on cloth {cloth}, which has no piece of round {lane.At.Round}"));
                continue;
            }

            double lies = Number(piece, "onClothMm") + ((Number(lane.At.Segment, "startMm") - Number(piece, "startMm")) * _stretch);
            if (!isSewn && Math.Abs(lies - Number(hooping, "onClothMm") - lane.X) > SlightMm)
            {
                faults.Add(FormattableString.Invariant(
                    $"hooping {number} is to be set at {Number(hooping, "onClothMm") + lane.X:0.00} mm and its round says {lies:0.00} mm"));
            }

            var thread = path.Where(s => !s.IsMark && lanes.MinBy(l => Math.Abs(l.Y - s.Y)).Y == lane.Y).ToList();
            var merged = new List<(double From, double To)>();
            foreach (var (from, to) in thread.Zip(thread.Skip(1)).Where(p => p.Second.Goes)
                .Select(p => (From: Math.Min(p.First.X, p.Second.X), To: Math.Max(p.First.X, p.Second.X))).Order())
            {
                if (merged.Count > 0 && from <= merged[^1].To)
                {
                    merged[^1] = (merged[^1].From, Math.Max(merged[^1].To, to));
                }
                else
                {
                    merged.Add((from, to));
                }
            }

            inks.AddRange(merged.Select(m => new Ink(number, cloth, Whole(piece, "lane"), lies + m.From - lane.X, lies + m.To - lane.X)));
            foreach (var name in All(lane.At.Segment, "names"))
            {
                double left = lane.X + ((Number(name, "startMm") - Number(lane.At.Segment, "startMm")) * _stretch);
                if (!thread.Any(s => s.X >= left - SlightMm && s.X <= left + Number(name, "widthMm") + SlightMm))
                {
                    faults.Add($"{name.GetProperty("text").GetString()} has no stitch");
                }
            }
        }

        return (inks, faults);
    }

    private IEnumerable<string> OfField(
        int number, List<Stitch> path, (double AlongMm, double AcrossMm, double SpareMm) field, double zoneMm)
    {
        double along = path.Max(s => s.X) - path.Min(s => s.X);
        double across = path.Max(s => s.Y) - path.Min(s => s.Y);
        double most = field.AlongMm - (2 * field.SpareMm);
        if (along > most + SlightMm || across > field.AcrossMm + SlightMm)
        {
            yield return FormattableString.Invariant(
                $"hooping {number} takes {along:0.00} × {across:0.00} mm of {most:0.00} × {field.AcrossMm:0.00}");
        }

        double[] middles = [.. All(Hooping(number), "segments").Select(s => Number(s, "yMm"))];
        foreach (var hooped in All(Hooping(number), "segments")
            .Select(s => Number(Segment(Whole(s, "number")).Segment, "lengthMm") * _stretch).Where(l => l > most + SlightMm))
        {
            yield return FormattableString.Invariant(
                $"a segment of hooping {number} is {hooped:0.00} mm long on the cloth, and the field holds {most:0.00}");
        }

        if (path.Exists(s => s.IsMark && middles.Any(m => Math.Abs(s.Y - m) < _halfWidthMm - SlightMm)))
        {
            yield return FormattableString.Invariant($"a mark of hooping {number} lies within the finished width");
        }

        if (path.Exists(s => !s.IsMark && middles.All(m => Math.Abs(s.Y - m) > (zoneMm / 2) + SlightMm)))
        {
            yield return FormattableString.Invariant($"hooping {number} is stitched past the sewing zone");
        }
    }

    private JsonElement Hooping(int number) => All(_plan, "hoopings").Single(h => Whole(h, "number") == number);

    private (int Round, JsonElement Segment) Segment(int number) =>
        All(_plan, "rounds").SelectMany(r => All(r, "segments").Select(s => (Whole(r, "number"), s)))
            .Single(p => Whole(p.s, "number") == number);

    /// <summary>Needle points; <see cref="Stitch.Goes"/> where thread runs to one from the point before.</summary>
    private static List<Stitch> Stitches(string path)
    {
        var stitches = new List<Stitch>();
        var rows = File.ReadLines(path).Skip(1).Select(l => l.Split(',')).ToList();
        bool isMark = rows.Exists(r => r[3] == "stop");
        bool goes = false;
        foreach (string[] cells in rows)
        {
            isMark &= cells[3] != "stop";
            if (cells[3] == "stitch")
            {
                stitches.Add(new Stitch(
                    double.Parse(cells[1], CultureInfo.InvariantCulture), double.Parse(cells[2], CultureInfo.InvariantCulture), isMark,
                    goes));
            }

            goes = cells[3] == "stitch";
        }

        return stitches;
    }

    private static IEnumerable<JsonElement> All(JsonElement of, string key) =>
        of.TryGetProperty(key, out var list) ? list.EnumerateArray() : [];

    private static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();

    private static int Whole(JsonElement of, string key) => of.GetProperty(key).GetInt32();
}

using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;

namespace NameBand.Output.LastGate;

/// <summary>A segment as the last gate reads it.</summary>
/// <param name="FirstMm">Where the first of what is sewn in it starts, along the finished round.</param>
/// <param name="RadiusMm">Of its round's lower finished edge; null for a straight strip.</param>
internal sealed record GateSegment(int Round, double StartMm, double LengthMm, double FirstMm, double? RadiusMm);

internal sealed record GatePiece(int Cloth, int Round, double StartMm, double OnClothMm, int Lane, double LaneYMm);

/// <summary>A segment in its hooping, and the piece of cloth under it.</summary>
/// <param name="LiesMm">Where the segment's left end lies on that cloth, as its round has it.</param>
/// <param name="OnClothMm">The same as its hooping has it.</param>
internal sealed record GateLane(GateSegment Segment, double XMm, double YMm, GatePiece Piece, double LiesMm, double OnClothMm);

/// <param name="Lanes">Empty where the plan does not say where a segment lies.</param>
/// <param name="Field">Of a frame of its own; null: that of the job.</param>
internal sealed record GateHooping(int Number, ImmutableArray<GateLane> Lanes, (double AlongMm, double AcrossMm)? Field);

/// <summary>
/// What a plan.json says of places on the flat cloth, read from its bytes alone. Nothing here is shared with what laid the
/// plan out: a fault there is to be seen here.
/// </summary>
internal sealed class GatePlan
{
    /// <summary>Those that a machine sews from needle paths.</summary>
    public ImmutableArray<GateHooping> Hoopings { get; private init; } = [];

    public ImmutableArray<GatePiece> Pieces { get; private init; } = [];

    public double FinishedWidthMm { get; private init; }

    /// <exception cref="JsonException">It is no plan: a bug, for we have just written it.</exception>
    public static GatePlan Read(ReadOnlyMemory<byte> json)
    {
        using var document = JsonDocument.Parse(json);
        var root = document.RootElement;
        var strip = root.GetProperty("strip");
        double stretch = 1 / (1 - Number(strip, "shortening"));
        ImmutableArray<GatePiece> pieces =
        [
            .. All(root, "cloths").SelectMany(c => All(c, "pieces").Select(p => new GatePiece(
                Whole(c, "number"), Whole(p, "round"), Number(p, "startMm"), Number(p, "onClothMm"), Whole(p, "lane"),
                Number(p, "laneYMm")))),
        ];
        var byRound = pieces.ToLookup(p => (p.Cloth, p.Round));
        var segments = new Dictionary<int, GateSegment>();
        foreach (var round in All(root, "rounds"))
        {
            double? radius = round.TryGetProperty("radiusMm", out var r) ? r.GetDouble() : null;
            foreach (var segment in All(round, "segments"))
            {
                double first = SewnIn(segment).Select(n => Number(n, "startMm")).DefaultIfEmpty(Number(segment, "startMm")).Min();
                segments.Add(
                    Whole(segment, "number"),
                    new GateSegment(Whole(round, "number"), Number(segment, "startMm"), Number(segment, "lengthMm"), first, radius));
            }
        }

        return new GatePlan
        {
            FinishedWidthMm = Number(strip, "finishedWidthMm"),
            Pieces = pieces,
            Hoopings =
            [
                .. All(root, "hoopings").Where(h => h.TryGetProperty("needlePath", out var path) && path.ValueKind == JsonValueKind.String)
                    .Select(h => new GateHooping(
                    Whole(h, "number"),
                    LanesOf(
                        [.. All(h, "segments").Select(s => (segments[Whole(s, "number")], Number(s, "xMm"), Number(s, "yMm"),
                            s.TryGetProperty("onClothMm", out var own) ? own.GetDouble() : Number(h, "onClothMm") + Number(s, "xMm")))],
                        Whole(h, "cloth")),
                    h.TryGetProperty("frame", out var frame) ? (Number(frame, "alongMm"), Number(frame, "acrossMm")) : null)),
            ],
        };

        ImmutableArray<GateLane> LanesOf(ImmutableArray<(GateSegment Segment, double X, double Y, double OnCloth)> hooped, int cloth)
        {
            var lanes = ImmutableArray.CreateBuilder<GateLane>(hooped.Length);
            foreach (var (segment, x, y, onCloth) in hooped)
            {
                // What drifted may begin before its strip does, and still lies on its first piece.
                var own = byRound[(cloth, segment.Round)].OrderBy(p => p.StartMm).ToList();
                if ((own.FindLast(p => p.StartMm <= segment.FirstMm + Tolerance.UnseenMm) ?? own.FirstOrDefault()) is not { } piece)
                {
                    return [];
                }

                lanes.Add(new GateLane(segment, x, y, piece, piece.OnClothMm + ((segment.StartMm - piece.StartMm) * stretch), onCloth));
            }

            return lanes.ToImmutable();
        }
    }

    private static IEnumerable<JsonElement> SewnIn(JsonElement segment) =>
        new[] { "names", "headings", "motifs", "gone" }.SelectMany(key => segment.TryGetProperty(key, out _) ? All(segment, key) : []);

    private static IEnumerable<JsonElement> All(JsonElement of, string key) => of.GetProperty(key).EnumerateArray();

    private static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();

    private static int Whole(JsonElement of, string key) => of.GetProperty(key).GetInt32();
}

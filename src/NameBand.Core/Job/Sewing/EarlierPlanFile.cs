using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Reads a plan.json of ours back.</summary>
public static class EarlierPlanFile
{
    // A plan whose lengths were changed by hand must not ask for pictures of a kilometre. A segment lies in a field, which
    // is at most 10 m long, and its marks; no other length of a plan comes near the farthest.
    private const double LongestSegmentMm = 20_000;
    private const double FarthestMm = 1e8;

    /// <summary>The plan, or why it cannot be read; a plan.json of ours from before these keys were written is refused too.</summary>
    /// <param name="name">Relative to the folder, as it is shown too.</param>
    public static Result<EarlierPlan> Read(string folder, string name) => Read(folder, name, Parse);

    /// <summary>The same for whoever reads more of the plan than is needed to go on from it.</summary>
    /// <param name="parse">Throws what reading JSON throws where the plan is not whole.</param>
    internal static Result<T> Read<T>(string folder, string name, Func<byte[], T> parse)
        where T : class
    {
        try
        {
            return Result.Of(parse(InnerFile.Bytes(folder, name)));
        }
        catch (RefusedEntryException e)
        {
            return Result.Fail<T>(e.Problem);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Fail("There is no plan here yet.", "Run make first.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Fail($"The plan cannot be opened: {e.Message}", "See who may read it, and whether another program holds it.");
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException)
        {
            return Fail("This is not a whole plan of ours: it was changed or cut off.", "Take it back from a copy, or run make again.");
        }

        Result<T> Fail(string found, string mend) => Result.Fail<T>(Problem.CannotUse(new Where(name), found, mend));
    }

    internal static EarlierPlan Parse(byte[] json)
    {
        using var document = JsonDocument.Parse(json);
        var root = document.RootElement;
        return new EarlierPlan(
            Text(root, "face"), Text(root, "fabric"), Number(root, "letterHeightExactMm"), Number(root, "baselineYMm"), Number(root, "markYMm"),
            Number(root.GetProperty("strip"), "shortening"),
            [.. root.GetProperty("rounds").EnumerateArray().Select(Round)],
            [.. root.GetProperty("hoopings").EnumerateArray().Select(Hooping)],
            [.. root.GetProperty("cloths").EnumerateArray().Select(Cloth)]);
    }

    /// <summary>A round with what its proof was made from, without its segments.</summary>
    internal static EarlierRound RoundPrints(JsonElement round) => Round(round, []);

    private static EarlierRound Round(JsonElement round) => Round(round, [.. round.GetProperty("segments").EnumerateArray().Select(Segment)]);

    private static EarlierRound Round(JsonElement round, ImmutableArray<EarlierSegment> segments) => new(
        Whole(round, "number"), Number(round, "lengthMm"), Number(round, "hemMm"), Number(round, "gapMm"), segments)
    {
        MadeFrom = Optional(round, "madeFrom"),
        ProofPrint = Optional(round, "proofPrint"),
    };

    private static EarlierSegment Segment(JsonElement segment)
    {
        var names = segment.GetProperty("names").EnumerateArray().Select(n => Name(n, isGone: false));
        var gone = segment.TryGetProperty("gone", out var list) ? list.EnumerateArray().Select(n => Name(n, isGone: true)) : [];
        var headings = segment.TryGetProperty("headings", out var heads) ? heads.EnumerateArray().Select(n => Name(n, isGone: false)) : [];
        return new EarlierSegment(
            Whole(segment, "number"), Number(segment, "startMm"), Number(segment, "lengthMm", LongestSegmentMm), Number(segment, "clothStartMm"),
            [.. names.Concat(gone).Concat(headings).OrderBy(n => n.StartMm)])
        {
            Motifs = segment.TryGetProperty("motifs", out var motifs)
                ? [.. motifs.EnumerateArray().Select(m => new EarlierName(0, Text(m, "text"), new RowRef("", 0), Number(m, "startMm"), Number(m, "widthMm"), Number(m, "baselineYMm")))]
                : [],
        };
    }

    private static EarlierName Name(JsonElement name, bool isGone) => new(
        Whole(name, "order"), Text(name, "text"), new RowRef(Text(name, "list"), Whole(name, "line")),
        Number(name, "startMm"), Number(name, "widthMm", LongestSegmentMm), Number(name, "baselineYMm", LongestSegmentMm), isGone)
    { Group = Optional(name, "group") is { Length: > 0 } group ? group : null };

    internal static EarlierHooping Hooping(JsonElement hooping) => new(
        Whole(hooping, "number"),
        [.. hooping.GetProperty("segments").EnumerateArray().Select(s => new EarlierHooped(Whole(s, "number"), Number(s, "xMm"), Number(s, "yMm")))],
        Optional(hooping, "madeFrom"), Optional(hooping, "needlePathPrint"), Optional(hooping, "proofPrint"),
        Whole(hooping, "cloth"), Number(hooping, "onClothMm"))
    {
        HolesPerMm2 = hooping.TryGetProperty("holesPerMm2", out _) ? Number(hooping, "holesPerMm2") : null,
        LettersRead = hooping.TryGetProperty("lettersRead", out var read) ? read.GetBoolean() : null,
        IsSewn = hooping.TryGetProperty("sewn", out var isSewn) && isSewn.GetBoolean(),
        Measured = hooping.TryGetProperty("measured", out var measured) ? [.. measured.EnumerateArray().Select(m => m.GetDouble())] : [],
        SewnAs = hooping.TryGetProperty("sewnAs", out var sewn)
            ? new SewnAs(Text(sewn, "face"), Text(sewn, "fabric"), Number(sewn, "letterHeightExactMm"))
            : null,
    };

    private static EarlierCloth Cloth(JsonElement cloth) => new(
        Whole(cloth, "number"), Number(cloth, "lengthMm"), Number(cloth, "widthMm"), [.. cloth.GetProperty("pieces").EnumerateArray().Select(Piece)]);

    private static EarlierPiece Piece(JsonElement piece) => new(
        Whole(piece, "number"), Whole(piece, "round"), Number(piece, "startMm"), Number(piece, "lengthMm"), Whole(piece, "lane"),
        Number(piece, "onClothMm"), Number(piece, "startAllowanceMm"), Number(piece, "endAllowanceMm"));

    private static string Optional(JsonElement at, string key) => at.TryGetProperty(key, out var value) ? value.GetString() ?? "" : "";

    private static string Text(JsonElement at, string key) => at.GetProperty(key).GetString() ?? throw new FormatException(key);

    private static int Whole(JsonElement at, string key) => at.GetProperty(key).GetInt32();

    private static double Number(JsonElement at, string key, double farthest = FarthestMm) =>
        at.GetProperty(key).GetDouble() is var number && Math.Abs(number) <= farthest ? number : throw new FormatException(key);
}

using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.PlanFile;

/// <summary>Reads a plan.json of ours back, to be gone on from or looked at.</summary>
internal static class EarlierPlanFile
{
    // A plan whose lengths were changed by hand must not ask for pictures of a kilometre. A segment lies in a field, which
    // is at most 10 m long, and its marks; no other length of a plan comes near the farthest.
    private const double LongestSegmentMm = 20_000;
    private const double FarthestMm = 1e8;

    /// <summary>What reading JSON throws where a plan is not whole.</summary>
    internal static bool IsOfThePlan(Exception e) =>
        e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException;

    /// <summary>The plan, or why it cannot be read; a plan.json of ours from before these keys were written is refused too.</summary>
    /// <param name="name">Relative to the folder, as it is shown too.</param>
    public static Result<EarlierPlan> Read(string folder, string name) => Read(folder, name, Plan);

    /// <summary>The same for whoever reads more of the plan than is needed to go on from it.</summary>
    /// <param name="take">Throws what reading JSON throws where the plan is not whole.</param>
    internal static Result<T> Read<T>(string folder, string name, Func<WrittenPlan, T> take)
        where T : class
    {
        try
        {
            return Result.Of(take(PlanJson.Read(InnerFile.Bytes(folder, name))));
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
            return Fail($"The plan cannot be opened: {e.Message}", "Check who may read it, and whether another program holds it.");
        }
        catch (Exception e) when (IsOfThePlan(e))
        {
            return Fail("This is not a whole plan of ours: it was changed or cut off.", "Take it back from a copy, or run make again.");
        }

        Result<T> Fail(Said found, Said mend) => Result.Fail<T>(Problem.CannotUse(new Where(name), found, mend));
    }

    /// <summary>What a later plan goes on from.</summary>
    /// <exception cref="FormatException">The plan does not say what it was made in: there is nothing in it to go on from.</exception>
    internal static EarlierPlan Plan(WrittenPlan plan) => new(
        plan.Face ?? throw new FormatException("face"), plan.Fabric ?? throw new FormatException("fabric"),
        Known(plan.LetterHeightExactMm ?? throw new FormatException("letterHeightExactMm")), Mm(plan.BaselineYMm), Mm(plan.MarkYMm),
        Known(plan.Strip.Shortening), [.. plan.Rounds.Select(Round)], [.. plan.Hoopings.Select(Hooping)], [.. plan.Cloths.Select(Cloth)])
    {
        LastNumber = plan.LastNumber ?? 0,
        LineStepMm = Mm(plan.Strip.LineStepMm ?? 0, LongestSegmentMm),
        UnderStitchesPart = plan.Strip.UnderStitchesPart is { } part ? Known(part) : null,
        Holding = new Holding(HoldingKeys.HoldOf(plan.Hold) ?? Holding.Usual.Hold, HoldingKeys.MarksOf(plan.Marks) ?? Holding.Usual.Marks),
        LanesBeside = plan.Free?.Lanes
        ?? (plan.Made is null ? 1 : plan.Cloths.SelectMany(c => c.Pieces).Select(p => p.Lane).DefaultIfEmpty(1).Max()),
    };

    internal static IReadOnlyList<EarlierRound> Rounds(WrittenPlan plan) => [.. plan.Rounds.Select(Round)];

    /// <summary>A round with what its proof was made from, without its segments.</summary>
    internal static EarlierRound RoundPrints(WrittenRound round) => Round(round, []);

    private static EarlierRound Round(WrittenRound round) => Round(round, [.. round.Segments.Select(Segment)]);

    private static EarlierRound Round(WrittenRound round, ImmutableArray<EarlierSegment> segments) =>
        new(round.Number, Mm(round.LengthMm), Mm(round.HemMm), Mm(round.GapMm), segments)
        {
            MadeFrom = round.MadeFrom ?? "",
            ProofPrint = round.ProofPrint ?? "",
        };

    private static EarlierSegment Segment(WrittenSegment segment)
    {
        var names = segment.Names.Select(n => Name(n, isGone: false));
        var gone = segment.Gone?.Select(n => Name(n, isGone: true)) ?? [];
        var headings = segment.Headings?.Select(n => Name(n, isGone: false)) ?? [];
        return new EarlierSegment(
            segment.Number, Mm(segment.StartMm), Mm(segment.LengthMm, LongestSegmentMm), Mm(segment.ClothStartMm),
            [.. names.Concat(gone).Concat(headings).OrderBy(n => n.StartMm)])
        {
            Motifs = [.. segment.Motifs?.Select(Motif) ?? []],
        };
    }

    private static EarlierName Name(WrittenName name, bool isGone) => new(
        name.Order, name.Text, new RowRef(name.List, name.Line), Mm(name.PlannedStartMm ?? name.StartMm),
        Mm(name.PlannedWidthMm ?? name.WidthMm, LongestSegmentMm), Mm(name.BaselineYMm, LongestSegmentMm), isGone)
    {
        ShownStartMm = Mm(name.StartMm),
        ShownWidthMm = Mm(name.WidthMm, LongestSegmentMm),
        Way = JobKeys.Way.Choices.Where(c => c.Word == name.Way).Select(c => c.Value).FirstOrDefault(),
        Group = name.Group is { Length: > 0 } group ? group : null,
        LetterHeightMm = (double?)name.LetterHeightMm,
        Face = name.Face is { Length: > 0 } face ? face : null,
        Style = name.Style,
        OnLine = name.OnLine is 1 or 2 ? name.OnLine.Value : 0,
    };

    private static EarlierName Motif(WrittenMotif motif) =>
        new(0, motif.Text, new RowRef("", 0), Mm(motif.StartMm), Mm(motif.WidthMm), Mm(motif.BaselineYMm));

    internal static EarlierHooping Hooping(WrittenHooping hooping) => new(
        hooping.Number,
        [.. hooping.Segments.Select(s => new EarlierHooped(s.Number, Mm(s.XMm), Mm(s.YMm), s.OnClothMm is { } lies ? Mm(lies) : null))],
        hooping.MadeFrom ?? "", hooping.NeedlePathPrint ?? "", hooping.ProofPrint ?? "", hooping.Cloth, Mm(hooping.OnClothMm))
    {
        Frame = hooping.Frame is { AlongMm: > 0, AcrossMm: > 0 } frame
            ? new Frame(
                frame.Name ?? "", Length.FromMm(Mm(frame.AlongMm)), Length.FromMm(Mm(frame.AcrossMm)), HoldingKeys.HoldOf(frame.Hold),
                frame.Minutes)
            : null,
        Mark = hooping.Mark ?? "",
        Threads = [.. (hooping.Threads ?? []).SelectMany(t => CssColour.TryParse(t, out var colour) ? new[] { colour } : [])],
        HolesPerMm2 = hooping.HolesPerMm2,
        SpotHolesPerMm2 = hooping.SpotHolesPerMm2,
        MostLayers = hooping.MostLayers,
        LettersRead = hooping.LettersRead,
        HasNeedlePath = hooping.NeedlePath is not null,
        IsSewn = hooping.Sewn,
        Measured = hooping.Measured ?? [],
        SewnAs = hooping.SewnAs is { } sewn ? new SewnAs(sewn.Face, sewn.Fabric, Known(sewn.LetterHeightExactMm)) : null,
    };

    private static EarlierCloth Cloth(WrittenCloth cloth) =>
        new(cloth.Number, Mm(cloth.LengthMm), Mm(cloth.WidthMm), [.. cloth.Pieces.Select(Piece)]);

    private static EarlierPiece Piece(WrittenPiece piece) => new(
        piece.Number, piece.Round, Mm(piece.StartMm), Mm(piece.LengthMm), piece.Lane, Mm(piece.OnClothMm),
        Mm(piece.StartAllowanceMm), Mm(piece.EndAllowanceMm));

    private static double Mm(decimal lengthMm, double farthestMm = FarthestMm) => Known((double)lengthMm, farthestMm);

    private static double Known(double number, double farthest = FarthestMm) =>
        Math.Abs(number) <= farthest ? number : throw new FormatException("A number is beyond all bounds.");
}

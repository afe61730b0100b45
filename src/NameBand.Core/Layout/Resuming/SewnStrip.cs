using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;

namespace NameBand.Layout.Resuming;

/// <summary>The piece of one strip that was sewn in one hooping, as it can be measured after sewing and pressing.</summary>
/// <param name="Strip">1 is the uppermost of its hooping, as it lies in the hoop.</param>
/// <param name="Strips">How many strips its hooping holds.</param>
/// <param name="OnClothMm">Length on the cloth before sewing, from the first name's left edge to the last one's right edge.</param>
/// <param name="ExpectedMm">The same after sewing and pressing, as the plan allowed for.</param>
public sealed record SewnStrip(
    int Hooping, int Strip, int Strips, double OnClothMm, double ExpectedMm, ImmutableArray<string> Names)
{
    // What cloth may do, as parts of its length on the cloth: our assumption, wide on purpose.
    private const double LeastPart = -0.01;
    private const double MostPart = 0.06;

    /// <summary>How well a person measures: what is off by less may always be.</summary>
    private const double ReadingErrorMm = 1.5;

    /// <summary>So many times as far off a length may be when it is said to be sure.</summary>
    private const double SureTimes = 3;

    private int Segment { get; init; }

    /// <summary>The name that reaches farthest along it.</summary>
    private string Last { get; init; } = "";

    /// <summary>The strips of a hooping that hold names, from the top; none where the plan has no such hooping.</summary>
    public static ImmutableArray<SewnStrip> Of(EarlierPlan plan, int hooping)
    {
        var flat = new FlatCloth(plan.Shortening);
        var segments = plan.Rounds.SelectMany(r => r.Segments).Where(s => !s.Names.IsEmpty).ToDictionary(s => s.Number);
        var hooped = (plan.Hoopings.FirstOrDefault(h => h.Number == hooping)?.Segments ?? [])
            .Where(s => segments.ContainsKey(s.Segment)).OrderByDescending(s => s.YMm).ThenBy(s => s.XMm).ToList();
        return
        [
            .. hooped.Select((s, i) =>
            {
                var segment = segments[s.Segment];
                double first = segment.Names.Min(n => n.StartMm);

                // Places are set apart by the shortening that was allowed for, and letters are not stretched.
                double onCloth = segment.Names.Max(n => flat.OnClothMm(n.StartMm - first) + n.WidthMm);
                return new SewnStrip(
                    hooping, i + 1, hooped.Count, onCloth, flat.FinishedMm(onCloth),
                    [.. segment.Names.OrderBy(n => n.StartMm).ThenBy(n => n.OnLine).Select(n => n.Text)])
                {
                    Segment = s.Segment,
                    Last = segment.Names.MaxBy(n => n.StartMm + n.WidthMm)!.Text,
                };
            }),
        ];
    }

    /// <summary>The piece that a line of the log speaks of; without a strip it is the hooping's first, as it was in version 0.1.</summary>
    public static SewnStrip? Of(EarlierPlan plan, SewingEntry entry)
    {
        var pieces = Of(plan, entry.Hooping);
        int? first = plan.Hoopings.FirstOrDefault(h => h.Number == entry.Hooping)?.Segments.FirstOrDefault()?.Segment;
        return pieces.FirstOrDefault(p => entry.Strip is { } strip ? p.Strip == strip : p.Segment == first);
    }

    /// <summary>Whether a cloth could have come out at a length.</summary>
    public bool CanBe(double measuredMm, bool isSure)
    {
        double times = isSure ? SureTimes : 1;
        double low = Math.Min(OnClothMm * (1 - (MostPart * times)), ExpectedMm - (ReadingErrorMm * times));
        double high = Math.Max(OnClothMm * (1 - (LeastPart * times)), ExpectedMm + (ReadingErrorMm * times));
        return measuredMm >= low && measuredMm <= high;
    }

    /// <summary>Why a measured length is not taken; null where it is.</summary>
    public static Problem? Objection(EarlierPlan plan, int hooping, int? strip, double measuredMm, bool isSure)
    {
        var pieces = Of(plan, hooping);
        var where = new Where(Key: "--measured");
        Said said = $"sewn JOB {hooping} --measured \"{measuredMm:0.##} mm\"";
        if (pieces.IsEmpty)
        {
            return Problem.CannotUse(
                where, $"Hooping {hooping} holds no name that could be measured.", "Check whether its number is right.");
        }

        if (strip is null && pieces.Length > 1)
        {
            return Problem.CannotUse(
                where, $"Hooping {hooping} holds {pieces.Length} strips: {Said.Join("; ", pieces.Select(p => p.InWords))}.",
                $"Say which of them you measured: {said} --strip 1");
        }

        if (pieces.FirstOrDefault(p => p.Strip == (strip ?? 1)) is not { } piece)
        {
            return Problem.CannotUse(
                where with { Key = "--strip" }, $"Hooping {hooping} has no strip {strip}.",
                pieces.Length == 1
                ? "It holds one strip: leave --strip out." : (Said)$"Its strips are numbered 1 to {pieces.Length}, from the top.");
        }

        if (piece.CanBe(measuredMm, isSure))
        {
            return null;
        }

        Said found = $"Hooping {hooping}{piece.Which} was expected to be {piece.ExpectedMm:0.0} mm long, {piece.Between}: {piece.OnClothMm:0.0} mm of cloth. {measuredMm:0.##} mm would be {Off(measuredMm - piece.ExpectedMm)}.";
        return Problem.CannotUse(
            where, found,
            piece.CanBe(measuredMm, isSure: true)
                ? (Said)$"Press it and measure once more. If it is so all the same: {said}{(strip is null ? "" : (Said)$" --strip {strip}")} --sure"
                : "No cloth comes to that. Press it and measure once more, between those two edges, and mind the number of the hooping and the unit.");
    }

    private static Said Off(double mm) =>
        $"{Math.Abs(mm):0.0} mm {(mm > 0 ? (Said)"longer" : "shorter")}";

    private Said Which => Strips == 1 ? "" : (Said)$", strip {Strip},";

    private Said Between => Names.Length == 1
        ? (Said)$"from the left edge of “{PlainText.Short(Names[0])}” to its right edge"
        : $"from the left edge of “{PlainText.Short(Names[0])}” to the right edge of “{PlainText.Short(Last)}”";

    private Said InWords => Strip == 1 ? $"{Strip}, the uppermost, {Between}, {ExpectedMm:0.0} mm expected"
        : Strip == Strips ? (Said)$"{Strip}, the lowest, {Between}, {ExpectedMm:0.0} mm expected"
        : $"{Strip}, {Between}, {ExpectedMm:0.0} mm expected";
}

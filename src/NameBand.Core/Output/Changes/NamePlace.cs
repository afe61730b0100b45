using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output.Changes;

/// <summary>A name of a plan and where it lies.</summary>
/// <param name="StartMm">Along the finished round, to the thousandth.</param>
/// <param name="IsGone">Sewn, and asked for by no row.</param>
public sealed record NamePlace(string Text, RowRef Row, int Hooping, int Round, decimal StartMm, bool IsGone)
{
    /// <summary>What the plan said of its row.</summary>
    public string Reason { get; init; } = "";

    public static ImmutableArray<NamePlace> Of(StripPlan plan) =>
    [
        .. from hooping in plan.Hoopings
           from hooped in hooping.Segments
           from name in hooped.Segment.Names.Where(n => !n.IsHeading)
           orderby name.Order
           select new NamePlace(
               name.Lettered.Name.Text, name.Lettered.Name.Row, hooping.Number, hooped.Round.Number, Thousandths.Mm(name.StartMm), name.IsGone),
    ];

    /// <summary>The names of a plan.json, however it was sewn. Throws what reading JSON throws where the plan is not whole.</summary>
    internal static ImmutableArray<NamePlace> Of(JsonElement root)
    {
        var hoopingOf = root.GetProperty("hoopings").EnumerateArray()
            .SelectMany(h => h.GetProperty("segments").EnumerateArray().Select(s => (Segment: s.GetProperty("number").GetInt32(), Hooping: h.GetProperty("number").GetInt32())))
            .ToDictionary(p => p.Segment, p => p.Hooping);
        var reasons = root.GetProperty("rows").EnumerateArray().ToDictionary(RowOf, r => r.GetProperty("reason").GetString() ?? "");
        return
        [
            .. from round in root.GetProperty("rounds").EnumerateArray()
               from segment in round.GetProperty("segments").EnumerateArray()
               from name in Names(segment)
               orderby name.Json.GetProperty("order").GetInt32()
               select new NamePlace(
                   name.Json.GetProperty("text").GetString()!,
                   RowOf(name.Json),
                   hoopingOf[segment.GetProperty("number").GetInt32()], round.GetProperty("number").GetInt32(),
                   name.Json.GetProperty("startMm").GetDecimal(), name.IsGone)
               {
                   Reason = reasons.GetValueOrDefault(RowOf(name.Json), ""),
               },
        ];
    }

    private static RowRef RowOf(JsonElement at) => new(at.GetProperty("list").GetString()!, at.GetProperty("line").GetInt32());

    private static IEnumerable<(JsonElement Json, bool IsGone)> Names(JsonElement segment)
    {
        var names = segment.GetProperty("names").EnumerateArray().Select(n => (n, false));
        return segment.TryGetProperty("gone", out var gone) ? names.Concat(gone.EnumerateArray().Select(n => (n, true))) : names;
    }
}

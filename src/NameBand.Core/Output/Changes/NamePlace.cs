using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.PlanFile;

namespace NameBand.Output.Changes;

/// <summary>A name of a plan and where it lies.</summary>
/// <param name="StartMm">Along the finished round, to the thousandth.</param>
/// <param name="IsGone">Sewn, and asked for by no row.</param>
internal sealed record NamePlace(string Text, RowRef Row, int Hooping, int Round, decimal StartMm, bool IsGone)
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
               name.Lettered.Name.Text, name.Lettered.Name.Row, hooping.Number, hooped.Round.Number, Thousandths.Mm(name.StartMm),
               name.IsGone),
    ];

    /// <summary>The names of a plan.json, however it was sewn.</summary>
    /// <exception cref="ArgumentException">A segment or a row stands there twice.</exception>
    /// <exception cref="KeyNotFoundException">A segment lies in no hooping.</exception>
    internal static ImmutableArray<NamePlace> Of(WrittenPlan plan)
    {
        var hoopingOf = plan.Hoopings.SelectMany(h => h.Segments.Select(s => (Segment: s.Number, Hooping: h.Number)))
            .ToDictionary(p => p.Segment, p => p.Hooping);
        var reasons = plan.Rows.ToDictionary(r => new RowRef(r.List, r.Line), r => r.Reason);
        return
        [
            .. from round in plan.Rounds
               from segment in round.Segments
               from found in segment.Names.Select(n => (Name: n, IsGone: false))
                   .Concat(segment.Gone?.Select(n => (Name: n, IsGone: true)) ?? [])
               orderby found.Name.Order
               let row = new RowRef(found.Name.List, found.Name.Line)
               select new NamePlace(
                   found.Name.Text, row, hoopingOf[segment.Number], round.Number, found.Name.StartMm, found.IsGone)
               {
                   Reason = reasons.GetValueOrDefault(row, ""),
               },
        ];
    }
}

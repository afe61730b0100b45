using System.Collections.Immutable;
using System.Globalization;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>Where a name lies.</summary>
/// <param name="MiddleMm">Middle of the name along the finished round from its starting end.</param>
public sealed record FoundName(PlacedName Placed, int Round, double MiddleMm, double RoundLengthMm, int Hooping)
{
    public string Text => Placed.Lettered.Name.Text;

    /// <summary>
    /// Distance from the place opposite the one where the strip's ends meet (centre front, where they meet at centre
    /// back); less than zero before it, as the strip is read from left to right.
    /// </summary>
    public double FromMiddleMm => MiddleMm - (RoundLengthMm / 2);

    /// <summary>All names in sewing order.</summary>
    public static ImmutableArray<FoundName> InSewingOrder(StripPlan plan) =>
    [
        .. plan.Hoopings.SelectMany(h => h.Segments.SelectMany(s => s.Segment.Names.Select(n =>
            new FoundName(n, s.Round.Number, n.StartMm + (n.WidthMm / 2), s.Round.LengthMm, h.Number)))).OrderBy(f => f.Placed.Order),
    ];

    /// <summary>All names as an alphabet has them, by the collation of the job.</summary>
    public static ImmutableArray<FoundName> Sorted(StripPlan plan, string collation)
    {
        var culture = collation is "und" or "" ? CultureInfo.InvariantCulture : CultureInfo.GetCultureInfo(collation);
        return [.. InSewingOrder(plan).OrderBy(f => f.Text, StringComparer.Create(culture, CompareOptions.None)).ThenBy(f => f.Placed.Order)];
    }
}

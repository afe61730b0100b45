using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>From where a person looks for a name.</summary>
internal enum GarmentPlace
{
    Front,
    Back,
    Middle,
}

/// <summary>Where a name lies.</summary>
/// <param name="MiddleMm">Middle of the name along the finished round from its starting end.</param>
internal sealed record FoundName(PlacedName Placed, int Round, double MiddleMm, int Hooping, GarmentMiddles Middles)
{
    public string Text => Placed.Lettered.Name.Text;

    /// <summary>Distance from the middle of the round; less than zero before it, as the strip is read from left to right.</summary>
    public double FromRoundMiddleMm => MiddleMm - (Middles.RoundLengthMm / 2);

    public FromMiddle? FromFront => Middles.FromFront(MiddleMm);

    public FromMiddle? FromBack => Middles.FromBack(MiddleMm);

    /// <summary>Where a person looks: from centre front or centre back, whichever is nearer; else from the middle of the edge.</summary>
    public (FromMiddle From, GarmentPlace What) Place => (FromFront, FromBack) switch
    {
        ({ } f, { } b) => f.DistanceMm <= b.DistanceMm ? (f, GarmentPlace.Front) : (b, GarmentPlace.Back),
        ({ } f, null) => (f, GarmentPlace.Front),
        (null, { } b) => (b, GarmentPlace.Back),
        _ => (new FromMiddle(Math.Abs(FromRoundMiddleMm), FromRoundMiddleMm >= 0), GarmentPlace.Middle),
    };

    /// <summary>Its round, and on a strip with two lines which of them.</summary>
    public Said RoundInWords => Placed.Line switch
    {
        1 => (Said)$"{Round}, upper",
        2 => $"{Round}, lower",
        _ => $"{Round}",
    };

    public Said PlaceInWords => (Place.What, Place.From.IsRight) switch
    {
        (GarmentPlace.Front, false) => (Said)$"{JobInWords.Mm(Place.From.DistanceMm)} left of front",
        (GarmentPlace.Front, true) => $"{JobInWords.Mm(Place.From.DistanceMm)} right of front",
        (GarmentPlace.Back, false) => $"{JobInWords.Mm(Place.From.DistanceMm)} left of back",
        (GarmentPlace.Back, true) => $"{JobInWords.Mm(Place.From.DistanceMm)} right of back",
        (_, false) => $"{JobInWords.Mm(Place.From.DistanceMm)} left of middle",
        (_, true) => $"{JobInWords.Mm(Place.From.DistanceMm)} right of middle",
    };

    /// <summary>All names in sewing order, headings with them.</summary>
    public static ImmutableArray<FoundName> InSewingOrder(StripPlan plan)
    {
        var middles = plan.Rounds.ToDictionary(r => r.Number, r => GarmentMiddles.On(plan.Hem, r.LengthMm));
        return
        [
            .. plan.Hoopings.SelectMany(h => h.Segments.SelectMany(s => s.Segment.Names.Select(n =>
                new FoundName(n, s.Round.Number, n.StartMm + (n.WidthMm / 2), h.Number, middles[s.Round.Number]))))
                    .OrderBy(f => f.Placed.Order),
        ];
    }

    /// <summary>All names as an alphabet has them, by the collation of the job.</summary>
    public static ImmutableArray<FoundName> Sorted(StripPlan plan, string collation)
    {
        var culture = collation is "und" or "" ? CultureInfo.InvariantCulture : CultureInfo.GetCultureInfo(collation);
        return [.. InSewingOrder(plan).Where(f => !f.Placed.IsHeading)
            .OrderBy(f => f.Text, StringComparer.Create(culture, CompareOptions.None)).ThenBy(f => f.Placed.Order)];
    }
}

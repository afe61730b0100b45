using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Packet;

namespace NameBand.Output.Sending;

/// <summary>What is said to a supporter of her name's place.</summary>
internal static class ThanksWords
{
    /// <summary>Such as “name 12 of 60, round 1 of 2 (the lowest)”.</summary>
    public static Said Number(StripPlan plan, FoundName found)
    {
        int rounds = plan.Rounds.Length;
        Said name = $"name {found.Placed.Order} of {plan.NameCount}";
        Said round = rounds == 1 ? name : (Said)$"{name}, {Round(found.Round, rounds)}";
        return found.Placed.Line == 0 ? round : $"{round}, {StripWords.LineOf(found.Placed)}";
    }

    /// <summary>Such as “round 1 of 2 (the lowest)”.</summary>
    public static Said Round(int round, int rounds) =>
        round == 1 ? (Said)$"round {round} of {rounds} (the lowest)" : $"round {round} of {rounds}";

    /// <summary>Such as “58 mm (2 5/16 in) to the right of centre back”.</summary>
    public static Said Place(FoundName found)
    {
        var (from, what) = found.Place;
        Said away = Both(from.DistanceMm);
        return (what, from.IsRight) switch
        {
            (GarmentPlace.Front, false) => (Said)$"{away} to the left of centre front",
            (GarmentPlace.Front, true) => $"{away} to the right of centre front",
            (GarmentPlace.Back, false) => $"{away} to the left of centre back",
            (GarmentPlace.Back, true) => $"{away} to the right of centre back",
            (_, false) => $"{away} to the left of the middle",
            (_, true) => $"{away} to the right of the middle",
        };
    }

    /// <summary>The whole picture in words, for those who do not see it.</summary>
    public static Said Description(string title, StripPlan plan, FoundName found) =>
        $"The name “{found.Text}” as it will be stitched for {title}, in letters {Length.FromMm(plan.LetterHeightMm * found.Placed.Lettered.Standing.HeightFactor).InMillimetres()} high: "
        + $"{Number(plan, found)}. Its middle lies {Place(found)} as it is read, {Both(found.MiddleMm)} from the strip’s left end.";

    private static Said Both(double mm) => $"{mm:0} mm ({Length.FromMm(mm).InInches()})";
}

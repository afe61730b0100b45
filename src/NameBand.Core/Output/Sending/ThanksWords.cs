using System.Globalization;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Packet;

namespace NameBand.Output.Sending;

/// <summary>What is said to a supporter of her name's place.</summary>
internal static class ThanksWords
{
    /// <summary>Such as “name 12 of 60, round 1 of 2 (the lowest)”.</summary>
    public static string Number(StripPlan plan, FoundName found) => string.Create(
        CultureInfo.InvariantCulture,
        $"name {found.Placed.Order} of {plan.NameCount}{(plan.Rounds.Length == 1 ? "" : $", round {found.Round} of {plan.Rounds.Length}{(found.Round == 1 ? " (the lowest)" : "")}")}{(found.Placed.Line == 0 ? "" : $", {StripWords.LineOf(found.Placed)}")}");

    /// <summary>Such as “58 mm (2 5/16 in) to the right of centre back”.</summary>
    public static string Place(FoundName found) => found.Place switch
    {
        (var from, "middle") => $"{Both(from.DistanceMm)} to the {from.Side} of the middle",
        var (from, what) => $"{Both(from.DistanceMm)} to the {from.Side} of centre {what}",
    };

    /// <summary>The whole picture in words, for those who do not see it.</summary>
    public static string Description(string title, StripPlan plan, FoundName found) =>
        $"The name “{found.Text}” as it will be stitched for {title}, in letters {Length.FromMm(plan.LetterHeightMm * found.Placed.Lettered.Standing.HeightFactor).InMillimetres().English} high: "
        + $"{Number(plan, found)}. Its middle lies {Place(found)} as it is read, {Both(found.MiddleMm)} from the strip’s left end.";

    private static string Both(double mm) => $"{mm.ToString("0", CultureInfo.InvariantCulture)} mm ({Length.FromMm(mm).InInches().English})";
}

using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>What to buy, and how the cloth is cut and ruled.</summary>
internal static class BuyingPage
{
    public static void Write(PageFlow flow, PacketMatter matter)
    {
        flow.NewPage();
        flow.Heading("What to buy");
        foreach (var line in matter.Shopping.Lines)
        {
            Buy(flow, line, matter.Shopping.Currency);
        }

        if (matter.Shopping.Total is { } total)
        {
            flow.Text($"In all {Money(total, matter.Shopping.Currency)}" + (matter.Shopping.WithoutPrice.Any() ? $", without {string.Join(", ", matter.Shopping.WithoutPrice)}." : "."));
        }

        flow.Text($"Cloth: {matter.Fabric.Name}. Backing: {matter.Fabric.Backing}. Needle: {matter.Fabric.Needle}. Thread: {matter.Fabric.Thread.Name}, and some in the colour of the cloth for the marks.");
        Cutting(flow, matter);
        Rounds(flow, matter.Plan);
    }

    private static void Buy(PageFlow flow, BuyLine line, string currency)
    {
        var pages = flow.Pages;
        flow.Room(9);
        flow.YMm += 6.6;
        pages.Box(PageFlow.LeftMm + 0.5, flow.YMm - 3, 3.4, 3.4);
        pages.Text(PageFlow.LeftMm + 7, flow.YMm, line.What, 4.2);
        pages.Text(PageFlow.LeftMm + 38, flow.YMm, line.InShop, 4.2);
        if (line.Price is { } price)
        {
            pages.TextRight(flow.RightMm, flow.YMm, Money(price, currency), 4.2);
        }

        flow.Text($"for {line.Needed}", 38, 3.4, Sheets.Ink.Quiet);
    }

    private static void Cutting(PageFlow flow, PacketMatter matter)
    {
        var plan = matter.Plan;
        var strip = plan.Hem.Strip;
        flow.Heading("Cutting and ruling");
        foreach (var cloth in plan.Cloths)
        {
            flow.Item("", cloth.Band is { } band
                ? $"Cloth {cloth.Number}: cut a piece of a ring by the cutting plan, radius {JobInWords.Mm(band.OuterRadiusMm)} outside and {JobInWords.Mm(band.InnerRadiusMm)} inside, {JobInWords.Mm(band.LengthMm)} from end to end."
                : $"Cloth {cloth.Number}: cut a piece {Length.FromMm(cloth.LengthMm).InMetres()} long and {JobInWords.Mm(Math.Max(cloth.WidthMm, Width(matter)))} wide, along the cloth.");
            foreach (var piece in cloth.Pieces)
            {
                string lane = cloth.Lanes > 1 ? $" Its centre line lies {Offset(cloth.LaneYMm(piece.Lane))} the middle of the cloth." : "";
                flow.Text($"Round {piece.Round}, {JobInWords.Mm(piece.StartMm)} to {JobInWords.Mm(piece.EndMm)} of the finished strip: begins {JobInWords.Mm(piece.OnClothMm)} from the cloth’s left end.{lane}", 7);
            }
        }

        flow.Item("", plan.Hem.IsCurved ? "Rule for each hooping the straight line through the places of its two marks." : $"Rule the base line for the marks along the cloth, {Offset(plan.MarkYMm)} the centre line of {(plan.Cloths.Any(c => c.Lanes > 1) ? "each strip" : "the strip")}.");
        flow.Item("", matter.Job.Strip.SewnBeforeCutting
            ? $"Do not cut to width yet: names are sewn first. Later the strip is {JobInWords.Mm(strip.CutWidthMm)} ({Length.FromMm(strip.CutWidthMm).InInches()}) wide, {JobInWords.Mm(strip.CutWidthMm / 2)} to each side of its centre line."
            : $"Cut the strip {JobInWords.Mm(strip.CutWidthMm)} ({Length.FromMm(strip.CutWidthMm).InInches()}) wide and baste it to its backing along both edges.");
        flow.Item("", $"Cut {JobInWords.Whole(plan.Hoopings.Length)} pieces of backing, {JobInWords.Mm(Estimator.BackingPieceLengthMm(plan))} by {JobInWords.Mm(Estimator.BackingPieceWidthMm(plan))}.");
    }

    private static void Rounds(PageFlow flow, StripPlan plan)
    {
        flow.Heading("The rounds, lowest first");
        foreach (var round in plan.Rounds)
        {
            flow.Text($"Round {round.Number}: finished {JobInWords.Mm(round.LengthMm)} for a hem of {JobInWords.Mm(round.HemMm)}; flat before sewing {JobInWords.Mm(plan.OnClothMm(round.LengthMm))}; {JobInWords.Names(round.Names.Count(n => !n.IsHeading))}, {JobInWords.Mm(round.GapMm)} between two.");
        }

        flow.Text($"Cloth gets shorter as it is sewn: {(plan.Shortening * 100).ToString("0.0##", CultureInfo.InvariantCulture)} % are reckoned with. Measure your own on the first hooping.");
    }

    private static double Width(PacketMatter matter) => Estimator.BandWidthMm(matter.Job, matter.Plan);

    private static string Offset(double yMm) => Math.Abs(yMm) < 0.05 ? "on" : $"{JobInWords.Mm(Math.Abs(yMm))} {(yMm > 0 ? "above" : "below")}";

    private static string Money(double amount, string currency) =>
        (amount.ToString("0.00", CultureInfo.InvariantCulture) + " " + currency).Trim();
}

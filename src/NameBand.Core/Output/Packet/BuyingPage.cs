using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
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
            var sum = Money(total, matter.Shopping.Currency);
            flow.Text(matter.Shopping.WithoutPrice.Any()
                ? (Said)$"In all {sum}, without {Said.Join(", ", matter.Shopping.WithoutPrice)}." : $"In all {sum}.");
        }

        flow.Text($"Cloth: {matter.Fabric.Name}. Backing: {matter.Fabric.Backing}. Needle: {matter.Fabric.Needle}. Thread: {matter.Fabric.Thread.Name}{(matter.Plan.Marks == MarkMethod.Sewn ? (Said)", and some in the colour of the cloth for the marks" : "")}.");
        CutList.Write(flow, matter);
        Rounds(flow, matter.Plan);
    }

    private static void Buy(PageFlow flow, BuyLine line, string currency)
    {
        var pages = flow.Pages;
        flow.Room(9);
        flow.YMm += 6.6;
        pages.Box(PageFlow.LeftMm + 0.5, flow.YMm - 3, 3.4, 3.4);
        pages.Text(PageFlow.LeftMm + 7, flow.YMm, line.What, pages.Fitting(line.What, 4.2, 29));
        pages.Text(PageFlow.LeftMm + 38, flow.YMm, line.InShop, 4.2);
        if (line.Price is { } price)
        {
            pages.TextRight(flow.RightMm, flow.YMm, Money(price, currency), 4.2);
        }

        flow.Text($"for {line.Needed}", 38, 3.4, Sheets.Ink.Quiet);
    }

    private static void Rounds(PageFlow flow, StripPlan plan)
    {
        flow.Heading("The rounds, lowest first");
        foreach (var round in plan.Rounds)
        {
            flow.Text($"Round {round.Number}: finished {JobInWords.Mm(round.LengthMm)} for a hem of {JobInWords.Mm(round.HemMm)}; flat before sewing {JobInWords.Mm(plan.OnClothMm(round.LengthMm))}; {JobInWords.Names(round.Names.Count(n => !n.IsHeading))}, {JobInWords.Mm(round.GapMm)} between two.");
        }

        flow.Text(plan.UnderStitchesPart is { } under
            ? (Said)$"Cloth gets shorter as it is sewn: {Percent(under)} under the stitches are allowed for, and nothing in the gaps, "
                + $"so {Percent(plan.Shortening)} of the whole strip. Measure your own when the backing is off and the strip is pressed and cold."
            : $"Cloth gets shorter as it is sewn: {Percent(plan.Shortening)} are allowed for. "
                + $"Measure your own on the first piece you sew.");
    }

    private static Said Percent(double part) => $"{part * 100:0.0##} %";

    private static Said Money(double amount, string currency) =>
        currency.Trim() is { Length: > 0 } named ? (Said)$"{amount:0.00} {named}" : $"{amount:0.00}";
}

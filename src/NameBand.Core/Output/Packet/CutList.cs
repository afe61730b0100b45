using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>How the cloth and the backing are cut and ruled: every piece with its ends, whichever way the names are sewn.</summary>
internal static class CutList
{
    public static void Write(PageFlow flow, PacketMatter matter)
    {
        var plan = matter.Plan;
        flow.Heading("Cutting and ruling");
        foreach (var cloth in plan.Cloths)
        {
            flow.Item("", Cloth(matter, cloth));
            foreach (var piece in cloth.Pieces)
            {
                flow.Text(Piece(plan, cloth, piece), 7);
            }
        }

        if (matter.Job.Layout.IsBias)
        {
            flow.Item(
                "", "Find the true bias first: fold the cloth so that its crosswise thread lies along the selvedge; the fold runs at 45° to both. Rule every edge parallel to that fold, cut on the flat table and do not pull: a bias edge gives.");
        }

        if (Stiffened(matter.Job.Stiffening) is { } stiffened)
        {
            flow.Item("", stiffened);
        }

        flow.Item("", Ruling(plan));
        flow.Item("", Width(matter));
        int hooped = plan.Hoopings.Count(h => !h.IsRun);
        foreach (var (count, lengthMm, widthMm) in Estimator.BackingPieces(plan))
        {
            flow.Item("", $"Cut {Wording.Count(count, "piece")} of backing, {JobInWords.Mm(lengthMm)} by {JobInWords.Mm(widthMm)}.");
        }

        if (hooped < plan.Hoopings.Length)
        {
            Said lengths = Said.Join(", ", Estimator.RunBackingsMm(plan).Select(JobInWords.Mm));
            flow.Item(
                "", $"For the runs without a hoop cut strips of backing {JobInWords.Mm(Estimator.RunBackingWidthMm(plan))} wide: {lengths} long.");
        }
    }

    private static Said? Stiffened(Stiffening stiffening) => stiffening switch
    {
        Stiffening.Starch => "Starch the strip before you rule it: spray, let it soak in, iron it dry, and once more. "
            + "No hoop holds it; limp it would draw together.",
        Stiffening.Interfacing => "Iron light interfacing on the back of the strip, as wide as it is cut, before you rule it. "
            + "No hoop holds it; limp it would draw together.",
        _ => null,
    };

    private static Said Cloth(PacketMatter matter, StripCloth cloth)
    {
        if (cloth.Band is { } band)
        {
            return $"Cloth {cloth.Number}: cut a piece of a ring by the cutting plan, radius {JobInWords.Mm(band.OuterRadiusMm)} outside and {JobInWords.Mm(band.InnerRadiusMm)} inside, {JobInWords.Mm(band.LengthMm)} from end to end.";
        }

        double width = Math.Max(cloth.WidthMm, Estimator.BandWidthMm(matter.Job, matter.Plan));
        Said grain = matter.Job.Layout.IsBias ? "on the bias, at 45° to the selvedge" : "along the selvedge";
        return $"Cloth {cloth.Number}: cut a piece {Length.FromMm(cloth.LengthMm).InMetres()} long and {JobInWords.Mm(width)} wide, {grain}.";
    }

    private static Said Piece(StripPlan plan, StripCloth cloth, StripPiece piece)
    {
        Said offset = cloth.Lanes == 1 ? "" : Offset(cloth.LaneYMm(piece.Lane));
        Said lane = cloth.Lanes == 1 ? ""
            : cloth.Band is null ? (Said)$" Its centre line lies {offset} the middle of the cloth."
            : $" Halfway along, its centre line lies {offset} the middle of the cloth.";
        double from = piece.OnClothMm - piece.StartAllowanceMm;
        double length = piece.StartAllowanceMm + plan.OnClothMm(piece.LengthMm) + piece.EndAllowanceMm;
        return $"Round {piece.Round}, {JobInWords.Mm(piece.StartMm)} to {JobInWords.Mm(piece.EndMm)} of the finished strip: begins {JobInWords.Mm(piece.OnClothMm)} from the cloth’s left end.{lane}"
            + $" With its ends it takes {JobInWords.Mm(length)} of the cloth, from {JobInWords.Mm(from)} to {JobInWords.Mm(from + length)}: {Ends(plan, piece)}.";
    }

    /// <summary>What of the cut length lies beyond the finished strip, and what it is for.</summary>
    private static Said Ends(StripPlan plan, StripPiece piece)
    {
        bool isLast = plan.Rounds.FirstOrDefault(r => r.Number == piece.Round) is not { } round || piece.EndMm >= round.LengthMm - 0.05;
        Said before = piece.StartMm > 0 ? "for the seam" : "to turn in";
        Said after = !isLast ? "for the seam" : plan.Hem.Closed ? "to lie under the beginning" : "to turn in";
        Said start = piece.StartAllowanceMm > 0 ? (Said)$"{JobInWords.Mm(piece.StartAllowanceMm)} before it {before}" : "nothing before it";
        return piece.EndAllowanceMm > 0
            ? (Said)$"{start}, {JobInWords.Mm(piece.EndAllowanceMm)} after it {after}" : $"{start}, nothing after it";
    }

    private static Said Ruling(StripPlan plan)
    {
        Said which = plan.Cloths.Any(c => c.Lanes > 1) ? "each strip" : "the strip";
        return plan.Hem.IsCurved ? (Said)"Rule for each hooping the straight line through the places of its two marks."
            : plan.HasSeveralWays
                ? (Said)$"Rule two lines along the piece: for the marks of what is hooped {Offset(plan.MarkYMm)}, and for the letters of all else {Offset(plan.BaselineYMm)} the centre line of {which}."
            : plan.HasNeedlePaths ? (Said)$"Rule the base line for the marks along the piece, {Offset(plan.MarkYMm)} the centre line of {which}."
            : plan.LineStepMm > 0
                ? (Said)$"Rule the two base lines of the letters along the piece, {Offset(plan.BaselineYMm)} and {Offset(plan.BaselineYMm + plan.LineStepMm)} the centre line of {which}."
            : $"Rule the base line of the letters along the piece, {Offset(plan.BaselineYMm)} the centre line of {which}.";
    }

    private static Said Width(PacketMatter matter)
    {
        var strip = matter.Plan.Hem.Strip;
        Said width = $"{JobInWords.Mm(strip.CutWidthMm)} ({Length.FromMm(strip.CutWidthMm).InInches()})";
        return matter.Job.Strip.SewnBeforeCutting
            ? (Said)$"Do not cut to width yet: names are sewn first. Later the strip is {width} wide, {JobInWords.Mm(strip.CutWidthMm / 2)} to each side of its centre line."
            : $"Cut the strip {width} wide and baste it to its backing along both edges.";
    }

    private static Said Offset(double yMm) =>
        Math.Abs(yMm) < 0.05 ? "on" : yMm > 0 ? (Said)$"{JobInWords.Mm(yMm)} above" : $"{JobInWords.Mm(-yMm)} below";
}

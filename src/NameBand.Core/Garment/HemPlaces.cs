using NameBand.Common;

namespace NameBand.Garment;

/// <summary>Checks that the places along the hem lie on it and leave room for names.</summary>
internal static class HemPlaces
{
    private const string File = "job.json";
    private const double LeastRoomMm = 20; // A short name of letters 6 mm high: where less is left nothing can be sewn. Our assumption.

    public static void Check(HemPlan hem, List<Problem> problems)
    {
        if (hem.StartMm > 0 && !hem.Closed)
        {
            problems.Add(Problem.CannotUse(
                new Where(File, Key: "hem.start"),
                "The list should begin inside the edge, but the edge has two ends.",
                "Leave \"start\" out: on an open edge the list begins at its left end. To keep the left part free, use \"keepClear\"."));
        }

        if (hem.StartMm >= hem.EdgeLengthMm)
        {
            problems.Add(OffTheHem(hem, "hem.start", $"The list should begin at {hem.StartMm:0} mm"));
        }

        foreach (var zone in hem.KeepClear.Where(z => z.AtMm > hem.EdgeLengthMm))
        {
            problems.Add(OffTheHem(hem, "hem.keepClear", $"A place to keep clear lies at {zone.AtMm:0} mm"));
        }

        if (hem.CentreFrontMm > hem.EdgeLengthMm)
        {
            problems.Add(
                OffTheHem(hem, "hem.centreFront", $"The job puts centre front at {hem.CentreFrontMm:0} mm"));
        }

        if (hem.CentreBackMm > hem.EdgeLengthMm)
        {
            problems.Add(
                OffTheHem(hem, "hem.centreBack", $"The job puts centre back at {hem.CentreBackMm:0} mm"));
        }

        double kept = hem.KeepClear.Sum(z => z.WidthMm) + hem.KeptFreeMm(1);
        if (kept > 0 && hem.RoundMm(1) - kept < LeastRoomMm)
        {
            problems.Add(Problem.CannotUse(
                new Where(File, Key: hem.KeepClear.IsEmpty ? "strip.keepFree" : "hem.keepClear"),
                $"The places kept clear take {kept:0} mm of a round of {hem.RoundMm(1):0} mm, and leave no room for names.",
                $"Keep at most {Math.Max(hem.RoundMm(1) - LeastRoomMm, 0):0} mm clear in all."));
        }
    }

    /// <summary>A blank where ends meet needs ends that meet, and diagonal joins have to leave room for names.</summary>
    public static void CheckJoins(Job.BandJob job, HemPlan hem, List<Problem> problems)
    {
        if (!hem.Closed && job.Layout.ClosingBlank is { Mm: > 0 } blank)
        {
            problems.Add(Problem.CannotUse(
                new Where(File, Key: "strip.closingBlank"),
                $"The job asks for a blank of {blank.Mm:0.#} mm where the strip's ends meet, and the ends of this edge do not meet.",
                $"Leave \"closingBlank\" out. To keep the left end free, write \"{blank.Mm / 2:0.#} mm at {blank.Mm / 4:0.#} mm\" "
                    + $"in \"keepClear\" of the group “hem”."));
        }

        int joins = JoinPlaces.Of(hem, 1).Count();
        double kept = hem.KeepClear.Sum(z => z.WidthMm) + hem.KeptFreeMm(1);
        double room = hem.RoundMm(1) - kept - (joins * hem.JoinBlankMm);
        if (joins > 0 && room < LeastRoomMm * (joins + 1))
        {
            problems.Add(Problem.CannotUse(
                new Where(File, Key: "strip.join"),
                $"{joins} diagonal joins take {hem.JoinBlankMm:0} mm each and leave no room for names on a round of {hem.RoundMm(1):0} mm.",
                $"Sew in longer pieces (\"piece\": \"{Math.Ceiling(hem.RoundMm(1) / 20) * 10:0} mm\"), or write \"join\": \"straight\": those lie in the gaps between names."));
        }
    }

    private static Problem OffTheHem(HemPlan hem, string key, Said what) => Problem.CannotUse(
        new Where(File, Key: key),
        $"{what}, and the hem is only {hem.EdgeLengthMm:0} mm long.",
        "Measure the place along the hem from where the strip's ends meet.");
}

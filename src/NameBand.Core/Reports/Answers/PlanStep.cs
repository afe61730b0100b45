using NameBand.Common;
using NameBand.Job;

namespace NameBand.Reports.Answers;

/// <summary>The step from the plan as it is set to another, in words.</summary>
internal static class PlanStep
{
    private const double SlightMinutes = 1; // Hours are printed in minutes: less would be told as nothing saved.

    /// <summary>What is done otherwise, and after a colon what comes of it: <c>1 round less: letters 1.8 mm smaller, 3 h 10 min
    /// saved</c>.</summary>
    public static Said InWords(OfferedPlan plan, OfferedPlan asSet)
    {
        Said[] done = [.. Done(plan, asSet)];
        Said[] comes = [.. Comes(plan, asSet), Hours(plan.Estimate.Work.HersMinutes - asSet.Estimate.Work.HersMinutes)];
        Said words = plan.Edits.IsEmpty ? "as job.json has it"
            : (Said)$"{(done.Length == 0 ? "in other letters or places" : Wording.List(done))}: {Said.Join(", ", comes)}";
        return !plan.Mends.IsEmpty ? (Said)$"{words}; as it is set it will not do: {plan.Mends}" : words;
    }

    private static Said Hours(double moreMinutes) => Math.Abs(moreMinutes) < SlightMinutes ? "about the same hours"
        : Duration.InWords(Math.Abs(moreMinutes)) + (moreMinutes < 0 ? " saved" : " more");

    /// <summary>What she would set otherwise.</summary>
    private static IEnumerable<Said> Done(OfferedPlan plan, OfferedPlan asSet)
    {
        var (own, other) = (plan.Plan, asSet.Plan);
        if (!plan.Job.Ways.SequenceEqual(asSet.Job.Ways))
        {
            yield return plan.Job.Traits.HasLettersOfItsOwn ? "names typed into a machine's letters" : "names sewn from needle paths";
        }
        else if (!plan.Job.Traits.HasLettersOfItsOwn && plan.Job.Lettering.Face != asSet.Job.Lettering.Face)
        {
            yield return $"in {plan.Job.Lettering.Face}";
        }

        if (plan.Job.Layout.Lines != asSet.Job.Layout.Lines)
        {
            yield return plan.Job.Layout.Lines > 1 ? "names in two lines, in another order" : "names in one line";
        }

        int rounds = own.Rounds.Length - other.Rounds.Length;
        if (rounds != 0)
        {
            yield return $"{Count(Math.Abs(rounds), "round")} {(rounds < 0 ? (Said)"less" : "more")}";
        }

        double width = own.Hem.Strip.FinishedWidthMm - other.Hem.Strip.FinishedWidthMm;
        if (Math.Abs(width) > 0.05)
        {
            double by = Math.Abs(width);
            yield return width < 0 ? $"a strip {by:0.##} mm narrower" : (Said)$"a strip {by:0.##} mm wider";
        }

        if (plan.Job.Lettering.Gap != asSet.Job.Lettering.Gap)
        {
            yield return plan.Job.Lettering.Gap is { } gap
                ? (Said)$"gaps of {gap.InMillimetres()} at least" : "gaps of one and a half letter heights";
        }

        if (plan.Job.Layout.HasTucks != asSet.Job.Layout.HasTucks)
        {
            yield return plan.Job.Layout.HasTucks ? "tapered tucks" : "no tucks";
        }

        if (IsHeightSet(plan) && Height(plan, asSet) is { } height)
        {
            yield return height;
        }

        if (plan.Job.Layout.Piece != asSet.Job.Layout.Piece)
        {
            yield return plan.Job.Layout.Piece is { } piece ? (Said)$"pieces of {piece.InMillimetres()} at most" : "each round in one piece";
        }
    }

    /// <summary>What comes of it, besides the hours.</summary>
    private static IEnumerable<Said> Comes(OfferedPlan plan, OfferedPlan asSet)
    {
        if (!IsHeightSet(plan) && Height(plan, asSet) is { } height)
        {
            yield return height;
        }

        // Where names have no place as it is set, their hours are among those that are more.
        int names = plan.Plan.NameCount - asSet.Plan.NameCount;
        if (names != 0)
        {
            yield return $"{Count(Math.Abs(names), "name")} {(names < 0 ? (Said)"less" : "more")}";
        }

        int joins = plan.Plan.Joins - asSet.Plan.Joins;
        if (joins != 0)
        {
            yield return $"{Count(Math.Abs(joins), "join")} {(joins < 0 ? (Said)"less" : "more")}";
        }
    }

    private static bool IsHeightSet(OfferedPlan plan) => plan.Edits.Any(e => e.Path == JobKeys.Height.Path);

    private static Said? Height(OfferedPlan plan, OfferedPlan asSet)
    {
        double height = Math.Round(plan.Plan.LetterHeightMm - asSet.Plan.LetterHeightMm, 1);
        return height == 0 ? null
            : (Said)$"letters {Math.Abs(height):0.0} mm {(height < 0 ? (Said)"smaller" : "larger")}";
    }

    private static Said Count(int count, string one) => Said.Counted(count, "0", one, one + "s");
}

using System.Globalization;
using NameBand.Common;

namespace NameBand.Reports.Answers;

/// <summary>The step from the plan as it is set to another, in words.</summary>
internal static class PlanStep
{
    private const double SlightMinutes = 1;

    public static string InWords(OfferedPlan plan, OfferedPlan asSet)
    {
        string[] seen = [.. Seen(plan, asSet)];
        string step = seen.Length == 0 ? "" : Wording.List(seen);
        string hours = Hours(plan.Estimate.Work.HersMinutes - asSet.Estimate.Work.HersMinutes);
        string words = step.Length == 0 ? "as job.json has it" : $"{step}: {hours}";
        return plan.Mends.Length > 0 ? $"{words}; as it is set it will not do: {plan.Mends}" : words;
    }

    private static string Hours(double moreMinutes) => Math.Abs(moreMinutes) < SlightMinutes ? "about the same hours"
        : Duration.InWords(Math.Abs(moreMinutes)) + (moreMinutes < 0 ? " saved" : " more");

    private static IEnumerable<string> Seen(OfferedPlan plan, OfferedPlan asSet)
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

        int rounds = own.Rounds.Length - other.Rounds.Length;
        if (rounds != 0)
        {
            yield return $"{Count(Math.Abs(rounds), "round")} {(rounds < 0 ? "less" : "more")}";
        }

        double height = Math.Round(own.LetterHeightMm - other.LetterHeightMm, 1);
        if (height != 0)
        {
            string which = height < 0 ? "smaller" : "larger";
            yield return string.Create(CultureInfo.InvariantCulture, $"letters {Math.Abs(height):0.0} mm {which}");
        }

        double width = own.Hem.Strip.FinishedWidthMm - other.Hem.Strip.FinishedWidthMm;
        if (Math.Abs(width) > 0.05)
        {
            string which = width < 0 ? "narrower" : "wider";
            yield return string.Create(CultureInfo.InvariantCulture, $"a strip {Math.Abs(width):0.##} mm {which}");
        }

        if (plan.Job.Lettering.Gap != asSet.Job.Lettering.Gap)
        {
            yield return plan.Job.Lettering.Gap is { } gap
                ? $"gaps of {gap.InMillimetres()} at least" : "gaps of one and a half letter heights";
        }

        if (plan.Job.Layout.HasTucks != asSet.Job.Layout.HasTucks)
        {
            yield return plan.Job.Layout.HasTucks ? "tapered tucks" : "no tucks";
        }

        int joins = own.Joins - other.Joins;
        if (joins != 0)
        {
            yield return $"{Count(Math.Abs(joins), "join")} {(joins < 0 ? "less" : "more")}";
        }
    }

    private static string Count(int count, string one) => FormattableString.Invariant($"{count} {one}{(count == 1 ? "" : "s")}");
}

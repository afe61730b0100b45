using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Estimating;

namespace NameBand.Cli.Reports;

/// <summary>Which hoopings on which evening and machine.</summary>
internal sealed class EveningSummary(Page page, EveningPlan plan)
{
    public void Print()
    {
        page.Gap();
        bool byEvenings = plan.Sittings.Any(s => s.Evening > 1) || plan.Evenings > 1;
        string best = plan.IsProvenBest ? "no plan does it sooner" : Bound();
        page.Line(
            plan.Sittings.IsEmpty ? "Nothing is left to sew." : $"{Words.Count(plan.Evenings, byEvenings || plan.Sittings.Length == 1 ? "evening" : "sitting")}, {Words.Duration(plan.Minutes)} of sewing and hooping; {best}.",
            tone: Tone.Heading);
        page.Facts([.. plan.Sittings.Select(s => (Label(s), $"{Words.Duration(s.Minutes)}: {Numbers(s.Hoopings)}", Tone.Plain)).DefaultIfEmpty(("", "", Tone.Plain))]);
        foreach (int hooping in plan.TooLong)
        {
            page.Line($"Hooping {hooping.ToString(CultureInfo.InvariantCulture)} takes longer than an evening and has one for itself.", 2, Tone.Attention);
        }
    }

    private string Bound() => plan.Evenings > plan.LeastEvenings
        ? $"no plan does with fewer than {plan.LeastEvenings}"
        : $"no plan takes less than {Words.Duration(Math.Floor(plan.LeastMinutes / 5) * 5)}";

    private static string Label(Sitting sitting) =>
        string.Create(CultureInfo.InvariantCulture, $"Evening {sitting.Evening}{(sitting.Machine.Length > 0 ? ", " + sitting.Machine : "")}");

    /// <summary>Such as <c>hoopings 1–7, 9, 12–14</c>.</summary>
    internal static string Numbers(IReadOnlyList<int> numbers)
    {
        var parts = new List<string>();
        for (int i = 0; i < numbers.Count;)
        {
            int end = i;
            while (end + 1 < numbers.Count && numbers[end + 1] == numbers[end] + 1)
            {
                end++;
            }

            parts.Add(end == i
                ? numbers[i].ToString(CultureInfo.InvariantCulture)
                : string.Create(CultureInfo.InvariantCulture, $"{numbers[i]}–{numbers[end]}"));
            i = end + 1;
        }

        return (numbers.Count == 1 ? "hooping " : "hoopings ") + string.Join(", ", parts);
    }
}

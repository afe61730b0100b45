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
        string count = Words.Count(plan.Evenings, byEvenings || plan.Sittings.Length == 1 ? "evening" : "sitting");
        string work = byEvenings || plan.Sittings.All(s => s.Hoopings.IsEmpty) ? "of work" : "of sewing and hooping";
        page.Line(
            plan.Sittings.IsEmpty ? "Nothing is left to do." : $"{count}, {Words.Duration(plan.Minutes)} {work}; {best}.", tone: Tone.Heading);
        var sittings = plan.Sittings.Select(s => (Label(s), $"{Words.Duration(s.Minutes)}: {What(s)}", Tone.Plain));
        page.Facts([.. sittings.DefaultIfEmpty(("", "", Tone.Plain))]);
        foreach (int hooping in plan.TooLong)
        {
            page.Line($"Hooping {hooping.ToString(CultureInfo.InvariantCulture)} takes longer than an evening and has one for itself.", 2, Tone.Attention);
        }
    }

    private string Bound() => plan.Evenings > plan.LeastEvenings
        ? $"no plan does with fewer than {plan.LeastEvenings}"
        : $"no plan takes less than {Words.Duration(Math.Floor(plan.LeastMinutes / 5) * 5)}";

    /// <summary>Such as <c>washing the cloth, hoopings 1–4</c>.</summary>
    private static string What(Sitting sitting) => string.Join(", ",
    [
        .. sitting.Before.Select(t => t.Act).Distinct(),
        .. sitting.Hoopings.IsEmpty ? Array.Empty<string>() : [Numbers(sitting.Hoopings)],
        .. sitting.After.Select(t => t.Act).Distinct(),
    ]);

    private static string Label(Sitting sitting)
    {
        string who = sitting.Machine.Length > 0 ? ", " + sitting.Machine : sitting.Hoopings.IsEmpty ? ", by hand" : "";
        return FormattableString.Invariant($"Evening {sitting.Evening}{who}");
    }

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

using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>Which hoopings on which evening and machine.</summary>
internal sealed class EveningSummary(Page page, HoursAnswer answer)
{
    public void Print()
    {
        if (answer is not { Sittings: { } sittings, Evenings: { } evenings, PlannedMinutes: { } minutes })
        {
            PrintFaults();
            return;
        }

        page.Gap();
        bool byEvenings = sittings.Any(s => s.Evening > 1) || evenings > 1;
        Said best = answer.IsProvenBest == true ? "no plan does it sooner" : Bound(evenings);
        Said count = Words.Count(evenings, byEvenings || sittings.Count == 1 ? "evening" : "sitting");
        Said work = byEvenings || sittings.All(s => s.Hoopings.Count == 0) ? "of work" : "of sewing and hooping";
        page.Line(
            sittings.Count == 0 ? "Nothing is left to do." : (Said)$"{count}, {Words.Duration(minutes)} {work}; {best}.",
            tone: Tone.Heading);
        PrintTonight();
        PrintDays();
        PrintFaults();
        var facts = sittings.Select(s => (Label(s), $"{Words.Duration(s.Minutes)}: {What(s)}", Tone.Plain));
        page.Facts([.. facts.DefaultIfEmpty(("", "", Tone.Plain))]);
        foreach (int hooping in answer.TooLong ?? [])
        {
            string number = hooping.ToString(CultureInfo.InvariantCulture);
            page.Line($"Hooping {number} takes longer than an evening and gets one to itself.", 2, Tone.Attention);
        }
    }

    private Said Bound(int evenings) => evenings > answer.LeastEvenings
        ? (Said)$"no plan does with fewer than {answer.LeastEvenings}"
        : $"no plan takes less than {Words.Duration(Math.Floor(answer.LeastMinutes.GetValueOrDefault() / 5) * 5)}";

    /// <summary>Such as <c>washing the cloth, hoopings 1–4</c>.</summary>
    private static string What(ToldSitting sitting) => string.Join(", ",
    [
        .. sitting.Before.Select(t => t.Act).Distinct(),
        .. sitting.Hoopings.Count == 0 ? Array.Empty<string>() : [Numbers(sitting.Hoopings)],
        .. sitting.After.Select(t => t.Act).Distinct(),
    ]);

    private static Said Label(ToldSitting sitting)
    {
        Said who = sitting.Person is { } person ? sitting.Machine.Length > 0 ? (Said)$", {person} at {sitting.Machine}" : $", {person}"
            : sitting.Machine.Length > 0 ? (Said)$", {sitting.Machine}" : sitting.Hoopings.Count == 0 ? ", by hand" : "";
        return sitting.Day is { } day
            ? (Said)$"{day:ddd d MMM}{who}"
            : $"Evening {sitting.Evening}{who}";
    }

    private void PrintTonight()
    {
        if (answer.Tonight is { } tonight)
        {
            page.Line($"{(tonight.Day is { } day ? InWords(day) : (Said)"The next evening")}: {tonight.Text}", 2, Tone.Good);
        }
    }

    private void PrintDays()
    {
        if (answer is { FinishBy: { } by, BeginBy: { } last, DoneOn: { } done })
        {
            page.Line(
                $"Begin by {InWords(last)} at the latest to be done by {InWords(by)}. If you begin on the first evening from today, all is "
                + $"sewn down on {InWords(done)}.", 2);
        }
    }

    /// <summary>What stands in the way of the day, or of saying anything of it.</summary>
    private void PrintFaults()
    {
        foreach (var problem in answer.Problems.Where(p => p.Where.Key == "finishBy"))
        {
            page.Line(problem.Found, 2, Tone.Attention);
            page.Line($"→ {problem.Mend}", 2);
        }
    }

    private static Said InWords(DateOnly day) => $"{day:dddd d MMMM yyyy}";

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

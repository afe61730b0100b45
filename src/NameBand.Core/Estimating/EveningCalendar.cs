namespace NameBand.Estimating;

/// <summary>The evenings of a plan as days, held against the day by which all is to be sewn down.</summary>
/// <param name="Plan">Begun on the first evening from today on.</param>
/// <param name="BeginBy">The last day on which to begin; null where it is too late for that.</param>
/// <param name="DoneOn">Day of the last evening when it is begun at once; null where nothing is left to do.</param>
public sealed record EveningCalendar(
    EveningWeek Week, DateOnly Today, DateOnly FinishBy, EveningPlan Plan, DateOnly? BeginBy, DateOnly? DoneOn)
{
    /// <summary>Longer evenings are tried in steps of a quarter of an hour, up to as much more as nobody sits.</summary>
    private const double StepMinutes = 15;

    private const double MostLongerMinutes = 8 * 60; // Nobody sews a working day longer of an evening: beyond it only a later day helps.

    /// <summary>By so much longer evenings would do; null where none would, or as they are they do.</summary>
    public double? LongerByMinutes { get; init; }

    public bool IsInTime => DoneOn is not { } day || day <= FinishBy;

    public DateOnly DayOf(int evening) => Week.DayOf(Today, evening);

    /// <param name="deal">Deals what is left to evenings of these lengths.</param>
    public static EveningCalendar Of(Func<EveningLengths, EveningPlan> deal, EveningWeek week, DateOnly today, DateOnly finishBy)
    {
        var plan = deal(week.From(today));
        DateOnly? doneOn = plan.Evenings == 0 ? null : week.DayOf(today, plan.Evenings);
        var calendar = new EveningCalendar(week, today, finishBy, plan, LastStart(deal, week, today, finishBy), doneOn);
        return calendar.IsInTime ? calendar : calendar with { LongerByMinutes = Longer(deal, week, today, finishBy) };
    }

    private static DateOnly? LastStart(Func<EveningLengths, EveningPlan> deal, EveningWeek week, DateOnly today, DateOnly finishBy)
    {
        // The days of a week differ, so each is tried; a day on which nobody sews is none to begin on.
        for (var day = finishBy; day >= today; day = day.AddDays(-1))
        {
            if (week.IsSewnOn(day) && EndsBy(deal, week, day, finishBy))
            {
                return day;
            }
        }

        return null;
    }

    private static double? Longer(Func<EveningLengths, EveningPlan> deal, EveningWeek week, DateOnly today, DateOnly finishBy)
    {
        for (double more = StepMinutes; more <= MostLongerMinutes; more += StepMinutes)
        {
            if (EndsBy(deal, week.Longer(more), today, finishBy))
            {
                return more;
            }
        }

        return null;
    }

    private static bool EndsBy(Func<EveningLengths, EveningPlan> deal, EveningWeek week, DateOnly from, DateOnly finishBy) =>
        deal(week.From(from)).Evenings is var evenings && (evenings == 0 || week.DayOf(from, evenings) <= finishBy);
}

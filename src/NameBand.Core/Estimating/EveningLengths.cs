using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>How long each evening is, the first one being number 1.</summary>
/// <param name="Minutes">Of the first evenings; after the last of them they begin anew. None is empty.</param>
public sealed record EveningLengths(ImmutableArray<double> Minutes)
{
    /// <summary>Where several people sew: each one's minutes of the same evenings, 0 where she does not; empty: one person.</summary>
    public ImmutableArray<PersonEvenings> People { get; init; } = [];

    public double LongestMinutes => Minutes.Max();

    public static EveningLengths Always(double minutes) => new([minutes]);

    public double LengthMinutes(int evening) => Minutes[(evening - 1) % Minutes.Length];

    public double LengthMinutes(PersonEvenings person, int evening) => person.Minutes[(evening - 1) % Minutes.Length];
}

/// <summary>How long somebody sits at it.</summary>
/// <param name="Minutes">From Monday to Sunday, or evening by evening; 0 where she does not.</param>
public sealed record PersonEvenings(string Name, ImmutableArray<double> Minutes, bool DoesMachine, bool DoesHands);

/// <summary>The evenings of a week, which is like the next one.</summary>
/// <param name="Minutes">From Monday to Sunday; 0 where nobody sews.</param>
public sealed record EveningWeek(ImmutableArray<double> Minutes)
{
    public const int Days = 7; // Of a week: evenings are told by their weekday.

    /// <summary>Each one's week, where several people sew; empty: one person.</summary>
    public ImmutableArray<PersonEvenings> People { get; init; } = [];

    /// <summary>The days on which anybody sews are those of the week.</summary>
    public static EveningWeek Of(ImmutableArray<PersonEvenings> people) =>
        new([.. Enumerable.Range(0, Days).Select(d => people.Max(p => p.Minutes[d]))]) { People = people };

    public static EveningWeek Alike(double minutes) => new([.. Enumerable.Repeat(minutes, Days)]);

    public bool IsSewnOn(DateOnly day) => Of(day) > 0;

    /// <summary>Evenings from a day on, that day's the first where anybody sews on it.</summary>
    public EveningLengths From(DateOnly day)
    {
        int[] days = [.. Enumerable.Range(0, Days).Select(day.AddDays).Where(IsSewnOn).Select(IsoDay)];
        return new([.. days.Select(d => Minutes[d])])
        {
            People =
            [.. People.Select(p => p with { Minutes = [.. days.Select(d => p.Minutes[d])] })]
        };
    }

    /// <summary>The day of an evening counted from a day.</summary>
    public DateOnly DayOf(DateOnly from, int evening)
    {
        DateOnly[] week = [.. Enumerable.Range(0, Days).Select(from.AddDays).Where(IsSewnOn)];
        return week[(evening - 1) % week.Length].AddDays((evening - 1) / week.Length * Days);
    }

    /// <summary>The same evenings, each so much longer.</summary>
    public EveningWeek Longer(double minutes) => new(Longer(Minutes, minutes))
    {
        People = [.. People.Select(p => p with { Minutes = Longer(p.Minutes, minutes) })],
    };

    private static ImmutableArray<double> Longer(ImmutableArray<double> week, double minutes) =>
        [.. week.Select(m => m > 0 ? m + minutes : 0)];

    private double Of(DateOnly day) => Minutes[IsoDay(day)];

    // DayOfWeek counts from Sunday; ISO 8601, and people who plan a week, from Monday.
    private static int IsoDay(DateOnly day) => ((int)day.DayOfWeek + 6) % Days;
}

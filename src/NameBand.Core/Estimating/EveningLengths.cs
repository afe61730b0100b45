using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>How long each evening is, the first one being number 1.</summary>
/// <param name="Minutes">Of the first evenings; after the last of them they begin anew. None is empty.</param>
public sealed record EveningLengths(ImmutableArray<double> Minutes)
{
    public double LongestMinutes => Minutes.Max();

    public static EveningLengths Always(double minutes) => new([minutes]);

    public double LengthMinutes(int evening) => Minutes[(evening - 1) % Minutes.Length];
}

/// <summary>The evenings of a week, which is like the next one.</summary>
/// <param name="Minutes">From Monday to Sunday; 0 where nobody sews.</param>
public sealed record EveningWeek(ImmutableArray<double> Minutes)
{
    public const int Days = 7;

    public static EveningWeek Alike(double minutes) => new([.. Enumerable.Repeat(minutes, Days)]);

    public bool IsSewnOn(DateOnly day) => Of(day) > 0;

    /// <summary>Evenings from a day on, that day's the first where anybody sews on it.</summary>
    public EveningLengths From(DateOnly day) => new([.. Enumerable.Range(0, Days).Select(day.AddDays).Where(IsSewnOn).Select(Of)]);

    /// <summary>The day of an evening counted from a day.</summary>
    public DateOnly DayOf(DateOnly from, int evening)
    {
        DateOnly[] week = [.. Enumerable.Range(0, Days).Select(from.AddDays).Where(IsSewnOn)];
        return week[(evening - 1) % week.Length].AddDays((evening - 1) / week.Length * Days);
    }

    /// <summary>The same evenings, each so much longer.</summary>
    public EveningWeek Longer(double minutes) => new([.. Minutes.Select(m => m > 0 ? m + minutes : 0)]);

    // DayOfWeek counts from Sunday; ISO 8601, and people who plan a week, from Monday.
    private double Of(DateOnly day) => Minutes[((int)day.DayOfWeek + 6) % Days];
}

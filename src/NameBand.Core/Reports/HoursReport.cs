using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Reports;

/// <summary>What <see cref="Bander.Hours"/> found: the hours, the shopping and the evenings of a job.</summary>
/// <param name="Evenings">What is still to sew, dealt out to evenings and machines; null for one machine without evenings.</param>
public sealed record HoursReport(
    ExitStatus Status, BandJob? Job, StripPlan? Plan, Estimate? Estimate, ShoppingList? Shopping, EveningPlan? Evenings,
    ImmutableArray<Problem> Problems)
{
    /// <summary>Nothing needs a person but, it may be, the day by which all is to be done: of that make says nothing, for what it writes
    /// knows no date.</summary>
    public bool IsSoundButForTheDay { get; init; }

    /// <summary>The machine's pace as the log shows it, and what is left to sew by it; null until a hooping was timed.</summary>
    public LearnedPace? Machine { get; init; }

    /// <summary>The same of the hand work at each hooping.</summary>
    public LearnedPace? Hands { get; init; }

    /// <summary>The evenings as days; null where the job names no day to be done by, or no evenings are known.</summary>
    public EveningCalendar? Calendar { get; init; }

    /// <summary>What the next evening holds; null where no evening is known, or nothing is left.</summary>
    public Tonight? Tonight { get; init; }

    /// <summary>What is still to do; the whole until something is sewn.</summary>
    public WorkLeft? Left => Estimate?.WorkLeft;
}

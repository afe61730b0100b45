using System.Text.Json;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;

namespace NameBand.PlanFile;

/// <summary>One act of a machine or a person.</summary>
public sealed record WrittenAct
{
    public required Said Act { get; init; }

    /// <summary><c>machine</c> or <c>hands</c>.</summary>
    public required string By { get; init; }

    /// <summary><c>before</c>, <c>each hooping</c>, <c>each name</c>, <c>each piece</c>, <c>each round</c> or <c>after</c>.</summary>
    public required string When { get; init; }

    public required Said CountedFrom { get; init; }

    public required decimal Count { get; init; }

    public required decimal MinutesEach { get; init; }

    public required decimal Minutes { get; init; }

    public required decimal LowMinutes { get; init; }

    public required decimal HighMinutes { get; init; }

    public required bool Attended { get; init; }

    /// <summary>Acts of one cause vary together.</summary>
    public required Said Cause { get; init; }

    public required Said Source { get; init; }

    /// <summary>The step of finishing that it is, in the words of <c>sewn --done</c>; not said of any other act.</summary>
    public string? Step { get; init; }
}

/// <summary>Puts the acts of a job into the records of plan.json. Minutes are rounded before they are added up, as lengths are.</summary>
internal static class PlanWork
{
    /// <summary>The member <c>work</c>, in plan.json and in what a command answers.</summary>
    public static void Write(Utf8JsonWriter json, Work work)
    {
        json.WritePropertyName("work");
        JsonSerializer.Serialize(json, Of(work), PlanJson.Forms.IReadOnlyListWrittenAct);
    }

    /// <summary>The sum of the rows as they stand in the file.</summary>
    public static decimal Minutes(Work work, Doer by) => work.By(by).Sum(r => Thousandths.Mm(r.Minutes.Likely));

    internal static IReadOnlyList<WrittenAct> Of(Work work) => [.. work.Rows.Select(row => new WrittenAct
    {
        Act = row.Act,
        By = Word(row.By),
        When = Word(row.When),
        CountedFrom = row.CountedFrom,
        Count = Math.Round((decimal)row.Count, 6),
        MinutesEach = Math.Round((decimal)row.EachMinutes, 6),
        Minutes = Thousandths.Mm(row.Minutes.Likely),
        LowMinutes = Thousandths.Mm(row.Minutes.Low),
        HighMinutes = Thousandths.Mm(row.Minutes.High),
        Attended = row.IsAttended,
        Cause = row.Cause.Name,
        Source = row.Source,
        Step = row.Step is { } step ? FinishingWords.Of(step) : null,
    })];

    /// <summary>Hand work that comes when all names are sewn, read back from the rows of a plan.</summary>
    internal static IEnumerable<(FinishingStep? Step, double Minutes)> Finishing(IEnumerable<WrittenAct> work) => work
        .Where(r => r.By == Word(Doer.Hands) && IsAfterSewing(r.When))
        .Select(r => (r.Step is { } step ? FinishingWords.Read(step) : null, (double)r.Minutes));

    private static bool IsAfterSewing(string when) =>
        new[] { WorkTime.EachPiece, WorkTime.EachRound, WorkTime.After }.Any(t => Word(t) == when);

    private static string Each(string part) => "each " + part;

    private static string Word(Doer by) => by == Doer.Machine ? "machine" : "hands";

    private static string Word(WorkTime when) => when switch
    {
        WorkTime.Before => "before",
        WorkTime.EachHooping => Each("hooping"),
        WorkTime.EachName => Each("name"),
        WorkTime.EachPiece => Each("piece"),
        WorkTime.EachRound => Each("round"),
        WorkTime.After => "after",
        _ => throw new ArgumentOutOfRangeException(nameof(when), when, "No such time."),
    };
}

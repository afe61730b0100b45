using NameBand.Common;
using NameBand.Job;

namespace NameBand.Estimating;

/// <summary>Who does an act.</summary>
public enum Doer
{
    Machine,
    Hands,
}

/// <summary>When an act is done, in the order of the work.</summary>
public enum WorkTime
{
    Before,
    EachHooping,
    EachName,
    EachPiece,
    EachRound,
    After,
}

/// <summary>
/// What makes acts take longer or shorter than calculated. Acts of one cause vary together, those of different causes do not
/// know of each other. All ranges are common practice, no source.
/// </summary>
/// <param name="Low">In one case of ten the time is under this part of the likely one.</param>
/// <param name="High">In one case of ten it is over this part of it.</param>
/// <param name="Why">Why the range is as wide as it is.</param>
public sealed record WorkCause(Said Name, double Low, double High, Said Why)
{
    public static WorkCause MachinePace { get; } = new(
        "the machine's pace", 0.9, 1.3,
        "a machine rarely sews faster than it is set to, and often slower: for corners, for thick places, for caution");

    public static WorkCause Waiting { get; } = new(
        "waiting at the machine", 0.7, 1.6, "the machine waits for a person, who may be at the other end of the room");

    public static WorkCause Breaks { get; } = new(
        "thread breaks", 0.3, 3, "a good thread and a fresh needle break seldom, an old spool breaks in every name");

    public static WorkCause HerPace { get; } = new(
        "her pace", 0.75, 1.35, "hands differ, and so do cloths: a firm cotton goes quickly, a soft one does not");

    public static WorkCause Easing { get; } = new(
        "how the upper edge eases", 0.75, 1.7,
        "the upper edge has less room than the lower one and must be eased in; how well it goes shows only at the garment");

    /// <summary>Paces differ more than machines do: a steady hand follows twice as fast as a careful one.</summary>
    public static WorkCause Following { get; } = new(
        "how a line is followed", 0.6, 1.8, "how fast a line can be followed depends on the hand that follows it");

    public static WorkCause Spoiling { get; } = new(
        "how many names are spoiled", 0.2, 3, "some sew a whole list without one that is spoiled, others spoil several in one evening");
}

/// <summary>One act of the work: what a machine or a person does, how often, and the minutes it takes.</summary>
/// <param name="CountedFrom">What it is counted from, such as hoopings, names, m.</param>
/// <param name="EachMinutes">Likely minutes of one, a person's rest included.</param>
public sealed record WorkRow(
    Said Act, Doer By, WorkTime When, Said CountedFrom, double Count, double EachMinutes, WorkCause Cause)
{
    /// <summary>Whether a person is kept by it; the machine sews unattended only where job.json says that it is not watched.</summary>
    public bool IsAttended { get; init; } = true;

    /// <summary>Hand work at each hooping, which the sewing log times.</summary>
    public bool IsAtTheHoop { get; init; }

    /// <summary>Hand work on what came out of the hoop, which can be done while the next piece is sewn.</summary>
    public bool IsMeanwhile { get; init; }

    /// <summary>The step of finishing that it is; null for any other act.</summary>
    public FinishingStep? Step { get; init; }

    public Said Source { get; init; } = "common practice, no source";

    public Figure Minutes => new(Count * EachMinutes * Cause.Low, Count * EachMinutes, Count * EachMinutes * Cause.High);
}

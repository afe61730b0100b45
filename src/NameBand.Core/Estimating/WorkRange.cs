namespace NameBand.Estimating;

/// <summary>How far the truth may lie from a likely time, as parts of it, and why. All are common practice, no source.</summary>
internal sealed record WorkRange(double Low, double High, string Why)
{
    public static WorkRange Pace { get; } = new(
        0.9, 1.3, "a machine rarely sews faster than it is set to, and often slower: for corners, for thick places, for caution");

    public static WorkRange Waiting { get; } = new(
        0.7, 1.6, "the machine waits for a person, who may be at the other end of the room");

    public static WorkRange Breaks { get; } = new(
        0.3, 3, "a good thread and a fresh needle break seldom, an old spool breaks in every name");

    /// <summary>Hooping and aligning takes 5 to 8 minutes where 6.5 are likely.</summary>
    public static WorkRange Hooping { get; } = new(
        5 / 6.5, 8 / 6.5, "a practised hand hoops in 5 minutes, and 8 are needed where the ruled line must be found twice");

    public static WorkRange Hands { get; } = new(
        0.75, 1.35, "hands differ, and so do cloths: a firm cotton goes quickly, a soft one does not");

    public static WorkRange Easing { get; } = new(
        0.75, 1.7, "the upper edge has less room than the lower one and must be eased in; how well it goes shows only at the garment");

    public WorkLine Line(string work, double amount, string unit, double minutes) =>
        new(work, amount, unit, new Figure(minutes * Low, minutes, minutes * High)) { Why = Why };
}

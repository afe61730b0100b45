using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>Every key of job.json. The table in docs/job-file.md is checked against this list.</summary>
internal static class JobKeys
{
    /// <summary>A kilometre: no garment and no banner has such an edge, a unit was mistaken.</summary>
    public const double LongestEdgeMm = 1_000_000;
    // Four hours at one act of handwork, such as one hooping: beyond it seconds were meant, or the whole job.
    private const double LongestMinutes = 240;

    public static readonly NumberKey Format = new("format", 1, 1, 1, IsWhole: true);
    public static readonly TextKey Title = new("title", null, "the folder's name");

    public static readonly WordKey<Way> Way = new(
        "way", ("needlePath", Job.Way.NeedlePath), ("machineLetters", Job.Way.MachineLetters), ("traced", Job.Way.Traced))
    {
        Also = [("tracedLetters", Job.Way.Traced)],
    };

    public static readonly FormKey Ways = new("ways", $"a list of {Way.Takes}", "[`way`]");

    public static readonly TextsKey Lists = new("lists", "names.csv");
    public static readonly TextKey NameColumn = new("columns.name", null, "found");
    public static readonly TextKey LeaveOutColumn = new("columns.leaveOut", null, "found");
    public static readonly TextsKey HideColumns = new("columns.hide", "Keep me off it", "found");
    public static readonly TextsKey ShowColumns = new("columns.show", "May we show it?", "found");
    public static readonly TextsKey WebColumns = new("columns.web", "Show on the web?", "found");
    public static readonly TextKey AddressColumn = new("columns.address", null, "found");
    public static readonly TextsKey IgnoredColumns = new("columns.ignored", "Newsletter", "none");

    public static readonly LengthKey HemLength = new("hem.length", null, 50, LongestEdgeMm, "this or hem.skirt", Many: true);
    public static readonly NumberKey SkirtTurn = new("hem.skirt.circlePart", null, 0, 2, "required in hem.skirt", IsAbove: true);
    public static readonly LengthKey SkirtWaist = new("hem.skirt.waist", null, 10, 100_000, "required in hem.skirt");
    public static readonly LengthKey SkirtLength = new("hem.skirt.length", null, 10, 100_000, "required in hem.skirt");
    public static readonly LengthKey SkirtTakenUp = new("hem.skirt.takenUp", JobDefaults.TakenUp, 0, 100_000);
    public static readonly NumberKey HemTurn = new("hem.circlePart", null, 0, 2, "with more than one round it must be given");
    public static readonly FlagKey Closed = new("hem.closed", JobDefaults.Closed);
    public static readonly LengthKey Overlap = new("hem.overlap", JobDefaults.Overlap, 0, 1000);
    public static readonly LengthKey Tolerance = new("hem.tolerance", null, 0, 1000, "6 mm, or 0.5 % of the hem where that is more");

    public static readonly LengthKey CutWidth = new("strip.cutWidth", JobDefaults.CutWidth, 5, 1000);
    public static readonly LengthKey TurnIn = new("strip.turnIn", JobDefaults.TurnIn, 0, 500);
    public static readonly LengthKey Margin = new("strip.margin", JobDefaults.Margin, 0, 500);

    public static readonly WordKey<bool> Sewn = new("strip.sewn", ("beforeCutting", true), ("afterCutting", false));

    public static readonly NumberKey Shortening =
        new("strip.shortening", null, 0, 0.1, "0.01; 0.03 of a limp strip without a hoop", IsBelow: true);
    public static readonly NumberKey Rounds = new("strip.rounds", JobDefaults.Rounds, 1, 200, Word: "asNeeded", IsWhole: true);
    public static readonly LengthKey Lift = new("strip.lift", JobDefaults.Lift, 0, 10_000);
    public static readonly LengthKey RoundStep = new("strip.roundStep", null, 1, 10_000, "finished width + 1/2 in");

    public static readonly WordKey<GarmentSide> Side = new("strip.side", ("outside", GarmentSide.Outside), ("inside", GarmentSide.Inside));
    public static readonly WordKey<Reader> ReadBy = new("strip.readBy", ("viewer", Reader.Viewer), ("wearer", Reader.Wearer));

    public static readonly TextKey Face = new("lettering.face", JobDefaults.Face);
    public static readonly LengthKey Height = new("lettering.height", null, 3, 200, "\"largest\"", Word: "largest");
    public static readonly LengthKey Least = new("lettering.least", JobDefaults.Least, 3, 200);
    public static readonly LengthKey Gap = new("lettering.gap", null, 0.5, 1000, "one and a half letter heights");
    public static readonly FlagKey Spread = new("lettering.spread", JobDefaults.Spread);

    public static readonly WordKey<NameOrder> Order = new(
        "lettering.order", ("listed", NameOrder.Listed), ("alphabetical", NameOrder.Alphabetical), ("bestFit", NameOrder.BestFit));

    public static readonly FlagKey AgreedFirst = new("lettering.agreedFirst", false);
    public static readonly TextKey Collation = new("lettering.collation", JobDefaults.Collation);

    public static readonly LengthKey Along = new("hoop.along", JobDefaults.Along, 20, 10_000);
    public static readonly LengthKey Across = new("hoop.across", JobDefaults.Across, 10, 10_000);
    public static readonly LengthKey Spare = new("hoop.spare", JobDefaults.Spare, 0, 1000);
    public static readonly TextKey Fabric = new("fabric", JobDefaults.Fabric);

    public static readonly NumberKey StitchesPerMinute = new("machine.stitchesPerMinute", JobDefaults.Machine.StitchesPerMinute, 10, 5000);
    public static readonly NumberKey SecondsPerJump = Seconds("machine.secondsPerJump", JobDefaults.Machine.SecondsPerJump);
    public static readonly NumberKey SecondsPerTrim = Seconds("machine.secondsPerTrim", JobDefaults.Machine.SecondsPerTrim);
    public static readonly NumberKey SecondsPerStop = Seconds("machine.secondsPerStop", JobDefaults.Machine.SecondsPerStop);
    public static readonly NumberKey SecondsToStart = Seconds("machine.secondsToStart", JobDefaults.Machine.SecondsToStart);

    public static readonly NumberKey Hooping = new(
        "hands.hoopingMinutes", null, 0, LongestMinutes, "4.5 screwed, 3.5 laid on hooped backing, 2 clamped, 1.5 by magnets");
    public static readonly NumberKey TearAway = Minutes("hands.tearAwayMinutesPerName", JobDefaults.Hands.TearAwayMinutesPerName);
    public static readonly NumberKey Clipping = Minutes("hands.clippingMinutesPerName", JobDefaults.Hands.ClippingMinutesPerName);
    public static readonly NumberKey Pressing = Minutes("hands.pressingMinutesPerMetre", JobDefaults.Hands.PressingMinutesPerMetre);
    public static readonly NumberKey Trimming = Minutes("hands.trimmingMinutesPerMetre", JobDefaults.Hands.TrimmingMinutesPerMetre);
    public static readonly NumberKey TurningIn = Minutes("hands.turningInMinutesPerMetre", JobDefaults.Hands.TurningInMinutesPerMetre);
    public static readonly NumberKey Pinning = Minutes("hands.pinningMinutesPerMetre", JobDefaults.Hands.PinningMinutesPerMetre);
    public static readonly NumberKey SewingLower =
        Minutes("hands.sewingLowerEdgeMinutesPerMetre", JobDefaults.Hands.SewingLowerEdgeMinutesPerMetre);
    public static readonly NumberKey SewingUpper =
        Minutes("hands.sewingUpperEdgeMinutesPerMetre", JobDefaults.Hands.SewingUpperEdgeMinutesPerMetre);
    public static readonly NumberKey Join = Minutes("hands.joinMinutes", JobDefaults.Hands.JoinMinutes);
    public static readonly NumberKey RestAllowance = new("hands.restAllowance", JobDefaults.Hands.RestAllowance, 0, 1);

    public static readonly ImmutableArray<JobKey> All =
    [
        Format, Title, Way, Ways, Lists, NameColumn, LeaveOutColumn, HideColumns, ShowColumns, WebColumns, AddressColumn, IgnoredColumns,
        HemLength, SkirtTurn, SkirtWaist, SkirtLength, SkirtTakenUp, HemTurn, Closed, Overlap, Tolerance,
        CutWidth, TurnIn, Margin, Sewn, Shortening, Rounds, Lift, RoundStep, Side, ReadBy,
        Face, Height, Least, Gap, Spread, Order, AgreedFirst, Collation,
        Along, Across, Spare, Fabric,
        StitchesPerMinute, SecondsPerJump, SecondsPerTrim, SecondsPerStop, SecondsToStart,
        Hooping, TearAway, Clipping, Pressing, Trimming, TurningIn, Pinning, SewingLower, SewingUpper, Join, RestAllowance,
        .. WorkKeys.All, .. LettersKeys.All, .. LayoutKeys.All, .. FileKeys.All, .. StitchKeys.All,
        .. HoldingKeys.All, .. PlanKeys.All, .. ColourKeys.All, .. AskingKeys.All,
    ];

    /// <summary>The word for a way in our files.</summary>
    public static string WordOf(Way way) => Way.Choices.First(c => c.Value == way).Word;

    private static NumberKey Seconds(string path, double usual) => new(path, usual, 0, 3600);

    private static NumberKey Minutes(string path, double usual) => new(path, usual, 0, LongestMinutes);
}

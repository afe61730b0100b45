using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The keys of the hours, the shopping and the evenings; what each usual value rests on: docs/times.md,
/// docs/shopping.md.</summary>
internal static class WorkKeys
{
    private const double LongestThreadMm = 100_000_000; // A hundred kilometres: no spool and no bobbin holds so much, a unit was mistaken.
    private static readonly MachineSettings M = JobDefaults.Machine;
    private static readonly HandSettings H = JobDefaults.Hands;
    private static readonly BobbinSettings B = new();
    private static readonly ShopSettings S = new();

    public static readonly LengthKey SlowAbove = new("machine.slowAbove", Mm(M.SlowAboveMm), 0.5, 100);
    public static readonly NumberKey SlowPerMm = new("machine.slowPerMm", M.SlowPerMm, 0, 10);
    public static readonly LengthKey ShortBelow = new("machine.shortBelow", Mm(M.ShortBelowMm), 0, 10);
    public static readonly NumberKey ShortFactor = new("machine.shortFactor", M.ShortFactor, 1, 10);
    public static readonly NumberKey Breaks = new("machine.breaksPer1000Stitches", M.BreaksPer1000Stitches, 0, 100);
    public static readonly NumberKey SecondsPerBreak = Seconds("machine.secondsPerBreak", M.SecondsPerBreak);
    public static readonly NumberKey SecondsPerBobbin = Seconds("machine.secondsPerBobbin", M.SecondsPerBobbin);
    public static readonly TextsKey MachineNames = new("machine.names", "the old machine", "one machine");

    public static readonly FlagKey Watched = new("machine.watched", M.IsWatched);

    public static readonly NumberKey Washing = Minutes("hands.washingMinutes", H.WashingMinutes);
    public static readonly NumberKey Cutting = Minutes("hands.cuttingMinutesPerMetre", H.CuttingMinutesPerMetre);
    public static readonly NumberKey Ruling =
        Unless("hands.rulingMinutesPerMetre", H.RulingMinutesPerMetre, "0 with cuttingMinutesPerMetre");
    public static readonly NumberKey Stiffening = new(
        "hands.stiffeningMinutesPerMetre", null, 0, 240, "by `strip.stiffening`: 3.5 starched, 2 with interfacing, else 0");
    public static readonly NumberKey BackingPiece = Minutes("hands.backingMinutesPerPiece", H.BackingMinutesPerPiece);
    public static readonly NumberKey Checking = Minutes("hands.checkingMinutesPerName", H.CheckingMinutesPerName);
    public static readonly NumberKey Swatch = Minutes("hands.swatchMinutes", H.SwatchMinutes);
    public static readonly NumberKey SwatchMachine = Minutes("machine.swatchMinutes", H.SwatchMachineMinutes);
    public static readonly NumberKey FirstHoopings =
        Unless("hands.firstHoopingsMinutes", H.FirstHoopingsMinutes, "hoopingMinutes, if that is written or nothing is screwed");
    public static readonly NumberKey MarksOut = Minutes("hands.marksOutMinutes", H.MarksOutMinutes);
    public static readonly NumberKey Snip = new("hands.secondsPerSnip", null, 0, 3600, "4; 0 with clippingMinutesPerName");
    public static readonly NumberKey TearAwayByMetre = Unless(
        "hands.tearAwayMinutesPerMetre", H.TearAwayMinutesPerMetre ?? 0, "by the name with tearAwayMinutesPerName");
    public static readonly NumberKey Spoiled = new("hands.spoiledPer100Names", H.SpoiledPer100Names, 0, 100);
    public static readonly NumberKey Unpicking = Minutes("hands.unpickingMinutesPerName", H.UnpickingMinutesPerName);
    public static readonly NumberKey CuttingApart = Minutes("hands.cuttingApartMinutesPerMetre", H.CuttingApartMinutesPerMetre);
    public static readonly NumberKey Tuck = Minutes("hands.tuckMinutes", H.TuckMinutes);

    public static readonly LengthKey BobbinDiameter = new("bobbin.diameter", Mm(B.DiameterMm), 5, 200);
    public static readonly LengthKey BobbinHeight = new("bobbin.height", Mm(B.HeightMm), 2, 200);
    public static readonly LengthKey BobbinCore = new("bobbin.core", Mm(B.CoreMm), 1, 190);
    public static readonly LengthKey BobbinWall = new("bobbin.wall", Mm(B.WallMm), 0, 20);
    public static readonly LengthKey BobbinFilledTo = new("bobbin.filledTo", Mm(B.FilledToMm), 2, 200);
    public static readonly NumberKey BobbinThreadTex = new("bobbin.threadTex", B.ThreadTex, 1, 500);
    public static readonly NumberKey WindingPart = new("bobbin.windingPart", B.WindingPart, 0.1, 1);
    public static readonly LengthKey BobbinCapacity = new("bobbin.capacity", null, 1000, LongestThreadMm, "calculated from its measures");

    public static readonly WordKey<bool> ShopUnits = new("shop.units", ("metric", true), ("yards", false));
    public static readonly LengthKey Spool = new("shop.spool", Mm(S.SpoolM * 1000), 1000, LongestThreadMm);
    public static readonly LengthKey BobbinSpool = new("shop.bobbinSpool", Mm(S.BobbinSpoolM * 1000), 1000, LongestThreadMm);
    public static readonly LengthKey ClothWidth = new("shop.clothWidth", Mm(S.ClothWidthMm), 50, 10_000);
    public static readonly LengthKey BackingWidth = new("shop.backingWidth", Mm(S.BackingWidthMm), 50, 10_000);
    public static readonly NumberKey ThreadWaste = new("shop.threadWaste", S.ThreadWastePart, 0, 2);
    public static readonly NumberKey ClothWaste = new("shop.clothWaste", S.ClothWastePart, 0, 2);
    public static readonly NumberKey HoursPerNeedle = new("shop.hoursPerNeedle", S.HoursPerNeedle, 0.1, 1000);

    public static readonly TextKey Currency = new("prices.currency", null, "no name");
    public static readonly NumberKey SpoolPrice = Price("prices.spool");
    public static readonly NumberKey BobbinSpoolPrice = Price("prices.bobbinSpool");
    public static readonly NumberKey ClothPrice = Price("prices.cloth");
    public static readonly NumberKey BackingPrice = Price("prices.backing");
    public static readonly NumberKey NeedlePrice = Price("prices.needle");
    public static readonly NumberKey HourPrice = Price("prices.hour");

    public static readonly LengthKey KeepFree = new("strip.keepFree", Mm(0), 0, JobKeys.LongestEdgeMm);
    public static readonly FlagKey MoreToCome = new("moreToCome", false);
    public static readonly FlagKey RestMayDiffer = new("sewing.restMayDiffer", false);
    public static readonly TextKey Evening = new("evening", null, "not said");
    public static readonly TextKey FinishBy = new("finishBy", null, "not said");

    public static readonly ImmutableArray<JobKey> All =
    [
        SlowAbove, SlowPerMm, ShortBelow, ShortFactor, Breaks, SecondsPerBreak, SecondsPerBobbin, MachineNames, Watched,
        Washing, Cutting, Ruling, Stiffening, BackingPiece, Checking, Swatch, SwatchMachine, FirstHoopings, MarksOut, Snip,
        TearAwayByMetre, Spoiled, Unpicking, CuttingApart, Tuck,
        BobbinDiameter, BobbinHeight, BobbinCore, BobbinWall, BobbinFilledTo, BobbinThreadTex, WindingPart, BobbinCapacity,
        ShopUnits, Spool, BobbinSpool, ClothWidth, BackingWidth, ThreadWaste, ClothWaste, HoursPerNeedle,
        Currency, SpoolPrice, BobbinSpoolPrice, ClothPrice, BackingPrice, NeedlePrice, HourPrice, KeepFree, MoreToCome, Evening, FinishBy,
        RestMayDiffer,
    ];

    private static NumberKey Seconds(string path, double usual) => new(path, usual, 0, 3600);

    private static NumberKey Minutes(string path, double usual) => new(path, usual, 0, 240);

    /// <summary>A value of its own, unless an older key that takes it in is written: then it is as that key was always meant.</summary>
    private static NumberKey Unless(string path, double usual, Said otherwise) => new(path, null, 0, 240, $"{usual:0.##}; {otherwise}");

    private static NumberKey Price(string path) => new(path, null, 0, 1_000_000_000, "not counted");

    private static Common.Length Mm(double mm) => Common.Length.FromMm(mm);
}

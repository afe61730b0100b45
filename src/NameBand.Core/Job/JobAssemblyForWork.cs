using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The parts of a job that the hours, the shopping and the evenings need.</summary>
internal static partial class JobAssembly
{
    private static MachineSettings WithWork(this MachineSettings machine, JobValues values) => machine with
    {
        SlowAboveMm = values.Certain(WorkKeys.SlowAbove).Mm,
        SlowPerMm = Certain(values, WorkKeys.SlowPerMm),
        ShortBelowMm = values.Certain(WorkKeys.ShortBelow).Mm,
        ShortFactor = Certain(values, WorkKeys.ShortFactor),
        BreaksPer1000Stitches = Certain(values, WorkKeys.Breaks),
        SecondsPerBreak = Certain(values, WorkKeys.SecondsPerBreak),
        SecondsPerBobbin = Certain(values, WorkKeys.SecondsPerBobbin),
        IsWatched = values.Flag(WorkKeys.Watched),
        Names = MachineNames(values),
    };

    private static HandSettings WithWork(this HandSettings hands, JobValues values, Holding holding) => hands with
    {
        WashingMinutes = Certain(values, WorkKeys.Washing),
        CuttingMinutesPerMetre = Certain(values, WorkKeys.Cutting),
        RulingMinutesPerMetre = values.Number(WorkKeys.Ruling) ?? (values.Has(WorkKeys.Cutting) ? 0 : StartingValues.RulingMinutesPerMetre),
        StiffeningMinutesPerMetre = values.Number(WorkKeys.Stiffening),
        BackingMinutesPerPiece = Certain(values, WorkKeys.BackingPiece),
        CheckingMinutesPerName = Certain(values, WorkKeys.Checking),
        SwatchMinutes = Certain(values, WorkKeys.Swatch),
        SwatchMachineMinutes = Certain(values, WorkKeys.SwatchMachine),
        FirstHoopingsMinutes = values.Number(WorkKeys.FirstHoopings)
            ?? (values.Has(JobKeys.Hooping) || holding.Hold is not (FrameHold.Screw or FrameHold.None)
                ? hands.HoopingMinutes : StartingValues.FirstHoopingsMinutes),
        DrawnMarksMinutes = Certain(values, HoldingKeys.DrawnMarks),
        PaperMarksMinutes = Certain(values, HoldingKeys.PaperMarks),
        MarksOutMinutes = Certain(values, WorkKeys.MarksOut),
        SecondsPerSnip = values.Number(WorkKeys.Snip) ?? (values.Has(JobKeys.Clipping) ? 0 : StartingValues.SecondsPerSnip),
        TearAwayMinutesPerMetre = values.Number(WorkKeys.TearAwayByMetre)
            ?? (values.Has(JobKeys.TearAway) ? null : StartingValues.TearAwayMinutesPerMetre),
        SpoiledPer100Names = Certain(values, WorkKeys.Spoiled),
        UnpickingMinutesPerName = Certain(values, WorkKeys.Unpicking),
        CuttingApartMinutesPerMetre = Certain(values, WorkKeys.CuttingApart),
        TuckMinutes = Certain(values, WorkKeys.Tuck),
    };

    private static ImmutableArray<string> MachineNames(JobValues values)
    {
        var names = values.Texts(WorkKeys.MachineNames);
        if (names.Distinct(StringComparer.OrdinalIgnoreCase).Count() != names.Length)
        {
            values.Refuse(WorkKeys.MachineNames, "Two machines have the same name.", "Give each machine a name of its own.");
        }
        else if (names.Length > 20)
        {
            values.Refuse(WorkKeys.MachineNames, $"machine.names has {names.Length} machines.", "Name at most 20.");
        }

        return names;
    }

    private static BobbinSettings Bobbin(JobValues values)
    {
        var bobbin = new BobbinSettings(
            values.Certain(WorkKeys.BobbinDiameter).Mm, values.Certain(WorkKeys.BobbinHeight).Mm, values.Certain(WorkKeys.BobbinCore).Mm,
            values.Certain(WorkKeys.BobbinWall).Mm, values.Certain(WorkKeys.BobbinFilledTo).Mm, Certain(values, WorkKeys.BobbinThreadTex),
            Certain(values, WorkKeys.WindingPart), values.Length(WorkKeys.BobbinCapacity)?.Mm / 1000);
        bool holdsNothing = bobbin.FilledToMm <= bobbin.CoreMm || bobbin.FilledToMm > bobbin.DiameterMm
            || bobbin.HeightMm <= 2 * bobbin.WallMm;
        if (holdsNothing
            && values.AreSound(
                WorkKeys.BobbinDiameter, WorkKeys.BobbinHeight, WorkKeys.BobbinCore, WorkKeys.BobbinWall, WorkKeys.BobbinFilledTo))
        {
            values.Refuse(
                "bobbin", "With these measures the bobbin has no room for thread.",
                "Its filling lies between core and diameter, and its height is more than two walls; or give bobbin.capacity alone.");
        }

        return bobbin;
    }

    private static ShopSettings Shop(JobValues values) => new(
        values.Word(WorkKeys.ShopUnits), values.Certain(WorkKeys.Spool).Mm / 1000, values.Certain(WorkKeys.BobbinSpool).Mm / 1000,
        values.Certain(WorkKeys.ClothWidth).Mm, values.Certain(WorkKeys.BackingWidth).Mm, Certain(values, WorkKeys.ThreadWaste),
        Certain(values, WorkKeys.ClothWaste), Certain(values, WorkKeys.HoursPerNeedle));

    private static PriceSettings Prices(JobValues values) => new(
        values.Text(WorkKeys.Currency) ?? "", values.Number(WorkKeys.SpoolPrice), values.Number(WorkKeys.BobbinSpoolPrice),
        values.Number(WorkKeys.ClothPrice), values.Number(WorkKeys.BackingPrice), values.Number(WorkKeys.NeedlePrice),
        values.Number(WorkKeys.HourPrice));

    private static double? Evening(JobValues values)
    {
        if (values.Text(WorkKeys.Evening) is not { } text)
        {
            return null;
        }

        if (Duration.TryParseMinutes(text, out double minutes, out Said why))
        {
            return minutes;
        }

        values.Refuse(WorkKeys.Evening, why, "Write for example \"2h\" or \"1 h 30 min\".");
        return null;
    }

    private static DateOnly? Day(JobValues values, TextKey key)
    {
        if (values.Text(key) is not { } text)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return day;
        }

        values.Refuse(key, $"“{PlainText.Short(text, 40)}” is no day.", "Write year, month and day, for example \"2027-05-01\".");
        return null;
    }
}

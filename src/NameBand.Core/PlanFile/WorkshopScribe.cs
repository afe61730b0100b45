using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.PlanFile;

/// <summary>Puts what was used of the workshop into the records of plan.json.</summary>
internal static class WorkshopScribe
{
    public static WrittenWorkshop Of(BandJob job)
    {
        var machine = job.Workshop.MachineFor(job.Ways[0]);
        return new WrittenWorkshop
        {
            File = job.Workshop.File,
            Machine = machine?.Name,
            StitchesPerMinute = job.Machine.StitchesPerMinute,
            CutsThread = machine?.CutsThread,
            Watched = job.Machine.IsWatched,
            Frame = job.IsHooped ? Frame(job) : null,
            EveningMinutes = job.EveningMinutes,
        };
    }

    /// <summary>Null where the job leaves nothing free.</summary>
    public static WrittenFree? Free(BandJob job, StripPlan plan)
    {
        int? lanes = job.IsHooped ? plan.FreeLanes : null;
        string? marks = job.Holding.AreMarksFree && plan.HasNeedlePaths ? HoldingKeys.Word(plan.Marks) : null;
        return lanes is null && job.Frame is null && marks is null
            ? null : new WrittenFree { Lanes = lanes, Frame = job.Frame?.Name, Marks = marks };
    }

    public static WrittenFrame Of(Frame frame) => new()
    {
        Name = frame.Name,
        AlongMm = Thousandths.Mm(frame.Along.Mm),
        AcrossMm = Thousandths.Mm(frame.Across.Mm),
        Hold = (frame.HeldBy ?? frame.Hold) is { } hold ? WorkshopWords.Of(hold) : null,
        Minutes = frame.MountMinutes ?? 0,
    };

    private static WrittenFrame Frame(BandJob job) => new()
    {
        Name = job.Frame?.Name,
        AlongMm = Thousandths.Mm(job.Hoop.Along.Mm),
        AcrossMm = Thousandths.Mm(job.Hoop.Across.Mm),
        Hold = job.Frame?.Hold is { } hold ? WorkshopWords.Of(hold) : null,
        Minutes = job.Hands.HoopingMinutes,
    };
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The part of a job that comes from the workshop.</summary>
internal static partial class JobAssembly
{
    /// <summary>The job with the machine and the frames it goes by; the field is that of the largest frame where job.json gives
    /// none.</summary>
    public static BandJob In(this BandJob job, Workshop workshop, JobValues values)
    {
        job = job with { Workshop = workshop, Ways = Sewable(job, workshop, values), WeekMinutes = Week(job, workshop, values) };
        job = job with { Holding = job.Holding.Within(job) };
        var hooped = job.Ways.Where(job.IsHoopedIn).DefaultIfEmpty(job.Ways[0]).First();
        if (workshop.MachineFor(hooped) is not { } machine)
        {
            return job;
        }

        if (values.IsWritten(JobKeys.Along) || values.IsWritten(JobKeys.Across) || machine.Frames.IsEmpty)
        {
            return job;
        }

        foreach (var small in machine.Frames.Where(f => f.Along.Mm - (2 * job.Hoop.Spare.Mm) < JobChecks.LeastFieldMm))
        {
            values.Problems.Add(Problem.CannotUse(
                new Where(workshop.File),
                $"Leaving {job.Hoop.Spare.InMillimetres()} free at each end of the frame “{small.Name}” leaves no room for a letter.",
                $"Make hoop.spare in {JobReader.FileName} smaller, or take this frame out of the workshop."));
        }

        var held = machine.Frames.Where(f =>
            job.Holding is { IsHoldFree: true } or { IsHooped: false } || (f.Hold ?? job.Holding.Hold) == job.Holding.Hold).ToList();
        if (held.Count == 0)
        {
            string word = HoldingKeys.Word(job.Holding.Hold);
            values.Refuse(
                HoldingKeys.Hold, $"hoop.hold is \"{word}\", and no frame of “{machine.Name}” holds the cloth so.",
                $"Remove hoop.hold, or write \"hold\": \"{word}\" at the frame in {workshop.File} that does.");
            return job;
        }

        job = job with { Frames = [.. held.OrderByDescending(f => f.AreaMm2).Select(f => Timed(f, job, values))] };
        return job.In(job.Frames[0]);
    }

    /// <summary>The evenings of whoever is at the machine; all alike where job.json says how long one is.</summary>
    private static ImmutableArray<double>? Week(BandJob job, Workshop workshop, JobValues values) =>
        job.EveningMinutes is not { } minutes ? null
        : !values.IsWritten(WorkKeys.Evening) && workshop.AtTheMachine is { } person ? person.EveningMinutes
        : [.. Enumerable.Repeat(minutes, 7)];

    /// <summary>A frame with what holds the cloth in it, and the minutes that follow from that where she has not said any.</summary>
    private static Frame Timed(Frame frame, BandJob job, JobValues values)
    {
        var hold = job.Holding is { IsHoldFree: true, IsHooped: true } ? frame.Hold ?? job.Holding.Hold : job.Holding.Hold;
        double minutes = values.IsWritten(JobKeys.Hooping)
            ? job.Hands.HoopingMinutes : frame.MountMinutes ?? StartingValues.HoopingMinutesOf(hold);
        bool areFirstSlower = hold == FrameHold.Screw || values.IsWritten(WorkKeys.FirstHoopings);
        return frame with
        {
            HeldBy = hold,
            MountMinutes = minutes,
            FirstMountMinutes = minutes + (areFirstSlower ? job.Hands.FirstHoopingsMinutes - job.Hands.HoopingMinutes : 0),
        };
    }

    /// <summary>The ways that her machines allow; as they were written where none does, or where nothing is known of machines.</summary>
    private static ImmutableArray<Way> Sewable(BandJob job, Workshop workshop, JobValues values)
    {
        ImmutableArray<Way> able = [.. job.Ways.Where(w => workshop.MachineFor(w) is not null)];
        if (workshop.Machines.IsEmpty || able.Length == job.Ways.Length)
        {
            return job.Ways;
        }

        if (able.IsEmpty)
        {
            values.Problems.Add(NobodySews(job.Ways[0], workshop));
            return job.Ways;
        }

        foreach (var way in job.Ways.Except(able))
        {
            values.Note(
                JobKeys.Ways, $"No machine of the workshop can sew the way \"{JobKeys.WordOf(way)}\", so no name goes it.",
                $"Say of the machine that can: \"takes\": [\"{WorkshopWords.Of(WorkshopMachine.Needed(way))}\"].");
        }

        return able;
    }

    private static Problem NobodySews(Way way, Workshop workshop)
    {
        string takes = WorkshopWords.Of(WorkshopMachine.Needed(way));
        string other = workshop.Machines.Any(m => m.CanTake(Way.MachineLetters)) ? "machineLetters"
            : workshop.Machines.Any(m => m.CanTake(Way.NeedlePath)) ? "needlePath" : "traced";
        Said asks = way == Way.NeedlePath ? "follows coordinates" : "has letters of its own to key in";
        return Problem.NeedsPerson(
            new Where(workshop.File), $"No machine of the workshop {asks}, and this job needs one that does.",
            $"Write \"way\": \"{other}\" in {JobReader.FileName}, or \"takes\": [\"{takes}\"] of the machine that does.");
    }
}

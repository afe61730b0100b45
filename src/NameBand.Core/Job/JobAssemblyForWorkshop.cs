using NameBand.Common;

namespace NameBand.Job;

/// <summary>The part of a job that comes from the workshop.</summary>
internal static partial class JobAssembly
{
    /// <summary>The job with the machine and the frames it goes by; the field is that of the largest frame where job.json gives none.</summary>
    public static BandJob In(this BandJob job, Workshop workshop, JobValues values)
    {
        job = job with { Workshop = workshop };
        if (workshop.MachineFor(job.Way) is not { } machine)
        {
            if (!workshop.Machines.IsEmpty)
            {
                values.Problems.Add(NobodySews(job.Way, workshop));
            }

            return job;
        }

        if (values.IsWritten(JobKeys.Along) || values.IsWritten(JobKeys.Across) || machine.Frames.IsEmpty)
        {
            return job;
        }

        bool isTimed = values.IsWritten(JobKeys.Hooping);
        foreach (var small in machine.Frames.Where(f => f.Along.Mm - (2 * job.Hoop.Spare.Mm) < JobChecks.LeastFieldMm))
        {
            values.Problems.Add(Problem.CannotUse(
                new Where(workshop.File), $"Leaving {job.Hoop.Spare.InMillimetres()} free at each end of the frame “{small.Name}” leaves no room for a letter.",
                $"Make hoop.spare in {JobReader.FileName} smaller, or take this frame out of the workshop."));
        }

        job = job with
        {
            Frames = [.. machine.Frames.OrderByDescending(f => f.AreaMm2).Select(f => f with
            {
                MountMinutes = isTimed ? job.Hands.HoopingMinutes : f.MountMinutes ?? job.Hands.HoopingMinutes,
            })],
        };
        return job.In(job.Frames[0]);
    }

    private static Problem NobodySews(Way way, Workshop workshop)
    {
        string takes = WorkshopWords.Of(WorkshopMachine.Needed(way));
        string other = workshop.Machines.Any(m => m.CanTake(Way.MachineLetters)) ? "machineLetters"
            : workshop.Machines.Any(m => m.CanTake(Way.NeedlePath)) ? "needlePath" : "traced";
        string asks = way == Way.NeedlePath ? "follows coordinates" : "has letters of its own to key in";
        return Problem.NeedsPerson(
            new Where(workshop.File), $"No machine of the workshop {asks}, and this job needs one that does.",
            $"Write \"way\": \"{other}\" in {JobReader.FileName}, or \"takes\": [\"{takes}\"] of the machine that does.");
    }
}

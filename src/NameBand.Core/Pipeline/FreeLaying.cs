using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Pieces;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline;

/// <summary>Lays a job out with what it leaves free chosen for the least work, or as the plan before had it.</summary>
internal static class FreeLaying
{
    /// <param name="kept">Asked for only where something is free.</param>
    /// <returns>What was laid out, and the names with the job as it was then: in the frame that was chosen.</returns>
    public static (NamesRead Names, Result<StripPlan> Laid) LayOut(NamesRead names, HemPlan hem, Fabric fabric, Func<KeptChoices?> kept)
    {
        var job = names.Job;
        if (!job.Layout.AreLanesFree && job.Frames.IsEmpty && !MarkChoice.IsFree(job))
        {
            return (names, names.Way.LayOut(names, hem, fabric));
        }

        var before = kept() ?? KeptChoices.None;
        if (names.Sewn is not null)
        {
            var again = job.Frames.FirstOrDefault(f => f.Name == before.Frame) is { } frame ? names with { Job = job.In(frame) } : names;
            return (again, again.Way.LayOut(again, hem, fabric));
        }

        ImmutableArray<BandJob> jobs = job.Frames.IsEmpty ? [job] : [.. job.Frames.Select(job.In)];
        var marked = jobs.SelectMany(j => MarkChoice.ToTry(j, before.Marks).Select(m => j with { Holding = j.Holding with { Marks = m } }));
        ImmutableArray<(NamesRead Names, Result<StripPlan> Laid)> tried = [.. marked.Select(j =>
        {
            var of = names with { Job = j };
            var inFrame = of with { Beside = new LaneChoice(before.Lanes, plan => CostMinutes(of, fabric, plan)) };
            return (inFrame, inFrame.Way.LayOut(inFrame, hem, fabric));
        })];
        var largest = tried[FrameChoice.Largest(InFrames())];
        if (largest.Laid.Value is not null && Mixed(largest.Names) is { } mixed)
        {
            tried = tried.Add((mixed, mixed.Way.LayOut(mixed, hem, fabric)));
        }

        return tried.Length == 1 ? tried[0] : tried[FrameChoice.Best(InFrames(), before)];

        ImmutableArray<InFrame> InFrames() => [.. tried.Select(t => new InFrame(
            t.Names.Job.Frame?.Name, t.Laid.Value, () => CostMinutes(t.Names, fabric, t.Laid.Value!)))];
    }

    /// <summary>In a frame, but for hoopings that take less in another one; null where no frame takes less.</summary>
    private static NamesRead? Mixed(NamesRead names)
    {
        var job = names.Job;
        if (job.Frame is not { } own || names.Beside is not { } choice
            || !job.Ways.All(w => WayTraits.Of(w).FollowsCoordinates || !job.IsHoopedIn(w)))
        {
            return null;
        }

        double minutes = HoopingMinutes(job, own);
        ImmutableArray<SmallerFrame> smaller =
        [
            .. job.Frames.Where(f => f.Name != own.Name).Select(f => new SmallerFrame(f, HoopingMinutes(job, f) / minutes))
                .Where(f => f.WorkPart < 1),
        ];
        return smaller.IsEmpty ? null : names with { Beside = choice with { Smaller = smaller } };
    }

    private static double HoopingMinutes(BandJob job, Frame frame) =>
        (((frame.MountMinutes ?? job.Hands.HoopingMinutes) + job.Hands.BackingMinutesPerPiece) * (1 + job.Hands.RestAllowance))
            + MarkChoice.HoopingMinutes(job, job.Holding.Marks) + (job.Machine.SecondsToStart / 60);

    private static double CostMinutes(NamesRead names, Fabric fabric, StripPlan plan)
    {
        var made = new LaidOut(names.Job, fabric, names.Face, names.Rows, plan, names.Way);
        return Counting.Of(made, names.Way.Sew(made), StandInFigures.Of(plan)).Work.CostMinutes;
    }
}

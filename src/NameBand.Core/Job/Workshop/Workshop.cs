using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>What a machine can be given to sew.</summary>
public enum MachineTakes
{
    Coordinates,
    Keys,
    Hands,
}

/// <summary>What holds the cloth in a frame.</summary>
public enum FrameHold
{
    Screw,
    Clamp,
    Magnet,
    Laid,
    None,
}

/// <summary>A frame that cloth is held in, with its sewing field.</summary>
/// <param name="Hold">Null: not said.</param>
/// <param name="MountMinutes">Of placing the cloth in it, once; null: as job.json has it of any frame.</param>
public sealed record Frame(string Name, Length Along, Length Across, FrameHold? Hold, double? MountMinutes)
{
    public double AreaMm2 => Along.Mm * Across.Mm;

    /// <summary>What holds the cloth in it in this job, said or not; null: not settled.</summary>
    public FrameHold? HeldBy { get; init; }

    /// <summary>Of each of the first hoopings; null: as much slower as the job has it of any frame.</summary>
    public double? FirstMountMinutes { get; init; }
}

/// <summary>A machine in the workshop; what is null is not said.</summary>
public sealed record WorkshopMachine(
    string Name, ImmutableArray<MachineTakes> Takes, double? StitchesPerMinute, bool? CutsThread, bool? IsWatched,
    ImmutableArray<Frame> Frames)
{
    public bool CanTake(Way way) => Takes.Contains(Needed(way)) || (way == Way.Traced && !Takes.IsEmpty);

    /// <summary>Any machine that sews can be guided by hand along a template.</summary>
    public static MachineTakes Needed(Way way) => way switch
    {
        Way.NeedlePath => MachineTakes.Coordinates,
        Way.MachineLetters => MachineTakes.Keys,
        _ => MachineTakes.Hands,
    };
}

/// <summary>Somebody who sews with her, or she herself.</summary>
/// <param name="EveningMinutes">From Monday to Sunday; empty: not said.</param>
public sealed record WorkshopPerson(string Name, ImmutableArray<double> EveningMinutes, bool DoesMachine, bool DoesHands)
{
    /// <summary>Likely length of one of her evenings; null: not said, or she has none.</summary>
    public double? UsualEveningMinutes =>
        EveningMinutes.Where(m => m > 0).ToArray() is { Length: > 0 } evenings ? Math.Round(evenings.Average()) : null;
}

/// <summary>What she has: machines, frames, people, evenings.</summary>
/// <param name="File">Where it was read from, as it is shown; null: nothing was said, and what is usual is assumed.</param>
public sealed record Workshop(string? File, ImmutableArray<WorkshopMachine> Machines, ImmutableArray<WorkshopPerson> People)
{
    public static Workshop Assumed { get; } = new(null, [], []);

    /// <summary>The first one at the machine who says when; null where nobody does.</summary>
    public WorkshopPerson? AtTheMachine => People.FirstOrDefault(p => p.DoesMachine && p.UsualEveningMinutes is not null);

    /// <summary>The first machine that can sew in a way; null where none can, or nothing is known of any.</summary>
    public WorkshopMachine? MachineFor(Way way) => Machines.FirstOrDefault(m => m.CanTake(way));
}

using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>What a machine can do, as one is asked for it.</summary>
public enum MachineSkill
{
    /// <summary>It sews letters of its own that are typed in.</summary>
    TypesLetters,

    /// <summary>It follows coordinates from a file.</summary>
    FollowsFiles,

    Both,

    /// <summary>It sews straight lines, guided by hand.</summary>
    StraightOnly,
}

/// <summary>The field of a frame as it was typed.</summary>
public sealed record FrameAnswer(string Along, string Across);

/// <summary>Somebody who helps, as it was typed.</summary>
/// <param name="Evenings">As the first person's.</param>
/// <param name="Does">“machine” or “hands”; empty: both.</param>
public sealed record HelperAnswer(string Name, string Evenings, string Does);

/// <summary>What is told of a workshop: of its first machine, that machine's frames, the first person's evenings, and who helps.</summary>
/// <param name="Evening">How long one is, such as “2h”, or by weekday: “tuesday 2h; friday 90 min”; empty: not said.</param>
public sealed record WorkshopAnswers(MachineSkill Skill, ImmutableArray<FrameAnswer> Frames, string Evening)
{
    /// <summary>How high its own letters are, as they were typed; empty: not said.</summary>
    public ImmutableArray<string> LetterHeights { get; init; } = [];

    /// <summary>All people but the first.</summary>
    public ImmutableArray<HelperAnswer> Helpers { get; init; } = [];

    /// <summary>Where nothing is known: most machines have letters of their own, and nothing has to be bought to begin with them.</summary>
    public static WorkshopAnswers None { get; } = new(MachineSkill.TypesLetters, [], "");

    /// <summary>The way that such a machine sews first of all.</summary>
    public Way Way => Skill switch
    {
        MachineSkill.FollowsFiles => Way.NeedlePath,
        MachineSkill.StraightOnly => Way.Traced,
        _ => Way.MachineLetters,
    };

    /// <summary>What says in which way a new job begins; null: that of a job that says none.</summary>
    public JobEdit? BeginsWith => Way == JobDefaultWay ? null : SewnBy(Way);

    /// <summary>Any machine can be guided along a template.</summary>
    public bool CanSew(Way way) => way switch
    {
        Way.NeedlePath => Skill is MachineSkill.FollowsFiles or MachineSkill.Both,
        Way.MachineLetters => HasLetters,
        _ => true,
    };

    /// <summary>Has all names of a job go one way.</summary>
    public static JobEdit SewnBy(Way way) => JobEdit.Text(JobKeys.Way.Path, JobKeys.WordOf(way));

    private const Way JobDefaultWay = Way.NeedlePath;

    public bool HasLetters => Skill is MachineSkill.TypesLetters or MachineSkill.Both;

    /// <summary>Other answers, for all that is told by them.</summary>
    public bool DiffersFrom(WorkshopAnswers other) => Skill != other.Skill || Evening != other.Evening
        || !Frames.SequenceEqual(other.Frames) || !Helpers.SequenceEqual(other.Helpers)
        || !LetterHeights.SequenceEqual(other.LetterHeights);
}

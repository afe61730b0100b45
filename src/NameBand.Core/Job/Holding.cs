namespace NameBand.Job;

/// <summary>How a hooping is set where it belongs.</summary>
public enum MarkMethod
{
    /// <summary>Crosses of long stitches, sewn first and taken out again.</summary>
    Sewn,

    /// <summary>Two pencilled crosses in the turn-in, met by the needle: nothing is sewn and nothing comes out.</summary>
    Drawn,

    /// <summary>A printed template at true size, whose crosses the needle meets.</summary>
    Paper,

    /// <summary>A run without a hoop, or names that have a start mark each.</summary>
    None,
}

/// <summary>How cloth is held, and how each hooping is set where it belongs.</summary>
public sealed record Holding(FrameHold Hold, MarkMethod Marks)
{
    /// <summary>A screwed hoop and sewn crosses.</summary>
    public static Holding Usual { get; } = new(FrameHold.Screw, MarkMethod.Sewn);

    /// <summary>job.json does not say how hoopings are marked, so that it may be chosen.</summary>
    public bool AreMarksFree { get; init; }

    /// <summary>job.json does not say how the cloth is held.</summary>
    public bool IsHoldFree { get; init; }

    public bool IsHooped => Hold != FrameHold.None;

    /// <summary>What of it a job needs whose machines allow fewer ways than it asks for.</summary>
    public Holding Within(BandJob job) => this with
    {
        Hold = job.IsHooped ? Hold : FrameHold.None,
        Marks = job.Traits.FollowsCoordinates ? Marks : MarkMethod.None,
    };

    /// <summary>
    /// A key that is written is kept; else both are as in version 0.1, until free ones are chosen as the job is laid out.
    /// </summary>
    /// <param name="way">What any of the job's ways has.</param>
    /// <param name="hold">As job.json says; null: it does not.</param>
    /// <param name="marks">The same of the marks.</param>
    /// <param name="lettersHooped">Whether job.json says that typed names are sewn in a hoop.</param>
    public static Holding Choose(WayTraits way, FrameHold? hold, MarkMethod? marks, bool lettersHooped) => new(
        hold ?? (way.FollowsCoordinates || (way.HasLettersOfItsOwn && lettersHooped) ? FrameHold.Screw : FrameHold.None),
        marks ?? (way.FollowsCoordinates ? MarkMethod.Sewn : MarkMethod.None))
    {
        IsHoldFree = hold is null,
        AreMarksFree = marks is null,
    };
}

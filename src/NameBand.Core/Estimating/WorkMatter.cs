using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>What a way of sewing asks of hands and machine besides the stitches.</summary>
/// <param name="IsHooped">The cloth is hooped, again and again; else a strip is sewn in one run on one long backing.</param>
/// <param name="Marks">How each hooping is set where it belongs.</param>
public sealed record WayActs(bool IsHooped, MarkMethod Marks)
{
    /// <summary>In hoopings, from files, set in place by such marks.</summary>
    public static WayActs NeedlePath(MarkMethod marks) => new(IsHooped: true, marks) { FollowsCoordinates = true };

    /// <summary>Crosses are sewn first in each hooping, in a thread of the cloth's colour, and taken out again.</summary>
    public bool HasSewnMarks => Marks == MarkMethod.Sewn;

    /// <summary>The machine sews by itself, from a file.</summary>
    public bool FollowsCoordinates { get; init; }

    /// <summary>What is said of it beside the acts of another way, such as <c>keyed in</c>.</summary>
    public string How { get; init; } = "";

    /// <summary>Numbers of the hoopings that are sewn so; null: all.</summary>
    public ImmutableHashSet<int>? Hoopings { get; init; }

    public bool Has(int hooping) => Hoopings is null || Hoopings.Contains(hooping);

    /// <summary>Characters that are keyed in.</summary>
    public int Keys { get; init; }

    /// <summary>What is keyed in at one go, each with its start mark.</summary>
    public int KeyedPieces { get; init; }

    /// <summary>Length of all lines that are traced, in mm; 0 where nothing is.</summary>
    public double TracedMm { get; init; }

    public bool IsTraced { get; init; }
}

/// <summary>What the acts of a job are counted from.</summary>
/// <param name="Log">What was sewn so far; null for nothing.</param>
/// <param name="Ways">Every hooping is sewn in one of them.</param>
internal sealed record WorkMatter(
    BandJob Job, StripPlan Plan, ImmutableArray<HoopingFigures> Hoopings, SewingLog? Log, ImmutableArray<WayActs> Ways)
{
    public WayActs WayOf(int hooping) => Ways.First(w => w.Has(hooping));

    public bool IsHooped(int hooping) => WayOf(hooping).IsHooped;

    public bool IsSewn(int hooping) => Log is not null && Log.IsSewn(hooping);

    public bool IsBegun => Plan.Hoopings.Any(h => IsSewn(h.Number));
}

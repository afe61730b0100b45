using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>What a way of sewing asks of hands and machine besides the stitches.</summary>
/// <param name="IsHooped">The cloth is hooped, again and again; else a strip is sewn in one run on one long backing.</param>
/// <param name="Marks">How each hooping is set where it belongs.</param>
internal sealed record WayActs(bool IsHooped, MarkMethod Marks)
{
    /// <summary>In hoopings, from files, set in place by such marks.</summary>
    public static WayActs NeedlePath(MarkMethod marks) => new(IsHooped: true, marks) { FollowsCoordinates = true };

    /// <summary>Crosses are sewn first in each hooping, in a thread of the cloth's colour, and taken out again.</summary>
    public bool HasSewnMarks => Marks == MarkMethod.Sewn;

    /// <summary>The machine sews by itself, from a file.</summary>
    public bool FollowsCoordinates { get; init; }

    /// <summary>What is said of it beside the acts of another way, such as <c>keyed in</c>.</summary>
    public Said How { get; init; } = "";

    /// <summary>Numbers of the hoopings that are sewn so; null: all.</summary>
    public ImmutableHashSet<int>? Hoopings { get; init; }

    public bool Has(int hooping) => Hoopings is null || Hoopings.Contains(hooping);

    /// <summary>What is keyed in of each name, by its number; empty where nothing is.</summary>
    public ImmutableDictionary<int, NameKeys> Keyed { get; init; } = ImmutableDictionary<int, NameKeys>.Empty;

    /// <summary>Length of the lines that are traced in each hooping, in mm; empty where nothing is.</summary>
    public ImmutableDictionary<int, double> TracedMm { get; init; } = ImmutableDictionary<int, double>.Empty;

    public bool IsTraced { get; init; }

    /// <summary>Whether its names are logged one by one, and not hooping by hooping.</summary>
    public bool IsLoggedByName => !FollowsCoordinates;
}

/// <summary>What the acts of a job are counted from.</summary>
/// <param name="Log">What was sewn so far; null for nothing.</param>
/// <param name="Ways">Every hooping is sewn in one of them.</param>
internal sealed record WorkMatter(
    BandJob Job, StripPlan Plan, ImmutableArray<HoopingFigures> Hoopings, SewingLog? Log, ImmutableArray<WayActs> Ways)
{
    /// <summary>As it is set, and as the log shows it.</summary>
    public double SpoiledPer100Names { get; } = SpoilLearning.Per100(Job.Hands.SpoiledPer100Names, Log, Plan);

    public WayActs WayOf(int hooping) => Ways.First(w => w.Has(hooping));

    public bool IsHooped(int hooping) => WayOf(hooping).IsHooped;

    public bool IsSewnName(int order) => Log is not null && Log.OfNames.IsSewn(order);

    public bool IsSewn(Hooping hooping) => WayOf(hooping.Number).IsLoggedByName
        ? HoopHands.OrdersIn(hooping).All(IsSewnName) : Log is not null && Log.IsSewn(hooping.Number);

    /// <summary>Whether any of it is sewn.</summary>
    public bool IsBegunIn(Hooping hooping) => WayOf(hooping.Number).IsLoggedByName
        ? HoopHands.OrdersIn(hooping).Any(IsSewnName) : Log is not null && Log.IsSewn(hooping.Number);

    public bool IsBegun => Plan.Hoopings.Any(IsBegunIn) || (Log is not null && Log.Finishing.IsAny);
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>A figure with the range it may well fall in: in eight cases of ten it falls between low and high.</summary>
public readonly record struct Figure(double Low, double Likely, double High)
{
    public static Figure operator +(Figure a, Figure b) => new(a.Low + b.Low, a.Likely + b.Likely, a.High + b.High);
}

/// <summary>Thread that one name takes, in sewing order.</summary>
/// <param name="Order">The name's number in the whole job; 0 for the alignment marks.</param>
public readonly record struct NameThread(int Order, double NeedleM, double BobbinM);

/// <summary>A bobbin put in before a name is begun.</summary>
/// <param name="BeforeOrder">Number of the name; 0 where the marks of the hooping come first.</param>
/// <param name="LeftM">Bobbin thread that was still on the old one and would not have finished the name.</param>
/// <param name="InName">How often more the bobbin is changed inside this name, because it takes more than a whole one.</param>
/// <param name="Bobbins">Bobbins put in, before the name and inside it.</param>
public sealed record BobbinChange(int Hooping, int BeforeOrder, double LeftM, int InName, int Bobbins)
{
    /// <summary>Such as <c>before 12</c>, a name's number on the proofs.</summary>
    public Said Before => BeforeOrder > 0 ? (Said)$"before {BeforeOrder}" : "before the marks";

    /// <summary>The hooping is sewn: this bobbin is in the machine already, or empty.</summary>
    public bool IsPast { get; init; }
}

/// <summary>What one hooping takes.</summary>
public sealed record HoopingFigures(
    int Number, int Stitches, int Jumps, int Trims, int Stops, double NeedleThreadM, double BobbinThreadM, double MachineMinutes)
{
    /// <summary>Minutes of the stitches alone, at the pace each stitch allows.</summary>
    public double StitchingMinutes { get; init; }

    /// <summary>Loose threads that a person cuts: jumps the machine did not cut before, and the last thread where it did not cut
    /// that.</summary>
    public int Snips { get; init; }

    /// <summary>The machine does not cut: each trim is a thread to clip.</summary>
    public bool IsCutByHand { get; init; }

    /// <summary>The same, name by name, in the order they are sewn; empty when the hooping was not known.</summary>
    public ImmutableArray<NameThread> Names { get; init; } = [];

    /// <summary>Minutes of hands that the log times, rest included: hooping, setting straight, clipping, tearing away.</summary>
    public double TimedHandMinutes { get; init; }

    /// <summary>Minutes of hands at this hooping that the log does not time: the marks.</summary>
    public double OtherHandMinutes { get; init; }

    /// <summary>Bobbins changed in this hooping.</summary>
    public int BobbinChanges { get; init; }

    /// <summary>True once the sewing log says so: it then counts for nothing that is still to do.</summary>
    public bool IsSewn { get; init; }
}

/// <summary>Hours and thread of the whole job.</summary>
/// <param name="Work">Every act of it, what is sewn included; by the person's and the machine's own pace, once they were timed.</param>
public sealed record Estimate(ImmutableArray<HoopingFigures> Hoopings, Work Work, double NeedleThreadM, double BobbinThreadM)
{
    /// <summary>What is still to do, finishing included; the whole where nothing is sewn.</summary>
    public Work Left { get; init; } = Work;

    /// <summary>Names that are keyed in or traced, in the plan's order: they are logged one by one.</summary>
    public ImmutableArray<NameShare> Names { get; init; } = [];

    /// <summary>What the log has taught of names that go wrong; null: nothing.</summary>
    public LearnedSpoils? Spoils { get; init; }

    /// <summary>Whether the cloth is hooped; else each strip is sewn in one run.</summary>
    public bool IsHooped { get; init; } = true;

    public IEnumerable<WorkRow> MachineWork => Work.By(Doer.Machine);

    public IEnumerable<WorkRow> HandWork => Work.By(Doer.Hands);

    public Figure MachineMinutes => Work.Machine;

    public Figure HandsOnMinutes => Work.Hands;

    /// <summary>Likely minutes by the clock.</summary>
    public double ElapsedMinutes => Work.ElapsedMinutes(Hoopings.Length);

    public WorkLeft WorkLeft
    {
        get
        {
            var byName = Names.Select(n => n.Hooping).ToHashSet();
            var logged = Hoopings.Where(h => !byName.Contains(h.Number)).ToList();
            return new(logged.Count(h => !h.IsSewn), Left.Machine, Left.Hands, Left.Finishing.Likely)
            {
                HoopingsInAll = logged.Count,
                Names = Names.Count(n => !n.IsSewn),
                NamesInAll = Names.Length,
                IsBegun = IsBegun,
            };
        }
    }

    /// <summary>Whether anything is sewn.</summary>
    public bool IsBegun { get; init; }

    /// <summary>Whether anything is still to do, down to the last stitch at the hem.</summary>
    public bool IsWorkLeft => Left.Rows.Any(r => r.Minutes.Likely > 0);

    /// <summary>Minutes that one of the hoopings takes at the machine, by its own pace as the totals are.</summary>
    public double OwnMinutes(HoopingFigures hooping) => hooping.MachineMinutes * (OwnPace?.MachineFactor ?? 1);

    public double OwnMinutes(NameShare name) => name.MachineMinutes * (OwnPace?.MachineFactor ?? 1);

    /// <summary>What the log has taught; null: nothing was timed, and all is at the pace that is set.</summary>
    public OwnPace? OwnPace { get; init; }

    /// <summary>Where a fresh bobbin goes in, in sewing order.</summary>
    public ImmutableArray<BobbinChange> BobbinChanges { get; init; } = [];

    /// <summary>Bobbins wound in all.</summary>
    public int Bobbins { get; init; }

    /// <summary>The hoopings by their numbers.</summary>
    public IReadOnlyDictionary<int, HoopingFigures> ByNumber() => Hoopings.ToDictionary(h => h.Number);
}

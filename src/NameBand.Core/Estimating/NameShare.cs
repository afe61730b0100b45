using System.Collections.Immutable;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>What of the keying a name is.</summary>
/// <param name="Pieces">Keyed in at one go, each with its start mark.</param>
/// <param name="MachineSeconds">Measured time of its letters; null where not all were measured.</param>
/// <param name="HandMarks">Letters that get marks by hand.</param>
public readonly record struct NameKeys(int Keys, int Pieces, double? MachineSeconds, int HandMarks = 0);

/// <summary>A name that is keyed in or traced, which is logged by itself: what of its run falls to it.</summary>
/// <param name="Order">Its number.</param>
/// <param name="Part">Of its hooping's, or run's, time at the machine and of its thread.</param>
/// <param name="TimedHandMinutes">Minutes of hands that the log times, rest included: keying in, finding its start mark,
/// clipping, tearing away by the name.</param>
public sealed record NameShare(int Order, int Hooping, double Part, double MachineMinutes, double TimedHandMinutes, bool IsSewn)
{
    public NameKeys Keyed { get; init; }

    /// <summary>The parts of the names of one hooping, which are 1 together: by the time of their letters where that was
    /// measured, else by their thread.</summary>
    internal static ImmutableArray<double> Parts(Hooping hooping, HoopingFigures figures, IReadOnlyDictionary<int, NameKeys> keys)
    {
        int[] orders = [.. hooping.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Order)];
        bool areTimed = orders.All(o => keys.TryGetValue(o, out var known) && known.MachineSeconds > 0);
        var thread = figures.Names.ToLookup(n => n.Order, n => n.NeedleM);
        double[] weights = [.. orders.Select(o => areTimed ? keys[o].MachineSeconds!.Value : thread[o].Sum())];
        double all = weights.Sum();
        return [.. weights.Select(w => all > 0 ? w / all : 1.0 / orders.Length)];
    }
}

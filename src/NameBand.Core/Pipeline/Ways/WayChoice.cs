using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Ways;

/// <summary>The one place, besides the job's reader, that asks which way names go.</summary>
internal static class WayChoice
{
    /// <param name="ways">One at least; several stand beside each other on the garment.</param>
    public static IWay Of(ImmutableArray<Way> ways) => ways is [var only]
        ? Of(only) : new SideBySideWay([.. ways.Select(w => new SideBySideWay.Part(w, Of(w)))]);

    public static IWay Of(Way way) => way switch
    {
        Way.NeedlePath => new NeedlePathWay(),
        Way.MachineLetters => new KeyedWay(way),
        Way.Traced => new TracedWay(way),
        _ => throw new ArgumentOutOfRangeException(nameof(way), way, "No such way."),
    };
}

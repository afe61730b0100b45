using NameBand.Job;

namespace NameBand.Pipeline.Ways;

/// <summary>The one place, besides the job's reader, that asks which way names go.</summary>
internal static class WayChoice
{
    public static IWay Of(Way way) => way switch
    {
        Way.NeedlePath => new NeedlePathWay(),
        Way.MachineLetters => new KeyedWay(),
        Way.Traced => new TracedWay(),
        _ => throw new ArgumentOutOfRangeException(nameof(way), way, "No such way."),
    };
}

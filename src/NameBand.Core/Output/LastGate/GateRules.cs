using NameBand.Common;

namespace NameBand.Output.LastGate;

/// <summary>What the maker's hoop and strip allow, as job.json has it.</summary>
/// <param name="ZoneMm">Width of the sewing zone: the finished width less a margin at each edge.</param>
/// <param name="IsCentreAbove">On a curved strip: the centre of the arcs lies above the letters as they are read.</param>
internal sealed record GateRules(double AlongMm, double AcrossMm, double SpareMm, double ZoneMm, bool IsCentreAbove)
{
    /// <summary>
    /// A needle point along its strip, from the segment's left end, and above the strip's centre line; a curved strip is
    /// straightened by the geometry that docs/files.md states.
    /// </summary>
    internal (double AlongMm, double AcrossMm) OnStrip(GatePlan plan, GateLane lane, Point at)
    {
        if (lane.Segment.RadiusMm is not { } radius)
        {
            return (at.XMm - lane.XMm, at.YMm - lane.YMm);
        }

        double sign = IsCentreAbove ? 1 : -1;
        double centre = radius - (plan.FinishedWidthMm / 2);
        double half = lane.Segment.LengthMm / 2 / radius;
        double x = at.XMm - lane.XMm - (centre * Math.Sin(half));
        double down = (centre * Math.Cos(half)) - (sign * (at.YMm - lane.YMm));
        return ((Math.Atan2(x, down) + half) * radius, sign * (centre - Math.Sqrt((x * x) + (down * down))));
    }
}

/// <summary>Why a hooping is not let out.</summary>
/// <param name="Found">What its needle would do, as the rest of a sentence that begins with the hooping.</param>
/// <param name="Mend">What to do, in a sentence without its end.</param>
internal sealed record GateFault(int Hooping, Said Found, Said Mend)
{
    internal static GateFault NotWhole(int hooping) =>
        new(hooping, "has a needle path that is not whole", "Run make again");

    internal static GateFault NoPlace(int hooping) =>
        new(
        hooping, "has two places on the cloth, one by its round and one by its hoop",
        "Lay the strips one by one (\"stripsSideBySide\": 1) and run make again");

    internal static GateFault PastField(int hooping, double alongMm, double acrossMm, GateRules rules) => new(
        hooping,
        $"takes {Wording.Size($"{alongMm:0.0}", $"{acrossMm:0.0}")} of the flat cloth, and the field less its spare is "
            + $"{Wording.Size($"{rules.AlongMm - (2 * rules.SpareMm):0.0}", $"{rules.AcrossMm:0.0}")}",
        "Use a larger hoop, or agree a shorter form with the owner of its longest name");

    internal static GateFault PastZone(int hooping, double pastMm) => new(
        hooping, $"would be stitched {pastMm:0.0#} mm past the sewing zone",
        "Use smaller letters, a wider strip or a narrower margin");

    internal static GateFault MarkInside(int hooping) =>
        new(
            hooping, "has an alignment mark within the finished width of a strip",
            "Make the turn-ins wider, or lay the strips one by one (\"stripsSideBySide\": 1)");

    internal static GateFault Over(GateRun own, GateRun other, bool isSewn) => new(
        own.Hooping,
        $"would be stitched over hooping {other.Hooping}{(isSewn ? (Said)", which is sewn," : "")} from "
            + $"{Math.Max(own.FromMm, other.FromMm):0.0} to {Math.Min(own.ToMm, other.ToMm):0.0} mm of cloth {own.Cloth}",
        "Leave a name out, agree a shorter form with its owner, or add a round");
}

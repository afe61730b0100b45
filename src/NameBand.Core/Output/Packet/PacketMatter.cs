using NameBand.Cloth;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Stitching;

namespace NameBand.Output.Packet;

/// <summary>What the printed sheets are made from.</summary>
/// <param name="Sewn">The needle path of a hooping; made when it is asked for and not kept.</param>
public sealed record PacketMatter(
    BandJob Job, Fabric Fabric, StripPlan Plan, Estimate Estimate, ShoppingList Shopping, Func<Hooping, NeedlePath> Sewn);

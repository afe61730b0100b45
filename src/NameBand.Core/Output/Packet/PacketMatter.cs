using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Stitching;

namespace NameBand.Output.Packet;

/// <summary>What the printed sheets are made from.</summary>
/// <param name="Sewn">The needle path of a hooping; made when it is asked for and not kept.</param>
public sealed record PacketMatter(
    BandJob Job, Fabric Fabric, StripPlan Plan, Estimate Estimate, ShoppingList Shopping, Func<Hooping, NeedlePath> Sewn)
{
    /// <summary>What was found of each fact.</summary>
    public ImmutableArray<Verdict> Verdicts { get; init; } = [];

    /// <summary>What the next evening holds; null where no evening is known, or nothing is left.</summary>
    public Tonight? Tonight { get; init; }

    /// <summary>What each of several makers does; empty where one does it all.</summary>
    public ImmutableArray<PersonShare> Shares { get; init; } = [];

    /// <summary>What would mend rounds whose upper edge cannot be sewn down.</summary>
    public ImmutableArray<EaseMend> EaseMends { get; init; } = [];
}

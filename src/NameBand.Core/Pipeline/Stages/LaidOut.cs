using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Output;
using NameBand.Pipeline.Resume;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Pipeline.Stages;

/// <summary>A job laid out and not yet sewn.</summary>
/// <param name="Rows">Every row with what finally became of it.</param>
internal sealed record LaidOut(BandJob Job, Fabric Fabric, Face Face, NameList Rows, StripPlan Plan, ILetteredWay Way)
{
    /// <summary>Null until something has been sewn.</summary>
    public SewingProgress? Begun { get; init; }

    /// <inheritdoc cref="NamesRead.SewnThenChanged"/>
    public ImmutableDictionary<RowRef, string>? SewnThenChanged { get; init; }

    /// <summary>What was found on the way here.</summary>
    public ImmutableArray<Problem> Problems { get; init; } = [];

    /// <summary>What would mend rounds whose upper edge cannot be sewn down.</summary>
    public ImmutableArray<EaseMend> EaseMends { get; init; } = [];

    /// <summary>What is to stand in the plan of all that was found, here and while it was sewn.</summary>
    /// <param name="load">What the stitches do to the cloth; none where none were measured.</param>
    public PlanFound Found(IEnumerable<Problem> whileSewing, ImmutableArray<Verdict> load)
    {
        ImmutableArray<Problem> all = [.. Problems, .. whileSewing];
        var needs = Needs.Of(Rows, all);
        return new PlanFound(Rows.Rows, needs) { Verdicts = Judging.Of(this, all, needs, load) };
    }

    public bool IsSewn(int hooping) => Begun is not null && Begun.IsSewn(hooping);

    /// <summary>What a sewn hooping was sewn in, where the rest of the plan has another face, height or cloth.</summary>
    public SewnAs? SewnAs(int hooping) => IsSewn(hooping) && Begun!.SewnAs(hooping) is { } sewn
        && sewn != new SewnAs(Job.Lettering.Face, Job.Fabric, Plan.LetterHeightMm) ? sewn : null;

    /// <summary>What is sewn lies on the cloth that it was sewn on, whatever the rest is planned for.</summary>
    public Fabric ClothOf(int hooping) =>
        SewnAs(hooping) is { } sewn ? JobCloth.Of(Job with { Fabric = sewn.Fabric }) ?? Fabric : Fabric;

    /// <summary>The needle path that a sewn hooping was sewn from; null where it is not sewn or its file is not whole.</summary>
    public NeedlePath? KeptPath(int hooping) =>
        IsSewn(hooping) && Begun!.Kept(hooping).Path is { } kept ? NeedlePathReading.Read(kept) : null;
}

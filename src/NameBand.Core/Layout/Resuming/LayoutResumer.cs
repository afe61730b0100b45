using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout.Drift;
using NameBand.Layout.Lines;
using NameBand.Layout.Pieces;
using NameBand.Layout.Planning;
using NameBand.Lettering;

namespace NameBand.Layout.Resuming;

/// <summary>What a plan that has been begun goes on from.</summary>
/// <param name="Sewn">Numbers of the hoopings that are sewn: nothing in them moves.</param>
/// <param name="Gone">Sewn names that no row asks for any longer, lettered so that they can be drawn.</param>
internal sealed record Continuation(
    EarlierPlan Earlier, ImmutableHashSet<int> Sewn, ImmutableDictionary<RowRef, EarlierName> Before, ImmutableArray<LetteredName> Gone)
{
    /// <summary>Where sewn names were measured to end.</summary>
    public ImmutableArray<MeasuredEnd> Ends { get; init; } = [];

    /// <summary>Letter height of what is not sewn.</summary>
    public double HeightMm { get; init; } = Earlier.LetterHeightMm;

    /// <summary>What is not sewn takes another face, height or cloth than it was planned in, and is set out again.</summary>
    public bool RestDiffers { get; init; }

    /// <summary>The base line is ruled already: the rest stands on it too, though it is set out again.</summary>
    public bool KeepsBaseLine { get; init; }

    /// <summary>Sewn names came out longer or shorter than planned: the gaps of the rest take that up.</summary>
    public bool TakesUpLengths { get; init; }

    /// <summary>Rows whose names are sewn, and so lie fast.</summary>
    public HashSet<RowRef> SewnRows()
    {
        var hoopingOf = Earlier.HoopingOfSegment;
        var sewn = Earlier.Rounds.SelectMany(r => r.Segments).Where(s => Sewn.Contains(hoopingOf[s.Number])).SelectMany(s => s.Names)
            .ToHashSet();
        return [.. Before.Where(b => sewn.Contains(b.Value)).Select(b => b.Key)];
    }

    /// <summary>On which round each name was planned.</summary>
    public IReadOnlyDictionary<RowRef, int> PlannedRounds()
    {
        var roundOf = Earlier.Rounds.SelectMany(r => r.Segments.SelectMany(s => s.Names.Select(n => (n.Order, r.Number))))
            .ToLookup(n => n.Order, n => n.Number);
        return Before.ToImmutableDictionary(b => b.Key, b => roundOf[b.Value.Order].First());
    }
}

/// <summary>
/// Goes on with a plan after something has been sewn. Sewn hoopings stay where they lie on the cloth. The others stay
/// too, as long as what was planned still holds; latecomers go into the room that was kept free or has become free.
/// Only where that does not do, the unsewn names are set out again between the sewn ones.
/// </summary>
internal static class LayoutResumer
{
    public static Result<StripPlan> Plan(BandJob job, HemPlan hem, LetteredList lettered, Fabric fabric, Continuation from)
    {
        var sizing = new Sizing(
            lettered.FaceName, hem, job.Hoop.Along.Mm, job.Hoop.Across.Mm, job.Hoop.Spare.Mm, fabric.PullCompensationMm,
            job.Strip.Shortening, job.Lettering.Gap?.Mm)
        {
            Pull = fabric.Pull,
            MostGapMm = job.Layout.MostGap?.Mm,
            Motif = lettered.Motif,
            AreMotifsLater = lettered.AreMotifsLater,
            MarkReachMm = -from.Earlier.MarkYMm + SegmentCutter.MarkArmMm,
            WidestPiece = lettered.Names.SelectMany(n => n.Pieces).Select(p => p.Piece.Ink.WidthMm).DefaultIfEmpty(0).Max(),
        };
        var earlier = from.Earlier;
        bool isFree = job.Layout.AreLanesFree;
        int lanes = Lanes.InUse(
            isFree ? job with { Layout = job.Layout with { Lanes = earlier.LanesBeside } } : job, sizing, earlier.MarkYMm);
        sizing = sizing with { Hem = hem = hem with { Lanes = isFree ? 1 : lanes }, LanesBeside = hem.IsCurved ? 1 : lanes };
        double height = from.HeightMm;
        var fast = from.RestDiffers ? from.SewnRows() : [.. from.Before.Keys];
        var lines = earlier.LineStepMm > 0 ? new TwoLines(earlier.LineStepMm / earlier.LetterHeightMm) : null;
        sizing = sizing with { LineStep = lines?.Step ?? 0 };
        double baselineY = from is { RestDiffers: true, KeepsBaseLine: false }
            ? new Baselines(Paired([.. lettered.Names.Where(n => !fast.Contains(n.Name.Row))]), height, sizing).CommonMm
            : earlier.BaselineYMm;
        IReadOnlyList<LetteredName> Paired(IReadOnlyList<LetteredName> some) => lines?.Paired(some) ?? some;
        var baseline = new SettledBaseline(baselineY, height, sizing);
        var oversized = new OversizedLatecomer(job, sizing, height, n => baseline.Fits(lines?.Alone(n) ?? n), from.RestDiffers);
        var (names, held) = HoldUnfitting(lettered.Names, oversized, fast);
        double[] hems = Hems(hem, earlier);
        var cloths = PlanAssembler.Cloths(earlier, sizing, hems, job);
        var (blocks, hasMoved, wrong) = SewnDrift.Apply(KeptSegments.Blocks(from, names, sizing), from.Ends, cloths, sizing.Flat);
        if (!wrong.IsEmpty)
        {
            return Result.Fail<StripPlan>(wrong);
        }

        if (lines is not null && !from.RestDiffers)
        {
            var known = blocks.SelectMany(b => b.Names).Select(p => p.Lettered).ToHashSet();
            blocks = new LonePartners(lines, sizing, height, earlier.BaselineYMm, baseline.Fits).Fill(
                blocks, [.. names.Where(n => !known.Contains(n))], earlier.Names.Select(n => n.Order).DefaultIfEmpty(0).Max());
        }

        var placed = blocks.SelectMany(b => b.Names).Select(p => p.Lettered).ToHashSet();
        var newcomers = Paired([.. names.Where(n => !placed.Contains(n))]);
        blocks = lines is null ? blocks : [.. blocks.Select(b => lines.Together(b, earlier.BaselineYMm))];
        var all = lines is null ? names : InOrder(names, [.. blocks.SelectMany(b => b.Names).Select(n => n.Lettered), .. newcomers], lines);

        var groupOfRound = GroupOfRound(hems.Length, earlier, blocks);
        var asPlanned = new AsPlanned(sizing, hems, cloths);
        bool mayStay = !hasMoved && !from.RestDiffers && StaysAsPlanned(earlier, hem, sizing) && asPlanned.IsClear(blocks);
        var recut = mayStay ? asPlanned.FittedToField(blocks) : blocks;
        var stays = mayStay ? new GapInserter(sizing, height, hems, baseline, cloths, groupOfRound).Place(recut, newcomers) : null;
        var laid = stays ?? SetOut([.. blocks.Where(b => b.IsSewn)], hasMoved || from.TakesUpLengths ? LeastGapParts : [1]);

        ImmutableArray<KeptBlock> SetOut(ImmutableArray<KeptBlock> sewn, double[] gapParts)
        {
            // A name that came out a little longer sends no other to the next round as long as gaps can take it up.
            foreach (double part in from.TakesUpLengths ? gapParts : [])
            {
                var staying = new FullRelayout(sizing, height, hems, job.Lettering, baseline, cloths)
                {
                    GroupOfRound = groupOfRound,
                    GapPart = part,
                    PlannedRounds = from.PlannedRounds(),
                };
                var set = staying.Place(sewn, all);
                if (staying is { HasKeptRounds: true, HasFitted: true })
                {
                    return set;
                }
            }

            foreach (double part in gapParts)
            {
                var setting = new FullRelayout(sizing, height, hems, job.Lettering, baseline, cloths)
                {
                    GroupOfRound = groupOfRound,
                    GapPart = part,
                };
                var set = setting.Place(sewn, all);
                if (setting.HasFitted)
                {
                    return set;
                }
            }

            var whole = new FullRelayout(sizing, height, hems, job.Lettering, baseline, cloths) { GroupOfRound = groupOfRound };
            return whole.Place(sewn, all);
        }

        var rounds = PlanAssembler.Rounds(laid, hems, earlier, sizing, height);
        var hoopings = PlanAssembler.Hoopings(laid, rounds, earlier, cloths, sizing);
        var plan = new StripPlan(
            hem, height, HeightBound.Given, fabric.LettersReachMm(height), sizing.Shortening, sizing.FieldAlongMm, sizing.FieldAcrossMm,
            sizing.SpareMm, baselineY, earlier.MarkYMm, rounds, hoopings, [], [.. held.Where(h => h.Row.List != JobReader.FileName)])
        {
            FreeLanes = isFree ? lanes : null,
            Cloths = [.. cloths.Select(c => c with { Hoopings = [.. hoopings.Where(h => h.Cloth == c.Number).Select(h => h.Number)] })],
            Marks = job.Holding.Marks,
            Hold = job.Holding.Hold,
        };
        plan = lines?.Apart(plan, sizing, areMotifsLaid: false) ?? plan;
        var notes = stays is null && blocks.Any(b => !b.IsSewn) && !from.TakesUpLengths
            ? [Problem.Note(new Where(), hasMoved
                ? $"What is not sewn yet was set out again, so that the strip still ends at its hem after what {DriftFile.FileName} measured."
                : from.RestDiffers
                    ? "What is not sewn yet was set out again, for it has another face, height or cloth than it was planned in."
                : Math.Abs(earlier.Shortening - sizing.Shortening) >= 1e-6
                    ? "What is not sewn yet was set out again, because the cloth shortens differently from the plan."
                : "What is not sewn yet was set out again, for it did not all fit where it had been planned.",
                    "Print its proofs again; what is sewn stays as it is.")]
            : ImmutableArray<Problem>.Empty;
        return Result.Of(
            plan, [.. LayoutAdvice.For(job, plan, all, sizing),
            .. held.Where(h => h.Row.List == JobReader.FileName)
            .Select(h => GroupOrder.HeldHeading(job.Groups.All[h.Row.Line - 1].Heading ?? "", h)), .. notes,
            .. Recut(stays is not null && recut != blocks)]);
    }

    /// <summary>Names and pairs of names in the order of the list: a pair stands where its first name does.</summary>
    private static List<LetteredName> InOrder(List<LetteredName> names, ImmutableArray<LetteredName> paired, TwoLines lines)
    {
        var place = new Dictionary<LetteredName, int>(ReferenceEqualityComparer.Instance);
        for (int i = 0; i < names.Count; i++)
        {
            place.TryAdd(names[i], i);
        }

        return [.. paired.OrderBy(p => lines.NamesOf(p).Min(n => place.GetValueOrDefault(n, int.MaxValue)))];
    }

    /// <summary>Which group with rounds of its own each round belongs to: whose names it had; 0 for those of all others.</summary>
    private static ImmutableArray<int> GroupOfRound(int rounds, EarlierPlan earlier, IEnumerable<KeptBlock> blocks)
    {
        var names = blocks.SelectMany(b => b.Names.Select(n => (b.Round, n.Lettered.Standing.OwnRounds)))
            .ToLookup(p => p.Round, p => p.OwnRounds);
        return [.. Enumerable.Range(1, Math.Max(rounds, earlier.Rounds.Length)).Select(r => names[r].FirstOrDefault())];
    }

    private static IEnumerable<Problem> Recut(bool wasRecut)
    {
        if (wasRecut)
        {
            yield return Problem.Note(
                new Where(), "Some hoopings that are not sewn yet were divided again, for on the flat cloth they did not fit the field "
                    + "less its spare; every name stays where it was.",
                "Print their proofs again.");
        }
    }

    /// <summary>After a drift the strip is to end at its hem, if need be with gaps down to half the least one.</summary>
    private static readonly double[] LeastGapParts = [1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5];

    /// <summary>False once the hem, the shortening or the number of rounds is another: then what was planned no longer holds.</summary>
    private static bool StaysAsPlanned(EarlierPlan earlier, HemPlan hem, Sizing sizing) =>
        Math.Abs(earlier.Shortening - sizing.Shortening) < 1e-6
        && (hem.FixedRounds ?? earlier.Rounds.Length) == earlier.Rounds.Length
        && earlier.Rounds.All(r => Math.Abs(r.HemMm - hem.RoundMm(r.Number)) < 0.01);

    private static double[] Hems(HemPlan hem, EarlierPlan earlier) =>
        [.. Enumerable.Range(1, Math.Max(hem.FixedRounds ?? 0, earlier.Rounds.Length)).Select(hem.RoundMm)];

    private static (List<LetteredName> Names, ImmutableArray<HeldRow> Held) HoldUnfitting(
        ImmutableArray<LetteredName> all, OversizedLatecomer oversized, HashSet<RowRef> fast)
    {
        var names = new List<LetteredName>();
        var held = ImmutableArray.CreateBuilder<HeldRow>();
        foreach (var name in all)
        {
            if (fast.Contains(name.Name.Row) || oversized.Held(name) is not { } row)
            {
                names.Add(name);
            }
            else
            {
                held.Add(row);
            }
        }

        return (names, held.ToImmutable());
    }
}

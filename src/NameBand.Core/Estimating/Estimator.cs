using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>Adds up the hours and thread of a job from its layout and what its hoopings were found to take.</summary>
internal static class Estimator
{
    /// <summary>Cloth and backing that reach past the sewing field on each side, to be held: common practice, no source.</summary>
    public const double HeldBesideFieldMm = 40;

    /// <summary>
    /// The whole job's figures. The hoopings come back in <see cref="Estimate.Hoopings"/> with the bobbin changes that
    /// fall to each of them added to their minutes, so that they sum to the machine's total.
    /// </summary>
    /// <param name="log">What was sewn so far, and in which order; null for nothing.</param>
    /// <param name="ways">What the ways of sewing ask for; left out: hoopings sewn from needle paths.</param>
    public static Estimate Make(
        BandJob job, StripPlan plan, ImmutableArray<HoopingFigures> hoopings, SewingLog? log = null, params ImmutableArray<WayActs> ways)
    {
        ways = ways.IsEmpty ? [WayActs.NeedlePath(plan.Marks)] : ways;
        var (changes, bobbins) = BobbinRun.Follow(InSewingOrder(hoopings, log), job.Bobbin);
        var bobbinsOf = changes.ToLookup(c => c.Hooping, c => c.Bobbins);
        ImmutableArray<HoopingFigures> timed = [.. hoopings.Select(h => WithBobbins(h, bobbinsOf[h.Number].Sum(), job.Machine))];
        var matter = new WorkMatter(job, plan, timed, log, ways);
        var hands = new HoopHands(matter);
        var names = Names(matter, hands);
        var whole = WorkList.Whole(matter, hands, names);
        return new Estimate(
            WithHands(timed, plan, hands, names, matter),
            whole,
            timed.Sum(h => h.NeedleThreadM),
            timed.Sum(h => h.BobbinThreadM))
        {
            Left = matter.IsBegun ? WorkList.Left(matter, hands, names) : whole,
            Names = names,
            Spoils = SpoilLearning.Of(job.Hands.SpoiledPer100Names, log, plan),
            IsBegun = matter.IsBegun,
            IsHooped = ways.Any(w => w.IsHooped),
            BobbinChanges = [.. changes.Select(c => c with { IsPast = log is not null && log.IsSewn(c.Hooping) })],
            Bobbins = bobbins,
        };
    }

    private static ImmutableArray<HoopingFigures> WithHands(
        ImmutableArray<HoopingFigures> figures, StripPlan plan, HoopHands hands, ImmutableArray<NameShare> names, WorkMatter matter)
    {
        var hoopings = plan.Hoopings.ToDictionary(h => h.Number);
        var keying = names.ToLookup(n => n.Hooping);
        return [.. figures.Select(f => hoopings.TryGetValue(f.Number, out var hooping)
            ? f with
            {
                TimedHandMinutes = matter.WayOf(f.Number).IsLoggedByName
                    ? (hands.HoopingMinutes(f.Number) * (1 + matter.Job.Hands.RestAllowance)) + keying[f.Number]
                        .Sum(n => n.TimedHandMinutes)
                    : hands.TimedMinutes(hooping),
                OtherHandMinutes = hands.UntimedMinutes(f.Number),
                IsSewn = f.IsSewn || matter.IsSewn(hooping),
            }
            : f)];
    }

    /// <summary>The names that are logged by themselves, each with its share of its run.</summary>
    private static ImmutableArray<NameShare> Names(WorkMatter matter, HoopHands hands)
    {
        var figures = matter.Hoopings.ToDictionary(h => h.Number);
        return
        [
            .. from hooping in matter.Plan.Hoopings
               let way = matter.WayOf(hooping.Number)
               where way.IsLoggedByName && figures.ContainsKey(hooping.Number)
               let whole = figures[hooping.Number]
               from name in HoopHands.OrdersIn(hooping).Zip(NameShare.Parts(hooping, whole, way.Keyed))
               let keys = way.Keyed.GetValueOrDefault(name.First)
               let byHandMm = matter.Job.Traced.ByHand ? way.TracedMm.GetValueOrDefault(hooping.Number) * name.Second : 0
               select new NameShare(
                   name.First, hooping.Number, name.Second, whole.MachineMinutes * name.Second,
                   hands.TimedMinutes(hooping, name.Second, keys)
                   + (byHandMm / matter.Job.Traced.PaceMmPerMinute * (1 + matter.Job.Hands.RestAllowance)),
                   matter.IsSewnName(name.First))
               {
                   Keyed = keys,
               },
        ];
    }

    /// <summary>
    /// What is sewn in the order the log has it, spoiled ones too, for they took thread from the bobbin; then the rest by
    /// number. A spoiled one is taken for as long as its hooping is now.
    /// </summary>
    private static IEnumerable<HoopingFigures> InSewingOrder(ImmutableArray<HoopingFigures> hoopings, SewingLog? log)
    {
        if (log is null)
        {
            return hoopings;
        }

        var known = hoopings.ToDictionary(h => h.Number);
        return log.Sewings.Where(known.ContainsKey).Select(h => known[h]).Concat(hoopings.Where(h => !log.IsSewn(h.Number)));
    }

    private static HoopingFigures WithBobbins(HoopingFigures figures, int bobbins, MachineSettings machine) => figures with
    {
        BobbinChanges = bobbins,
        MachineMinutes = figures.MachineMinutes + (bobbins * machine.SecondsPerBobbin / 60),
    };

    /// <summary>Lengths in mm of the cloths that are hooped, each with its spare ends.</summary>
    public static IEnumerable<double> BandLengthsMm(StripPlan plan) =>
        plan.Cloths.IsEmpty ? plan.Rounds.Select(r => BandLengthMm(plan, r)) : plan.Cloths.Select(c => c.LengthMm);

    /// <summary>Width in mm of the cloth that one round is sewn on: names sewn before cutting need it as wide as the hoop holds,
    /// after cutting the strip's own.</summary>
    public static double BandWidthMm(BandJob job, StripPlan plan) => job.Strip.SewnBeforeCutting
        ? Math.Max(
            plan.FieldAcrossMm + (2 * HeldBesideFieldMm),
            plan.Cloths.Select(c => c.WidthMm).DefaultIfEmpty(plan.Hem.Strip.CutWidthMm).Max())
        : plan.Hem.Strip.CutWidthMm;

    /// <summary>Length in mm of the cloth that one round is sewn on, in one piece.</summary>
    private static double BandLengthMm(StripPlan plan, Round round) =>
        plan.OnClothMm(round.LengthMm) + (plan.Hem.Closed ? plan.Hem.OverlapMm : 2 * plan.Hem.Strip.TurnInMm) + (2 * HeldBesideFieldMm);

    /// <summary>Lengths in mm of the backing under names that are sewn without a hoop beside hooped ones, run by run.</summary>
    public static IEnumerable<double> RunBackingsMm(StripPlan plan) =>
        plan.Hoopings.Where(h => h.IsRun).SelectMany(h => h.Segments)
            .Select(s => plan.OnClothMm(s.Segment.LengthMm) + (2 * HeldBesideFieldMm));

    public static double RunBackingWidthMm(StripPlan plan) => plan.Hem.Strip.CutWidthMm + (2 * HeldBesideFieldMm);

    /// <summary>Pieces of backing under hoopings, the largest first.</summary>
    public static ImmutableArray<(int Count, double LengthMm, double WidthMm)> BackingPieces(StripPlan plan) =>
    [
        .. plan.Hoopings.Where(h => !h.IsRun).Select(plan.FieldOf).GroupBy(f => f).OrderByDescending(g => g.Key.AlongMm * g.Key.AcrossMm)
            .Select(g => (g.Count(), g.Key.AlongMm + (2 * HeldBesideFieldMm), g.Key.AcrossMm + (2 * HeldBesideFieldMm))),
    ];
}

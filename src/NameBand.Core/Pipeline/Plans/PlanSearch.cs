using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Smallness;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Plans;

/// <summary>
/// Finds the plan that answers each wish best. Ways, faces, rounds and strip widths are tried; from the best of them it goes
/// step by step to what lies around (gap, height, pieces), as long as a step is worth the keys it changes. The same list gives
/// the same plans: what is tried is bounded by number, never by time.
/// </summary>
internal sealed class PlanSearch
{
    private const int MostSteps = 5; // From where it begins, steps of gap, height and pieces: after five little is left to win. Our choice.

    /// <summary>Plans of one wish that are stitched to see whether they bear it.</summary>
    private const int MostStitched = 3;

    /// <summary>So much larger than hers may the letters have to be from which a face can be sewn as it is drawn: our choice.</summary>
    private const double LeastFaceFit = 1.25;

    /// <summary>Two lines are for less strip: on more rounds there is as much of it again.</summary>
    private const int MostRoundsOfTwoLines = 2;

    /// <summary>With more names fewer faces and rounds are tried, so that it does not take long.</summary>
    private const int ManyNames = 300;

    private readonly PlanTrials _trials;
    private readonly PlanStitching _stitching;
    private readonly VisibleSteps _steps;
    private readonly FaceShelf _shelf;
    private readonly StitchRate _rate;
    private readonly Dictionary<string, PlanTrial> _seen = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, PlanFigures> _guesses = new(StringComparer.Ordinal);

    /// <summary>Names that a plan has to have a place for: as many as were promised one and can have it.</summary>
    private int _leastNames;

    /// <summary>What the plan comes to beside which others are judged: as it is set, mended where that is not sound.</summary>
    private PlanFigures _figures;

    public PlanSearch(PlanTrials trials, VisibleSteps steps, StitchedPlan asSet, PlanStitching stitching, FaceShelf shelf)
    {
        (_trials, _steps, _stitching, _shelf, AsSet) = (trials, steps, stitching, shelf, asSet);
        (_leastNames, _figures) = (asSet.Laid.Plan.NameCount, asSet.Figures);
        _rate = StitchRate.Of(asSet.Laid, asSet.Estimate.Hoopings);
    }

    public StitchedPlan AsSet { get; }

    /// <summary>What is to be known of plans that are not offered.</summary>
    public ImmutableArray<Problem> Notes { get; private set; } = [];

    private BandJob Job => AsSet.Laid.Job;

    private bool IsLarge => AsSet.Laid.Plan.NameCount > ManyNames;

    /// <summary>The best sound plan for each wish that one was found for; as it is set, mended where that is not sound.</summary>
    public ImmutableArray<(PlanWish Wish, StitchedPlan Plan)> Run(IProgress<Reports.Progress>? progress)
    {
        var typed = MayType ? PlainWay.Typed(_steps, _trials) : null;
        VisibleChoice[] ways = [.. Ways(typed)];
        var asSet = AsSet.IsSound && AsSet.TooLarge == 0 ? AsSet : Mended(ways.SelectMany(w => Grid(PlanWish.AsSet, w)));
        var start = asSet?.Trial;
        (_leastNames, _figures) = asSet is null ? (Math.Max(1, _leastNames), _figures) : (asSet.Laid.Plan.NameCount, asSet.Figures);
        if (start is { Choice.IsAsSet: false })
        {
            ways = [.. ways, start.Choice];
        }

        ImmutableArray<PlanTrial> From(PlanWish wish) => Climb(wish, start, ways.SelectMany(w => Grid(wish, w)));
        var wishes = new List<(PlanWish Wish, Func<ImmutableArray<PlanTrial>> Climb)>
        {
            (PlanWish.FewestHours, () => From(PlanWish.FewestHours)),
            (PlanWish.Soonest, () => From(Job.Machine.IsWatched ? PlanWish.FewestHours : PlanWish.Soonest)),
            (PlanWish.BiggestLetters, () => From(PlanWish.BiggestLetters)),
        };
        if (typed is not null)
        {
            wishes.Add((PlanWish.TypedLetters, () => Climb(PlanWish.TypedLetters, null, Grid(PlanWish.TypedLetters, typed))));
            Notes = [.. Untyped(_trials.Of(typed))];
        }

        var found = ImmutableArray.CreateBuilder<(PlanWish Wish, StitchedPlan Plan)>();
        foreach (var ((wish, climb), i) in wishes.Select((w, i) => (w, i)))
        {
            progress?.Report(new Reports.Progress("looking for plans", i, wishes.Count));
            if (Soundest(climb(), asSet) is { } plan)
            {
                found.Add((wish, plan));
            }
        }

        Notes = [.. Notes, .. IdleRound(), .. asSet is null && found.Count == 0 ? InTheWay() : []];
        return asSet is null ? found.ToImmutable() : [(PlanWish.AsSet, asSet), .. found];
    }

    /// <summary>Typed letters need a machine that has some: one of the workshop; where nothing is known of it, hers may.</summary>
    private bool MayType => !Job.Traits.HasLettersOfItsOwn && !Job.Layout.IsCurved
        && (Job.Workshop.Machines.IsEmpty || Job.Workshop.MachineFor(WayTraits.Typed) is not null);

    /// <summary>What her machines are known to do; typed letters on a guess are a wish of their own.</summary>
    private IEnumerable<VisibleChoice> Ways(VisibleChoice? typed)
    {
        yield return VisibleChoice.AsSet;
        if (typed is not null && !Job.Workshop.Machines.IsEmpty)
        {
            yield return typed;
        }

        if (!Job.Traits.FollowsCoordinates && Job.Workshop.MachineFor(WayTraits.FromNeedlePaths) is not null)
        {
            yield return _steps.FromNeedlePaths(VisibleChoice.AsSet);
        }

        if (!HasMachineFor(Job) && Job.Workshop.MachineFor(WayTraits.ByHand) is not null)
        {
            yield return _steps.ByHand(VisibleChoice.AsSet);
        }
    }

    /// <summary>Rounds in every face, and for large letters rounds on wider strips too.</summary>
    private IEnumerable<VisibleChoice> Grid(PlanWish wish, VisibleChoice start)
    {
        var rounds = _steps.OnRounds(start, IsLarge ? AsSet.Laid.Plan.Rounds.Length + 1 : VisibleSteps.MostRounds);
        bool isDrawn = _trials.Of(start).Laid is { Job.Traits.HasLettersOfItsOwn: false };
        return
        [
            start, .. rounds, .. wish == PlanWish.BiggestLetters ? rounds.SelectMany(_steps.OnWiderStrips) : [],
            .. isDrawn && wish is not PlanWish.AsSet and not PlanWish.BiggestLetters
                ? _steps.InTwoLines(start, Math.Min(MostRoundsOfTwoLines, AsSet.Laid.Plan.Rounds.Length)) : [],
            .. isDrawn ? rounds.Append(start).SelectMany(r => OtherFaces.Select(f => _steps.InFace(r, f))) : [],
        ];
    }

    /// <summary>Those that bear small letters about as well as her own.</summary>
    private ImmutableArray<string> OtherFaces
    {
        get
        {
            double own = LeastHeightMm(Job.Lettering.Face);
            var others = _shelf.Cards.Where(c => c.Fallback is null && c.Name != Job.Lettering.Face && c.ThinnestStrokePart is not null)
                .Select(c => c.Name).Where(n => LeastHeightMm(n) <= LeastFaceFit * own).Order(StringComparer.Ordinal);
            return IsLarge ? [] : [.. others];
        }
    }

    private double LeastHeightMm(string face) => _shelf.Cards.FirstOrDefault(c => c.Name == face) is { ThinnestStrokePart: { } stroke } card
        ? new SmallnessRule(AsSet.Laid.Fabric).LeastHeightMm(new LetterFigures(stroke, card.SmallestCounterPart)) : double.PositiveInfinity;

    /// <summary>Step by step to what is better, the best last found first.</summary>
    /// <param name="from">Null: any sound one of the first is taken.</param>
    private ImmutableArray<PlanTrial> Climb(PlanWish wish, PlanTrial? from, IEnumerable<VisibleChoice> first)
    {
        var path = new Stack<PlanTrial>(from is null ? [] : [from]);
        var choices = from is null ? first : first.Concat(Around(from));
        for (int step = 0; step < MostSteps && Best(wish, choices, from) is { } best; step++)
        {
            path.Push(best);
            from = best;
            choices = Around(best);
        }

        if (from is not null && Pruned(wish, from) is var pruned && pruned != from)
        {
            path.Push(pruned);
        }

        return [.. path];
    }

    /// <summary>Without the keys that a later step has made worth nothing.</summary>
    private PlanTrial Pruned(PlanWish wish, PlanTrial trial)
    {
        foreach (var edit in trial.Choice.Edits)
        {
            var without = _trials.Of(new VisibleChoice(trial.Choice.Edits.Remove(edit)));
            if (IsSound(without) && IsAble(wish, without) && !Guess(trial).IsWorth(wish, Guess(without)))
            {
                return Pruned(wish, without);
            }
        }

        return trial;
    }

    private static bool IsAble(PlanWish wish, PlanTrial trial) =>
        wish != PlanWish.TypedLetters || trial.Laid!.Job.Traits.HasLettersOfItsOwn;

    /// <summary>A wider strip gives room for larger letters, of narrower ones more lie side by side in one field.</summary>
    private IEnumerable<VisibleChoice> Around(PlanTrial trial) =>
        [.. _steps.Around(trial.Choice, trial.Laid!.Job, trial.Laid.Plan), .. _steps.NextWidths(trial.Choice, trial.Laid.Job)];

    private PlanTrial? Best(PlanWish wish, IEnumerable<VisibleChoice> choices, PlanTrial? from)
    {
        var sound = Tried(choices).FindAll(IsSound);
        Cores.ForEach(sound.Count, default, i => Guess(sound[i]));
        return sound.Where(t => Guess(t).IsWithin(wish, _figures) && (from is null || Guess(t).IsWorth(wish, Guess(from))))
            .OrderBy(t => Guess(t).Rank(wish)).ThenBy(t => t.Choice.Key, StringComparer.Ordinal).FirstOrDefault();
    }

    /// <summary>Where only its upper edge keeps a strip from being attached, tucks are tried too.</summary>
    private List<PlanTrial> Tried(IEnumerable<VisibleChoice> choices)
    {
        var plain = _trials.Of(choices);
        var tucked = _trials.Of(plain.Where(t => t.WantsShaping && !t.Laid!.Job.Layout.HasTucks).Select(t => _steps.WithTucks(t.Choice)));
        var all = plain.Concat(tucked).Where(t => t.Laid is not null).ToList();
        all.ForEach(t => _seen.TryAdd(t.Choice.Key, t));
        return all;
    }

    /// <summary>As far as it can be told before it is stitched.</summary>
    private bool IsSound(PlanTrial trial) => trial.Laid is { } laid && trial.Obstacle is null
        && laid.Plan.NameCount >= _leastNames
        && (trial.Choice.IsAsSet || (!trial.HasIdleRound && CanBeRead(laid) && HasMachineFor(laid.Job)));

    /// <summary>Where nothing is known of machines, one is assumed that can.</summary>
    private static bool HasMachineFor(BandJob job) =>
        job.Workshop.Machines.IsEmpty || job.Ways.All(w => job.Workshop.MachineFor(w) is not null);

    /// <summary>Where people will read the names, no plan has smaller letters than hers.</summary>
    private bool CanBeRead(LaidOut laid) =>
        Job.ReadWhileWorn != true || laid.Plan.LetterHeightMm >= AsSet.Laid.Plan.LetterHeightMm - Tolerance.HeightMm;

    private PlanFigures Guess(PlanTrial trial) =>
        _guesses.GetOrAdd(trial.Choice.Key, _ => trial.Choice.IsAsSet ? AsSet.Figures : trial.Guess(_rate));

    /// <summary>The first that is sound once it is stitched; at last where it began.</summary>
    private StitchedPlan? Soundest(ImmutableArray<PlanTrial> path, StitchedPlan? start) =>
        path.Take(MostStitched).Select(_stitching.Of).FirstOrDefault(p => p.IsSound) ?? (path.Contains(start?.Trial!) ? start : null);

    /// <summary>
    /// The sound plan that has a place for most names and leaves most of what she wrote as it is: of those that write the same
    /// keys the one whose letters are most nearly as high as hers. As it is set where that can be sewn and no other has more names.
    /// </summary>
    private StitchedPlan? Mended(IEnumerable<VisibleChoice> others)
    {
        Tried(others);
        var mends = AsSet.Laid.EaseMends.Select(m => _steps.With([.. m.Edits]));
        var wider = AsSet.TooLarge > 0 ? _steps.OnWiderStrips(VisibleChoice.AsSet) : [];
        var around = _steps.Around(VisibleChoice.AsSet, Job, AsSet.Laid.Plan).Concat(wider);
        Tried([.. mends, .. around, .. _steps.WithoutEachWish.Select(w => w.Without)]);
        bool isWorthSewing = AsSet.IsSound && _leastNames > 0; // Then only a place for more names is worth changing what she wrote.
        int least = isWorthSewing ? _leastNames + 1 : Math.Max(1, _leastNames);
        var mended = _seen.Values.Where(t => !t.Choice.IsAsSet && IsSound(t) && t.Laid!.Job.Ways.SequenceEqual(Job.Ways))
            .Where(t => t.Laid!.Plan.NameCount >= least)
            .GroupBy(t => (t.Laid!.Plan.NameCount, string.Join(' ', t.Choice.Edits.Select(e => e.Path))))
            .Select(Nearest)
            .OrderByDescending(g => g[0].Laid!.Plan.NameCount)
            .ThenBy(g => Guess(g[0]).Rank(PlanWish.AsSet)).ThenBy(g => g[0].Choice.Key, StringComparer.Ordinal)
            .SelectMany(g => g).Take(2 * MostStitched).Select(_stitching.Of).FirstOrDefault(p => p.IsSound);
        return mended ?? (isWorthSewing ? AsSet : null);
    }

    private List<PlanTrial> Nearest(IEnumerable<PlanTrial> trials) =>
        [.. trials.OrderBy(FromHersMm).ThenBy(t => Guess(t).HersMinutes).ThenBy(t => t.Choice.Key, StringComparer.Ordinal)];

    private double FromHersMm(PlanTrial trial) => Math.Abs(trial.Laid!.Plan.LetterHeightMm - AsSet.Laid.Plan.LetterHeightMm);

    /// <summary>A round of hers that holds few names is told, with the letters that do without it.</summary>
    private IEnumerable<Problem> IdleRound()
    {
        var plan = AsSet.Laid.Plan;
        if (AsSet.Trial is { HasIdleRound: true }
            && Tried(_steps.OnRounds(_steps.LargestLetters, plan.Rounds.Length - 1).TakeLast(1))
                .Find(t => IsSound(t)) is { Laid.Plan: var without })
        {
            var idle = plan.Rounds.MinBy(r => r.Names.Count(n => n.IsOfList))!;
            int few = idle.Names.Count(n => n.IsOfList);
            yield return Problem.Note(
                new Where(JobReader.FileName, Key: JobKeys.Rounds.Path),
                $"Round {idle.Number} has {few} {(few == 1 ? (Said)"name" : "names")}, under a third of its share of {plan.NameCount}. On {without.Rounds.Length} {(without.Rounds.Length == 1 ? (Said)"round" : "rounds")} the letters would be {without.LetterHeightMm:0.0} mm high in place of {plan.LetterHeightMm:0.0} mm.",
                $"Try it: \"strip\": {{ \"rounds\": {without.Rounds.Length} }}");
        }
    }

    /// <summary>Where nothing was found: which of her wishes were tried to be left out.</summary>
    private IEnumerable<Problem> InTheWay()
    {
        string[] tried = [.. _steps.WithoutEachWish.Select(w => w.Path)];
        yield return Problem.Note(
            new Where(JobReader.FileName),
            tried.Length == 0
                ? "Nothing that you wrote there stands in the way: the names, the hem and the field do not fit together."
                : (Said)$"No wish of yours stands in the way alone: leaving out {Wording.List(tried)}, one at a time, does not mend it.",
            "Change two of them, measure the hem once more, or put fewer names on it.");
    }

    private IEnumerable<Problem> Untyped(PlanTrial typed)
    {
        int all = AsSet.Laid.Plan.NameCount;
        int missing = all - typed.Laid?.Plan.NameCount ?? 0;
        if (missing > 0)
        {
            yield return Problem.Note(
                Where.Of(null, "Typed letters"),
                $"That is not a plan of its own: {missing} of {all} names have letters that no machine is known to have.",
                "Measure your machine's letters (the command measure); then what it lacks can be sewn another way beside the typed names: "
                + "\"ways\": [\"machineLetters\", \"needlePath\"].");
        }
    }
}

using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>
/// Lists every act of a job in the order it is done. A rest allowance is in each act of hands, because a person tires; none
/// is in the machine's own time. What takes no time, or is not done at all, has no row.
/// </summary>
internal sealed class WorkList
{
    public static readonly Said CuttingApart = "cutting strips apart";
    public static readonly Said SewingOnceMore = "sewing them once more";
    public static readonly Said HoopingOnceMore = "hooping for them once more";
    public static readonly Said ChangingThread = "changing to another thread";

    private readonly WorkMatter _matter;
    private readonly HoopHands _hoop;
    private readonly WorkToDo _toDo;
    private readonly bool _isLeft;
    private readonly List<WorkRow> _rows = [];

    private WorkList(WorkMatter matter, HoopHands hoop, WorkToDo toDo, bool isLeft) =>
        (_matter, _hoop, _toDo, _isLeft) = (matter, hoop, toDo, isLeft && matter.IsBegun);

    private ImmutableArray<Hooping> Hoopings => _toDo.Hoopings;

    private HandSettings Hands => _matter.Job.Hands;

    private StripPlan Plan => _matter.Plan;

    /// <summary>The whole job, what is sewn included.</summary>
    public static Work Whole(WorkMatter matter, HoopHands hoop, ImmutableArray<NameShare> names) =>
        new WorkList(matter, hoop, new WorkToDo(matter, names, isLeft: false), isLeft: false).List();

    /// <summary>What is still to do: what the log does not call sewn, and of what comes after the last name all that it does not
    /// call done.</summary>
    public static Work Left(WorkMatter matter, HoopHands hoop, ImmutableArray<NameShare> names) =>
        new WorkList(matter, hoop, new WorkToDo(matter, names, isLeft: true), isLeft: true).List();

    private Work List()
    {
        if (Plan.Hoopings.IsEmpty)
        {
            return new Work([]);
        }

        Before();
        AtTheHoop();
        _rows.AddRange(MachineRows.Of(_matter, _toDo));
        OnEachName();
        Spoiled();
        Finishing();
        return new Work([.. _rows]);
    }

    /// <summary>Until something is sewn; then what is cut for cloths on which nothing is sewn yet.</summary>
    private void Before()
    {
        double metres = Plan.TotalLengthMm / 1000 * PartToPrepare();
        if (!_isLeft)
        {
            ByHand("washing the cloth", WorkTime.Before, "cloth", 1, Hands.WashingMinutes);
        }

        ByHand("cutting the cloth", WorkTime.Before, "m", metres, Hands.CuttingMinutesPerMetre);
        ByHand("cutting the backing", WorkTime.Before, "pieces", Hoopings.Count(h => !_isLeft || !_matter.IsBegunIn(h)),
            Hands.BackingMinutesPerPiece);
        ByHand("stiffening the cloth", WorkTime.Before, "m", metres, _matter.Job.StiffeningMinutesPerMetre);
        ByHand("ruling the base line", WorkTime.Before, "m", metres, Hands.RulingMinutesPerMetre);
        if (_matter.Ways.Any(w => w.IsTraced))
        {
            ByHand(
                "printing and pinning the template", WorkTime.Before, "m", metres, StartingValues.TemplateMinutesPerMetre);
        }

        if (!_isLeft)
        {
            ByHand(
                "the spelling round: reading each name against the list", WorkTime.Before, "names", Plan.Hoopings.Sum(HoopHands.NamesIn),
                Hands.CheckingMinutesPerName);
        }

        if (!_isLeft && Plan.HasNeedlePaths)
        {
            ByHand("the swatch: hooping, pressing, measuring", WorkTime.Before, "swatch", 1, Hands.SwatchMinutes);
            Add(new WorkRow(
                "sewing the swatch", Doer.Machine, WorkTime.Before, "swatch", 1, Hands.SwatchMachineMinutes, WorkCause.MachinePace));
        }
    }

    private void AtTheHoop()
    {
        ByHand("changing to the thread of the marks", WorkTime.EachHooping, "hoopings", WithSewnMarks, _hoop.MarksThreadMinutes);
        ByHand(ChangingThread, WorkTime.EachHooping, "changes", Hoopings.Sum(h => _hoop.ThreadChanges(h.Number)), _hoop.MarksThreadMinutes);
        foreach (var inFrame in Hoopings.Where(h => _matter.IsHooped(h.Number)).GroupBy(h => h.Frame?.Name)
            .OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var (minutes, firstMinutes) = _hoop.MinutesIn(inFrame.First().Frame);
            int first = firstMinutes == minutes ? 0 : inFrame.Count(h => _hoop.IsFirst(h.Number));
            string? frame = inFrame.Key;
            ByHand(
                frame is null ? "hooping and setting straight, the first ones"
                    : (Said)$"hooping and setting straight in the frame “{frame}”, the first ones",
                WorkTime.EachHooping, "hoopings", first, firstMinutes, Timed);
            ByHand(
                frame is null ? "hooping and setting straight" : (Said)$"hooping and setting straight in the frame “{frame}”", WorkTime.EachHooping, "hoopings", inFrame.Count() - first, minutes, Timed);
        }

        MeetingMarks(MarkMethod.Drawn, "drawing two crosses, bringing them under the needle");
        MeetingMarks(MarkMethod.Paper, "laying the template, its crosses under the needle");

        static WorkRow Timed(WorkRow row) => row with { IsAtTheHoop = true };

        void MeetingMarks(MarkMethod marks, Said act) => ByHand(
            act, WorkTime.EachHooping, "hoopings", Hoopings.Count(h => _matter.WayOf(h.Number).Marks == marks),
            _hoop.MetMarksMinutes(marks), Timed);
    }

    private void OnEachName()
    {
        static WorkRow Meanwhile(WorkRow row) => row with { IsMeanwhile = true };
        static WorkRow Timed(WorkRow row) => row with { IsAtTheHoop = true, IsMeanwhile = true };
        static WorkRow TimedBefore(WorkRow row) => row with { IsAtTheHoop = true };
        int names = _toDo.NamesIn(Hoopings);
        ByHand(
            "keying in", WorkTime.EachName, "characters", _toDo.Names.Sum(n => n.Keyed.Keys), _matter.Job.Letters.SecondsPerKey / 60,
            TimedBefore);
        ByHand(
            "bringing the start mark under the needle", WorkTime.EachName, "marks", _toDo.Names.Sum(n => n.Keyed.Pieces),
            _matter.Job.Letters.PositioningMinutes, TimedBefore);
        ByHand(
            "going back to a run’s beginning for its lower line", WorkTime.EachPiece, "runs", Hoopings.Count(HasLowerLineToKey),
            StartingValues.LowerLineMinutes);
        ByHand(
            "adding marks to letters by hand", WorkTime.EachName, "letters", _toDo.Names.Sum(n => n.Keyed.HandMarks),
            StartingValues.HandMarkMinutes,
            Meanwhile);
        if (_matter.Job.Traced.ByHand)
        {
            ByHand(
                "sewing the lines by hand", WorkTime.EachName, "m of line", _matter.Ways.Sum(_toDo.TracedM),
                1000 / _matter.Job.Traced.PaceMmPerMinute,
                r => r with { Cause = WorkCause.Following, IsAtTheHoop = true });
        }

        ByHand("taking the marks out", WorkTime.EachHooping, "hoopings", WithSewnMarks, _hoop.MarksOutMinutes, Meanwhile);
        ByHand("clipping threads", WorkTime.EachName, "names", names, Hands.ClippingMinutesPerName, Timed);
        ByHand("snipping loose threads", WorkTime.EachName, "threads", _toDo.Figures.Sum(f => f.Snips), Hands.SecondsPerSnip / 60, Timed);
        var byTheMetre = Hoopings.Where(_hoop.TearsByTheMetre).ToList();
        ByHand("tearing the backing away", WorkTime.EachName, "names", names - _toDo.NamesIn(byTheMetre), _hoop.TearAwayMinutesPerName,
            Timed);
    }

    /// <summary>Each line of a run is keyed from end to end; of what is left, where the lower one is not begun.</summary>
    private bool HasLowerLineToKey(Hooping hooping)
    {
        var names = hooping.Segments.SelectMany(s => s.Segment.Names).ToList();
        return WayTraits.Of(hooping.Way).HasLettersOfItsOwn && !_matter.IsHooped(hooping.Number) && names.Exists(n => n.Line == 1)
            && names.Exists(n => n.Line == 2)
            && !(_isLeft && _matter.Log is { } log && names.Exists(n => n.Line == 2 && log.OfNames.IsSewn(n.Order)));
    }

    private int WithSewnMarks => Hoopings.Count(h => _matter.WayOf(h.Number).HasSewnMarks);

    /// <summary>Names that go wrong, at the rate that is set and that the log shows: picked out and sewn once more.</summary>
    private void Spoiled()
    {
        int names = _toDo.NamesIn(Hoopings);
        double spoiled = names * _matter.SpoiledPer100Names / 100;
        double sewing = _rows.Where(r => r.By == Doer.Machine && r.When != WorkTime.Before).Sum(r => r.Minutes.Likely);
        double machine = names > 0 ? sewing / names : 0;
        ByHand("unpicking spoiled names", WorkTime.EachName, "names", spoiled, Hands.UnpickingMinutesPerName, Rarely);
        double hooped = _toDo.NamesIn(Hoopings.Where(h => _matter.IsHooped(h.Number))) * _matter.SpoiledPer100Names / 100;
        ByHand(HoopingOnceMore, WorkTime.EachName, "names", hooped, Hands.HoopingMinutes, Rarely);
        Add(new WorkRow(SewingOnceMore, Doer.Machine, WorkTime.EachName, "names", spoiled, machine, WorkCause.Spoiling));

        static WorkRow Rarely(WorkRow row) => row with { Cause = WorkCause.Spoiling };
    }

    /// <summary>
    /// From tearing the long backings away to the last stitch at the hem: of what is left, all that the log does not call done.
    /// </summary>
    private void Finishing()
    {
        double metres = Plan.TotalLengthMm / 1000;
        int patches = PatchJoins();
        bool eases = !Plan.Hem.IsCurved && Plan.Hem.UpperEdgeShorterMm > 0.05;
        var byTheMetre = Plan.Hoopings.Where(_hoop.TearsByTheMetre).ToList();
        double torn = byTheMetre.Count == Plan.Hoopings.Length ? metres : byTheMetre.Sum(HoopHands.MetresIn);
        Finish(FinishingStep.Tear, "tearing the backing away", WorkTime.EachPiece, "m", byTheMetre.Count > 0 ? torn : 0,
            _hoop.TearAwayMinutesPerMetre);
        Finish(FinishingStep.Press, "pressing", WorkTime.After, "m", metres, Hands.PressingMinutesPerMetre);
        double betweenMm = Plan.Cloths.Sum(c => (c.Lanes - 1) * c.LengthMm);
        Finish(FinishingStep.Cut, CuttingApart, WorkTime.EachPiece, "m", betweenMm / 1000, Hands.CuttingApartMinutesPerMetre);
        if (_matter.Job.Strip.SewnBeforeCutting)
        {
            Finish(FinishingStep.Cut, "trimming to width", WorkTime.EachPiece, "m", metres, Hands.TrimmingMinutesPerMetre);
        }

        Finish(FinishingStep.Join, "letting patch pieces into the strip", WorkTime.EachPiece, "joins", patches, Hands.JoinMinutes);
        Finish(FinishingStep.Join, "joining pieces and closing the rounds", WorkTime.EachRound, "joins", Plan.Joins, Hands.JoinMinutes);
        Finish(FinishingStep.Turn, "turning both edges in", WorkTime.EachRound, "m", metres, 2 * Hands.TurningInMinutesPerMetre);
        Finish(
            FinishingStep.Tuck, "folding tapered tucks", WorkTime.EachRound, "tucks", Plan.Rounds.Sum(r => RoundTucks.Of(Plan, r).Length),
            Hands.TuckMinutes);
        Finish(FinishingStep.Pin, "pinning to the hem", WorkTime.EachRound, "m", metres, Hands.PinningMinutesPerMetre);
        Finish(FinishingStep.Lower, "sewing the lower edge down", WorkTime.EachRound, "m", metres, Hands.SewingLowerEdgeMinutesPerMetre);
        Finish(
            FinishingStep.Upper, eases ? "easing and sewing the upper edge down" : "sewing the upper edge down", WorkTime.EachRound, "m",
            metres,
            Hands.SewingUpperEdgeMinutesPerMetre);

        void Finish(FinishingStep step, Said act, WorkTime when, Said from, double count, double minutesEach)
        {
            double open = _isLeft && _matter.Log is { } log ? 1 - log.Finishing.DonePart(step, RoundLengths) : 1;
            ByHand(act, when, from, count * open, minutesEach, r => r with
            {
                Step = step,
                Cause = eases && step == FinishingStep.Upper ? WorkCause.Easing : r.Cause,
            });
        }
    }

    private (int Round, double LengthMm)[] RoundLengths => [.. Plan.Rounds.Select(r => (r.Number, r.LengthMm))];

    private void ByHand(Said act, WorkTime when, Said from, double count, double minutesEach, Func<WorkRow, WorkRow>? more = null)
    {
        var row = new WorkRow(act, Doer.Hands, when, from, count, minutesEach * (1 + Hands.RestAllowance), WorkCause.HerPace);
        Add(more is null ? row : more(row));
    }

    private void Add(WorkRow row)
    {
        if (row.Count > 0 && row.EachMinutes > 0)
        {
            _rows.Add(row);
        }
    }

    /// <summary>Part of the cloth that is not cut and ruled yet: cloths on which nothing is sewn.</summary>
    private double PartToPrepare()
    {
        double all = Plan.Cloths.Sum(c => c.LengthMm);
        var sewnOn = Plan.Hoopings.Where(_matter.IsBegunIn).Select(h => h.Number).ToHashSet();
        double begun = Plan.Cloths.Where(c => c.Hoopings.Any(sewnOn.Contains)).Sum(c => c.LengthMm);
        return !_isLeft ? 1 : all > 0 ? 1 - (begun / all) : 0;
    }

    /// <summary>A patch piece is let into its strip with a join at each end; one hooped over several strips, into each of them.</summary>
    private int PatchJoins()
    {
        var patched = _matter.Log?.Patched ?? [];
        return 2 * Plan.Hoopings.Where(h => patched.Contains(h.Number)).Sum(h => h.Segments.Length);
    }
}

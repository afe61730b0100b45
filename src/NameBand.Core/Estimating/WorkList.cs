using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>
/// Lists every act of a job in the order it is done. A rest allowance is in each act of hands, because a person tires; none
/// is in the machine's own time. What takes no time, or is not done at all, has no row.
/// </summary>
internal sealed class WorkList
{
    public const string CuttingApart = "cutting strips apart";

    private readonly WorkMatter _matter;
    private readonly HoopHands _hoop;
    private readonly ImmutableArray<Hooping> _hoopings;
    private readonly bool _isLeft;
    private readonly List<WorkRow> _rows = [];

    private WorkList(WorkMatter matter, bool isLeft)
    {
        _matter = matter;
        _hoop = new HoopHands(matter);
        _isLeft = isLeft && matter.IsBegun;
        _hoopings = [.. matter.Plan.Hoopings.Where(h => !isLeft || !matter.IsSewn(h.Number))];
    }

    private HandSettings Hands => _matter.Job.Hands;

    private StripPlan Plan => _matter.Plan;

    /// <summary>The whole job, what is sewn included.</summary>
    public static Work Whole(WorkMatter matter) => new WorkList(matter, isLeft: false).List();

    /// <summary>What is still to do: hoopings that the log does not call sewn, and all that comes after the last of them.</summary>
    public static Work Left(WorkMatter matter) => new WorkList(matter, isLeft: true).List();

    private Work List()
    {
        if (Plan.Hoopings.IsEmpty)
        {
            return new Work([]);
        }

        Before();
        AtTheHoop();
        _rows.AddRange(MachineRows.Of(_matter, [.. _matter.Hoopings.Where(h => !_isLeft || !_matter.IsSewn(h.Number))]));
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
        ByHand("cutting the backing", WorkTime.Before, "pieces", _hoopings.Length, Hands.BackingMinutesPerPiece);
        ByHand("stiffening the cloth", WorkTime.Before, "m", metres, Hands.StiffeningMinutesPerMetre);
        ByHand("ruling the base line", WorkTime.Before, "m", metres, Hands.RulingMinutesPerMetre);
        if (_matter.Ways.Any(w => w.IsTraced))
        {
            ByHand(
                "printing and pinning the template", WorkTime.Before, "m", Plan.TotalLengthMm / 1000, StartingValues.TemplateMinutesPerMetre);
        }

        if (!_isLeft)
        {
            ByHand(
                "the spelling round: reading each name against the list", WorkTime.Before, "names", NamesIn(Plan.Hoopings),
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
        int first = _hoopings.Count(h => _matter.IsHooped(h.Number) && _hoop.IsFirst(h.Number));
        int others = _hoopings.Count(h => _matter.IsHooped(h.Number)) - first;
        ByHand("changing to the thread of the marks", WorkTime.EachHooping, "hoopings", WithSewnMarks, _hoop.MarksThreadMinutes);
        bool allAlike = Hands.FirstHoopingsMinutes == Hands.HoopingMinutes;
        (first, others) = allAlike ? (0, first + others) : (first, others);
        ByHand("hooping and setting straight, the first ones", WorkTime.EachHooping, "hoopings", first, Hands.FirstHoopingsMinutes, Timed);
        ByHand("hooping and setting straight", WorkTime.EachHooping, "hoopings", others, Hands.HoopingMinutes, Timed);
        MeetingMarks(MarkMethod.Drawn, "drawing two crosses, bringing them under the needle");
        MeetingMarks(MarkMethod.Paper, "laying the template, its crosses under the needle");

        static WorkRow Timed(WorkRow row) => row with { IsAtTheHoop = true };

        void MeetingMarks(MarkMethod marks, string act) => ByHand(
            act, WorkTime.EachHooping, "hoopings", _hoopings.Count(h => _matter.WayOf(h.Number).Marks == marks), _hoop.MetMarksMinutes(marks), Timed);
    }

    private void OnEachName()
    {
        static WorkRow Meanwhile(WorkRow row) => row with { IsMeanwhile = true };
        static WorkRow Timed(WorkRow row) => row with { IsAtTheHoop = true, IsMeanwhile = true };
        int names = NamesIn(_hoopings);
        ByHand("keying in", WorkTime.EachName, "characters", _matter.Ways.Sum(w => w.Keys), _matter.Job.Letters.SecondsPerKey / 60);
        ByHand(
            "bringing the start mark under the needle", WorkTime.EachName, "marks", _matter.Ways.Sum(w => w.KeyedPieces),
            _matter.Job.Letters.PositioningMinutes);
        if (_matter.Job.Traced.ByHand)
        {
            ByHand(
                "sewing the lines by hand", WorkTime.EachName, "m of line", _matter.Ways.Sum(w => w.TracedMm) / 1000, 1000 / _matter.Job.Traced.PaceMmPerMinute,
                r => r with { Cause = WorkCause.Following });
        }

        ByHand("taking the marks out", WorkTime.EachHooping, "hoopings", WithSewnMarks, _hoop.MarksOutMinutes, Meanwhile);
        ByHand("clipping threads", WorkTime.EachName, "names", names, Hands.ClippingMinutesPerName, Timed);
        ByHand("snipping loose threads", WorkTime.EachName, "threads", _hoopings.Sum(_hoop.SnipsIn), Hands.SecondsPerSnip / 60, Timed);
        var byTheMetre = _hoopings.Where(_hoop.TearsByTheMetre).ToList();
        double torn = byTheMetre.Count == _hoopings.Length ? Plan.TotalLengthMm / 1000 : byTheMetre.Sum(HoopHands.MetresIn);
        ByHand("tearing the backing away", WorkTime.EachName, "names", names - NamesIn(byTheMetre), _hoop.TearAwayMinutesPerName, Timed);
        ByHand("tearing the backing away", WorkTime.EachName, "m", byTheMetre.Count > 0 ? torn : 0, _hoop.TearAwayMinutesPerMetre);
    }

    private int WithSewnMarks => _hoopings.Count(h => _matter.WayOf(h.Number).HasSewnMarks);

    /// <summary>Names that go wrong, at the rate that is set: picked out and sewn once more.</summary>
    private void Spoiled()
    {
        int names = NamesIn(_hoopings);
        double spoiled = names * Hands.SpoiledPer100Names / 100;
        double sewing = _rows.Where(r => r.By == Doer.Machine && r.When != WorkTime.Before).Sum(r => r.Minutes.Likely);
        double machine = names > 0 ? sewing / names : 0;
        ByHand("unpicking spoiled names", WorkTime.EachName, "names", spoiled, Hands.UnpickingMinutesPerName, Rarely);
        double hooped = NamesIn(_hoopings.Where(h => _matter.IsHooped(h.Number))) * Hands.SpoiledPer100Names / 100;
        ByHand("hooping for them once more", WorkTime.EachName, "names", hooped, Hands.HoopingMinutes, Rarely);
        Add(new WorkRow("sewing them once more", Doer.Machine, WorkTime.EachName, "names", spoiled, machine, WorkCause.Spoiling));

        static WorkRow Rarely(WorkRow row) => row with { Cause = WorkCause.Spoiling };
    }

    /// <summary>
    /// From the first stroke of the iron to the last stitch at the hem; the log does not follow it, so all of it is ahead.
    /// </summary>
    private void Finishing()
    {
        double metres = Plan.TotalLengthMm / 1000;
        int patches = PatchJoins();
        ByHand("pressing", WorkTime.After, "m", metres, Hands.PressingMinutesPerMetre);
        double betweenMm = Plan.Cloths.Sum(c => (c.Lanes - 1) * c.LengthMm);
        ByHand(CuttingApart, WorkTime.EachPiece, "m", betweenMm / 1000, Hands.CuttingApartMinutesPerMetre);
        if (_matter.Job.Strip.SewnBeforeCutting)
        {
            ByHand("trimming to width", WorkTime.EachPiece, "m", metres, Hands.TrimmingMinutesPerMetre);
        }

        ByHand("letting patch pieces into the strip", WorkTime.EachPiece, "joins", patches, Hands.JoinMinutes);
        ByHand("joining pieces and closing the rounds", WorkTime.EachRound, "joins", Plan.Joins, Hands.JoinMinutes);
        ByHand("turning both edges in", WorkTime.EachRound, "m", metres, 2 * Hands.TurningInMinutesPerMetre);
        ByHand("folding tapered tucks", WorkTime.EachRound, "tucks", Plan.Rounds.Sum(r => RoundTucks.Of(Plan, r).Length), Hands.TuckMinutes);
        ByHand("pinning to the hem", WorkTime.EachRound, "m", metres, Hands.PinningMinutesPerMetre);
        ByHand("sewing the lower edge down", WorkTime.EachRound, "m", metres, Hands.SewingLowerEdgeMinutesPerMetre);
        bool eases = !Plan.Hem.IsCurved && Plan.Hem.UpperEdgeShorterMm > 0.05;
        ByHand(
            eases ? "easing and sewing the upper edge down" : "sewing the upper edge down", WorkTime.EachRound, "m", metres,
            Hands.SewingUpperEdgeMinutesPerMetre, r => eases ? r with { Cause = WorkCause.Easing } : r);
    }

    private void ByHand(string act, WorkTime when, string from, double count, double minutesEach, Func<WorkRow, WorkRow>? more = null)
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

    private static int NamesIn(IEnumerable<Hooping> hoopings) => hoopings.Sum(HoopHands.NamesIn);

    /// <summary>Part of the cloth that is not cut and ruled yet: cloths on which nothing is sewn.</summary>
    private double PartToPrepare()
    {
        double all = Plan.Cloths.Sum(c => c.LengthMm);
        double begun = Plan.Cloths.Where(c => c.Hoopings.Any(_matter.IsSewn)).Sum(c => c.LengthMm);
        return !_isLeft ? 1 : all > 0 ? 1 - (begun / all) : 0;
    }

    /// <summary>A patch piece is let into its strip with a join at each end; one hooped over several strips, into each of them.</summary>
    private int PatchJoins()
    {
        var patched = _matter.Log?.Patched ?? [];
        return 2 * Plan.Hoopings.Where(h => patched.Contains(h.Number)).Sum(h => h.Segments.Length);
    }
}

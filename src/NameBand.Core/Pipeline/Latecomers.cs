using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Pipeline.Stages;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>
/// Names that came when every round was sewn to the garment. Nothing that is sewn is planned again for them: they are offered
/// room that was kept,
/// a short strip of their own above the others, or a label inside, each with its work and with how it looks.
/// </summary>
internal sealed class Latecomers
{
    /// <summary>Minutes for a label with one name and with four, from cutting it to sewing it in: common practice, no source.</summary>
    private const double OneOnLabel = 25, FourOnLabel = 45;

    public const int MostOnLabel = 4; // Four names of two or three lines each fill a label a hand wide: our assumption.

    /// <summary>Unpicking one edge and pressing it open: our assumption.</summary>
    private const double OpeningMinutesPerMetre = 12;

    /// <summary>To either side of a name a strip is opened so far that it lies flat in the hoop: our assumption.</summary>
    private const double OpenedBesideMm = 60;

    private readonly StripPlan _plan;
    private readonly HandSettings _hands;
    private readonly ImmutableArray<PlacedName> _late;
    private readonly ImmutableHashSet<int> _lateHoopings;
    private readonly double _machineMinutes;
    private readonly bool _isHooped;

    private Latecomers(LaidOut made, Estimate estimate)
    {
        _plan = made.Plan;
        _hands = made.Job.Hands;
        _late = Of(made.Plan, made.Begun?.Log);
        _lateHoopings = [.. made.Plan.Hoopings.Where(h => h.Segments.Any(s => s.Segment.Names.Any(_late.Contains))).Select(h => h.Number)];
        _isHooped = made.Job.IsHooped;
        double all = estimate.Hoopings.Where(h => _lateHoopings.Contains(h.Number)).Sum(h => h.MachineMinutes);
        int names = made.Plan.Hoopings.Where(h => _lateHoopings.Contains(h.Number)).Sum(HoopHands.NamesIn);
        _machineMinutes = names > 0 ? all / names : 0;
    }

    /// <summary>Names to be sewn although all rounds that were planned when something was sewn are sewn down; none where they are
    /// not.</summary>
    /// <param name="log">Null: nothing is sewn.</param>
    public static ImmutableArray<PlacedName> Of(StripPlan plan, SewingLog? log)
    {
        if (log is null || !log.Finishing.IsAny)
        {
            return [];
        }

        var sewn = plan.Hoopings.ToDictionary(h => h.Number, h => log.IsSewn(h.Number));
        bool IsSewn(Hooping h, PlacedName n) => sewn[h.Number] || log.OfNames.IsSewn(n.Order);
        var rounds = plan.Hoopings.SelectMany(h => h.Segments.Where(s => s.Segment.Names.Any(n => IsSewn(h, n))))
            .Select(s => s.Round.Number).ToHashSet();

        // A name that is to be sewn again was there in time.
        return rounds.Count == 0 || !rounds.All(r => log.Finishing.IsDone(FinishingStep.Lower, r))
            ? []
            : [.. plan.Hoopings.Where(h => !log.Spoiled.Contains(h.Number)).SelectMany(h => h.Segments.SelectMany(s => s.Segment.Names)
                .Where(n => n.IsOfList && !n.IsGone && !IsSewn(h, n) && !log.OfNames.Spoiled.Contains(n.Order)))];
    }

    public static IEnumerable<Problem> Check(StripPlan plan, SewingLog? log)
    {
        var late = Of(plan, log);
        if (!late.IsEmpty)
        {
            Said more = late.Length > 6 ? (Said)$" and {late.Length - 6} more" : "";
            yield return Problem.NeedsPerson(
                new Where(), $"The garment is finished, and these came later: {string.Join("; ", late.Take(6).Select(n => PlainText.Short(n.Lettered.Name.Text, 80)))}{more}.",
                "The command plans says what can be done for them, with the work of each. Leave them out in corrections.csv if nothing is to be done.");
        }
    }

    /// <summary>Null where nobody came late.</summary>
    public static LateNames? For(LaidOut made, Estimate estimate)
    {
        var late = new Latecomers(made, estimate);
        return late._late.IsEmpty
            ? null
            : new LateNames(
                [.. late._late.Select(n => n.Lettered.Name.Text)],
                [.. new[] { late.KeptRoom(), late.PartRound(), late.Labels() }.OfType<LateOffer>()
                    .OrderByDescending(o => o.Fits == late._late.Length).ThenBy(o => o.Minutes)]);
    }

    /// <summary>The widest names first, each where it leaves the least: what lies blank on the rounds that are sewn down.</summary>
    private LateOffer? KeptRoom()
    {
        double gap = _plan.Rounds.Select(r => r.GapMm).DefaultIfEmpty(0).Min();
        var rooms = _plan.Rounds.SelectMany(r => Blanks(r)).Select(r => r - gap).ToList();
        var taken = new List<PlacedName>();
        foreach (var name in _late.OrderByDescending(n => n.WidthMm))
        {
            int best = Enumerable.Range(0, rooms.Count).Where(i => rooms[i] >= name.WidthMm + gap).OrderBy(i => rooms[i])
                .FirstOrDefault(-1);
            if (best >= 0)
            {
                rooms[best] -= name.WidthMm + gap;
                taken.Add(name);
            }
        }

        if (taken.Count == 0)
        {
            return null;
        }

        double openedM = taken.Sum(n => n.WidthMm + (2 * OpenedBesideMm)) / 1000;
        double minutes = Sewn(taken.Count, taken.Count) + Rested(
            (openedM * 2 * OpeningMinutesPerMetre)
            + (openedM * (_hands.PinningMinutesPerMetre + _hands.SewingLowerEdgeMinutesPerMetre + _hands.SewingUpperEdgeMinutesPerMetre)));
        return new LateOffer(
            "the room that is blank", taken.Count, 0, minutes, "It looks as if they had always been there; they stand out of their order.",
            "Unpick both edges along the blank piece, sew the names as make plans them, press, and sew the edges down again.")
        {
            Kind = LateKind.Room,
        };
    }

    /// <summary>Stretches of a round without a sewn name; what stands there now are only the late ones.</summary>
    private IEnumerable<double> Blanks(Round round)
    {
        double at = 0;
        foreach (var name in round.Names.Where(n => !_late.Contains(n)).OrderBy(n => n.StartMm))
        {
            yield return name.StartMm - at;
            at = name.EndMm;
        }

        yield return round.HemMm - at;
    }

    /// <summary>A strip that begins at centre back above the uppermost round and is as long as its names ask for.</summary>
    private LateOffer PartRound()
    {
        double gap = _plan.Rounds.Select(r => r.GapMm).DefaultIfEmpty(_plan.LetterHeightMm).Min();
        double fieldMm = Math.Max(_plan.FieldAlongMm - (2 * _plan.SpareMm), _late.Max(n => n.WidthMm));
        var (hoopings, filledMm) = (1, 0.0);
        foreach (var name in _late)
        {
            if (filledMm > 0 && filledMm + gap + name.WidthMm > fieldMm)
            {
                (hoopings, filledMm) = (hoopings + 1, 0);
            }

            filledMm += (filledMm > 0 ? gap : 0) + name.WidthMm;
        }

        double meanMm = _late.Average(n => n.WidthMm);
        double metres = (_late.Sum(n => n.WidthMm + gap) + (2 * _plan.Hem.Strip.TurnInMm)) / 1000;
        double minutes = Sewn(_late.Length, hoopings) + Rested(
            (metres * (_hands.CuttingMinutesPerMetre + _hands.RulingMinutesPerMetre + _hands.PressingMinutesPerMetre
            + _hands.TrimmingMinutesPerMetre
                + (2 * _hands.TurningInMinutesPerMetre) + _hands.PinningMinutesPerMetre + _hands.SewingLowerEdgeMinutesPerMetre
                    + _hands.SewingUpperEdgeMinutesPerMetre))
            + (2 * _hands.JoinMinutes));
        return new LateOffer(
            "a part of a round, from centre back", _late.Length, (int)Math.Floor((fieldMm - filledMm) / (meanMm + gap)), minutes,
            $"A strip {metres:0.00} m long above the uppermost round that ends where its names do: everybody sees that it came later.",
            "Sew it like a round, turn all four edges in, and sew it on from centre back, or where the uppermost round begins.")
        {
            Kind = LateKind.PartRound,
        };
    }

    /// <summary>As few labels as hold them, four on each but the last.</summary>
    private LateOffer Labels()
    {
        int labels = (_late.Length + MostOnLabel - 1) / MostOnLabel;
        int last = _late.Length - ((labels - 1) * MostOnLabel);
        double minutes = ((labels - 1) * FourOnLabel) + OneOnLabel + ((FourOnLabel - OneOnLabel) * (last - 1) / (MostOnLabel - 1));
        return new LateOffer(
            labels == 1 ? "a label sewn inside" : (Said)$"{labels} labels sewn inside", _late.Length,
            MostOnLabel - last, minutes,
            "On the wrong side: only whoever turns the hem sees it. Ask them whether that is right for them.",
            "Sew the names on a piece of the same cloth, turn its edges in, and sew it to the inside of the hem at centre back.")
        {
            Kind = LateKind.Label,
        };
    }

    /// <summary>Hooping, sewing, clipping and tearing away.</summary>
    private double Sewn(int names, int hoopings) => (names * _machineMinutes) + Rested(
        (_isHooped ? hoopings * _hands.HoopingMinutes : 0) + (names * (_hands.ClippingMinutesPerName + _hands.TearAwayMinutesPerName)));

    private double Rested(double minutes) => minutes * (1 + _hands.RestAllowance);
}

using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Pieces;

namespace NameBand.Choosing;

/// <summary>
/// A cost that no choice of what is free goes under: strips side by side, how they are shifted and cut into hoopings, the
/// frames and the marks, for a plan whose names lie as they do.
/// </summary>
/// <remarks>
/// A hooping lies on one cloth and holds at most one segment of each strip on it, so that a cloth takes no less than each of its
/// strips alone, in the best of the frames. Strips are whole, and so many lie on a cloth as the widest field holds: shared out
/// longest first, the longest of each cloth add up to the least. Nor does a segment take less than its even share of a frame that
/// is full. What a plan takes more than the greater of the two is taken off; so are cutting strips apart, segments that strips
/// alone would not have, and bobbins that are not emptied.
/// </remarks>
internal sealed class FreeBound
{
    // Stitches, jumps and cuts of the two crosses that a segment is set by.
    private const int MarkStitches = 10;
    private const int MarkJumps = 2;
    private const int MarkCuts = 2;

    /// <summary>The long stitches of a cross take less than so many times a usual one.</summary>
    private const double MarkPace = 4;

    private readonly BandJob _job;
    private readonly StripPlan _plan;
    private readonly ImmutableArray<Field> _fields;

    /// <summary>A frame, or the field that the job gives.</summary>
    /// <param name="Minutes">Of a hooping in it, all but the marks.</param>
    /// <param name="FirstMinutes">What each of the first hoopings takes more.</param>
    private sealed record Field(double LengthMm, double AcrossMm, int Lanes, double MountMinutes, double Minutes, double FirstMinutes);

    private FreeBound(BandJob job, StripPlan plan)
    {
        (_job, _plan) = (job, plan);
        var own = new Frame(job.Frame?.Name ?? "", job.Hoop.Along, job.Hoop.Across, null, job.Hands.HoopingMinutes)
        {
            FirstMountMinutes = job.Hands.FirstHoopingsMinutes,
        };
        _fields = [.. job.Frames.Where(f => f.Name != own.Name).Prepend(own).Select(FieldOf)];
    }

    /// <param name="estimate">Of the plan as it is sewn.</param>
    public static double CostMinutes(BandJob job, StripPlan plan, Estimate estimate)
    {
        double cost = estimate.Work.CostMinutes;
        return !job.IsHooped || plan.Hoopings.All(h => h.IsRun) ? cost : new FreeBound(job, plan).Under(cost, estimate);
    }

    private double Under(double cost, Estimate estimate)
    {
        ImmutableArray<Hooping> hooped = [.. _plan.Hoopings.Where(h => !h.IsRun)];
        PlacedName[][] strips = [.. _plan.Cloths.SelectMany(c => c.Pieces).Select(NamesOn).Where(n => n.Length > 0)];
        double[] segments = [.. strips.Select(s => Alone(s, _ => 1))];
        double marks = MarkChoice.HoopingMinutes(_job, _plan.Marks);
        double leastMarks = MarkChoice.IsFree(_job) ? MarkChoice.LeastHoopingMinutes(_job) : marks;
        double taken = hooped.Sum(h => FieldOf(h).Minutes + marks)
            + hooped.Take(StartingValues.FirstHoopings).Sum(h => FieldOf(h).FirstMinutes);
        double needed = Nested(f => f.Minutes + leastMarks) ?? Math.Max(
            OnCloths(strips.Select(s => Alone(s, f => f.Minutes + leastMarks))),
            strips.Sum(s => Alone(s, f => (f.Minutes + leastMarks) / f.Lanes)));
        double first = Math.Min(StartingValues.FirstHoopings, OnCloths(segments)) * _fields.Min(f => f.FirstMinutes);
        double saved = Math.Max(0, taken - needed - first) + QuickerAgain(estimate) + Colours(estimate) + Apart(estimate)
            + Bobbins(estimate)
            + Crosses(hooped.Sum(h => h.Segments.Length), segments.Sum());

        // A spoiled name is sewn once more at the mean of all: what machine time is saved is saved there too.
        int names = _plan.Hoopings.Sum(HoopHands.NamesIn);
        double again = estimate.Work.Rows.Where(r => r.Act == WorkList.SewingOnceMore).Sum(r => r.Count);
        return Math.Max(0, cost - (saved * (1 + (names > 0 ? again / names : 0))));
    }

    private double Rest => 1 + _job.Hands.RestAllowance;

    private Field FieldOf(Frame frame)
    {
        double mount = frame.MountMinutes ?? _job.Hands.HoopingMinutes;
        double first = frame.FirstMountMinutes ?? (mount + _job.Hands.FirstHoopingsMinutes - _job.Hands.HoopingMinutes);
        return new Field(
            FlatCloth.FieldMm(frame.Along.Mm, _plan.SpareMm), frame.Across.Mm, LanesIn(frame.Across.Mm), mount,
            ((mount + _job.Hands.BackingMinutesPerPiece) * Rest) + (_job.Machine.SecondsToStart / 60), Math.Max(0, first - mount) * Rest);
    }

    private Field FieldOf(Hooping hooping) => hooping.Frame is { } frame ? FieldOf(frame) : _fields[0];

    private int LanesIn(double acrossMm)
    {
        if (!_job.Strip.SewnBeforeCutting)
        {
            return 1;
        }

        if (_plan.Hem.IsCurved)
        {
            return Most(Lanes.MostNested(_plan.Hem, acrossMm, -_plan.MarkYMm + SegmentCutter.MarkArmMm));
        }

        double outside = Math.Max(_plan.Hem.Strip.SewingZoneMm / 2, -_plan.MarkYMm + SegmentCutter.MarkArmMm);
        double between = acrossMm - (2 * outside);
        int most = between < 0 ? 1 : 1 + (int)Math.Floor((between / _job.Strip.CutWidth.Mm) + Tolerance.RoundingMm);
        return Most(most);

        int Most(int most) => _job.Layout.AreLanesFree || _job.Layout.Lanes is null ? most : Math.Min(most, _job.Layout.Lanes.Value);
    }

    /// <summary>
    /// Least sum for curved strips, however they are shared out to cloths on which they nest; null for straight ones, and for more strips
    /// than can all be looked at.
    /// </summary>
    private double? Nested(Func<Field, double> price)
    {
        ImmutableArray<StripPiece> pieces = [.. _plan.Cloths.SelectMany(c => c.Pieces).Where(p => NamesOn(p).Length > 0)];
        if (!_plan.Hem.IsCurved || pieces.Length > NestedSharing.MostPieces
            || BentCover.Places(pieces.Select(p => NamesOn(p).Length).OrderDescending().Take(2)) > BentCover.MostPlaces)
        {
            return null;
        }

        return new NestedSharing(pieces.Length, _fields.Max(f => f.Lanes), OnOneCloth).Least;

        double OnOneCloth(int cloth)
        {
            StripPiece[] on = [.. NestedSharing.Of(cloth).Select(i => pieces[i])];
            if (on.Length == 1)
            {
                return Alone(NamesOn(on[0]), price);
            }

            on = [.. NestedArcs.FromAbove(on, p => StripCurve.Of(_plan.Hem, p.Round)!).Select((p, l) => p with { Lane = l + 1 })];
            var sizing = new Sizing("", _plan.Hem, _plan.FieldAlongMm, _plan.FieldAcrossMm, _plan.SpareMm, 0, _plan.Shortening, null)
            {
                MarkReachMm = -_plan.MarkYMm + SegmentCutter.MarkArmMm,
            };
            var nest = PieceEnds.Nest(sizing, on);
            double[][] Angles(Func<PlacedName, double> at) =>
                [.. on.Select((p, l) => NamesOn(p).Select(n => nest.AngleRad(l, _plan.OnClothMm(at(n) - p.StartMm))).ToArray())];
            return new BentCover(
                nest, Angles(n => n.StartMm), Angles(n => n.EndMm),
                [.. _fields.OrderByDescending(f => f.LengthMm).Select(f => new ArcField(f.LengthMm, f.LengthMm, f.AcrossMm, price(f)))],
                    segmentWork: 0).LeastWork();
        }
    }

    private PlacedName[] NamesOn(StripPiece piece) =>
    [
        .. _plan.Rounds[piece.Round - 1].Places
            .Where(n => !n.Lettered.IsInOneRun && n.StartMm >= piece.StartMm - Tolerance.RoundingMm
                && n.StartMm < piece.EndMm - Tolerance.RoundingMm),
    ];

    /// <summary>Least sum for a strip's names, cut into segments that each have the price of a field, as long as it holds.</summary>
    private double Alone(PlacedName[] names, Func<Field, double> price)
    {
        double[] least = new double[names.Length + 1];
        double longest = _fields.Max(f => f.LengthMm);
        for (int first = names.Length - 1; first >= 0; first--)
        {
            least[first] = double.PositiveInfinity;
            foreach (var field in _fields)
            {
                int to = first;
                while (to < names.Length
                    && _plan.OnClothMm(names[to].EndMm - names[first].StartMm) <= field.LengthMm + Tolerance.RoundingMm)
                {
                    to++;
                }

                // A name that alone is as long as the longest field is sewn all the same.
                to = Math.Max(to, field.LengthMm >= longest ? first + 1 : first);
                least[first] = to > first ? Math.Min(least[first], price(field) + least[to]) : least[first];
            }
        }

        return least[0];
    }

    /// <summary>Least sum of the longest strip of each cloth, in minutes or in hoopings: shared out longest first.</summary>
    private double OnCloths(IEnumerable<double> strips) => strips.OrderDescending().Chunk(_fields.Max(f => f.Lanes)).Sum(c => c[0]);

    /// <summary>Sewn crosses of segments that other choices need not have, or that need not be sewn.</summary>
    private double Crosses(int segments, double least)
    {
        if (_plan.Marks != MarkMethod.Sewn)
        {
            return 0;
        }

        var machine = _job.Machine;
        double breaks = MarkStitches / 1000.0 * machine.BreaksPer1000Stitches * machine.SecondsPerBreak;
        double seconds = (MarkStitches * MarkPace * 60 / machine.StitchesPerMinute) + breaks
            + (MarkJumps * machine.SecondsPerJump) + (MarkCuts * machine.SecondsPerTrim);
        return Math.Max(0, segments - (MarkChoice.IsFree(_job) ? 0 : least)) * seconds / 60;
    }

    /// <summary>Names that are spoiled are hooped once more, by themselves.</summary>
    private double QuickerAgain(Estimate estimate) => estimate.Work.Rows.Where(r => r.Act == WorkList.HoopingOnceMore).Sum(r => r.Count)
        * (_fields[0].MountMinutes - _fields.Min(f => f.MountMinutes)) * Rest;

    /// <summary>Changes of colour, of which other hoopings may have fewer.</summary>
    private double Colours(Estimate estimate) => _plan.Threads.Changes == 0 ? 0
        : estimate.Work.Rows.Where(r => r.Act == WorkList.ChangingThread || r.Act == MachineRows.ChangingThread).Sum(r => r.Minutes.Likely);

    private static double Apart(Estimate estimate) =>
        estimate.Work.Rows.Where(r => r.Act == WorkList.CuttingApart).Sum(r => r.Minutes.Likely);

    /// <summary>No order of hoopings winds fewer bobbins than the thread fills.</summary>
    private double Bobbins(Estimate estimate)
    {
        int changes = estimate.Hoopings.Sum(h => h.BobbinChanges);
        int least = Math.Max(0, (int)Math.Ceiling((estimate.BobbinThreadM / _job.Bobbin.UsableM) - Tolerance.Rounding) - 1);
        return Math.Max(0, changes - least) * _job.Machine.SecondsPerBobbin / 60;
    }
}

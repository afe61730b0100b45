using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;

namespace NameBand.Layout.Pieces;

/// <summary>A piece of a curved strip, before it has its place on a cloth.</summary>
/// <param name="FlatMm">Length of flat cloth along its lower finished edge, from finished end to finished end.</param>
/// <param name="EndMm">What it needs beyond either end, the more of the two.</param>
internal readonly record struct ArcPiece(StripCurve Curve, double FlatMm, double EndMm)
{
    /// <summary>Angle of its finished start: its middle is at 0.</summary>
    public double StartRad => -FlatMm / 2 / Curve.RadiusMm;

    /// <summary>Angle to which it is cut, either way.</summary>
    public double ReachRad => (FlatMm / 2 + EndMm) / Curve.RadiusMm;
}

/// <summary>What is sewn of one piece in one hooping, as angles from the middle of its cloth.</summary>
internal readonly record struct ArcSpan(int Lane, double FromRad, double ToRad);

/// <summary>A field that a hooping of curved strips may be sewn in.</summary>
/// <param name="LongestMm">Longest arc of one strip alone, on flat cloth.</param>
/// <param name="AlongMm">Less its spare.</param>
/// <param name="Work">Of one hooping in it.</param>
internal readonly record struct ArcField(double LongestMm, double AlongMm, double AcrossMm, double Work)
{
    public static ArcField Of(Sizing sizing, double work) =>
        new(sizing.HoopingOnClothMm, FlatCloth.FieldMm(sizing.FieldAlongMm, sizing.SpareMm), sizing.FieldAcrossMm, work);
}

/// <summary>
/// Curved pieces nested on one cloth: each lies over the next like bowls in a stack, their middles in line. Plane geometry.
/// </summary>
/// <remarks>
/// The pieces are arcs of their own radii, moved apart along the line through their middles, so far that the lower cut edge of one
/// nowhere crosses the upper cut edge of the next. At an angle from the middle both run in one direction, so a hooping takes the same
/// angles of all its strips: their chords are parallel, and it is set straight by any of them.
/// </remarks>
internal sealed class NestedArcs
{
    private readonly ImmutableArray<ArcPiece> _pieces;
    private readonly double[] _centresMm;
    private readonly Sizing _sizing;

    /// <param name="pieces">From above.</param>
    public NestedArcs(ImmutableArray<ArcPiece> pieces, Sizing sizing)
    {
        (_pieces, _sizing, TightestMm) = (pieces, sizing, pieces.Min(p => p.Curve.RadiusMm));
        double width = sizing.Hem.Strip.CutWidthMm;
        PitchMm = Enumerable.Range(0, pieces.Length - 1).Select(i => ApartMm(pieces[i], pieces[i + 1], width)).DefaultIfEmpty(width).Max();
        _centresMm = [.. pieces.Select((p, i) => MiddleYMm(i) + (Sign * p.Curve.CentreRadiusMm))];
        Middle = new StripCurve(pieces.Average(p => p.Curve.RadiusMm), pieces.Average(p => p.Curve.CentreRadiusMm),
            pieces[0].Curve.CentreIsAbove);
    }

    /// <summary>Between the centre lines of neighbours, at their middles.</summary>
    public double PitchMm { get; }

    /// <summary>The arc midway between the first and the last.</summary>
    public StripCurve Middle { get; }

    /// <summary>Radius of the lower finished edge that bends most.</summary>
    public double TightestMm { get; }

    public int Count => _pieces.Length;

    private double Sign => _pieces[0].Curve.CentreIsAbove ? 1 : -1;

    private double MiddleYMm(int lane) => (((Count - 1) / 2.0) - lane) * PitchMm;

    /// <summary>Of arcs that hang like bowls the strongest bent lies uppermost, of arches undermost: they are the closest so.</summary>
    public static IEnumerable<T> FromAbove<T>(IEnumerable<T> lanes, Func<T, StripCurve> curve)
    {
        var all = lanes.ToList();
        bool isBowl = all.Count > 0 && curve(all[0]).CentreIsAbove;
        return isBowl ? all.OrderBy(l => curve(l).RadiusMm) : all.OrderByDescending(l => curve(l).RadiusMm);
    }

    /// <summary>Least distance of the centre lines at their middles so that two cut strips nowhere lie over each other.</summary>
    internal static double ApartMm(ArcPiece above, ArcPiece below, double widthMm)
    {
        var (outside, inside) = above.Curve.CentreIsAbove ? (below, above) : (above, below);
        double inner = outside.Curve.CentreRadiusMm - (widthMm / 2);
        double outer = inside.Curve.CentreRadiusMm + (widthMm / 2);

        // The inner edge at an angle a is √(r² + 2·r·d·cos a + d²) from the other centre, d off: nearest at the middle or at an end.
        double cos = Math.Cos(Math.Max(outside.ReachRad, inside.ReachRad));
        double atEnd = (-inner * cos) + Math.Sqrt(Math.Max(0, (inner * inner * cos * cos) + (outer * outer) - (inner * inner)));
        return Math.Max(outer - inner, atEnd) + outside.Curve.CentreRadiusMm - inside.Curve.CentreRadiusMm;
    }

    /// <summary>Angle of a place on a piece, by its distance from the piece's finished start on flat cloth.</summary>
    public double AngleRad(int lane, double fromStartMm) => _pieces[lane].StartRad + (fromStartMm / _pieces[lane].Curve.RadiusMm);

    /// <summary>The reverse of <see cref="AngleRad"/>.</summary>
    public double FromStartMm(int lane, double angleRad) => (angleRad - _pieces[lane].StartRad) * _pieces[lane].Curve.RadiusMm;

    /// <summary>Length of a segment between two angles, as it will measure once sewn.</summary>
    public double LengthMm(int lane, double fromRad, double toRad) =>
        _sizing.Flat.FinishedMm((toRad - fromRad) * _pieces[lane].Curve.RadiusMm);

    /// <summary>Where a lane's segment lies in a hooping, from where the first one's does: left ends, on the centre lines.</summary>
    /// <param name="fromRad">Where all its segments begin.</param>
    public Point LiesAt(int lane, int first, double fromRad, double toRad)
    {
        double turn = -Sign * (fromRad + (LengthMm(first, fromRad, toRad) / 2 / _pieces[first].Curve.RadiusMm));
        var (x, y) = (End(lane).XMm - End(first).XMm, End(lane).YMm - End(first).YMm);
        return new Point((x * Math.Cos(turn)) - (y * Math.Sin(turn)), (x * Math.Sin(turn)) + (y * Math.Cos(turn)));

        Point End(int of) => new(
            _pieces[of].Curve.CentreRadiusMm * Math.Sin(fromRad),
            _centresMm[of] - (Sign * _pieces[of].Curve.CentreRadiusMm * Math.Cos(fromRad)));
    }

    /// <summary>
    /// From which angle to which the segments of a hooping reach: over all its names, and on both sides as far as two marks need,
    /// within its pieces and the field. Null where the field does not hold it.
    /// </summary>
    public (double FromRad, double ToRad)? Extent(IReadOnlyList<ArcSpan> spans, ArcField field)
    {
        double from = spans.Min(s => s.FromRad), to = spans.Max(s => s.ToRad);
        double widest = spans.Max(s => _pieces[s.Lane].Curve.RadiusMm), tightest = spans.Min(s => _pieces[s.Lane].Curve.RadiusMm);
        if ((to - from) * widest > field.LongestMm + Tolerance.RoundingMm)
        {
            return null;
        }

        if (spans.Count == 1)
        {
            return (from, to);
        }

        double start = spans.Max(s => _pieces[s.Lane].StartRad), end = spans.Min(s => -_pieces[s.Lane].StartRad);
        if (from < start - Tolerance.Rounding || to > end + Tolerance.Rounding || !Holds(spans, from, to, field))
        {
            return null;
        }

        double wished = Math.Min(_sizing.Flat.OnClothMm(_sizing.MarkedSegmentMm) / tightest, field.LongestMm / widest);
        foreach (double part in WidenedParts)
        {
            double more = Math.Min(Math.Max(0, (wished - (to - from)) * part), end - start - (to - from));
            double at = Math.Clamp(from - (more / 2), start, Math.Max(start, end - (to - from) - more));
            if (more <= 0 || Holds(spans, at, at + (to - from) + more, field))
            {
                return (at, at + (to - from) + Math.Max(0, more));
            }
        }

        return (from, to);
    }

    /// <summary>Marks stand as far apart as the field lets them.</summary>
    private static readonly double[] WidenedParts = [1, 0.75, 0.5, 0.25];

    /// <summary>Whether names and marks of all segments between two angles lie in a field.</summary>
    private bool Holds(IReadOnlyList<ArcSpan> spans, double fromRad, double toRad, ArcField field)
    {
        double zone = _sizing.Hem.Strip.SewingZoneMm / 2;
        var box = Box.Empty;
        foreach (var span in spans)
        {
            var at = LiesAt(span.Lane, spans[0].Lane, fromRad, toRad);
            var curve = _pieces[span.Lane].Curve;
            var frame = curve.Frame(LengthMm(span.Lane, fromRad, toRad));
            box = box.Include(frame.Reach((toRad - fromRad) * curve.RadiusMm, zone, -_sizing.MarkReachMm).Moved(at));
        }

        return box.WidthMm <= field.AlongMm + Tolerance.RoundingMm && box.HeightMm <= field.AcrossMm + Tolerance.RoundingMm;
    }

    /// <summary>The cloth they lie on: a piece of a ring about the middle arc, cut square to it.</summary>
    /// <param name="endMm">Cloth beyond each piece for the hoop.</param>
    public ClothBand Band(double endMm, double fieldAcrossMm)
    {
        double half = 0;
        for (int round = 0; round < Rounds; round++)
        {
            double now = half;
            half = Enumerable.Range(0, Count)
                .Max(l => _pieces[l].ReachRad + (endMm / _pieces[l].Curve.RadiusMm) + Math.Abs(SkewRad(l, now)));
        }

        double width = fieldAcrossMm + (2 * ClothLayoutMeasures.BesideFieldMm) + ((Count - 1) * PitchMm);
        return new ClothBand(Middle, 2 * half * Middle.RadiusMm, width)
        {
            Lanes = [.. Enumerable.Range(0, Count).Select(l => new BandLane(_pieces[l].Curve, OffMm(l), -half + SkewRad(l, half)))],
        };
    }

    /// <summary>Enough for the end to stand still to the millionth of a millimetre.</summary>
    private const int Rounds = 12;

    /// <summary>How much higher a lane's centre lies than that of the middle arc.</summary>
    private double OffMm(int lane) => _centresMm[lane] - (Sign * Middle.CentreRadiusMm);

    /// <summary>The cloth is cut square to its middle arc: a lane's lower edge meets that cut so far from the same angle of its
    /// own.</summary>
    private double SkewRad(int lane, double halfRad) => Math.Asin(Sign * OffMm(lane) * Math.Sin(halfRad) / _pieces[lane].Curve.RadiusMm);

    /// <summary>Where a piece's finished start lies on a band, along its lower finished edge from the cut left end.</summary>
    public double OnClothMm(int lane, ClothBand band) => (_pieces[lane].StartRad - band.Lanes[lane].LeftRad) * _pieces[lane].Curve.RadiusMm;
}

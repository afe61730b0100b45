using NameBand.Common;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Output.Tracing;
using NameBand.Stitching.Sewing;

namespace NameBand.Output.Rehearsal;

/// <summary>
/// A piece of a finished strip as it lies on paper: straight, or bent as the strip is. Places are those of the finished round, x to the
/// right on the paper, y up; the origin is wherever the piece has it.
/// </summary>
internal sealed class RehearsalPiece
{
    private const double BentStepMm = 2; // A chord of that length strays from an arc of 500 mm by a thousandth: scissors do not see it.

    private readonly StripPlan _plan;
    private readonly TemplateWindow _window;
    private readonly BentFrame? _frame;

    public RehearsalPiece(StripPlan plan, Round round, TemplateWindow window)
    {
        (_plan, _window) = (plan, window);
        _frame = StripCurve.Of(plan.Hem, round.Number)?.Frame(window.ToMm - window.FromMm);
        Extent = EdgePoints().Aggregate(Box.Empty, (box, at) => box.Include(at));
    }

    public double HalfMm => _plan.Hem.Strip.FinishedWidthMm / 2;

    /// <summary>The box about it.</summary>
    public Box Extent { get; }

    /// <summary>The longest piece of a round that a page holds, along the round.</summary>
    public static double LongestMm(StripPlan plan, Round round, double widthMm, double heightMm)
    {
        if (StripCurve.Of(plan.Hem, round.Number) is not { } curve)
        {
            return widthMm;
        }

        double outer = curve.CentreRadiusMm + (plan.Hem.Strip.FinishedWidthMm / 2);
        double inner = curve.CentreRadiusMm - (plan.Hem.Strip.FinishedWidthMm / 2);
        double wide = Math.Asin(Math.Min(1, widthMm / (2 * outer)));
        double high = Math.Acos(Math.Clamp((outer - heightMm) / inner, 0, 1));
        return 2 * Math.Min(wide, high) * curve.RadiusMm;
    }

    /// <param name="alongMm">Along the finished round.</param>
    /// <param name="yMm">Above the strip's centre line.</param>
    public Point At(double alongMm, double yMm) => _frame is { } frame
        ? frame.At(alongMm - _window.FromMm, yMm) : new Point(alongMm - _window.FromMm, yMm);

    /// <summary>The angle, counter-clockwise, at which the strip lies there.</summary>
    public double TurnRad(double alongMm) => _frame?.TurnRad(alongMm - _window.FromMm) ?? 0;

    /// <summary>A line along the strip.</summary>
    public IEnumerable<Point> Along(double fromMm, double toMm, double yMm)
    {
        int steps = _frame is null ? 1 : Math.Max(1, (int)Math.Ceiling((toMm - fromMm) / BentStepMm));
        return Enumerable.Range(0, steps + 1).Select(i => At(fromMm + ((toMm - fromMm) * i / steps), yMm));
    }

    /// <summary>The way round it, to cut along.</summary>
    public IEnumerable<Point> EdgePoints() =>
        Along(_window.FromMm, _window.ToMm, HalfMm).Concat(Along(_window.FromMm, _window.ToMm, -HalfMm).Reverse());

    /// <summary>The outlines of a name's letters, each where it stands.</summary>
    public IEnumerable<IEnumerable<IEnumerable<Point>>> Letters(PlacedName name)
    {
        double height = _plan.LetterHeightMm;
        double middle = (name.StartMm + name.EndMm) / 2;
        var arc = _frame is { } frame ? new LetterArc(frame, middle - _window.FromMm, name, height) : null;
        foreach (var placed in name.Lettered.Pieces)
        {
            var standing = arc?.PlacingOf(placed) ?? new Placing(Origin(name, placed, middle), 0);
            yield return placed.Piece.Outline.Rings.Select(r => r.Points.Select(p => standing.Of(p * height)));
        }
    }

    /// <summary>The ink stands in the middle of the name's width.</summary>
    private Point Origin(PlacedName name, PlacedPiece placed, double middleMm)
    {
        var ink = name.Lettered.Ink;
        double inkMiddle = (ink.LeftMm + ink.RightMm) / 2;
        return At(middleMm, name.BaselineYMm) + ((placed.At - new Point(inkMiddle, 0)) * _plan.LetterHeightMm);
    }
}

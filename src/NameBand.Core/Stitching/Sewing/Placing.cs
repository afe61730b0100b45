using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>Where a letter stands: its own points are turned about its origin, counter-clockwise, and moved to
/// <paramref name="Origin"/>.</summary>
internal readonly record struct Placing(Point Origin, double TurnRad)
{
    private readonly double _cos = Math.Cos(TurnRad);
    private readonly double _sin = Math.Sin(TurnRad);

    public Point Of(Point own) => TurnRad == 0 ? own + Origin : Origin + Turned(own);

    /// <summary>The letter's own point that comes to lie at a place.</summary>
    public Point Back(Point at)
    {
        var p = at - Origin;
        return TurnRad == 0 ? p : new Point((p.XMm * _cos) + (p.YMm * _sin), (p.YMm * _cos) - (p.XMm * _sin));
    }

    private Point Turned(Point own) => new((own.XMm * _cos) - (own.YMm * _sin), (own.XMm * _sin) + (own.YMm * _cos));

    /// <summary>Stands so that the letter's own point <paramref name="about"/> comes to lie at <paramref name="at"/>.</summary>
    public static Placing About(Point about, Point at, double turnRad) => new(at - new Placing(default, turnRad).Turned(about), turnRad);
}

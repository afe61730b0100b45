using NameBand.Job;

namespace NameBand.Garment;

/// <summary>How far a place lies from the middle of the garment's front or back, the shorter way.</summary>
/// <param name="DistanceMm">Never less than zero.</param>
/// <param name="IsRight">Whether it lies to the right as the strip is read; the middle itself counts as right.</param>
public readonly record struct FromMiddle(double DistanceMm, bool IsRight);

/// <summary>
/// Where the middles of front and back lie on a round. What the job does not say follows from the usual: the strip's ends
/// meet at centre back, and front and back lie opposite each other. An edge with two ends has only what is said.
/// </summary>
public sealed record GarmentMiddles(double? FrontMm, double? BackMm, double RoundLengthMm, bool IsClosed)
{
    /// <param name="roundLengthMm">Length of the finished round; places on the hem lie on it in proportion.</param>
    public static GarmentMiddles On(HemPlan hem, double roundLengthMm)
    {
        double scale = hem.EdgeLengthMm > 0 ? roundLengthMm / hem.EdgeLengthMm : 1;
        double? front = hem.CentreFrontMm * scale;
        double? back = hem.CentreBackMm * scale;
        if (hem.Closed)
        {
            back ??= front is { } f ? Opposite(f, roundLengthMm) : 0;
            front ??= Opposite(back.Value, roundLengthMm);
        }

        return new GarmentMiddles(front, back, roundLengthMm, hem.Closed);
    }

    /// <summary>Where on a finished round a pinned name's middle is to lie; null where nobody said where the garment's middle is.</summary>
    public static double? PinMm(HemPlan hem, PinPlace pin, int round)
    {
        double length = hem.RoundMm(round);
        if (pin.At is { } at)
        {
            return Math.Min(at.Mm, length);
        }

        var middles = On(hem, length);
        return pin.IsFront ? middles.FrontMm : middles.BackMm;
    }

    /// <summary>Null where it is not known where centre front lies.</summary>
    public FromMiddle? FromFront(double atMm) => From(FrontMm, atMm);

    /// <summary>Null where it is not known where centre back lies.</summary>
    public FromMiddle? FromBack(double atMm) => From(BackMm, atMm);

    /// <summary>A join so near to centre front is seen by all who meet her: our choice.</summary>
    public const double AtFrontMm = 50;

    /// <summary>Whether a join there would lie at centre front; false where nobody knows where that is.</summary>
    public bool IsAtFront(double atMm) => FromFront(atMm) is { } front && front.DistanceMm < AtFrontMm;

    private FromMiddle? From(double? middleMm, double atMm)
    {
        if (middleMm is not { } middle)
        {
            return null;
        }

        double way = atMm - middle;
        if (IsClosed && RoundLengthMm > 0)
        {
            way -= RoundLengthMm * Math.Floor((way / RoundLengthMm) + 0.5);
        }

        return new FromMiddle(Math.Abs(way), way >= 0);
    }

    private static double Opposite(double atMm, double roundMm) => atMm >= roundMm / 2 ? atMm - (roundMm / 2) : atMm + (roundMm / 2);
}

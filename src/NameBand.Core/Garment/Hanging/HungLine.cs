using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Garment.Hanging;

/// <summary>
/// A line of the cloth at one height of the hanging garment, seen from above: part of a circle, or straight, with folds that are just
/// as deep as the length of the cloth asks for. x runs to the right of someone who stands before the garment, y away from her.
/// </summary>
public sealed class HungLine
{
    private const double MostDepthPart = 0.9; // Of the radius: folds that reached the middle would pass through each other.
    private readonly FoldWave _wave;
    private readonly double _openRad;
    private readonly ImmutableArray<double> _along;

    private HungLine(FoldWave wave, double openRad, bool isStraight, double acrossMm, double depthMm, double heightMm)
    {
        (_wave, _openRad, IsStraight, AcrossMm, DepthMm, HeightMm) = (wave, openRad, isStraight, acrossMm, depthMm, heightMm);
        var along = ImmutableArray.CreateBuilder<double>(FoldWave.Steps + 1);
        along.Add(0);
        for (int i = 0; i < FoldWave.Steps; i++)
        {
            along.Add(along[i] + StepMm(i, acrossMm, depthMm));
        }

        _along = along.MoveToImmutable();
    }

    public bool IsStraight { get; }

    /// <summary>Radius of the circle that the folds lie about; of a straight line its width as it hangs.</summary>
    public double AcrossMm { get; }

    /// <summary>How far the folds stand out on each side.</summary>
    public double DepthMm { get; }

    /// <summary>Above the hem, measured straight up.</summary>
    public double HeightMm { get; }

    /// <summary>Along the cloth, from one end to the other or once round.</summary>
    public double LengthMm => _along[^1];

    /// <summary>A line about a circle, beginning and ending at the front.</summary>
    /// <param name="lengthMm">Of the cloth. A circle that is longer is made smaller; without folds it is as long as the cloth.</param>
    /// <param name="openRad">Angle at the front that the cloth does not reach over; 0 for one that closes.</param>
    public static HungLine Round(FoldWave wave, double openRad, double radiusMm, double lengthMm, double heightMm)
    {
        double full = lengthMm / ((2 * Math.PI) - openRad);
        double radius = wave.Folds == 0 ? full : Math.Min(radiusMm, full);
        return Fitted(wave, openRad, isStraight: false, radius, lengthMm, heightMm);
    }

    /// <summary>A line that hangs straight, as a banner or a curtain does.</summary>
    public static HungLine Straight(FoldWave wave, double widthMm, double lengthMm, double heightMm) =>
        Fitted(wave, 0, isStraight: true, Math.Min(widthMm, lengthMm), lengthMm, heightMm);

    /// <summary>Where a part of the way along lies.</summary>
    public (double XMm, double YMm) At(double part)
    {
        double outward = DepthMm * _wave.DepthPart(part);
        if (IsStraight)
        {
            return (AcrossMm * (part - 0.5), outward);
        }

        double angle = Angle(part), radius = AcrossMm + outward;
        return (radius * Math.Cos(angle), radius * Math.Sin(angle));
    }

    /// <summary>Length of the cloth up to a part of the way.</summary>
    public double AlongMm(double part)
    {
        double step = Math.Clamp(part, 0, 1) * FoldWave.Steps;
        int i = Math.Min((int)step, FoldWave.Steps - 1);
        return _along[i] + ((step - i) * (_along[i + 1] - _along[i]));
    }

    /// <summary>The reverse: the part of the way at which so much of the cloth has gone by.</summary>
    public double AlongPart(double alongMm)
    {
        int i = _along.BinarySearch(alongMm);
        if (i >= 0)
        {
            return i / (double)FoldWave.Steps;
        }

        int next = Math.Clamp(~i, 1, FoldWave.Steps);
        double step = _along[next] - _along[next - 1];
        return Math.Clamp((next - 1 + (step > 0 ? (alongMm - _along[next - 1]) / step : 0)) / FoldWave.Steps, 0, 1);
    }

    /// <summary>The depth at which the line is as long as the cloth, by halving: it only grows with the depth.</summary>
    private static HungLine Fitted(FoldWave wave, double openRad, bool isStraight, double acrossMm, double lengthMm, double heightMm)
    {
        var flat = new HungLine(wave, openRad, isStraight, acrossMm, 0, heightMm);
        if (wave.Folds == 0 || acrossMm <= 0 || flat.LengthMm >= lengthMm - Tolerance.RoundingMm)
        {
            return flat;
        }

        // Folds of a circle do not reach its middle; straight ones reach as far as they must.
        double low = 0, high = isStraight ? lengthMm : MostDepthPart * acrossMm / (1 + (0.6 * wave.UnevenPart));
        for (int i = 0; i < 48; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = flat.WholeMm(middle) < lengthMm ? (middle, high) : (low, middle);
        }

        return new HungLine(wave, openRad, isStraight, acrossMm, (low + high) / 2, heightMm);
    }

    private double WholeMm(double depthMm)
    {
        double whole = 0;
        for (int i = 0; i < FoldWave.Steps; i++)
        {
            whole += StepMm(i, AcrossMm, depthMm);
        }

        return whole;
    }

    /// <summary>Simpson's rule over one step.</summary>
    private double StepMm(int step, double acrossMm, double depthMm) =>
        (Speed(2 * step, acrossMm, depthMm) + (4 * Speed((2 * step) + 1, acrossMm, depthMm)) + Speed((2 * step) + 2, acrossMm, depthMm))
        / 6 / FoldWave.Steps;

    /// <summary>Length for a whole way, at one place of it.</summary>
    private double Speed(int half, double acrossMm, double depthMm)
    {
        double outward = depthMm * _wave.SlopeAt(half);
        double along = IsStraight ? acrossMm : (acrossMm + (depthMm * _wave.DepthAt(half))) * ((2 * Math.PI) - _openRad);
        return Math.Sqrt((outward * outward) + (along * along));
    }

    /// <summary>Counter-clockwise seen from above, from the middle of the front.</summary>
    private double Angle(double part) => (-Math.PI / 2) + (_openRad / 2) + (((2 * Math.PI) - _openRad) * part);
}

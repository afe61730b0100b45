namespace NameBand.Garment.Hanging;

/// <summary>The even shape that folds lie about: a cone that opens towards the hem, or a plane.</summary>
/// <param name="OpenRad">Angle at the front that the cloth does not reach over.</param>
/// <param name="TopMm">Radius at the top, or the width of the plane; so with the hem.</param>
internal sealed record HangingShape(bool IsStraight, double OpenRad, double TopMm, double HemMm, double DropMm, int Folds)
{
    // How deep folds are drawn: a hand's breadth at most, and no shallower than can be seen. For the picture alone; our assumption.
    private const double FoldMm = 80, LeastFoldMm = 4;

    /// <summary>Most of a mm of cloth that goes outwards instead of down: no skirt stands out farther by itself.</summary>
    private const double SteepestPart = 0.62;

    /// <summary>How much longer the cloth is than the circle it hangs about: a little more the fuller it is cut.</summary>
    private const double Excess = 0.3, ExcessByTurn = 0.3;

    public static HangingShape Straight(HangingKind kind, double edgeMm, double dropMm) => kind == HangingKind.Banner
        ? new HangingShape(true, 0, edgeMm / 1.012, edgeMm / 1.012, dropMm, Math.Clamp((int)(edgeMm / 420), 2, 8))
        : new HangingShape(true, 0, edgeMm / 1.4, edgeMm / 1.4, dropMm, (int)(edgeMm / 1.4 / 150));

    /// <param name="upperMm">Length of the cloth's upper edge.</param>
    public static HangingShape Round(double openRad, double upperMm, double edgeMm, double dropMm, double turnPart)
    {
        double round = (2 * Math.PI) - openRad;
        double top = upperMm / round, wished = edgeMm / round / (1 + Excess + (ExcessByTurn * Math.Min(turnPart, 1)));
        double hem = Math.Min(Math.Max(top, wished), top + (SteepestPart * dropMm));
        // A wave of depth a on a length l is longer by about (π·a/l)²: as many folds as make it so deep.
        double excess = Math.Max((edgeMm / (round * hem)) - 1, 0);
        double deep = Math.Clamp(Math.Min(FoldMm, 0.24 * hem), LeastFoldMm, FoldMm);
        int folds = excess < 0.002 ? 0 : Math.Max(3, (int)Math.Ceiling(2 * round / Math.PI * hem * Math.Sqrt(excess) / deep));
        return new HangingShape(false, openRad, top, hem, dropMm, folds);
    }

    /// <summary>A line without folds at a height along the cloth.</summary>
    public double FlatMm(double aboveMm) => IsStraight ? AcrossMm(aboveMm) : AcrossMm(aboveMm) * ((2 * Math.PI) - OpenRad);

    public HungLine Line(FoldWave wave, double aboveMm, double lengthMm) => IsStraight
        ? HungLine.Straight(wave, AcrossMm(aboveMm), lengthMm, aboveMm)
        : HungLine.Round(wave, OpenRad, AcrossMm(aboveMm), lengthMm, aboveMm * Upright);

    private double AcrossMm(double aboveMm) => HemMm - ((HemMm - TopMm) * Math.Min(aboveMm / DropMm, 1));

    /// <summary>A mm along the cloth is so much of a mm upwards.</summary>
    private double Upright => Math.Sqrt(Math.Max(1 - Math.Pow((HemMm - TopMm) / DropMm, 2), 0.01));
}

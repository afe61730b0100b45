using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Garment.Hanging;

/// <summary>What hangs there.</summary>
public enum HangingKind
{
    /// <summary>Goes all round, from a waist.</summary>
    Skirt,

    /// <summary>Part of a circle that is open at the front, from a neck.</summary>
    Cape,

    /// <summary>A short straight edge with two ends.</summary>
    Banner,

    /// <summary>A long straight edge with two ends.</summary>
    Curtain,
}

/// <summary>A strip where it is sewn on.</summary>
/// <param name="Lower">The edge of it that lies nearer to the hem: its round.</param>
/// <param name="LengthMm">Of the finished strip, which goes along the whole line.</param>
/// <param name="IsForward">Whether it runs as its line does, counter-clockwise or to the right.</param>
/// <param name="BeginsMm">How far along the line it begins.</param>
public sealed record HungStrip(
    int Round, double AboveHemMm, double LengthMm, HungLine Lower, HungLine Upper, bool IsForward, double BeginsMm)
{
    /// <summary>The part of the line's way at which a place of the strip lies.</summary>
    public double AlongPart(double alongMm)
    {
        double whole = Lower.LengthMm, along = LengthMm > 0 ? alongMm / LengthMm * whole : 0;
        double at = BeginsMm + (IsForward ? along : -along);
        // The end of a line is the end of it, and not its beginning.
        return Lower.AlongPart(at < 0 || at > whole ? at - (whole * Math.Floor(at / whole)) : at);
    }
}

/// <summary>
/// A garment as it hangs, computed from its pattern. What the pattern does not say (where the waist of a measured hem is, how high a
/// banner is) is assumed, and so is how far cloth swings out: our choice, to be looked at and not to be cut by. Exact are the length
/// of the hem and of every round, and how high each lies along the cloth.
/// </summary>
/// <param name="Body">The cloth, from its top to the hem.</param>
/// <param name="Strips">Lowest first.</param>
/// <param name="DropMm">From the top of the cloth to its hem, along the cloth.</param>
public sealed record HungGarment(
    HangingKind Kind, int Folds, double DropMm, ImmutableArray<HungLine> Body, ImmutableArray<HungStrip> Strips)
{
    // Of the garment between waist and hem: in a picture some hundred pixels high its folds then look smooth.
    private const int BodyLines = 14;
    // For the picture alone, where the job does not say: a waist, a neck, how far a cape or a curtain hangs down at most, and from where
    // on an open straight edge is a curtain and no banner. Our assumption.
    private const double WaistMm = 700, NeckMm = 420, MostDropMm = 900, LongestBannerMm = 2500;

    /// <summary>A cape does not meet at the front.</summary>
    private const double OpenRad = 0.7;

    /// <summary>Real folds are not all alike.</summary>
    private const double UnevenPart = 0.16;

    /// <summary>Folds in gathers that are closer than this are not drawn.</summary>
    private const double MostExcess = 0.9;

    /// <summary>The hem's line, which is as long as the hem.</summary>
    public HungLine Hem => Body[^1];

    /// <param name="skirt">Waist and length, where the job has them.</param>
    /// <param name="roundsMm">Lowest first: number and length of each finished strip.</param>
    public static HungGarment Of(HemPlan hem, SkirtSettings? skirt, ImmutableArray<(int Number, double LengthMm)> roundsMm)
    {
        double edge = Math.Max(hem.EdgeLengthMm, 1), width = hem.Strip.FinishedWidthMm;
        double top = roundsMm.Select(r => AboveHemMm(hem, r.Number) + width).DefaultIfEmpty(0).Max();
        var kind = KindOf(hem, edge);
        double open = kind == HangingKind.Cape ? OpenRad : 0;
        double drop = Math.Max(Drop(hem, skirt, kind, edge), top + (kind == HangingKind.Skirt ? 60 : 40));
        double upper = Math.Max(edge - (hem.TurnRad * drop), 0.1 * edge);
        bool isStraight = kind is HangingKind.Banner or HangingKind.Curtain;
        var shape = isStraight ? HangingShape.Straight(kind, edge, drop)
            : HangingShape.Round(open, hem.TurnRad > 0 ? upper : Math.Min(WaistMm, edge), edge, drop, hem.TurnRad / 2 / Math.PI);
        var wave = new FoldWave(shape.Folds, UnevenPart);
        HungLine Line(double above, double length) => shape.Line(wave, above, length);

        var body = Enumerable.Range(0, BodyLines + 1).Select(i => drop * (1 - (i / (double)BodyLines)))
            .Select(above =>
            {
                double length = hem.TurnRad > 0 ? edge - (above / drop * (edge - upper)) : edge;
                return Line(above, above > top ? Math.Min(length, (1 + MostExcess) * shape.FlatMm(above)) : length);
            });
        var strips = roundsMm.Select(r =>
        {
            double above = AboveHemMm(hem, r.Number), length = Math.Max(hem.RoundMm(r.Number), 1);
            var lower = Line(above, length);
            // A strip is as wide as it is: its upper edge lies along the cloth, which is shorter there.
            var line = Line(above + width, Math.Max(length - (hem.TurnRad * width), 0.5 * length));
            return Placed(hem, r.Number, above, r.LengthMm, lower, line);
        });
        return new HungGarment(kind, shape.Folds, drop, [.. body], [.. strips]);
    }

    private static HungStrip Placed(HemPlan hem, int number, double above, double lengthMm, HungLine lower, HungLine upper)
    {
        bool isForward = hem.Runs == RunDirection.CounterClockwise;
        double begins = isForward ? 0 : lower.LengthMm;
        if (hem.Closed)
        {
            // Lines begin at the front; centre back lies half way round.
            double back = (GarmentMiddles.On(hem, lengthMm).BackMm ?? 0) / Math.Max(lengthMm, 1) * lower.LengthMm;
            double at = lower.AlongMm(0.5) + (isForward ? -back : back);
            begins = at - (lower.LengthMm * Math.Floor(at / lower.LengthMm));
        }

        return new HungStrip(number, above, lengthMm, lower, upper, isForward, begins);
    }

    private static HangingKind KindOf(HemPlan hem, double edgeMm) =>
        hem.Closed ? HangingKind.Skirt : hem.TurnRad > 0 ? HangingKind.Cape
        : edgeMm <= LongestBannerMm ? HangingKind.Banner : HangingKind.Curtain;

    private static double AboveHemMm(HemPlan hem, int round) => hem.LiftMm + ((round - 1) * hem.RoundStepMm);

    private static double Drop(HemPlan hem, SkirtSettings? skirt, HangingKind kind, double edgeMm) => kind switch
    {
        _ when skirt is not null => Math.Max(skirt.Length.Mm, 1),
        HangingKind.Banner => Math.Min(0.4 * edgeMm, MostDropMm),
        HangingKind.Curtain => Math.Min(0.6 * edgeMm, 2 * MostDropMm),
        _ when hem.TurnRad > 0 =>
            Math.Min((edgeMm - Math.Min(kind == HangingKind.Cape ? NeckMm : WaistMm, 0.4 * edgeMm)) / hem.TurnRad, MostDropMm),
        _ => Math.Min(WaistMm, 0.6 * edgeMm),
    };
}

using NameBand.Cloth;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Load;

/// <summary>Measures the load of a needle path in one walk along it.</summary>
public static class LoadMeter
{
    /// <summary>From this part of the cloth's limit a swatch is asked for; our assumption.</summary>
    public const double SwatchPart = 0.8;

    /// <summary>Parts smaller than this, such as a dot, are not judged by themselves.</summary>
    private const double LeastLetterMm2 = 2;

    public static ClothLoad Measure(NeedlePath path, Fabric fabric)
    {
        if (Walk(path, fabric) is not { } walked)
        {
            return new ClothLoad(0, 0, 0, LoadVerdict.Fine);
        }

        var (holes, box, cover, sewn, worst) = walked;
        return new ClothLoad(holes.Count, sewn, worst, VerdictOf(worst, fabric))
        {
            Spot = new WorstSpot(WorstSpot.DensestPerMm2(holes, box, cover.CellMm), Layers(path, cover, fabric.Thread.DiameterMm)),
        };
    }

    /// <summary>Holes in each mm² of the fullest letter alone: the verdict goes by it, and the worst spot takes as long again to
    /// find.</summary>
    public static double FullestPerMm2(NeedlePath path, Fabric fabric) => Walk(path, fabric)?.Worst ?? 0;

    /// <summary>Null where nothing is sewn.</summary>
    private static (List<Point> Holes, Box Box, ThreadCover Cover, double SewnMm2, double Worst)? Walk(NeedlePath path, Fabric fabric)
    {
        var holes = Holes(path);
        var box = holes.Aggregate(Box.Empty, (b, p) => b.Include(p));
        if (holes.Count == 0)
        {
            return null;
        }

        var cover = new ThreadCover(box, fabric.Thread.DiameterMm);
        double worst = 0;
        int ownHoles = 0;
        for (int i = 0; i < path.Steps.Length; i++)
        {
            var step = path.Steps[i];
            if (step.Action != NeedleAction.Stitch)
            {
                worst = Math.Max(worst, Density(ownHoles, cover.LetterMm2));
                cover.NextLetter();
                ownHoles = 0;
                continue;
            }

            if (step.Kind == StitchKind.Mark)
            {
                continue;
            }

            ownHoles++;
            if (i > 0 && path.Steps[i - 1] is { Action: NeedleAction.Stitch } before && before.Kind != StitchKind.Mark)
            {
                cover.Add(before.At, step.At);
            }
        }

        worst = Math.Max(worst, Density(ownHoles, cover.LetterMm2));
        double sewn = cover.AreaMm2;
        worst = Math.Max(worst, sewn > 0 ? holes.Count / sewn : 0);
        return (holes, box, cover, sewn, worst);
    }

    /// <summary>Most layers of thread, counted at the places that the most stitches come near.</summary>
    private static int Layers(NeedlePath path, ThreadCover cover, double threadMm)
    {
        const int PlacesTried = 4; // Each walks the whole path once more; a little more could lie elsewhere (docs/cloths.md).
        int most = 0;
        foreach (var place in cover.Thickest(PlacesTried))
        {
            int layers = 0;
            for (int i = 1; i < path.Steps.Length; i++)
            {
                layers += IsSewn(path.Steps[i - 1]) && IsSewn(path.Steps[i])
                    && IsOver(path.Steps[i - 1].At, path.Steps[i].At, place, threadMm / 2) ? 1 : 0;
            }

            most = Math.Max(most, layers);
        }

        return most;
    }

    private static bool IsSewn(NeedleStep step) => step.Action == NeedleAction.Stitch && step.Kind != StitchKind.Mark;

    /// <summary>Whether a stitch lies over a place; its ends are square.</summary>
    private static bool IsOver(Point from, Point to, Point place, double halfMm)
    {
        double dx = to.XMm - from.XMm;
        double dy = to.YMm - from.YMm;
        double px = place.XMm - from.XMm;
        double py = place.YMm - from.YMm;
        double square = (dx * dx) + (dy * dy);
        double along = (px * dx) + (py * dy);
        double off = (px * dy) - (py * dx);
        return along >= 0 && along <= square && off * off <= halfMm * halfMm * square && square > 0;
    }

    private static List<Point> Holes(NeedlePath path)
    {
        var holes = new List<Point>(path.Steps.Length);
        foreach (var step in path.Steps)
        {
            if (step.Action == NeedleAction.Stitch && step.Kind != StitchKind.Mark)
            {
                holes.Add(step.At);
            }
        }

        return holes;
    }

    private static double Density(int holes, double areaMm2) => areaMm2 < LeastLetterMm2 ? 0 : holes / areaMm2;

    /// <param name="worstPerMm2">Holes in each mm² of the fullest letter.</param>
    public static LoadVerdict VerdictOf(double worstPerMm2, Fabric fabric) =>
        worstPerMm2 > fabric.MostPenetrationsPerMm2 ? LoadVerdict.Overworked
        : worstPerMm2 > SwatchPart * fabric.MostPenetrationsPerMm2 ? LoadVerdict.SewSwatch
        : LoadVerdict.Fine;
}

using NameBand.Cloth;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Load;

/// <summary>Measures the load of a needle path in one walk along it.</summary>
public static class LoadMeter
{
    /// <summary>From this part of the cloth's limit a swatch is asked for; our assumption.</summary>
    private const double SwatchPart = 0.8;

    /// <summary>Parts smaller than this, such as a dot, are not judged by themselves.</summary>
    private const double LeastLetterMm2 = 2;

    private const double DiscMm = 1;

    public static ClothLoad Measure(NeedlePath path, Fabric fabric)
    {
        var all = new ThreadCover(fabric.Thread.DiameterMm);
        var letter = new ThreadCover(fabric.Thread.DiameterMm);
        var holes = new List<Point>(path.Steps.Length);
        double threadMm = 0;
        double worst = 0;
        int ownHoles = 0;
        for (int i = 0; i < path.Steps.Length; i++)
        {
            var step = path.Steps[i];
            if (step.Action != NeedleAction.Stitch)
            {
                worst = Math.Max(worst, Density(ownHoles, letter));
                letter.Clear();
                ownHoles = 0;
                continue;
            }

            if (step.Kind == StitchKind.Mark)
            {
                continue;
            }

            holes.Add(step.At);
            ownHoles++;
            if (i > 0 && path.Steps[i - 1].Action == NeedleAction.Stitch)
            {
                var from = path.Steps[i - 1].At;
                threadMm += from.DistanceTo(step.At);
                all.Add(from, step.At);
                letter.Add(from, step.At);
            }
        }

        worst = Math.Max(worst, Density(ownHoles, letter));
        double sewn = all.AreaMm2;
        double mean = sewn > 0 ? holes.Count / sewn : 0;
        worst = Math.Max(worst, mean);
        return new ClothLoad(
            holes.Count, sewn, mean, worst, Densest(holes), sewn > 0 ? threadMm / sewn : 0, VerdictOf(worst, fabric));
    }

    private static double Density(int holes, ThreadCover cover) => cover.AreaMm2 < LeastLetterMm2 ? 0 : holes / cover.AreaMm2;

    private static LoadVerdict VerdictOf(double worstPerMm2, Fabric fabric) =>
        worstPerMm2 > fabric.MostPenetrationsPerMm2 ? LoadVerdict.Overworked
        : worstPerMm2 > SwatchPart * fabric.MostPenetrationsPerMm2 ? LoadVerdict.SewSwatch
        : LoadVerdict.Fine;

    /// <summary>Most holes within half a millimetre of one of them, itself counted, per mm² of the disc.</summary>
    private static double Densest(List<Point> holes)
    {
        const double Radius = DiscMm / 2;
        var cells = new Dictionary<(int X, int Y), List<Point>>();
        foreach (var hole in holes)
        {
            var cell = ((int)Math.Floor(hole.XMm / Radius), (int)Math.Floor(hole.YMm / Radius));
            if (!cells.TryGetValue(cell, out var list))
            {
                cells[cell] = list = [];
            }

            list.Add(hole);
        }

        int most = 0;
        foreach (var ((x, y), own) in cells)
        {
            foreach (var hole in own)
            {
                int count = 0;
                for (int i = x - 1; i <= x + 1; i++)
                {
                    for (int j = y - 1; j <= y + 1; j++)
                    {
                        if (cells.TryGetValue((i, j), out var list))
                        {
                            foreach (var other in list)
                            {
                                count += hole.DistanceTo(other) <= Radius ? 1 : 0;
                            }
                        }
                    }
                }

                most = Math.Max(most, count);
            }
        }

        return most / (Math.PI * Radius * Radius);
    }
}

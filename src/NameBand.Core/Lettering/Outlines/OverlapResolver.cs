using NameBand.Common;
using SkiaSharp;

namespace NameBand.Lettering.Outlines;

/// <summary>A path whose overlaps are to be resolved, and the units it is in.</summary>
/// <param name="Raw">Contours of each glyph, flattened, y up, in the path's units.</param>
internal sealed record Tangle(IReadOnlyList<SKPath> Paths, IReadOnlyList<List<Point[]>> Raw, double LetterHeight);

/// <summary>Outlines without overlaps, by Skia where it gets them right and by the slow way where it does not.</summary>
internal static class OverlapResolver
{
    /// <summary>Farthest a chord may lie from its curve, as a part of the letter height.</summary>
    public const double Flatness = 0.0004;

    /// <summary>Resolves the overlaps of one or more glyphs together.</summary>
    /// <returns>The path, or null where only rings could be made; and its rings in the path's units.</returns>
    public static (SKPath? Path, List<Point[]> Rings) Resolve(Tangle tangle)
    {
        double tolerance = Flatness * tangle.LetterHeight;
        foreach (var attempt in new[] { AllAtOnce, OneByOne })
        {
            if (attempt(tangle.Paths) is { } path)
            {
                var rings = PathRings.Flatten(path, tolerance);
                if (CoverGuard.Agrees(tangle.Raw, rings, tangle.LetterHeight))
                {
                    return (path, rings);
                }

                path.Dispose();
            }
        }

        var united = RobustUnion.Unite(tangle.Raw, tangle.LetterHeight);
        return (PathOf(united), united);
    }

    private static readonly Func<IReadOnlyList<SKPath>, SKPath?> AllAtOnce = paths =>
    {
        if (paths.Count == 1)
        {
            return paths[0].Simplify();
        }

        using var builder = new SKPath.OpBuilder();
        foreach (var path in paths)
        {
            builder.Add(path, SKPathOp.Union);
        }

        var united = new SKPath();
        return builder.Resolve(united) ? united : null;
    };

    private static readonly Func<IReadOnlyList<SKPath>, SKPath?> OneByOne = paths =>
    {
        var united = paths[0].Simplify();
        for (int i = 1; i < paths.Count && united is not null; i++)
        {
            var next = united.Op(paths[i], SKPathOp.Union);
            united.Dispose();
            united = next;
        }

        return united;
    };

    private static SKPath PathOf(List<Point[]> rings)
    {
        using var path = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        foreach (var ring in rings)
        {
            path.AddPoly(Array.ConvertAll(ring, p => new SKPoint((float)p.XMm, (float)-p.YMm)), true);
        }

        return path.Detach();
    }
}

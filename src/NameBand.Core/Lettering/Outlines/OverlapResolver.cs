using NameBand.Common;
using NameBand.Lettering.Fonts;
using SkiaSharp;

namespace NameBand.Lettering.Outlines;

/// <summary>Glyphs at their places whose overlaps are to be resolved together.</summary>
/// <param name="Paths">In units of their own, y down.</param>
/// <param name="Raw">Contours of each glyph, flattened, at a letter height of 1 mm, y up.</param>
/// <param name="MmPerUnit">Millimetres of a unit of the paths at a letter height of 1 mm.</param>
internal sealed record Tangle(IReadOnlyList<SKPath> Paths, IReadOnlyList<List<Point[]>> Raw, double MmPerUnit);

/// <summary>Outlines without overlaps, by Skia where it gets them right and by the slow way where it does not.</summary>
internal static class OverlapResolver
{
    /// <summary>Area by which an untangled glyph may differ from its contours, as a part of it.</summary>
    private const double SameArea = 0.0005;

    /// <summary>Resolves the overlaps of one or more glyphs together.</summary>
    /// <returns>The path in the units of the given ones, and its outline at a letter height of 1 mm.</returns>
    /// <exception cref="FontFault">They lie over one another in a way no sound face's letters do.</exception>
    public static (SKPath Path, Outline Outline) Resolve(Tangle tangle)
    {
        Meetings.Check(tangle.Paths);
        foreach (var attempt in new[] { AllAtOnce, OneByOne })
        {
            if (attempt(tangle.Paths) is { } path)
            {
                var outline = RingOrder.Turn(PathRings.Flatten(path, tangle.MmPerUnit));
                if (HasAreaOfContours(tangle, outline) || CoverGuard.Agrees(tangle.Raw, outline))
                {
                    return (path, outline);
                }

                path.Dispose();
            }
        }

        var united = RobustUnion.Unite(tangle.Raw);
        return (PathOf(united, tangle.MmPerUnit), RingOrder.Turn(united));
    }

    /// <summary>Whether nothing overlapped and nothing was lost: the quick check, right for most letters of most faces.</summary>
    private static bool HasAreaOfContours(Tangle tangle, Outline outline)
    {
        if (tangle.Raw.Count != 1)
        {
            return false;
        }

        double before = Math.Abs(tangle.Raw[0].Sum(r => RingOrder.SignedArea(r)));
        return Math.Abs(outline.AreaMm2() - before) <= SameArea * before;
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

    private static SKPath PathOf(List<Point[]> rings, double mmPerUnit)
    {
        using var path = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        foreach (var ring in rings)
        {
            path.AddPoly(Array.ConvertAll(ring, p => new SKPoint((float)(p.XMm / mmPerUnit), (float)(-p.YMm / mmPerUnit))), true);
        }

        return path.Detach();
    }
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout;

/// <summary>What stands at one place along a strip: a name, or two one above the other.</summary>
internal static class PlacesAlong
{
    /// <summary>From left to right; at each place the upper one first.</summary>
    /// <param name="lying">From where to where, and on which of two lines; 0 where there is one.</param>
    public static IEnumerable<ImmutableArray<T>> Of<T>(IEnumerable<T> items, Func<T, (double StartMm, double EndMm, int Line)> lying)
    {
        var here = ImmutableArray.CreateBuilder<T>();
        double end = double.NegativeInfinity;
        foreach (var item in items.OrderBy(i => lying(i).StartMm))
        {
            var (startMm, endMm, line) = lying(item);
            bool isBeside = here.Count == 0 || line == 0 || startMm > end - Tolerance.ReadBackMm || here.Any(h => lying(h).Line == line);
            if (isBeside && here.Count > 0)
            {
                yield return Ordered(here);
                here.Clear();
            }

            end = here.Count == 0 ? endMm : Math.Max(end, endMm);
            here.Add(item);
        }

        if (here.Count > 0)
        {
            yield return Ordered(here);
        }

        ImmutableArray<T> Ordered(IEnumerable<T> place) => [.. place.OrderBy(p => lying(p).Line)];
    }

    public static IEnumerable<ImmutableArray<PlacedName>> Of(IEnumerable<PlacedName> names) => Of(names, n => (n.StartMm, n.EndMm, n.Line));

    /// <summary>The names of each place as one, as wide as both.</summary>
    public static IEnumerable<PlacedName> Merged(IEnumerable<PlacedName> names) => Of(names).Select(Merged);

    private static PlacedName Merged(ImmutableArray<PlacedName> place)
    {
        if (place.Length == 1)
        {
            return place[0];
        }

        double start = place.Min(n => n.StartMm);
        return place[0] with { StartMm = start, WidthMm = place.Max(n => n.EndMm) - start };
    }
}

using System.Collections.Immutable;

namespace NameBand.Output.Tracing;

/// <summary>What one row of a template shows of its cloth, in mm of the cloth’s tape.</summary>
/// <param name="Number">From 1; with the next one it has <see cref="Template.OverlapMm"/> in common.</param>
internal sealed record TemplateWindow(int Number, int Rows, double FromMm, double ToMm)
{
    /// <summary>Room before a hooping for its cross and the strip’s edge.</summary>
    private const double BeforeMm = 2;

    /// <summary>
    /// Rows of at most <paramref name="lengthMm"/>, cut so that whatever is to be whole is whole on one of them, as far as a row
    /// can hold it.
    /// </summary>
    /// <param name="whole">From where to where each hooping lies.</param>
    public static ImmutableArray<TemplateWindow> Of(
        double fromMm, double toMm, double lengthMm, IReadOnlyCollection<(double FromMm, double ToMm)> whole)
    {
        var starts = new List<double> { fromMm };
        while (starts[^1] + lengthMm < toMm)
        {
            double from = starts[^1];
            double end = from + lengthMm;
            double next = end - Template.OverlapMm;

            // The first hooping that this row would cut begins the next one.
            double? cut =
                whole.Where(w => w.FromMm - BeforeMm > from && w.FromMm < end && w.ToMm > end && w.ToMm - w.FromMm + BeforeMm <= lengthMm)
                .Select(w => (double?)(w.FromMm - BeforeMm)).Min();
            starts.Add(Math.Min(next, cut ?? next));
        }

        return
        [
            .. starts.Select((from, i) => new TemplateWindow(
                i + 1, starts.Count, from, i + 1 < starts.Count ? starts[i + 1] + Template.OverlapMm : toMm)),
        ];
    }
}

using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout.Pieces;

namespace NameBand.Layout.Resuming;

/// <summary>
/// Cloths of their own for rounds that were added after the first cloths were cut: they never share cloth that something is sewn on.
/// Their joins keep off centre front, as all joins do.
/// </summary>
internal static class AddedCloths
{
    public static IEnumerable<StripCloth> For(BandJob job, Sizing sizing, double[] hemsMm, IReadOnlyCollection<StripCloth> cut)
    {
        int number = cut.Select(c => c.Number).DefaultIfEmpty(0).Max();
        int piece = cut.SelectMany(c => c.Pieces).Select(p => p.Number).DefaultIfEmpty(0).Max();
        var clothed = cut.SelectMany(c => c.Pieces).Select(p => p.Round).ToHashSet();
        foreach (int round in Enumerable.Range(1, hemsMm.Length).Where(r => !clothed.Contains(r)))
        {
            double length = hemsMm[round - 1];
            double[] ends = [0, .. JoinPlaces.BeforeNames(sizing.Hem, round, length), length];
            for (int i = 0; i < ends.Length - 1; i++)
            {
                var (before, after) = PieceEnds.AllowancesMm(job, sizing.Hem, isFirst: i == 0, isLast: i == ends.Length - 2);
                double end = job.Layout.EndCloth.Mm;
                var added = new StripPiece(++piece, round, ends[i], ends[i + 1] - ends[i], ++number, 1, end + before, before, after);
                yield return PieceEnds.Cloth(job, sizing, [added], []);
            }
        }
    }
}

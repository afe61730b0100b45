using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout.Pieces;

/// <summary>
/// Finds the hoopings that cost least work for curved strips nested on one cloth. A dynamic program over the names at which the
/// strips stand; a piece holds a score of names at most, so that all of them are looked at.
/// </summary>
/// <param name="left">Angles at which the names of each strip begin, from left to right.</param>
/// <param name="right">Angles at which they end.</param>
/// <param name="fields">The first holds every name.</param>
internal sealed class BentCover(NestedArcs nest, double[][] left, double[][] right, ImmutableArray<ArcField> fields,
    double segmentWork = LaneCover.SegmentPart)
{
    /// <summary>So many places are looked at: three pieces of 30 names, where a metre holds a score.</summary>
    public const int MostPlaces = 30_000;

    /// <summary>How many places strips with so many names can stand at together.</summary>
    public static double Places(IEnumerable<int> names) => names.Aggregate(1.0, (all, n) => all * (n + 1));

    private readonly int[] _sizes = [.. left.Select(l => l.Length + 1)];

    /// <summary>By so much the number of a place grows with each name of a strip.</summary>
    private readonly int[] _units = [.. left.Select((_, l) => left.Skip(l + 1).Aggregate(1, (all, next) => all * (next.Length + 1)))];

    private readonly record struct Step(double Work, int Field, int To);

    /// <summary>The hoopings from left to right, each with its field and the share of every strip that has names in it.</summary>
    public ImmutableArray<(int Field, ImmutableArray<LaneCutter.Share> Shares)> Cut()
    {
        var steps = Solve();
        var cut = ImmutableArray.CreateBuilder<(int, ImmutableArray<LaneCutter.Share>)>();
        for (int at = 0; at < steps.Length - 1; at = steps[at].To)
        {
            var (from, to) = (Places(at), Places(steps[at].To));
            cut.Add((steps[at].Field,
                [.. Enumerable.Range(0, from.Length).Where(l => to[l] > from[l])
                    .Select(l => new LaneCutter.Share(l, from[l], to[l] - from[l]))]));
        }

        // What is sewn of one strip alone may have come before something that lies farther left.
        return [.. cut.OrderBy(c => c.Item2.Min(s => left[s.Lane][s.First]))];
    }

    public double LeastWork() => Solve()[0].Work;

    /// <summary>For each place of all strips the least work from there on, and how it goes on.</summary>
    private Step[] Solve()
    {
        var steps = new Step[_sizes.Aggregate(1, (all, s) => all * s)];
        for (int at = steps.Length - 2; at >= 0; at--)
        {
            int[] next = Places(at);
            var best = new Step(double.PositiveInfinity, 0, 0);
            for (int field = 0; field < fields.Length; field++)
            {
                Try(next, (field, 0), [], at, steps, ref best);
            }

            steps[at] = best;
        }

        return steps;
    }

    /// <summary>None, one, two … names of each strip in turn, as long as the field holds them.</summary>
    private void Try(int[] next, (int Field, int Lane) of, ImmutableArray<ArcSpan> taken, int to, Step[] steps, ref Step best)
    {
        var (field, lane) = of;
        if (lane == next.Length)
        {
            double work = fields[field].Work + (taken.Length * segmentWork) + steps[to].Work;
            best = !taken.IsEmpty && work < best.Work - Tolerance.Rounding ? new Step(work, field, to) : best;
            return;
        }

        Try(next, (field, lane + 1), taken, to, steps, ref best);
        int names = left[lane].Length;
        for (int last = next[lane]; last < names; last++)
        {
            // A name that alone is as long as the largest field is sewn all the same.
            var span = new ArcSpan(lane, left[lane][next[lane]], right[lane][last]);
            bool isAlone = field == 0 && taken.IsEmpty && last == next[lane];
            if (!isAlone && IsTooFar(span, taken, field))
            {
                break;
            }

            var with = taken.Add(span);
            if (!isAlone && nest.Extent(with, fields[field]) is null)
            {
                break;
            }

            Try(next, (field, lane + 1), with, to + ((last - next[lane] + 1) * _units[lane]), steps, ref best);
        }
    }

    /// <summary>What is seen at once: names farther apart than the field is long.</summary>
    private bool IsTooFar(ArcSpan span, ImmutableArray<ArcSpan> taken, int field)
    {
        var (from, to) = (span.FromRad, span.ToRad);
        foreach (var other in taken)
        {
            (from, to) = (Math.Min(from, other.FromRad), Math.Max(to, other.ToRad));
        }

        return (to - from) * nest.TightestMm > fields[field].LongestMm + Tolerance.RoundingMm;
    }

    private int[] Places(int at)
    {
        int[] next = new int[_sizes.Length];
        for (int l = _sizes.Length - 1; l >= 0; l--)
        {
            (at, next[l]) = Math.DivRem(at, _sizes[l]);
        }

        return next;
    }
}

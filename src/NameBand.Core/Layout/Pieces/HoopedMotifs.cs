using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout.Pieces;

/// <summary>
/// What of a strip goes into one hooping whole: a name, with its motifs or without, or a motif that may go with either neighbour.
/// </summary>
/// <param name="Name">Null: a motif alone.</param>
/// <param name="Run">Its run of neighbours that go the same way.</param>
/// <param name="Ahead">The motif on its left, where that goes with it and not with the name before.</param>
/// <param name="Behind">The motif on its right, likewise.</param>
internal sealed record HoopedUnit(PlacedName? Name, int Run, PlacedName? Ahead = null, PlacedName? Behind = null)
{
    public PlacedName First => Ahead ?? Name ?? Behind!;

    public PlacedName Last => Behind ?? Name ?? Ahead!;

    public IEnumerable<PlacedName> Motifs => new[] { Ahead, Behind }.OfType<PlacedName>();
}

/// <summary>
/// Tells which motifs are sewn, and with which names, so that a strip has the same whatever lies beside it: its hoopings as they are
/// where it lies alone say so. One that stands between two of them goes to the left one, if the field still holds it, else to the
/// right one, else to none: no hooping is added for its sake.
/// </summary>
/// <remarks>
/// On a straight strip one that is sewn may then go with either neighbour, as it comes cheapest. On a curved one, where all places of all
/// strips are looked at, it stays with its name, for that leaves half as many.
/// </remarks>
internal sealed class HoopedMotifs(Sizing sizing, double heightMm)
{
    private readonly MotifGaps? _gaps = MotifGaps.Of(sizing, heightMm);

    /// <summary>What of a part of a round is sewn in a hoop, from left to right.</summary>
    public ImmutableArray<HoopedUnit> Of(RoundPart part)
    {
        HoopedUnit[] names = [.. part.Names.Zip(part.Runs, (n, r) => new HoopedUnit(n, r)).Where(n => !n.First.Lettered.IsInOneRun)];
        if (_gaps is null || names.Length == 0)
        {
            return [.. names];
        }

        foreach (var share in LaneCutter.Alone(names, part.StartMm, sizing))
        {
            var (from, to) = (share.First, share.First + share.Count - 1);
            for (int i = from; i < to; i++)
            {
                names[i] = names[i] with { Behind = Between(i, i + 1) };
            }

            if (to + 1 < names.Length && Between(to, to + 1) is { } behind && SegmentCutter.FitsField(names[from].First, behind, sizing))
            {
                names[to] = names[to] with { Behind = behind };
            }

            if (from > 0 && names[from - 1].Behind is null && Between(from - 1, from) is { } ahead
                && SegmentCutter.FitsField(ahead, names[to].Last, sizing))
            {
                names[from] = names[from] with { Ahead = ahead };
            }
        }

        return sizing.Hem.IsCurved ? [.. names] : [.. names.SelectMany(Loose)];

        PlacedName? Between(int one, int next) => _gaps.Between(
            names[one].Name!, names[next].Name!, part.Round.Stretches, part.Round.LengthMm > part.Round.HemMm + Tolerance.RoundingMm);
    }

    private static IEnumerable<HoopedUnit> Loose(HoopedUnit name) =>
    [
        .. name.Ahead is { } ahead ? [new HoopedUnit(null, name.Run, Ahead: ahead)] : ImmutableArray<HoopedUnit>.Empty,
        name with { Ahead = null, Behind = null },
        .. name.Behind is { } behind ? [new HoopedUnit(null, name.Run, Behind: behind)] : ImmutableArray<HoopedUnit>.Empty,
    ];
}

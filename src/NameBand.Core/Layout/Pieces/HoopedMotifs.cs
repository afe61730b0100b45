using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout.Pieces;

/// <summary>What one lane has in one hooping: its names with the motifs that go with them.</summary>
/// <param name="First">The leftmost name or motif.</param>
/// <param name="Last">The rightmost name or motif.</param>
/// <param name="LeftMm">Its left end on the cloth, from the first lane's start.</param>
internal sealed record HoopedItem(PlacedName First, PlacedName Last, double LeftMm, double RightMm, ImmutableArray<PlacedName> Motifs);

/// <summary>
/// Gives every motif to one hooping. One that stands between two hoopings goes to the left one, if the field still holds
/// it, else to the right one, else to none.
/// </summary>
internal sealed class HoopedMotifs(Sizing sizing, double heightMm)
{
    private readonly MotifGaps? _gaps = MotifGaps.Of(sizing, heightMm);

    /// <summary>Names whose following motif is sewn.</summary>
    private readonly HashSet<PlacedName> _done = new(ReferenceEqualityComparer.Instance);

    /// <summary>For each share the names and motifs of its lane; together they lie in one field.</summary>
    /// <param name="isHeld">Whether the field of the frame that the hooping is sewn in holds all of it.</param>
    public ImmutableArray<HoopedItem> Add(
        IReadOnlyList<RoundPart> lanes, IReadOnlyList<double> offsetsMm, ImmutableArray<LaneCutter.Share> shares,
        Func<HoopedItem[], bool> isHeld)
    {
        var items = shares.Select(s => Inside(lanes[s.Lane], offsetsMm[s.Lane], s)).ToArray();
        for (int k = 0; k < items.Length && _gaps is not null; k++)
        {
            var (lane, offset, share) = (lanes[shares[k].Lane], offsetsMm[shares[k].Lane], shares[k]);
            if (After(lane, share.First + share.Count - 1) is { } behind && SegmentCutter.FitsField(items[k].First, behind, sizing)
                && Holds(k,
                    items[k] with { Last = behind, RightMm = OnClothEnd(lane, offset, behind), Motifs = items[k].Motifs.Add(behind) }))
            {
                _done.Add(lane.Names[share.First + share.Count - 1]);
            }

            if (After(lane, share.First - 1) is { } ahead && !_done.Contains(lane.Names[share.First - 1])
                && SegmentCutter.FitsField(ahead, items[k].Last, sizing)
                && Holds(k,
                    items[k] with { First = ahead, LeftMm = OnCloth(lane, offset, ahead), Motifs = items[k].Motifs.Insert(0, ahead) }))
            {
                _done.Add(lane.Names[share.First - 1]);
            }
        }

        return [.. items];

        bool Holds(int k, HoopedItem more)
        {
            HoopedItem[] with = [.. items];
            with[k] = more;
            items = isHeld(with) ? with : items;
            return items == with;
        }
    }

    /// <summary>Whether straight strips' names and motifs lie in a field so long.</summary>
    public static bool AreWithin(HoopedItem[] items, double fieldMm) =>
        items.Max(i => i.RightMm) - items.Min(i => i.LeftMm) <= fieldMm + Tolerance.RoundingMm;

    private HoopedItem Inside(RoundPart lane, double offset, LaneCutter.Share share)
    {
        var (first, last) = (lane.Names[share.First], lane.Names[share.First + share.Count - 1]);
        return new HoopedItem(
            first, last, OnCloth(lane, offset, first), OnClothEnd(lane, offset, last),
            [.. Enumerable.Range(share.First, share.Count - 1).Select(i => After(lane, i)).OfType<PlacedName>()]);
    }

    private PlacedName? After(RoundPart lane, int name) => _gaps is null || name < 0 || name + 1 >= lane.Names.Length
        ? null
        : _gaps.Between(
            lane.Names[name], lane.Names[name + 1], lane.Round.Stretches, lane.Round.LengthMm > lane.Round.HemMm + Tolerance.RoundingMm);

    private double OnCloth(RoundPart lane, double offset, PlacedName item) => offset + sizing.Flat.OnClothMm(item.StartMm - lane.StartMm);

    private double OnClothEnd(RoundPart lane, double offset, PlacedName item) => offset + sizing.Flat.OnClothMm(item.EndMm - lane.StartMm);
}

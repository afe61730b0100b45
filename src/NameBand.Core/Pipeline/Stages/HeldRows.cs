using System.Collections.Immutable;
using NameBand.Lettering;
using NameBand.Names;

namespace NameBand.Pipeline.Stages;

/// <summary>Rows that a later room holds back lose their place among the names.</summary>
internal static class HeldRows
{
    /// <summary>
    /// Rows held for their letters. Rows that are held already and would be held for their letters as well say so at once:
    /// one answer settles both, where two after each other would undo one another.
    /// </summary>
    /// <param name="letter">Letters names as they would be sewn.</param>
    public static NameList OfLetters(NameList list, ImmutableArray<HeldRow> held, Func<NameList, LetteredList?> letter)
    {
        var known = held.Select(h => h.Row).ToHashSet();
        var names = new NameList([], [.. AsTheyWouldBe(list).Where(n => !known.Contains(n.Row))]);
        var both = (names.Names.IsEmpty ? null : letter(names)?.Held)?.ToDictionary(h => h.Row);
        var told = both is not { Count: > 0 } ? list : list with
        {
            Rows = [.. list.Rows.Select(r => both.TryGetValue(r.Row, out var why)
                ? r.HeldBecause(HeldFor.Letters, $"{r.Reason}; and {why.Reason}", why.Offer)
                : r)],
        };
        return Merge(told, held);
    }

    /// <summary>The names of rows that are held for another reason than their letters, as they would be sewn if they were kept.</summary>
    public static ImmutableArray<Name> AsTheyWouldBe(NameList list) =>
    [
        .. list.Rows.Where(r => r.Outcome == RowOutcome.Held && r.HeldFor is HeldFor.Doubt or HeldFor.Wish
            && r.WouldBe.Length is > 0 and <= NameText.Longest).Select(r => new Name(r.WouldBe, r.Row) { Group = r.Group }),
    ];

    public static NameList Merge(NameList list, ImmutableArray<HeldRow> held)
    {
        if (held.IsEmpty)
        {
            return list;
        }

        var reasons = held.ToDictionary(h => h.Row);
        return new NameList(
            [
                .. list.Rows.Select(r => !reasons.TryGetValue(r.Row, out var why) ? r
                    : r.HeldBecause(What(why), why.Reason, why.Offer) with { FitsAtFactor = why.FitsAtFactor }),
            ],
            [.. list.Names.Where(n => !reasons.ContainsKey(n.Row))]);
    }

    private static HeldFor What(HeldRow why) =>
        why.IsForItsSize ? HeldFor.Size : why.IsForMarks ? HeldFor.Marks : HeldFor.Letters;
}

using System.Globalization;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Puts the names into the order in which they go round.</summary>
internal static class Ordering
{
    /// <param name="collation">A locale whose alphabet is followed; "und" for the order that suits all languages best.</param>
    public static IReadOnlyList<LetteredName> Order(IReadOnlyList<LetteredName> names, NameOrder order, string collation)
    {
        if (order != NameOrder.Alphabetical)
        {
            return Beside(names);
        }

        var culture = collation is "und" or "" ? CultureInfo.InvariantCulture : CultureInfo.GetCultureInfo(collation);
        return Beside([.. names.OrderBy(n => n.Standing.Block).ThenBy(n => !n.Standing.IsHeading).ThenBy(n => n.Name.IsPlannedLast)
            .ThenBy(n => n.Name.Text, StringComparer.Create(culture, CompareOptions.None))]);
    }

    /// <summary>Names that are to stand after or before another one are put there, one wish after the other.</summary>
    private static IReadOnlyList<LetteredName> Beside(IReadOnlyList<LetteredName> names)
    {
        if (names.All(n => (n.Name.Wish?.After ?? n.Name.Wish?.Before) is null))
        {
            return names;
        }

        var moved = names.ToList();
        foreach (var name in names)
        {
            if ((name.Name.Wish?.After ?? name.Name.Wish?.Before) is not { } other)
            {
                continue;
            }

            int beside = moved.FindIndex(n => n.Name.Text == other && !ReferenceEquals(n, name)
                && n.Standing.OwnRounds == name.Standing.OwnRounds);
            if (beside >= 0)
            {
                var anchor = moved[beside];
                moved.RemoveAt(moved.FindIndex(n => ReferenceEquals(n, name)));
                moved.Insert(moved.FindIndex(n => ReferenceEquals(n, anchor)) + (name.Name.Wish!.After is null ? 0 : 1), name);
            }
        }

        return moved;
    }
}

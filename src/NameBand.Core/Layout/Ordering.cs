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
            return names;
        }

        var culture = collation is "und" or "" ? CultureInfo.InvariantCulture : CultureInfo.GetCultureInfo(collation);
        return [.. names.OrderBy(n => n.Standing.Block).ThenBy(n => !n.Standing.IsHeading).ThenBy(n => n.Name.IsPlannedLast)
            .ThenBy(n => n.Name.Text, StringComparer.Create(culture, CompareOptions.None))];
    }
}

using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The groups of names.</summary>
internal static partial class JobAssembly
{
    private const int MostGroups = 50; // A count: a file with more was not written by hand, and each group is laid out by itself.

    private static GroupSettings Groups(string folder, JobValues values)
    {
        string? column = values.Text(LayoutKeys.GroupColumn);
        if (values.Form(LayoutKeys.Groups) is not { } given)
        {
            if (column is not null)
            {
                values.Refuse(
                    LayoutKeys.GroupColumn, "columns.group names a column, and the job has no groups.",
                    "Add groups, or remove columns.group.");
            }

            return GroupSettings.None;
        }

        if (given.Kind != JsonKind.Series || given.Items.IsEmpty || given.Items.Length > MostGroups
            || given.Items.Any(i => i.Kind != JsonKind.Group))
        {
            values.Refuse(
                LayoutKeys.Groups, $"groups takes {LayoutKeys.Groups.Takes}, one to {MostGroups} of them, and this is {given.InWords}.",
                "Write for example \"groups\": [{ \"name\": \"patrons\", \"from\": 100, \"heightFactor\": 1.25 }].");
            return GroupSettings.None;
        }

        ImmutableArray<NameGroup> groups = [.. given.Items.Select(
            (g, i) => new GroupForm(folder, values, new PieceForm(values, LayoutKeys.Groups, "group", i + 1, g)).Read())];
        if (column is null && groups.Any(g => !g.IsRest))
        {
            values.Refuse(
                LayoutKeys.Groups, "The job has groups and does not say which column of the list tells who is in which.",
                "Add \"columns\": { \"group\": \"…\" } with the column's heading.");
        }

        CheckTogether(groups, given, values);
        return new GroupSettings(column, groups);
    }

    private static void CheckTogether(ImmutableArray<NameGroup> groups, JsonPiece given, JobValues values)
    {
        for (int i = 0; i < groups.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                var (one, other) = (groups[j], groups[i]);
                Said both = $"“{PlainText.Short(one.Name)}” and “{PlainText.Short(other.Name)}”";
                if (string.Equals(one.Name, other.Name, StringComparison.OrdinalIgnoreCase))
                {
                    Tell(i, "name", $"Two groups are called “{PlainText.Short(other.Name)}”.", "Give each group a name of its own.");
                }
                else if (one.IsRest && other.IsRest)
                {
                    Tell(i, "rest", $"Both {both} are to hold the rest.", "Keep \"rest\": true in one of them.");
                }
                else if (one.Values.Intersect(other.Values, StringComparer.OrdinalIgnoreCase).FirstOrDefault() is { } shared)
                {
                    Tell(i, "values", $"The groups {both} both hold the value “{PlainText.Short(shared)}”.", "Keep it in one of them.");
                }
                else if (one.GoesByNumber && other.GoesByNumber && Overlap(one, other))
                {
                    Tell(i, "from", $"The groups {both} hold some of the same numbers.",
                        "Give the lower one \"below\" with the number from which the higher one begins.");
                }
            }
        }

        int faced = groups.ToList().FindIndex(g => g.Face is not null);
        if (faced >= 0 && values.AreSound(JobKeys.Way, JobKeys.Ways, LayoutKeys.Groups) && WayTraits.OfAny(Ways(values)).HasLettersOfItsOwn)
        {
            Tell(
                faced, "face",
                $"The group “{PlainText.Short(groups[faced].Name)}” has a face of its own, and names that are keyed in have the machine’s letters.",
                "Take face out of the group; heightFactor, place and heading may stay.");
        }

        bool isPlaced = groups.Any(g => g.Place != GroupPlace.Among);
        if (isPlaced && values.AreSound(JobKeys.Order) && values.Word(JobKeys.Order) == NameOrder.BestFit)
        {
            values.Refuse(
                JobKeys.Order, "\"bestFit\" takes the names in any order, and some groups have a place of their own.",
                "Write \"listed\" or \"alphabetical\", or take \"place\" out of the groups.");
        }

        void Tell(int group, string key, Said found, Said mend) =>
            values.Refuse(
                LayoutKeys.Groups, given.Items[group], $"groups[{(group + 1).ToString(CultureInfo.InvariantCulture)}].{key}", found, mend);
    }

    private static bool Overlap(NameGroup one, NameGroup other) =>
        (one.From ?? double.NegativeInfinity) < (other.Below ?? double.PositiveInfinity)
        && (other.From ?? double.NegativeInfinity) < (one.Below ?? double.PositiveInfinity);
}

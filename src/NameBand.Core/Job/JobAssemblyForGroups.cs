using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The groups of names.</summary>
internal static partial class JobAssembly
{
    private const int MostGroups = 50;
    private const int MostInside = 80;
    private static readonly string[] GroupKeys = ["name", "values", "from", "below", "rest", "heightFactor", "face", "place", "heading", "thread"];

    private static readonly (string Word, GroupPlace Place)[] Places =
        [("first", GroupPlace.First), ("last", GroupPlace.Last), ("ownRound", GroupPlace.OwnRound), ("among", GroupPlace.Among)];

    private static GroupSettings Groups(string folder, JobValues values)
    {
        string? column = values.Text(LayoutKeys.GroupColumn);
        if (values.Form(LayoutKeys.Groups) is not { } given)
        {
            if (column is not null)
            {
                values.Refuse(LayoutKeys.GroupColumn, "columns.group names a column, and the job has no groups.", "Add groups, or take columns.group away.");
            }

            return GroupSettings.None;
        }

        if (given.Kind != JsonKind.Series || given.Items.IsEmpty || given.Items.Length > MostGroups || given.Items.Any(i => i.Kind != JsonKind.Group))
        {
            values.Refuse(
                LayoutKeys.Groups, $"groups takes {LayoutKeys.Groups.Takes}, one to {MostGroups} of them, and this is {given.InWords}.",
                "Write for example \"groups\": [{ \"name\": \"patrons\", \"from\": 100, \"heightFactor\": 1.25 }].");
            return GroupSettings.None;
        }

        var form = new GroupForm(folder, values);
        ImmutableArray<NameGroup> groups = [.. given.Items.Select(form.Read)];
        if (column is null && groups.Any(g => !g.IsRest))
        {
            values.Refuse(LayoutKeys.Groups, "The job has groups and does not say which column of the list tells who is in which.", "Add \"columns\": { \"group\": \"…\" } with the column's heading.");
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
                string both = $"“{PlainText.Short(one.Name)}” and “{PlainText.Short(other.Name)}”";
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
                    Tell(i, "from", $"The groups {both} hold some of the same numbers.", "Give the lower one \"below\" with the number from which the higher one begins.");
                }
            }
        }

        int faced = groups.ToList().FindIndex(g => g.Face is not null);
        if (faced >= 0 && values.AreSound(JobKeys.Way, JobKeys.Ways, LayoutKeys.Groups) && WayTraits.OfAny(Ways(values)).HasLettersOfItsOwn)
        {
            Tell(
                faced, "face", $"The group “{PlainText.Short(groups[faced].Name)}” has a face of its own, and names that are keyed in have the machine’s letters.",
                "Take face out of the group; heightFactor, place and heading may stay.");
        }

        bool isPlaced = groups.Any(g => g.Place != GroupPlace.Among);
        if (isPlaced && values.AreSound(JobKeys.Order) && values.Word(JobKeys.Order) == NameOrder.BestFit)
        {
            values.Refuse(JobKeys.Order, "\"bestFit\" takes the names in any order, and some groups have a place of their own.", "Write \"listed\" or \"alphabetical\", or take \"place\" out of the groups.");
        }

        void Tell(int group, string key, string found, string mend) =>
            values.Refuse(LayoutKeys.Groups, given.Items[group], $"groups[{(group + 1).ToString(CultureInfo.InvariantCulture)}].{key}", found, mend);
    }

    private static bool Overlap(NameGroup one, NameGroup other) =>
        (one.From ?? double.NegativeInfinity) < (other.Below ?? double.PositiveInfinity)
        && (other.From ?? double.NegativeInfinity) < (one.Below ?? double.PositiveInfinity);

    /// <summary>Reads one group after another.</summary>
    private sealed class GroupForm(string folder, JobValues values)
    {
        private int _number;

        public NameGroup Read(JsonPiece piece)
        {
            _number++;
            foreach (var member in piece.Members)
            {
                if (!GroupKeys.Contains(member.Key))
                {
                    string mend = NearestWord.Find(member.Key, GroupKeys) is { } near ? $"Did you mean {near}?" : $"The keys of a group are {string.Join(", ", GroupKeys)}.";
                    Refuse(member.Value, PlainText.Short(member.Key, 100), "NameBand does not know this key of a group.", mend);
                }
            }

            foreach (var twice in piece.Members.GroupBy(m => m.Key, StringComparer.Ordinal).Where(g => g.Count() > 1))
            {
                Refuse(twice.Last().Value, twice.Key, $"“{PlainText.Short(twice.Key)}” stands in this group twice.", "Keep one of the two.");
            }

            string name = Text(piece, "name") ?? "";
            if (name.Length == 0 && Of(piece, "name") is null)
            {
                Refuse(piece, "name", "This group has no name.", "Add for example \"name\": \"patrons\".");
            }

            var group = new NameGroup(
                name, Values(piece), Number(piece, "from", -1e12, 1e12), Number(piece, "below", -1e12, 1e12), Rest(piece),
                Number(piece, "heightFactor", 0.3, 3) ?? 1, Text(piece, "face") is { } face ? JobPaths.CheckFace(folder, face, LayoutKeys.Groups, values) : null,
                Place(piece), Text(piece, "heading"))
            {
                Thread = Thread(piece),
            };
            Check(group, piece);
            return group;
        }

        private CssColour? Thread(JsonPiece piece)
        {
            if (Text(piece, "thread") is not { } written)
            {
                return null;
            }

            if (CssColour.TryParse(written, out var colour))
            {
                return colour;
            }

            Refuse(piece, "thread", $"“{PlainText.Short(written, 40)}” is no colour.", NearColour(written) + ColourMend);
            return null;
        }

        private void Check(NameGroup group, JsonPiece piece)
        {
            int rules = (group.Values.IsEmpty ? 0 : 1) + (group.GoesByNumber ? 1 : 0) + (group.IsRest ? 1 : 0);
            if (rules != 1)
            {
                Refuse(
                    piece, "values", rules == 0 ? $"The group “{PlainText.Short(group.Name)}” does not say who is in it." : $"The group “{PlainText.Short(group.Name)}” says in more than one way who is in it.",
                    "Give it one of: values (a list of texts), from and below (numbers), or \"rest\": true.");
            }

            if (group.From >= group.Below)
            {
                Refuse(piece, "below", $"The group “{PlainText.Short(group.Name)}” begins at a number that is not below its end.", "Make from less than below.");
            }

            if (group.Heading is not null && group.Place == GroupPlace.Among)
            {
                Refuse(piece, "heading", $"The group “{PlainText.Short(group.Name)}” has a heading, and its names stand among the others.", "Add \"place\": \"first\", \"last\" or \"ownRound\", or take the heading away.");
            }
        }

        private static JsonPiece? Of(JsonPiece piece, string key) => piece.Members.FirstOrDefault(m => m.Key == key)?.Value;

        private string? Text(JsonPiece piece, string key)
        {
            if (Of(piece, key) is not { } given)
            {
                return null;
            }

            if (given.Kind == JsonKind.Text && !string.IsNullOrWhiteSpace(given.Text) && given.Text.Length <= MostInside && !given.Text.Any(char.IsControl))
            {
                return PlainText.Normal(given.Text.Trim());
            }

            Refuse(given, key, $"{key} is to be text of one to {MostInside} ordinary characters, and this is {given.InWords}.", "Write text in double quotes.");
            return null;
        }

        private ImmutableArray<string> Values(JsonPiece piece)
        {
            if (Of(piece, "values") is not { } given)
            {
                return [];
            }

            if (given.Kind == JsonKind.Series && !given.Items.IsEmpty && given.Items.All(i => i.Kind is JsonKind.Text or JsonKind.Number && i.Text.Trim().Length > 0))
            {
                return [.. given.Items.Select(i => PlainText.Normal(i.Text.Trim()))];
            }

            Refuse(given, "values", $"values takes a list of texts, and this is {given.InWords}.", "Write what stands in the column, such as [\"gold\", \"silver\"].");
            return [];
        }

        private double? Number(JsonPiece piece, string key, double low, double high)
        {
            if (Of(piece, key) is not { } given)
            {
                return null;
            }

            if (given.Kind == JsonKind.Number && double.Parse(given.Text, CultureInfo.InvariantCulture) is var number && number >= low && number <= high)
            {
                return number;
            }

            Refuse(given, key, FormattableString.Invariant($"{key} takes a number from {low:0.##} to {high:0.##}, and this is {given.InWords}."), "Write a number without quotes.");
            return null;
        }

        private bool Rest(JsonPiece piece)
        {
            if (Of(piece, "rest") is { Kind: not JsonKind.Flag } wrong)
            {
                Refuse(wrong, "rest", $"rest takes true or false, and this is {wrong.InWords}.", "Write true, without quotes.");
            }

            return Of(piece, "rest") is { Kind: JsonKind.Flag, Text: "true" };
        }

        private GroupPlace Place(JsonPiece piece)
        {
            if (Of(piece, "place") is not { } given)
            {
                return GroupPlace.Among;
            }

            if (given.Kind == JsonKind.Text && Places.Any(p => p.Word == given.Text))
            {
                return Places.First(p => p.Word == given.Text).Place;
            }

            string? near = given.Kind == JsonKind.Text ? NearestWord.Find(given.Text, Places.Select(p => p.Word)) : null;
            Refuse(given, "place", $"place takes \"first\", \"last\", \"ownRound\" or \"among\", and this is {given.InWords}.", near is null ? "Write one of these." : $"Did you mean \"{near}\"?");
            return GroupPlace.Among;
        }

        private void Refuse(JsonPiece part, string key, string found, string mend) =>
            values.Refuse(LayoutKeys.Groups, part, $"groups[{_number.ToString(CultureInfo.InvariantCulture)}].{key}", found, mend);
    }
}

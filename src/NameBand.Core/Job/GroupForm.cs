using NameBand.Common;

namespace NameBand.Job;

/// <summary>Reads one group of job.json.</summary>
internal sealed class GroupForm(string folder, JobValues values, PieceForm form)
{
    private static readonly string[] Keys = ["name", "values", "from", "below", "rest", "heightFactor", "face", "place", "heading",
        "thread"];

    private static readonly (string Word, GroupPlace Place)[] Places =
        [("first", GroupPlace.First), ("last", GroupPlace.Last), ("ownRound", GroupPlace.OwnRound), ("among", GroupPlace.Among)];

    public NameGroup Read()
    {
        form.CheckKeys(Keys);
        string name = form.Text("name") ?? "";
        if (name.Length == 0 && form.Of("name") is null)
        {
            form.Refuse("name", "This group has no name.", "Add for example \"name\": \"patrons\".");
        }

        var group = new NameGroup(
            name, form.Texts("values", "Write what stands in the column, such as [\"gold\", \"silver\"]."),
            form.Number("from", -1e12, 1e12), form.Number("below", -1e12, 1e12), form.Flag("rest"), form.Number("heightFactor", 0.3, 3)
                ?? 1,
            form.Text("face") is { } face ? JobPaths.CheckFace(folder, face, LayoutKeys.Groups, values) : null,
            Place(), form.Text("heading"))
        {
            Thread = Thread(),
        };
        Check(group);
        return group;
    }

    private CssColour? Thread()
    {
        if (form.Text("thread") is not { } written)
        {
            return null;
        }

        if (CssColour.TryParse(written, out var colour))
        {
            return colour;
        }

        form.Refuse("thread", $"“{PlainText.Short(written, 40)}” is no colour.",
            JobAssembly.NearColour(written) + JobAssembly.ColourMend);
        return null;
    }

    private void Check(NameGroup group)
    {
        int rules = (group.Values.IsEmpty ? 0 : 1) + (group.GoesByNumber ? 1 : 0) + (group.IsRest ? 1 : 0);
        if (rules != 1)
        {
            form.Refuse(
                "values", rules == 0 ? (Said)$"The group “{PlainText.Short(group.Name)}” does not say who is in it."
                    : $"The group “{PlainText.Short(group.Name)}” says in more than one way who is in it.",
                "Give it one of: values (a list of texts), from and below (numbers), or \"rest\": true.");
        }

        if (group.From >= group.Below)
        {
            form.Refuse("below", $"The group “{PlainText.Short(group.Name)}” begins at a number that is not below its end.",
                "Make from less than below.");
        }

        if (group.Heading is not null && group.Place == GroupPlace.Among)
        {
            form.Refuse("heading", $"The group “{PlainText.Short(group.Name)}” has a heading, and its names stand among the others.",
                "Add \"place\": \"first\", \"last\" or \"ownRound\", or remove the heading.");
        }
    }

    private GroupPlace Place()
    {
        if (form.Of("place") is not { } given)
        {
            return GroupPlace.Among;
        }

        if (given.Kind == JsonKind.Text && Places.Any(p => p.Word == given.Text))
        {
            return Places.First(p => p.Word == given.Text).Place;
        }

        string? near = given.Kind == JsonKind.Text ? NearestWord.Find(given.Text, Places.Select(p => p.Word)) : null;
        form.Refuse(given, "place", $"place takes \"first\", \"last\", \"ownRound\" or \"among\", and this is {given.InWords}.",
            near is null ? "Write one of these." : (Said)$"Did you mean \"{near}\"?");
        return GroupPlace.Among;
    }
}

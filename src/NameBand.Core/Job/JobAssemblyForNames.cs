using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>What is wished for single names.</summary>
internal static partial class JobAssembly
{
    // A count: each wish is sought along the whole list, and nobody writes more of them by hand. Our assumption.
    private const int MostWishes = 5000;
    private const int LongestNameCharacters = 200; // Characters, as for a name of the list.

    private static readonly string[] WishKeys = ["name", "list", "line", "heightFactor", "face", "after", "before", "round", "at"];

    private static ImmutableArray<NameWish> Wishes(string folder, JobValues values)
    {
        if (values.Form(LayoutKeys.Names) is not { } given)
        {
            return [];
        }

        if (given.Kind != JsonKind.Series || given.Items.Length > MostWishes || given.Items.Any(i => i.Kind != JsonKind.Group))
        {
            values.Refuse(
                LayoutKeys.Names, $"names takes {LayoutKeys.Names.Takes}, and this is {given.InWords}.",
                "Write for example \"names\": [{ \"name\": \"Ottilie Marsh\", \"heightFactor\": 1.2 }].");
            return [];
        }

        var wishes = ImmutableArray.CreateBuilder<NameWish>();
        for (int i = 0; i < given.Items.Length; i++)
        {
            var form = new PieceForm(values, LayoutKeys.Names, "name", i + 1, given.Items[i]);
            var wish = Wish(form, folder, values);
            if (wishes.Any(w => (w.Name, w.List, w.Line) == (wish.Name, wish.List, wish.Line)))
            {
                form.Refuse("name", $"“{PlainText.Short(wish.Name)}” is in names twice.",
                    "Write all that you wish for it into one of the two. Of names that are written alike, say the row: \"line\": 12.");
            }

            wishes.Add(wish);
        }

        return wishes.ToImmutable();
    }

    private static NameWish Wish(PieceForm form, string folder, JobValues values)
    {
        form.CheckKeys(WishKeys);
        if (form.Of("name") is null)
        {
            form.Refuse("name", "Nothing says which name is meant.", "Add for example \"name\": \"Ottilie Marsh\".");
        }

        var wish = new NameWish(form.Text("name", LongestNameCharacters) ?? "", form.Text("list", LongestNameCharacters), (int?)form.Number(
            "line", 1, 10_000_000, isWhole: true))
        {
            HeightFactor = form.Number("heightFactor", 0.3, 3) ?? 1,
            Face = form.Text("face", LongestNameCharacters) is { } face ? JobPaths.CheckFace(folder, face, LayoutKeys.Names, values) : null,
            After = form.Text("after", LongestNameCharacters),
            Before = form.Text("before", LongestNameCharacters),
            Round = (int?)form.Number("round", 1, 200, isWhole: true),
            Pin = Pin(form),
        };
        if (wish is { After: not null, Before: not null })
        {
            form.Refuse("before", $"“{PlainText.Short(wish.Name)}” is to come after one name and before another.",
                "Keep one of the two.");
        }

        if (wish.Pin is not null && (wish.After ?? wish.Before) is not null)
        {
            form.Refuse("at", $"“{PlainText.Short(wish.Name)}” is pinned and is to stand beside another name.", "Keep one of the two.");
        }

        if (wish.Face is not null && values.AreSound(JobKeys.Way, JobKeys.Ways) && WayTraits.OfAny(Ways(values)).HasLettersOfItsOwn)
        {
            form.Refuse(
                "face", $"“{PlainText.Short(wish.Name)}” has a face of its own, and names that are keyed in have the "
                    + $"machine’s letters.",
                "Take its face out; its size and place may stay.");
        }

        return wish;
    }

    private static PinPlace? Pin(PieceForm form)
    {
        if (form.Of("at") is not { } given)
        {
            return null;
        }

        if (given is { Kind: JsonKind.Text, Text: PinPlace.FrontWord or PinPlace.BackWord })
        {
            return new PinPlace(null, given.Text == PinPlace.FrontWord);
        }

        bool isRead = Length.TryParse(given.Kind == JsonKind.Number ? given.Text + " mm" : given.Text, out var at, out Said why);
        if (given.Kind is JsonKind.Text or JsonKind.Number && isRead && at.Mm <= 1_000_000)
        {
            return new PinPlace(at, IsFront: false);
        }

        form.Refuse(
            given, "at", $"at takes \"{PinPlace.FrontWord}\", \"{PinPlace.BackWord}\" or how far along its round the name’s "
                + $"middle is to lie, and this is {given.InWords}.{(!why.IsEmpty ? $" {why}" : "")}",
            "Write for example \"at\": \"centreFront\" or \"at\": \"812 mm\".");
        return null;
    }
}

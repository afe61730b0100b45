using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace NameBand.Job;

/// <summary>Writes what is wished for single names.</summary>
public static class WishEditing
{
    /// <summary>The edit of job.json after which a wish holds; one that says nothing any more is taken out.</summary>
    /// <param name="before">The wish in its place until now; null: there is none.</param>
    public static JobEdit Set(ImmutableArray<NameWish> wishes, NameWish? before, NameWish wish)
    {
        bool saysAny = wish.IsOfPlace || wish.IsOfLetters;
        ImmutableArray<NameWish> after =
        [
            .. before is null ? wishes : wishes.SelectMany(w => w != before ? [w] : saysAny ? [wish] : Array.Empty<NameWish>()),
            .. before is null && saysAny ? [wish] : Array.Empty<NameWish>(),
        ];
        return after.IsEmpty ? JobEdit.Remove(LayoutKeys.Names.Path)
            : new JobEdit(LayoutKeys.Names.Path, new JsonArray([.. after.Select(Json)]).ToJsonString(JobEditing.Writing));
    }

    private static JsonObject Json(NameWish wish)
    {
        var json = new JsonObject { ["name"] = wish.Name };
        Add("list", wish.List);
        Add("line", wish.Line);
        Add("heightFactor", wish.HeightFactor == 1 ? null : wish.HeightFactor);
        Add("face", wish.Face);
        Add("after", wish.After);
        Add("before", wish.Before);
        Add("round", wish.Round);
        Add("at", wish.Pin is not { } pin ? null : pin.At?.InMillimetres().English ?? (pin.IsFront ? PinPlace.FrontWord : PinPlace.BackWord));
        return json;

        void Add(string key, JsonNode? value)
        {
            if (value is not null)
            {
                json[key] = value;
            }
        }
    }
}

using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace NameBand.Job;

/// <summary>People of a workshop.json as they are told on the page; what else stands of them stays as it is.</summary>
internal static class PeopleEditing
{
    private const string EveningsKey = "evenings";
    private const string DoesKey = "does";
    private const string Both = "both";

    private static readonly char[] Partings = [';', ','];

    public static HelperAnswer Of(JsonObject person) => new(Text(person["name"]), EveningsOf(person), DoesOf(person[DoesKey]));

    /// <summary>A time for every day, or one after each weekday, parted by semicolons.</summary>
    public static string EveningsOf(JsonObject? person) => person?[EveningsKey] is JsonObject days
        ? string.Join("; ", days.Select(d => $"{d.Key} {Text(d.Value)}")) : Text(person?[EveningsKey]);

    /// <summary>A word before a time is a weekday; whether there is such a day is for the reader to say.</summary>
    public static JsonNode Evenings(string told)
    {
        string[][] parts =
        [
            .. told.Split(Partings, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Select(p => p.Split(' ', 2, StringSplitOptions.TrimEntries)),
        ];
        if (!parts.Any(p => p is [var day, var time] && day.All(char.IsLetter) && char.IsDigit(time[0])))
        {
            return JsonValue.Create(told);
        }

        var days = new JsonObject();
        foreach (string[] part in parts)
        {
            days[part[0].ToLowerInvariant()] = part.Length > 1 ? part[1] : "";
        }

        return days;
    }

    /// <summary>Somebody who is told already keeps what else is told of them; who is no longer named goes.</summary>
    public static void SetHelpers(JsonArray people, ImmutableArray<HelperAnswer> helpers)
    {
        var known = people.Skip(1).OfType<JsonObject>().ToList();
        while (people.Count > 1)
        {
            people.RemoveAt(1);
        }

        foreach (var helper in helpers)
        {
            int at = known.FindIndex(k => Text(k["name"]) == helper.Name);
            var person = at >= 0 ? (JsonObject)known[at].DeepClone() : new JsonObject { ["name"] = helper.Name };
            Set(person, EveningsKey, EveningsOf(person) != helper.Evenings, helper.Evenings.Length > 0 ? Evenings(helper.Evenings) : null);
            Set(person, DoesKey, DoesOf(person[DoesKey]) != helper.Does, helper.Does.Length > 0 ? JsonValue.Create(helper.Does) : null);
            people.Add(person);
        }
    }

    private static void Set(JsonObject person, string key, bool isChanged, JsonNode? value)
    {
        if (isChanged && value is null)
        {
            person.Remove(key);
        }
        else if (isChanged)
        {
            person[key] = value;
        }
    }

    private static string DoesOf(JsonNode? node) =>
        Text(node is JsonArray { Count: 1 } one ? one[0] : node) is var word && word == Both ? "" : word;

    private static string Text(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : "";
}

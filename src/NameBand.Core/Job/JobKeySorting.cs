using NameBand.Common;

namespace NameBand.Job;

/// <summary>Walks through the groups of a job.json and puts each value under its key's full path.</summary>
internal static class JobKeySorting
{
    private static readonly HashSet<string> Leaves = [.. JobKeys.All.Select(k => k.Path)];

    private static readonly HashSet<string> Groups = [.. JobKeys.All.SelectMany(k => Parents(k.Path))];

    /// <param name="meant">Gets the keys that unknown ones were probably meant to be, so that they are not called missing too.</param>
    /// <param name="file">Where they stand; null: in job.json.</param>
    public static Dictionary<string, (JsonMember Key, JsonPiece Value)> Sort(
        JsonPiece root, List<Problem> problems, ISet<string> meant, string? file = null)
    {
        var given = new Dictionary<string, (JsonMember, JsonPiece)>(StringComparer.Ordinal);
        var found = new List<Problem>();
        Walk(root, "", given, found, meant);
        problems.AddRange(file is null ? found : found.Select(p => p with { Where = p.Where with { File = file } }));
        return given;
    }

    private static void Walk(
        JsonPiece group, string parent, Dictionary<string, (JsonMember, JsonPiece)> given, List<Problem> problems, ISet<string> meant)
    {
        foreach (var member in group.Members)
        {
            string path = OlderSpellings.ToToday(parent + member.Key);
            bool isGroup = Groups.Contains(path);
            var where = JobReader.At(member.Line, member.Column, PlainText.Short(parent + member.Key, 100));
            if (!isGroup && !Leaves.Contains(path))
            {
                problems.Add(Unknown(where, parent, member.Key, meant));
            }
            else if (!given.TryAdd(path, (member, member.Value)))
            {
                problems.Add(Problem.CannotUse(
                    where, Twice(parent, member.Key, given[path].Item1), "Keep one of the two."));
            }
            else if (isGroup && member.Value.Kind == JsonKind.Group)
            {
                Walk(member.Value, path + ".", given, problems, meant);
            }
            else if (isGroup)
            {
                problems.Add(Problem.CannotUse(
                    where, $"{path} takes a group of keys in {{ }}, and this is {member.Value.InWords}.",
                    $"Write for example {Example(path)}."));
            }
        }
    }

    private static Said Twice(string parent, string key, JsonMember first) => first.Key == key
        ? (Said)$"{parent}{key} appears here a second time; the first is on line {first.Line}."
        : $"{parent}{key} is another name of {parent}{first.Key}, which stands on line {first.Line}.";

    private static Problem Unknown(Where where, string parent, string key, ISet<string> meant)
    {
        Said mend;
        if (Meant(parent, key) is { } known)
        {
            meant.Add(OlderSpellings.ToToday(known));
            mend = Parent(known) == parent ? (Said)$"Did you mean {known}?"
                : Parent(known).Length > 0 ? (Said)$"Did you mean {known}, in the group “{Parent(known).TrimEnd('.')}”?"
                : $"Did you mean {known}, outside any group?";
        }
        else
        {
            mend = $"The keys {(parent.Length == 0 ? (Said)"here" : $"in {parent.TrimEnd('.')}")} are {string.Join(", ", In(parent))}.";
        }

        return Problem.CannotUse(where, $"NameBand does not know the key {PlainText.Short(parent + key, 100)}.", mend);
    }

    /// <summary>The key that one nobody knows is most like, in its own group first; null where none is.</summary>
    public static string? Meant(string path) => Meant(Parent(path), Last(path));

    private static string? Meant(string parent, string key) =>
        NearestWord.Find(key, [.. In(parent), .. OlderSpellings.All.Where(p => Parent(p) == parent).Select(Last)]) is { } near
        ? parent + near : NearestElsewhere(key);

    private static List<string> In(string parent) =>
        [.. Leaves.Concat(Groups).Where(p => Parent(p) == parent).Select(Last).Order(StringComparer.Ordinal)];

    /// <summary>Of keys that are called the same in several groups the one that comes first in the table: those of most jobs do.</summary>
    private static string? NearestElsewhere(string key)
    {
        var byLast = JobKeys.All.Select(k => k.Path).GroupBy(Last, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        return NearestWord.Find(key, byLast.Keys.Order(StringComparer.Ordinal)) is { } near ? byLast[near] : null;
    }

    private static IEnumerable<string> Parents(string path)
    {
        for (int dot = path.IndexOf('.', StringComparison.Ordinal); dot >= 0; dot = path.IndexOf('.', dot + 1))
        {
            yield return path[..dot];
        }
    }

    private static string Parent(string path) => path[..(path.LastIndexOf('.') + 1)];

    private static string Last(string path) => path[(path.LastIndexOf('.') + 1)..];

    private static string Example(string path) => path switch
    {
        "hem" => "\"hem\": { \"length\": \"3.66 m\" }",
        "hem.skirt" => "\"skirt\": { \"circlePart\": 0.75, \"waist\": \"70 cm\", \"length\": \"90 cm\" }",
        _ => $"\"{Last(path)}\": {{ \"{Last(Leaves.Where(k => k.StartsWith(path + ".", StringComparison.Ordinal)).Order(StringComparer.Ordinal).First())}\": … }}",
    };
}

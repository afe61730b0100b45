using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Writes what is told into the text of a workshop.json; all else that it tells stays as it is.</summary>
public static class WorkshopEditing
{
    public const string FileName = WorkshopFile.Name;

    private static readonly string OwnMachine = ((Said)"my machine").English;
    private const string Herself = "me";

    /// <summary>What is told already, here or in the folder above; null: nothing, or nothing that can be used.</summary>
    public static WorkshopAnswers? Told(string jobFolder) => Root(Known(jobFolder)) is { } root ? Of(root) : null;

    /// <summary>The file that the answers make of what is told already.</summary>
    /// <returns>Nothing where the answers cannot be used; the problems say why.</returns>
    public static Result<KeptFile> Apply(string jobFolder, WorkshopAnswers answers)
    {
        var known = Known(jobFolder);
        if (Root(known) is not { } root)
        {
            return Result.Fail<KeptFile>(Problem.CannotUse(
                new Where(WorkshopFile.Name), "The file about your workshop cannot be read, so nothing was added to it.",
                    "Mend the file, or remove it."));
        }

        var told = Of(root);
        var machine = First(root, "machines", () => new JsonObject { ["name"] = OwnMachine });
        if (machine["takes"] is null || told?.Skill != answers.Skill)
        {
            machine["takes"] = new JsonArray([.. Takes(answers.Skill).Select(t => JsonValue.Create(WorkshopWords.Of(t)))]);
        }

        if (told is null || !told.Frames.SequenceEqual(answers.Frames))
        {
            SetFrames(machine, answers.Frames);
        }

        if (answers is { HasLetters: true, LetterHeights.IsEmpty: false }
            && (told is null || !told.LetterHeights.SequenceEqual(answers.LetterHeights)))
        {
            var letters = machine["letters"] as JsonObject ?? [];
            letters["sizes"] = new JsonArray([.. answers.LetterHeights.Select(h => JsonValue.Create(h))]);
            machine["letters"] = letters.Parent is null ? letters : letters.DeepClone();
        }

        if (answers.Evening.Length > 0 && told?.Evening != answers.Evening)
        {
            First(root, "people", () => new JsonObject { ["name"] = Herself })["evenings"] = PeopleEditing.Evenings(answers.Evening);
        }

        if (told is null ? !answers.Helpers.IsEmpty : !told.Helpers.SequenceEqual(answers.Helpers))
        {
            First(root, "people", () => new JsonObject { ["name"] = Herself });
            PeopleEditing.SetHelpers((JsonArray)root["people"]!, answers.Helpers);
        }

        byte[] bytes = Encoding.UTF8.GetBytes(root.ToJsonString(JobEditing.Writing) + "\n");
        return Wrong(bytes) is { IsEmpty: false } wrong ? Result.Fail<KeptFile>(wrong) : Result.Of(KeptFile.Of(bytes));
    }

    private static KeptFile Known(string jobFolder)
    {
        var own = JobStore.Read(jobFolder, WorkshopFile.Name);
        return own.IsThere || Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(jobFolder)) is not { Length: > 0 } above
            ? own : JobStore.Read(above, WorkshopFile.Name);
    }

    /// <summary>Null where the file is no group of keys.</summary>
    private static JsonObject? Root(KeptFile file)
    {
        var text = file.Bytes.AsSpan();
        text = text.StartsWith("\uFEFF"u8) ? text[3..] : text;
        if (text.IsEmpty)
        {
            return new JsonObject { ["format"] = 1 };
        }

        try
        {
            return JsonNode.Parse(text, null, new JsonDocumentOptions { AllowDuplicateProperties = false }) as JsonObject;
        }
        catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }

    private static WorkshopAnswers? Of(JsonObject root)
    {
        if ((root["machines"] as JsonArray)?.FirstOrDefault() is not JsonObject machine)
        {
            return null;
        }

        string[] takes = [.. (machine["takes"] as JsonArray)?.Select(Text) ?? []];
        bool keys = takes.Contains(WorkshopWords.Of(MachineTakes.Keys)), files = takes.Contains(WorkshopWords.Of(MachineTakes.Coordinates));
        var frames = (machine["frames"] as JsonArray)?.OfType<JsonObject>()
            .Select(f => new FrameAnswer(Length(f["along"]), Length(f["across"])));
        var person = (root["people"] as JsonArray)?.FirstOrDefault() as JsonObject;
        return new WorkshopAnswers(
            keys ? files ? MachineSkill.Both : MachineSkill.TypesLetters : files ? MachineSkill.FollowsFiles : MachineSkill.StraightOnly,
            [.. frames ?? []], PeopleEditing.EveningsOf(person))
        {
            Helpers = [.. (root["people"] as JsonArray)?.OfType<JsonObject>().Skip(1).Select(PeopleEditing.Of) ?? []],
            LetterHeights = Lengths((machine["letters"] as JsonObject)?["sizes"]),
        };
    }

    private static ImmutableArray<MachineTakes> Takes(MachineSkill skill) => skill switch
    {
        MachineSkill.TypesLetters => [MachineTakes.Keys],
        MachineSkill.FollowsFiles => [MachineTakes.Coordinates],
        MachineSkill.Both => [MachineTakes.Keys, MachineTakes.Coordinates],
        _ => [MachineTakes.Hands],
    };

    /// <summary>A frame that is told already keeps its name, its hold and its minutes.</summary>
    private static void SetFrames(JsonObject machine, ImmutableArray<FrameAnswer> frames)
    {
        var known = (machine["frames"] as JsonArray)?.OfType<JsonObject>().ToList() ?? [];
        var taken = (machine.Root["machines"] as JsonArray ?? []).SelectMany(m => m?["frames"] as JsonArray ?? [])
            .Select(f => Text(f?["name"])).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var set = new JsonArray();
        foreach (var frame in frames)
        {
            int at = known.FindIndex(k => Length(k["along"]) == frame.Along && Length(k["across"]) == frame.Across);
            set.Add(at >= 0 ? known[at].DeepClone()
                : new JsonObject
                {
                    ["name"] = FreeName($"{frame.Along} × {frame.Across}", taken),
                    ["along"] = frame.Along,
                    ["across"] = frame.Across
                });
            if (at >= 0)
            {
                known.RemoveAt(at);
            }
        }

        machine.Remove("frames");
        if (set.Count > 0)
        {
            machine["frames"] = set;
        }
    }

    private static string FreeName(string name, HashSet<string> taken)
    {
        string free = name;
        for (int n = 2; !taken.Add(free); n++)
        {
            free = FormattableString.Invariant($"{name}, number {n}");
        }

        return free;
    }

    private static JsonObject First(JsonObject root, string list, Func<JsonObject> make)
    {
        if (root[list] is not JsonArray all)
        {
            root[list] = all = [];
        }

        if (all.FirstOrDefault() is JsonObject first)
        {
            return first;
        }

        var made = make();
        all.Insert(0, made);
        return made;
    }

    /// <summary>What the reader of workshop.json says of it.</summary>
    private static ImmutableArray<Problem> Wrong(byte[] bytes)
    {
        var problems = new List<Problem>();
        var json = JsonReading.Read(bytes, WorkshopFile.Name);
        problems.AddRange(json.Problems);
        if (json.Value is { } root)
        {
            WorkshopReader.Read(WorkshopFile.Name, root, problems);
        }

        return [.. problems.Where(p => p.Severity == Severity.CannotUse)];
    }

    private static string Text(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : "";

    private static ImmutableArray<string> Lengths(JsonNode? node) =>
        node is JsonArray many ? [.. many.Select(Length)] : Length(node) is { Length: > 0 } one ? [one] : [];

    /// <summary>A bare number is millimetres.</summary>
    private static string Length(JsonNode? node) =>
        node?.GetValueKind() == JsonValueKind.Number ? node.ToJsonString() + " mm" : Text(node);
}

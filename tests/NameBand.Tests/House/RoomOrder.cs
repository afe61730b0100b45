using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>Data flows one way: a room of the core uses Common and the rooms above it, never one below.</summary>
internal static partial class RoomOrder
{
    /// <summary>The rooms in their order, as the table in DEVELOPERS.md has them.</summary>
    public static readonly string[] Rooms =
        [.. RoomRow().Matches(Repository.Read("DEVELOPERS.md")).Select(m => m.Groups[1].Value)];

    private static readonly string[] FrontDoor = ["Bander", "MakeReport", "NamesReport", "ExitStatus"];

    /// <summary>What is wrong with a source file of the core, whose path is <c>src/NameBand.Core/Room/…</c>.</summary>
    public static IEnumerable<string> Violations(SourceFile file)
    {
        string[] steps = file.Path.Split('/');
        if (steps.Length < 4)
        {
            yield break;
        }

        int own = Array.IndexOf(Rooms, steps[2]);
        if (own < 0)
        {
            yield return $"{file.Path}: there is no room {steps[2]}";
            yield break;
        }

        string code = CodeText.Of(file.Text);
        if (NamespaceLine().Match(code) is { Success: true } match && !IsOwn(match.Groups[1].Value, Rooms[own]))
        {
            yield return $"{file.Path}: the namespace {match.Groups[1].Value} is not that of its room";
        }

        for (int other = own + 1; other < Rooms.Length; other++)
        {
            if (Regex.IsMatch(code, $@"\bNameBand\s*\.\s*{Rooms[other]}\b")
                || Regex.IsMatch(code, $@"(?<![\w.?!)\]]){Rooms[other]}\s*\.\s*[A-Z]"))
            {
                yield return $"{file.Path}: {Rooms[own]} reaches down to {Rooms[other]}";
            }
        }

        if (own >= Array.IndexOf(Rooms, "Reports"))
        {
            yield break;
        }

        foreach (string type in FrontDoor.Where(t => Regex.IsMatch(code, $@"(?<!\.)\b{t}\b")))
        {
            yield return $"{file.Path}: a room reaches for {type} of the front door";
        }
    }

    private static bool IsOwn(string space, string room) =>
        space == $"NameBand.{room}" || space.StartsWith($"NameBand.{room}.", StringComparison.Ordinal);

    [GeneratedRegex(@"^\| `([A-Z]\w+)` \| ", RegexOptions.Multiline)]
    private static partial Regex RoomRow();

    [GeneratedRegex(@"\bnamespace\s+([\w.]+)")]
    private static partial Regex NamespaceLine();
}

using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>
/// The command line prints the records of the front door and makes none of its own: it writes no JSON by hand, and what it
/// prints prose from is no figure of a room.
/// </summary>
internal static partial class OneAnswer
{
    private const string Printing = "src/NameBand.Cli/Reports/";
    private const string Terminal = "src/NameBand.Cli/Terminal/";

    private static readonly string[] Rooms = [.. RoomOrder.Rooms.Except(["Common", "Reports"])];

    public static IEnumerable<string> Violations(SourceFile file)
    {
        string code = CodeText.Of(file.Text);
        foreach (Match match in JsonByHand().Matches(code))
        {
            yield return $"{file.Path}: {match.Value}: JSON is written by AnswerJson alone, from the record that the front door answers";
        }

        if (file.Path.StartsWith(Printing, StringComparison.Ordinal) || file.Path.StartsWith(Terminal, StringComparison.Ordinal))
        {
            foreach (string room in Rooms.Where(r => Regex.IsMatch(code, $@"\bNameBand\s*\.\s*{r}\b")))
            {
                yield return $"{file.Path}: prose is printed from the records of Reports, and reaches for {room}";
            }
        }
    }

    [GeneratedRegex(@"\bSystem\s*\.\s*Text\s*\.\s*Json\b|\bUtf8Json\w+|\bJson(Object|Array|Node|Value|Document|Element|Serializer)\b")]
    private static partial Regex JsonByHand();
}

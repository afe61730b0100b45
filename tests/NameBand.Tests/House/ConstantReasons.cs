using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>
/// A number that has a name says beside it why it is what it is, in a method too: at the end of its line, on the lines above it, or once
/// above the constants that it stands among. A summary is of one member alone, so only an ordinary comment serves those under it too. Words
/// that the name has already are no reason.
/// </summary>
internal static partial class ConstantReasons
{
    /// <summary>Words that say nothing of a value by themselves.</summary>
    private static readonly HashSet<string> Filling = new(StringComparer.OrdinalIgnoreCase)
    {
        "a", "an", "the", "of", "in", "is", "are", "for", "to", "that", "and", "or", "its", "this", "value", "number", "constant", "shown", "used",
        "summary",
    };

    public static IEnumerable<string> Violations(SourceFile file)
    {
        string[] lines = file.Text.Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            if (Number().Match(lines[i]) is { Success: true } number && !IsReason(Comment(lines, i), number.Groups["name"].Value))
            {
                yield return $"{file.Path}, line {i + 1}: nothing says why {number.Groups["name"].Value} is what it is";
            }
        }
    }

    /// <summary>What is said of the constant on a line; empty: nothing.</summary>
    private static string Comment(string[] lines, int at)
    {
        string code = Quoted().Replace(lines[at], "");
        if (code.IndexOf("//", StringComparison.Ordinal) is >= 0 and var begins)
        {
            return code[begins..];
        }

        int first = at;
        while (first > 0 && Constant().IsMatch(lines[first - 1]))
        {
            first--;
        }

        string above = Above(lines, at);
        string ofAll = Above(lines, first);
        return above.Length > 0 || ofAll.StartsWith("///", StringComparison.Ordinal) ? above : ofAll;
    }

    private static string Above(string[] lines, int at)
    {
        int first = at;
        while (first > 0 && lines[first - 1].TrimStart().StartsWith("//", StringComparison.Ordinal))
        {
            first--;
        }

        return string.Join(' ', lines[first..at].Select(l => l.Trim()));
    }

    private static bool IsReason(string comment, string name)
    {
        string[] named = [.. Word().Matches(name).Select(m => m.Value)];
        return Word().Matches(comment).Select(m => m.Value)
            .Count(word => !Filling.Contains(word) && !named.Any(n => AreAlike(n, word))) >= 2;
    }

    /// <summary>One begins as the other does, as named and names.</summary>
    private static bool AreAlike(string one, string other)
    {
        int alike = Math.Min(4, Math.Min(one.Length, other.Length));
        return alike > 2 && string.Compare(one, 0, other, 0, alike, StringComparison.OrdinalIgnoreCase) == 0;
    }

    [GeneratedRegex(@"^\s*((public|private|internal|protected|new)\s+)*(const|static readonly)\s+"
        + @"(double|float|decimal|s?byte|u?short|u?int|u?long)\s+(?<name>\w+)\s*=")]
    private static partial Regex Number();

    [GeneratedRegex(@"^\s*((public|private|internal|protected|new)\s+)*(const|static readonly)\s")]
    private static partial Regex Constant();

    [GeneratedRegex("\"[^\"]*\"")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\p{Lu}?\p{Ll}+|\p{Lu}+|\d+(\.\d+)?")]
    private static partial Regex Word();
}

using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>The way of one name as DEVELOPERS.md tells it: numbered calls, each with the file in which it is declared.</summary>
internal static partial class CallChain
{
    public const int MostCalls = 12;

    public static IEnumerable<string> Violations(string page, Func<string, string?> fileAt)
    {
        var calls = Call().Matches(page).ToList();
        for (int i = 0; i < calls.Count; i++)
        {
            var (number, type, method, path) =
                (calls[i].Groups[1].Value, calls[i].Groups[2].Value, calls[i].Groups[3].Value, calls[i].Groups[4].Value);
            if (number != $"{i + 1}")
            {
                yield return $"call {i + 1} is numbered {number}";
            }

            if (fileAt(path) is not { } source)
            {
                yield return $"there is no file {path}";
            }
            else if (!Regex.IsMatch(CodeText.Of(source), $@"\b(class|record|struct) {type}\b"))
            {
                yield return $"{path} declares no {type}";
            }
            else if (!Regex.IsMatch(CodeText.Of(source), $@"^    (public|internal) [^=;{{]*\b{method}\(", RegexOptions.Multiline))
            {
                yield return $"{type} has no {method}";
            }
        }

        if (calls.Count is < 8 or > MostCalls)
        {
            yield return $"{calls.Count} calls are told";
        }
    }

    [GeneratedRegex(@"^(\d+)\. `(\w+)\.(\w+)` \(`([\w/.]+)`\)", RegexOptions.Multiline)]
    private static partial Regex Call();
}

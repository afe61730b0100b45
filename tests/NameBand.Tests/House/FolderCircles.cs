using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>Folders of a room of the core use each other one way: none of them is led back to itself.</summary>
internal static partial class FolderCircles
{
    private sealed record Use(string From, string To, string Type, string Path);

    /// <summary>What is wrong, with the types by which the one folder uses the other.</summary>
    /// <param name="files">All files of the core.</param>
    public static IEnumerable<string> Violations(IReadOnlyList<SourceFile> files)
    {
        var code = files.Where(f => f.Path.Split('/').Length > 3)
            .Select(f => (f.Path, Folder: f.Path[..f.Path.LastIndexOf('/')], Text: CodeText.Of(f.Text))).ToList();
        var declared = code.SelectMany(f => Declaration().Matches(f.Text).Select(m => (Type: m.Groups[1].Value, f.Folder)))
            .Distinct().ToLookup(d => d.Type, d => d.Folder);
        var uses = code.SelectMany(f => Word().Matches(f.Text).Select(m => m.Value).Distinct()
            .SelectMany(word => declared[word].Where(folder => IsInSight(f.Folder, f.Text, folder))
                .Select(folder => new Use(f.Folder, folder, word, f.Path)))).ToList();
        var next = uses.ToLookup(u => u.From, u => u.To);
        foreach (var pair in uses.GroupBy(u => (u.From, u.To)).Where(p => Reached(p.Key.To, next).Contains(p.Key.From)))
        {
            yield return $"{pair.Key.From} uses {pair.Key.To} and is used by it: " +
                string.Join(", ", pair.Select(u => $"{u.Type} in {u.Path}").Take(5));
        }
    }

    /// <summary>Whether a file of one folder of a room can name the types of another one without saying where they are.</summary>
    private static bool IsInSight(string own, string code, string other) => own != other && own.Split('/')[2] == other.Split('/')[2]
        && (own.StartsWith(other + "/", StringComparison.Ordinal)
            || Regex.IsMatch(code, $@"\busing {Regex.Escape(other["src/".Length..].Replace(".Core", "", StringComparison.Ordinal).Replace('/', '.'))};"));

    private static HashSet<string> Reached(string from, ILookup<string, string> next)
    {
        var seen = new HashSet<string>();
        var open = new Stack<string>([from]);
        while (open.TryPop(out string? folder))
        {
            if (seen.Add(folder))
            {
                foreach (string further in next[folder])
                {
                    open.Push(further);
                }
            }
        }

        return seen;
    }

    [GeneratedRegex(
        @"^(?:public |internal )?(?:abstract |sealed |static |readonly |partial |ref |unsafe )*(?:class|record struct|record|struct|interface|enum) ([A-Z]\w*)",
        RegexOptions.Multiline)]
    private static partial Regex Declaration();

    /// <summary>A name where a type stands: not a member, and followed by what follows a type.</summary>
    [GeneratedRegex(@"(?<![.\w])[A-Z]\w*(?=[.<?(\[>]| [a-z_A-Z]|;\n|,|\s*\{)")]
    private static partial Regex Word();
}

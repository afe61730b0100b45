using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>Every package is pinned to one version and stands in docs/dependencies.md with its licence and the reason for it.</summary>
internal static partial class Packages
{
    public static IEnumerable<string> Violations(IEnumerable<SourceFile> projects, string versions, string page)
    {
        var used = projects.SelectMany(p => Reference().Matches(p.Text)).Select(m => m.Groups[1].Value).ToHashSet(StringComparer.Ordinal);
        var pinned = Version().Matches(versions).ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value, StringComparer.Ordinal);
        var listed = Row().Matches(page).Select(m => m.Groups[1].Value).ToHashSet(StringComparer.Ordinal);

        return used.Where(p => !listed.Contains(p))
            .Select(p => $"{p} is used and is not in docs/dependencies.md with a licence and a reason")
            .Concat(pinned.Keys.Where(p => !used.Contains(p)).Select(p => $"{p} is pinned and no project uses it"))
            .Concat(pinned.Where(p => !p.Value.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-'))
                .Select(p => $"{p.Key} is not pinned to one version"))
            .Order(StringComparer.Ordinal);
    }

    [GeneratedRegex("<PackageReference\\s+Include=\"([^\"]+)\"")]
    private static partial Regex Reference();

    [GeneratedRegex("<PackageVersion\\s+Include=\"([^\"]+)\"\\s+Version=\"([^\"]+)\"")]
    private static partial Regex Version();

    [GeneratedRegex(@"^\| ([\w.]+) \| [^|]*\w[^|]* \| [^|]*\w[^|]* \|$", RegexOptions.Multiline)]
    private static partial Regex Row();
}

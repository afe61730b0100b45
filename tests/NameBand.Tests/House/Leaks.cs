using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>No file says where on some machine it was made, or where that machine takes its packages from.</summary>
internal static class Leaks
{
    // Taken apart, so that this file itself is clean.
    private static readonly string[] Folders = ["wo" + "rk", "ho" + "me", "ro" + "ot", "t" + "mp", "Us" + "ers"];

    private static readonly string[] Hosts =
        ["nuget" + @"\.org/v3", "api" + @"\.nuget" + @"\.org", "registry" + @"\.npm", "py" + @"pi\.org", "deb" + @"\.debian\.org",
        "arti" + "factory"];

    private static readonly Regex Pattern = new(
        $@"(?<![\w.<])[/\\]({string.Join('|', Folders)})[/\\][\w.]|{string.Join('|', Hosts)}",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

    public static IEnumerable<string> Violations(SourceFile file) =>
        file.Text.Split('\n')
            .Select((line, i) => (Match: Pattern.Match(line), Line: i + 1))
            .Where(m => m.Match.Success)
            .Select(m => $"{file.Path}, line {m.Line}: {m.Match.Value}");
}

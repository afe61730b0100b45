using System.Runtime.CompilerServices;

namespace NameBand.Tests.House;

/// <summary>The files of this repository, found from where this source file lay when it was compiled.</summary>
internal static class Repository
{
    /// <summary>Made by the build, or by others.</summary>
    private static readonly string[] NotOurs =
        ["three", ".git", "bin", "obj", "TestResults", "BenchmarkDotNet.Artifacts", ".vs", ".idea", "out", "node_modules"];

    public static string Root { get; } = FindRoot(ThisFile());

    /// <summary>Every file under a folder of the repository, with its path from the root in forward slashes.</summary>
    public static IEnumerable<SourceFile> Files(string under = "", params string[] endings) =>
        Walk(Path.Combine(Root, under))
            .Where(path => endings.Length == 0 || endings.Any(e => path.EndsWith(e, StringComparison.OrdinalIgnoreCase)))
            .Select(path => new SourceFile(Path.GetRelativePath(Root, path).Replace('\\', '/'), File.ReadAllText(path)))
            .OrderBy(f => f.Path, StringComparer.Ordinal);

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static IEnumerable<string> Walk(string folder) =>
        Directory.EnumerateFiles(folder).Concat(
            Directory.EnumerateDirectories(folder).Where(d => !NotOurs.Contains(Path.GetFileName(d))).SelectMany(Walk));

    private static string FindRoot(string from)
    {
        for (var folder = Directory.GetParent(from); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "NameBand.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException($"No NameBand.sln above {from}.");
    }

    private static string ThisFile([CallerFilePath] string path = "") => path;
}

/// <summary>A text file of the repository.</summary>
internal sealed record SourceFile(string Path, string Text)
{
    public int LineCount => Text.Split('\n').Length - (Text.EndsWith('\n') ? 1 : 0);
}

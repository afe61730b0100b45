using System.Collections.Immutable;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NameBand.Common;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>A file that NameBand made, for a browser to show or to keep.</summary>
/// <param name="Path">In the job's folder, with forward slashes.</param>
/// <param name="IsKept">It is for a machine, and so is kept and not shown.</param>
internal sealed record OutFile(string Path, bool IsKept)
{
    public string Name => Path.Split('/')[^1];

    /// <summary>What it is, for people.</summary>
    public Said Words => FileWords.Of(Path);

    public string Address => "made/" + string.Join('/', Path.Split('/').Select(Uri.EscapeDataString));
}

/// <summary>The made files that a browser can show or keep: only those that are listed there, and no other path.</summary>
internal static class OutFiles
{
    private const string NeedlePaths = "out/needle-paths", SwatchPaths = "swatch/needle-paths";

    private static readonly (string Folder, Said Heading)[] Folders =
    [
        ("out/sheets", "Sheets to print"), ("out", "The whole job"), (NeedlePaths, "Needle paths, to carry to the machine"),
        ("out/proofs", "Proofs at true scale"),
        ("out/thanks", "Pictures to send"), ("out/playback", "Moving pictures"), ("swatch", "The swatch"),
        (SwatchPaths, "Needle paths of the swatch"), ("swatch/proofs", "Proofs of the swatch"),
    ];

    private static readonly ImmutableDictionary<string, string> Kinds = ImmutableDictionary.CreateRange(StringComparer.Ordinal,
    [
        KeyValuePair.Create(".pdf", "application/pdf"), KeyValuePair.Create(".png", "image/png"),
        KeyValuePair.Create(".txt", "text/plain; charset=utf-8"),
        KeyValuePair.Create(".csv", "text/plain; charset=utf-8"),
    ]);

    /// <summary>What a machine or a drawing program is given.</summary>
    private static readonly string[] ForMachines = [".csv", ".svg", ".nc"];

    private const string Bytes = "application/octet-stream";

    /// <summary>What there is to open, heading by heading.</summary>
    public static IEnumerable<(Said Heading, ImmutableArray<OutFile> Files)> Of(string jobFolder) =>
        Folders.Select(f => (f.Heading, In(jobFolder, f.Folder))).Where(f => !f.Item2.IsEmpty);

    public static void Map(IEndpointRouteBuilder app) => app.MapGet("/made/{**file}", (string file, Worktable table) =>
        Of(table.Folder).SelectMany(f => f.Files).FirstOrDefault(made => made.Path == file) is { } found
            ? Results.File(
                Path.Combine(table.Folder, file), found.IsKept ? Bytes : Kinds[Path.GetExtension(file)], found.IsKept ? found.Name : null)
            : Results.NotFound());

    private static ImmutableArray<OutFile> In(string jobFolder, string folder)
    {
        bool isKept = folder is NeedlePaths or SwatchPaths;
        var there = new DirectoryInfo(Path.Combine(jobFolder, folder));
        return there.Exists && there.LinkTarget is null && (!folder.Contains('/') || there.Parent!.LinkTarget is null)
            ? [.. there.EnumerateFiles()
                .Where(f => IsPlain(f) && (isKept ? ForMachines.Contains(f.Extension) : Kinds.ContainsKey(f.Extension)))
                .OrderBy(f => f.Extension == ".pdf" ? 0 : 1).ThenBy(f => f.Name, StringComparer.Ordinal)
                    .Select(f => new OutFile($"{folder}/{f.Name}", isKept))]
            : [];
    }

    /// <summary>No link, and no pipe or device, which say that they hold nothing: none of ours does.</summary>
    private static bool IsPlain(FileInfo file) => file is { LinkTarget: null, Length: > 0 };
}

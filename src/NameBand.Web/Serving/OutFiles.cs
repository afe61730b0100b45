using System.Collections.Immutable;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>A file that NameBand made and a browser can show.</summary>
/// <param name="Path">In the job's folder, with forward slashes.</param>
internal sealed record OutFile(string Path)
{
    public string Name => Path.Split('/')[^1];

    public string Address => "made/" + string.Join('/', Path.Split('/').Select(Uri.EscapeDataString));
}

/// <summary>The made files that a browser can show: only those that are listed there, and no other path.</summary>
internal static class OutFiles
{
    private static readonly (string Folder, string Heading)[] Folders =
    [
        ("out/sheets", "Sheets to print"), ("out", "The whole job"), ("out/proofs", "Proofs at true scale"),
        ("out/thanks", "Pictures to send"), ("out/playback", "Moving pictures"), ("swatch", "The swatch"), ("swatch/proofs", "Proofs of the swatch"),
    ];

    private static readonly ImmutableDictionary<string, string> Kinds = ImmutableDictionary.CreateRange(StringComparer.Ordinal,
    [
        KeyValuePair.Create(".pdf", "application/pdf"), KeyValuePair.Create(".png", "image/png"), KeyValuePair.Create(".txt", "text/plain; charset=utf-8"),
        KeyValuePair.Create(".csv", "text/plain; charset=utf-8"),
    ]);

    /// <summary>What there is to open, heading by heading.</summary>
    public static IEnumerable<(string Heading, ImmutableArray<OutFile> Files)> Of(string jobFolder) =>
        Folders.Select(f => (f.Heading, In(jobFolder, f.Folder))).Where(f => !f.Item2.IsEmpty);

    public static void Map(IEndpointRouteBuilder app) => app.MapGet("/made/{**file}", (string file, Worktable table) =>
        Of(table.Folder).Any(f => f.Files.Any(made => made.Path == file))
            ? Results.File(Path.Combine(table.Folder, file), Kinds[Path.GetExtension(file)])
            : Results.NotFound());

    private static ImmutableArray<OutFile> In(string jobFolder, string folder)
    {
        var there = new DirectoryInfo(Path.Combine(jobFolder, folder));
        return there.Exists && there.LinkTarget is null && (!folder.Contains('/') || there.Parent!.LinkTarget is null)
            ? [.. there.EnumerateFiles().Where(f => f.LinkTarget is null && Kinds.ContainsKey(f.Extension))
                .OrderBy(f => f.Extension == ".pdf" ? 0 : 1).ThenBy(f => f.Name, StringComparer.Ordinal).Select(f => new OutFile($"{folder}/{f.Name}"))]
            : [];
    }
}

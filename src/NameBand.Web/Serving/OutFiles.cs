using System.Collections.Immutable;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NameBand.Web.Table;

namespace NameBand.Web.Serving;

/// <summary>The files of the job's out folder that a browser can show: only those that are listed there, and no other path.</summary>
internal static class OutFiles
{
    private static readonly (string Folder, string Heading)[] Folders =
        [("sheets", "Sheets to print"), ("", "The whole job"), ("proofs", "Proofs at true scale")];

    private static readonly ImmutableDictionary<string, string> Kinds = ImmutableDictionary.CreateRange(StringComparer.Ordinal,
    [
        KeyValuePair.Create(".pdf", "application/pdf"), KeyValuePair.Create(".png", "image/png"), KeyValuePair.Create(".txt", "text/plain; charset=utf-8"),
        KeyValuePair.Create(".csv", "text/plain; charset=utf-8"),
    ]);

    /// <summary>What there is to open, heading by heading.</summary>
    public static IEnumerable<(string Heading, ImmutableArray<string> Files)> Of(string jobFolder) =>
        Folders.Select(f => (f.Heading, In(jobFolder, f.Folder))).Where(f => !f.Item2.IsEmpty);

    public static string Address(string file) => "out/" + string.Join('/', file.Split('/').Select(Uri.EscapeDataString));

    public static void Map(IEndpointRouteBuilder app) => app.MapGet("/out/{**file}", (string file, Worktable table) =>
        Of(table.Folder).Any(f => f.Files.Contains(file, StringComparer.Ordinal))
            ? Results.File(Path.Combine(table.Folder, "out", file), Kinds[Path.GetExtension(file)])
            : Results.NotFound());

    private static ImmutableArray<string> In(string jobFolder, string folder)
    {
        var there = new DirectoryInfo(Path.Combine(jobFolder, "out", folder));
        return there.Exists && there.LinkTarget is null
            ? [.. there.EnumerateFiles().Where(f => f.LinkTarget is null && Kinds.ContainsKey(f.Extension))
                .Select(f => folder.Length == 0 ? f.Name : $"{folder}/{f.Name}").Order(StringComparer.Ordinal)]
            : [];
    }
}

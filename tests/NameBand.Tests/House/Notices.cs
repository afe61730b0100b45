using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Xml.Linq;

namespace NameBand.Tests.House;

/// <summary>A package of a lock file, with what it says of itself.</summary>
/// <param name="ContentHash">As the lock file has it: SHA-512 of what is in the package, in base64.</param>
internal sealed record LockedPackage(string Id, string Version, string ContentHash, bool Ships, string Licence, string Copyright,
    string Authors);

/// <summary>THIRD-PARTY-NOTICES.txt and sbom.cdx.json, made from the lock files, the packages themselves and the faces.</summary>
internal static class Notices
{
    public const string NoticesFile = "THIRD-PARTY-NOTICES.txt", BillFile = "sbom.cdx.json";

    private const string Licences = "src/NameBand.Cli/Bundles/licences";

    /// <summary>Comes with the SDK, in the version of the SDK; it is told with .NET.</summary>
    private const string OfTheSdk = "Microsoft.AspNetCore.App.Internal.Assets";

    /// <summary>The page's one script that others made, as its package in the npm registry has it: files with their SHA-256.</summary>
    public const string ScriptFolder = "src/NameBand.Web/wwwroot/three", ScriptVersion = "0.185.1";

    public static readonly (string File, string Sha256)[] Scripts =
    [
        ("three.core.min.js", "05b2609338c76cd65daf74f3ac515bc9a5045e1b3b33edc07d8c9bd55250fa90"),
        ("three.module.min.js", "86bcee248b64f44bcfc23c331ae74619061957d59cab040171dcb6fb5900beb6"),
    ];

    private static readonly JsonSerializerOptions Writing = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping
    };

    public static List<LockedPackage> Packages()
    {
        string home = PackageFolder();
        var all = new SortedDictionary<string, LockedPackage>(StringComparer.OrdinalIgnoreCase);
        foreach (
            string project in new[] { "src/NameBand.Cli", "src/NameBand.Core", "src/NameBand.Web", "tests/NameBand.Tests",
            "tests/NameBand.Browser", "tests/NameBand.Benchmarks" })
        {
            using var file = JsonDocument.Parse(Repository.Read($"{project}/packages.lock.json"));
            foreach (var package in file.RootElement.GetProperty("dependencies").EnumerateObject()
                .SelectMany(f => f.Value.EnumerateObject()))
            {
                if (package.Name != OfTheSdk && package.Value.TryGetProperty("contentHash", out var hash) && !all.ContainsKey(package.Name))
                {
                    string version = package.Value.GetProperty("resolved").GetString()!;
                    all.Add(package.Name,
                        Read(home, package.Name, version, hash.GetString()!, project.StartsWith("src/", StringComparison.Ordinal)));
                }
            }
        }

        return [.. all.Values];
    }

    public static string NoticesText(IReadOnlyCollection<LockedPackage> packages)
    {
        var text = new StringBuilder();
        text.Append("What others made that NameBand ships with\n=========================================\n\n");
        text.Append("NameBand itself is under the MIT License, which stands in the file LICENSE. The texts of the licences stand below.\n");
        var shipped = packages.Where(p => p.Ships).ToList();
        foreach (var package in shipped)
        {
            string whose = package.Copyright.Length > 0 ? package.Copyright : "© " + package.Authors;
            text.Append(
                $"\n{package.Id} {package.Version}\n  {package.Licence}; {whose}\n");
        }

        text.Append($"\nthree.js {ScriptVersion} ({string.Join(", ", Scripts.Select(f => f.File))}, unchanged)\n  MIT; ");
        text.Append(Repository.Read($"{ScriptFolder}/LICENSE.txt").Split('\n')
            .Single(l => l.StartsWith("Copyright", StringComparison.Ordinal)));
        text.Append('\n');
        text.Append(
            "\n.NET and its parts for web pages\n  MIT; © .NET Foundation and Contributors. "
            + "A bundle holds .NET's own list of what it brings along.\n");
        text.Append("\nFaces (fonts-open; the licence of each lies beside it)\n");
        foreach (var (name, licence, copyright) in Faces())
        {
            text.Append($"\n{name}\n  {licence}; {copyright}\n");
        }

        var texts = Directory.GetFiles(Path.Combine(Repository.Root, Licences)).Order(StringComparer.Ordinal).ToList();
        foreach (string licence in texts)
        {
            string name = Path.GetFileNameWithoutExtension(licence);
            text.Append($"\n\n{name}\n{new string('-', name.Length)}\n\n").Append(Clean(File.ReadAllText(licence))).Append('\n');
        }

        var native = shipped.First(p => p.Id == "SkiaSharp.NativeAssets.Linux.NoDependencies");
        string brought = File.ReadAllText(Path.Combine(PackageFolder(), native.Id.ToLowerInvariant(), native.Version, NoticesFile));
        text.Append("\n\nWhat libSkiaSharp and libHarfBuzzSharp bring along, as their makers list it\n");
        text.Append("----------------------------------------------------------------------------\n\n").Append(Clean(brought)).Append('\n');
        return text.ToString();
    }

    /// <summary>CycloneDX 1.6: what ships is required, what only tests use is excluded. .NET comes in the version of the SDK that
    /// builds.</summary>
    public static string Bill(IEnumerable<LockedPackage> packages, string version)
    {
        var faces = Faces().Select(f => Part("data", f.Name, f.Licence));
        var frameworks = new[] { "Microsoft.AspNetCore.App", "Microsoft.NETCore.App" }.Select(name =>
        {
            var part = Part("framework", name, "MIT");
            part["version"] = "10.0";
            return part;
        });
        var components = packages.Select(p => (JsonNode)new JsonObject
        {
            ["type"] = "library",
            ["bom-ref"] = $"pkg:nuget/{p.Id}@{p.Version}",
            ["name"] = p.Id,
            ["version"] = p.Version,
            ["scope"] = p.Ships ? "required" : "excluded",
            ["licenses"] = new JsonArray(p.Licence.Contains(' ', StringComparison.Ordinal)
                ? new JsonObject { ["expression"] = p.Licence }
                    : new JsonObject { ["license"] = new JsonObject { [IsSpdx(p.Licence) ? "id" : "name"] = p.Licence } }),
            ["purl"] = $"pkg:nuget/{p.Id}@{p.Version}",
            ["properties"] = new JsonArray(new JsonObject { ["name"] = "nuget:contentHash", ["value"] = p.ContentHash }),
        }).Append(new JsonObject
        {
            ["type"] = "library",
            ["bom-ref"] = $"pkg:npm/three@{ScriptVersion}",
            ["name"] = "three",
            ["version"] = ScriptVersion,
            ["scope"] = "required",
            ["licenses"] = new JsonArray(new JsonObject { ["license"] = new JsonObject { ["id"] = "MIT" } }),
            ["purl"] = $"pkg:npm/three@{ScriptVersion}",
            ["properties"] = new JsonArray(
                [.. Scripts.Select(f => new JsonObject { ["name"] = $"sha256:{f.File}", ["value"] = f.Sha256 })]),
        });
        return new JsonObject
        {
            ["bomFormat"] = "CycloneDX",
            ["specVersion"] = "1.6",
            ["version"] = 1,
            ["metadata"] = new JsonObject
            {
                ["component"] = new JsonObject { ["type"] = "application", ["name"] = "NameBand", ["version"] = version }
            },
            ["components"] = new JsonArray([.. components, .. frameworks, .. faces]),
        }.ToJsonString(Writing) + "\n";
    }

    private static JsonObject Part(string type, string name, string licence) => new()
    {
        ["type"] = type,
        ["name"] = name,
        ["scope"] = "required",
        ["licenses"] = new JsonArray(new JsonObject { ["license"] = new JsonObject { [IsSpdx(licence) ? "id" : "name"] = licence } }),
    };

    private static IEnumerable<(string Name, string Licence, string Copyright)> Faces()
    {
        foreach (string folder in Directory.GetDirectories(Path.Combine(Repository.Root, "fonts-open")).Order(StringComparer.Ordinal))
        {
            using var face = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "face.json")));
            string Of(string key) => face.RootElement.GetProperty(key).GetString()!;
            yield return (Of("name"), Of("licence"), Of("copyright"));
        }
    }

    private static bool IsSpdx(string licence) =>
        licence is "MIT" or "ISC" or "BSD-3-Clause" or "Apache-2.0" or "MPL-1.1" or "MPL-2.0" or "MS-PL" or "BSD-2-Clause";

    /// <summary>Where restoring put the packages.</summary>
    private static string PackageFolder()
    {
        using var assets = JsonDocument.Parse(Repository.Read("src/NameBand.Cli/obj/project.assets.json"));
        return assets.RootElement.GetProperty("packageFolders").EnumerateObject().First().Name;
    }

    private static LockedPackage Read(string home, string id, string version, string hash, bool ships)
    {
        string folder = Path.Combine(home, id.ToLowerInvariant(), version.ToLowerInvariant());
        var metadata = XDocument.Load(Path.Combine(folder, id.ToLowerInvariant() + ".nuspec")).Root!.Elements()
            .First(e => e.Name.LocalName == "metadata");
        string Of(string name) => metadata.Elements().FirstOrDefault(e => e.Name.LocalName == name)?.Value.Trim() ?? "";
        var licence = metadata.Elements().FirstOrDefault(e => e.Name.LocalName == "license");
        string said = licence?.Attribute("type")?.Value == "expression" ? licence.Value.Trim() : licence is not null
            ? "a licence of its own, in the package" : "see the package";
        return new LockedPackage(id, version, hash, ships, said, Of("copyright"), Of("authors"));
    }

    private static string Clean(string text) =>
        string.Join('\n', text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n').Select(l => l.TrimEnd())).Trim('\n');
}

using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Tests.House;
using NameBand.Tests.OutputRoom;
using Xunit;

namespace NameBand.Tests.Docs;

/// <summary>docs/files.md and docs/plan.schema.json speak of every key that plan.json has, and of every file of a made job.</summary>
public sealed partial class PlanPageTests(SentSample sent) : IClassFixture<SentSample>
{
    private static readonly string Page = Repository.Read("docs/files.md");
    private static readonly JsonElement Schema = JsonDocument.Parse(Repository.Read("docs/plan.schema.json")).RootElement;

    [Fact]
    public void Every_key_of_a_plan_stands_on_the_page_and_in_the_schema()
    {
        using var folder = MadeBestFit();
        var found = new SortedSet<string>(StringComparer.Ordinal);
        foreach (string plan in new[] { sent.FullPath("plan.json"), folder["out/plan.json"] })
        {
            Walk(JsonDocument.Parse(File.ReadAllBytes(plan)).RootElement, Schema, "", found);
        }

        Assert.True(found.Count > 70);
        string spans = string.Join('\n', Span().Matches(Page).Select(m => m.Groups[1].Value));
        Assert.Equal([], found.Where(k => k.EndsWith("?", StringComparison.Ordinal)).ToArray());
        Assert.Equal([], found.Select(k => k[(k.LastIndexOf('.') + 1)..]).Where(k => !Regex.IsMatch(spans, $@"\b{k}\b")).ToArray());
    }

    [Fact]
    public void Every_kind_of_file_stands_on_the_page()
    {
        var files = Directory.GetFiles(sent.Report.OutFolder!, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(sent.Report.OutFolder!, f).Replace('\\', '/'))
            .Select(f => Digits().Replace(f, m => new string('N', m.Length)).Replace("-letter.pdf", "-a4.pdf", StringComparison.Ordinal))
            .Distinct(StringComparer.Ordinal);
        Assert.Equal(
            [], files.Where(f =>
                !Page.Contains($"`{f}`", StringComparison.Ordinal) && !Page.Contains($"`{Path.GetFileName(f)}`", StringComparison.Ordinal))
                .ToArray());
    }

    /// <summary>A key that the schema does not describe is noted with a question mark.</summary>
    private static void Walk(JsonElement value, JsonElement? schema, string path, SortedSet<string> found)
    {
        var form = Resolved(schema);
        if (value.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in value.EnumerateObject())
            {
                var inner = form?.TryGetProperty("properties", out var known) == true
                    && known.TryGetProperty(property.Name, out var described) ? described : (JsonElement?)null;
                found.Add(path + "." + property.Name + (inner is null ? "?" : ""));
                Walk(property.Value, inner, path + "." + property.Name, found);
            }
        }
        else if (value.ValueKind == JsonValueKind.Array)
        {
            var items = form?.TryGetProperty("items", out var inner) == true ? inner : (JsonElement?)null;
            foreach (var item in value.EnumerateArray())
            {
                Walk(item, items, path + "[]", found);
            }
        }
    }

    private static JsonElement? Resolved(JsonElement? schema) =>
        schema?.TryGetProperty("$ref", out var name) == true
            ? Schema.GetProperty("$defs").GetProperty(name.GetString()!.Split('/')[^1]) : schema;

    private static TemporaryFolder MadeBestFit()
    {
        var folder = new TemporaryFolder()
            .With("job.json",
                """{ "format": 1, "lists": ["n.csv"], "hem": { "length": "600 mm" }, "lettering": { "order": "bestFit", "height": "8 mm" } }""")
            .With("n.csv", "Name\nTobin Marsh\nIda Reed\nAda Weir\n");
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(folder.FullPath).Status);
        return folder;
    }

    [GeneratedRegex("`([^`\n]*)`")]
    private static partial Regex Span();

    [GeneratedRegex(@"(?<=-)\d{2,}(?=\.)")]
    private static partial Regex Digits();
}

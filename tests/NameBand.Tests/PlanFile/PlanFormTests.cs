using System.Collections;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using Json.Schema;
using NameBand.Common;
using NameBand.PlanFile;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.PlanFileRoom;

/// <summary>The records that write and read plan.json, and the schema in docs that the public reads, are one.</summary>
public sealed class PlanFormTests
{
    private static readonly JsonElement Published = JsonDocument.Parse(Repository.Read("docs/plan.schema.json")).RootElement;

    [Fact]
    public void Every_member_of_the_records_stands_in_the_schema_as_it_is_and_no_other_does()
    {
        var faults = new List<string>();
        int members = Compare(PlanJson.Forms.GetTypeInfo(typeof(WrittenPlan))!, Published, "", faults);
        Assert.Empty(faults);
        Assert.True(members > 100);
    }

    /// <summary>The comparison itself finds what is wrong: a schema that is spoilt in each way is told.</summary>
    [Theory]
    [InlineData("hem.closed", null, "not in the schema")]
    [InlineData("hem.closed", """{ "type": "string" }""", "is a boolean")]
    [InlineData("totals.names", """{ "type": "number" }""", "is an integer")]
    [InlineData("hem.depthMm", """{ "type": "number" }""", "not in the records")]
    [InlineData("rows.items.reason", """{ "type": ["string", "null"] }""", "may not be null")]
    [InlineData("rounds.items.hemMm", "optional", "required")]
    public void A_schema_that_differs_is_told(string at, string? form, string told)
    {
        var spoilt = JsonNode.Parse(Published.GetRawText())!;
        string[] steps = at.Split('.');
        var inside = steps[..^1].Aggregate(spoilt, (node, step) => step == "items" ? node["items"]! : node["properties"]![step]!);
        var properties = inside["properties"]!.AsObject();
        if (form == "optional")
        {
            var required = inside["required"]!.AsArray();
            required.Remove(required.Single(r => (string?)r == steps[^1]));
        }
        else if (form is null)
        {
            properties.Remove(steps[^1]);
        }
        else
        {
            properties[steps[^1]] = JsonNode.Parse(form);
        }

        var faults = new List<string>();
        Compare(PlanJson.Forms.GetTypeInfo(typeof(WrittenPlan))!, JsonDocument.Parse(spoilt.ToJsonString()).RootElement, "", faults);
        Assert.Contains(faults, f => f.Contains(told, StringComparison.Ordinal));
    }

    public static TheoryData<string> PlansOfTheFirstVersion =>
        new(Directory.GetFiles(
            Path.Combine(Repository.Root, "tests/NameBand.Tests/Data/version-0.1"), "plan.json", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/')).Order(StringComparer.Ordinal));

    /// <summary>Nothing of an earlier file is lost, and what is read of it is written again as it was, to the last byte.</summary>
    [Theory]
    [MemberData(nameof(PlansOfTheFirstVersion))]
    public void A_plan_of_the_first_version_is_read_and_written_back_byte_for_byte(string file)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(Repository.Root, file));
        using var again = new MemoryStream();
        PlanJson.Write(again, PlanJson.Read(bytes));
        Assert.Equal(bytes, again.ToArray());
        var judged = JsonSchema.FromText(Published.GetRawText())
            .Evaluate(JsonNode.Parse(bytes), new EvaluationOptions { OutputFormat = OutputFormat.List });
        var faults = judged.Details.Where(d => d.HasErrors).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}");
        Assert.True(judged.IsValid, string.Join('\n', faults));
    }

    /// <returns>How many members were compared.</returns>
    private static int Compare(JsonTypeInfo record, JsonElement schema, string path, List<string> faults)
    {
        var form = Resolved(schema);
        var described = form.GetProperty("properties").EnumerateObject().ToDictionary(p => p.Name, p => p.Value);
        var required = form.TryGetProperty("required", out var list) ? list.EnumerateArray().Select(r => r.GetString()!).ToHashSet() : [];
        faults.AddRange(described.Keys.Except(record.Properties.Select(p => p.Name)).Select(k => $"{path}.{k} is not in the records"));
        int members = 0;
        foreach (var property in record.Properties)
        {
            string at = $"{path}.{property.Name}";
            if (!described.TryGetValue(property.Name, out var inner))
            {
                faults.Add($"{at} is not in the schema");
                continue;
            }

            members++;
            if (property.IsRequired != required.Contains(property.Name))
            {
                faults.Add($"{at} is required in one of the two alone");
            }

            var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
            if (property.IsRequired && property.IsGetNullable != MayBeNull(inner))
            {
                faults.Add($"{at} may {(property.IsGetNullable ? "" : "not ")}be null");
            }

            members += CompareValue(type, Resolved(inner), at, faults);
        }

        return members;
    }

    private static int CompareValue(Type type, JsonElement form, string at, List<string> faults)
    {
        string word = Word(type);
        if (!KindsOf(form).Contains(word))
        {
            faults.Add($"{at} is {(word is "array" or "integer" or "object" ? "an" : "a")} {word}");
            return 0;
        }

        if (word == "object")
        {
            return Compare(PlanJson.Forms.GetTypeInfo(type)!, form, at, faults);
        }

        return word == "array" ? CompareValue(type.GetGenericArguments()[0], Resolved(form.GetProperty("items")), at + "[]", faults) : 0;
    }

    private static string Word(Type type) =>
        type == typeof(string) || type == typeof(Said) ? "string"
        : type == typeof(bool) ? "boolean"
        : type == typeof(int) || type == typeof(long) ? "integer"
        : type == typeof(decimal) || type == typeof(double) ? "number"
        : typeof(IEnumerable).IsAssignableFrom(type) ? "array"
        : "object";

    private static string[] KindsOf(JsonElement form) =>
        form.TryGetProperty("const", out var only) ? [KindOf(only)]
        : form.TryGetProperty("enum", out var some) ? [.. some.EnumerateArray().Select(KindOf)]
        : form.GetProperty("type") is { ValueKind: JsonValueKind.Array } several ? [.. several.EnumerateArray().Select(k => k.GetString()!)]
        : [form.GetProperty("type").GetString()!];

    private static string KindOf(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.True or JsonValueKind.False => "boolean",
        JsonValueKind.Number => "integer",
        _ => "string",
    };

    private static bool MayBeNull(JsonElement form) => KindsOf(Resolved(form)).Contains("null");

    private static JsonElement Resolved(JsonElement form) =>
        form.TryGetProperty("$ref", out var name) ? Published.GetProperty("$defs").GetProperty(name.GetString()!.Split('/')[^1]) : form;
}

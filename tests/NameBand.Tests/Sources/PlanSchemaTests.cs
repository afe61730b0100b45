using System.Text.Json.Nodes;
using Json.Schema;
using NameBand.Tests.House;
using NameBand.Tests.OutputRoom;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>plan.json against the JSON Schema in docs, judged by a validator nobody here made (draft 2020-12).</summary>
public sealed class PlanSchemaTests(PrintedSample printed) : IClassFixture<PrintedSample>
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(Repository.Read("docs/plan.schema.json"));

    [Fact]
    public void The_plan_of_the_sample_has_the_form_that_is_published()
    {
        var result = Schema.Evaluate(Plan(), new EvaluationOptions { OutputFormat = OutputFormat.List });
        var faults = result.Details.Where(d => d.HasErrors).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}");
        Assert.True(result.IsValid, string.Join('\n', faults));
    }

    [Theory]
    [InlineData("format", "2")]
    [InlineData("rounds", "{}")]
    [InlineData("letterHeightMm", "\"10 mm\"")]
    [InlineData("totals", "{}")]
    public void The_schema_finds_what_is_wrong(string key, string value)
    {
        var plan = Plan();
        plan[key] = JsonNode.Parse(value);
        Assert.False(Schema.Evaluate(plan).IsValid);
        plan.AsObject().Remove(key);
        Assert.False(Schema.Evaluate(plan).IsValid);
    }

    private JsonNode Plan() => JsonNode.Parse(printed.File("plan.json"))!;
}

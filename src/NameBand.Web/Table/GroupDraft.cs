using System.Globalization;
using System.Text.Json.Nodes;

namespace NameBand.Web.Table;

/// <summary>A group of names as it is being filled in; what is empty is left out of job.json.</summary>
internal sealed class GroupDraft
{
    /// <summary>By what a group is told from the others.</summary>
    public const string ByValue = "values", ByNumber = "numbers", TheRest = "rest";

    public string Name { get; set; } = "";

    /// <summary>One of the three rules.</summary>
    public string Who { get; set; } = ByNumber;

    /// <summary>What stands in the column, parted by semicolons.</summary>
    public string Values { get; set; } = "";

    public string From { get; set; } = "";

    public string Below { get; set; } = "";

    public string HeightFactor { get; set; } = "";

    public string Face { get; set; } = "";

    public string Place { get; set; } = "";

    public string Heading { get; set; } = "";

    /// <summary>Colour of its thread; kept as it is, for no field shows it.</summary>
    public string Thread { get; set; } = "";

    /// <summary>The groups as they stand in job.json; what cannot be shown in fields is passed over, and job.json says so when it
    /// is read.</summary>
    public static List<GroupDraft> Read(string? json) =>
        json is not null && JsonNode.Parse(json) is JsonArray all ? [.. all.OfType<JsonObject>().Select(Of)] : [];

    /// <summary>As job.json has it; null for no groups. A number that is none stays text, so that job.json's reader names it.</summary>
    public static string? Write(IEnumerable<GroupDraft> groups)
    {
        var all = new JsonArray([.. groups.Select(g => (JsonNode)g.ToJson())]);
        return all.Count == 0 ? null : all.ToJsonString();
    }

    private static GroupDraft Of(JsonObject group) => new()
    {
        Name = Text(group["name"]),
        Who = group["rest"] is not null ? TheRest : group["values"] is not null ? ByValue : ByNumber,
        Values = group["values"] is JsonArray values ? string.Join("; ", values.Select(Text)) : "",
        From = Text(group["from"]),
        Below = Text(group["below"]),
        HeightFactor = Text(group["heightFactor"]),
        Face = Text(group["face"]),
        Place = Text(group["place"]),
        Heading = Text(group["heading"]),
        Thread = Text(group["thread"]),
    };

    private JsonObject ToJson()
    {
        var group = new JsonObject { ["name"] = Name.Trim() };
        switch (Who)
        {
            case TheRest:
                group["rest"] = true;
                break;
            case ByValue:
                group["values"] =
                    new JsonArray([.. Values.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                    .Select(v => (JsonNode)v)]);
                break;
            default:
                Add(group, "from", Number(From));
                Add(group, "below", Number(Below));
                break;
        }

        Add(group, "heightFactor", Number(HeightFactor));
        Add(group, "face", Whole(Face));
        Add(group, "place", Whole(Place));
        Add(group, "heading", Whole(Heading));
        Add(group, "thread", Whole(Thread));
        return group;
    }

    private static void Add(JsonObject group, string key, JsonNode? value)
    {
        if (value is not null)
        {
            group[key] = value;
        }
    }

    private static JsonNode? Whole(string typed) => typed.Trim().Length == 0 ? null : JsonValue.Create(typed.Trim());

    private static JsonNode? Number(string typed) =>
        double.TryParse(
            typed, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite
            | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out double number)
            ? JsonValue.Create(number)
            : Whole(typed);

    private static string Text(JsonNode? node) =>
        node is JsonValue value && value.TryGetValue(out string? text) ? text : node?.ToJsonString() ?? "";
}

using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using NameBand.Estimating;
using NameBand.Layout;

namespace NameBand.PlanFile;

/// <summary>
/// Writes plan.json and reads it back, both by the records of <see cref="WrittenPlan"/>. Nothing else in the program knows what
/// the file looks like.
/// </summary>
internal static class PlanJson
{
    /// <summary>The number of the file's form, in its key <c>format</c>.</summary>
    public const int Format = 1;

    internal static WrittenPlans Forms { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        RespectNullableAnnotations = true,
        AllowDuplicateProperties = false,
        WriteIndented = true,
        NewLine = "\n",

        // Names stay readable in the file. It is a file, never pasted into a web page unescaped.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <param name="origin">What the plan was made from, so that a later one can go on from it; null leaves it out.</param>
    /// <exception cref="InvalidOperationException">Plan, estimate and rows do not belong together: a bug.</exception>
    public static void Write(
        Stream stream, string title, StripPlan plan, Estimate estimate, PlanFound found, PlanOrigin? origin = null) =>
        Write(stream, PlanScribe.Of(title, plan, estimate, found, origin));

    /// <summary>Writes a plan piece by piece, so that memory does not grow with its length.</summary>
    public static void Write(Stream stream, WrittenPlan plan)
    {
        JsonSerializer.Serialize(stream, plan, Forms.WrittenPlan);
        stream.Write("\n"u8);
    }

    /// <summary>Reads a plan.json.</summary>
    /// <exception cref="JsonException">It is not a whole plan: a member lacks, has another form, or stands there twice.</exception>
    public static WrittenPlan Read(ReadOnlySpan<byte> json)
    {
        var plan = JsonSerializer.Deserialize(json, Forms.WrittenPlan) ?? throw new JsonException("There is no plan.");
        Check(plan);
        return plan;
    }

    /// <summary>What the forms of the members do not tell: no list has a gap, every number is one.</summary>
    private static void Check(WrittenPlan plan)
    {
        Whole(plan.Problems);
        Whole(plan.Verdicts);
        Whole(plan.Work);
        Whole(plan.Rows);
        Whole(plan.Rounds);
        Whole(plan.Cloths);
        Whole(plan.Hoopings);
        Finite(plan.Strip.Shortening);
        Finite(plan.LetterHeightExactMm);
        foreach (var cloth in plan.Cloths)
        {
            Whole(cloth.Pieces);
        }

        foreach (var segment in plan.Rounds.SelectMany(r => Whole(r.Segments)))
        {
            Whole(segment.Names);
            Whole(segment.Headings);
            Whole(segment.Motifs);
            Whole(segment.Gone);
        }

        foreach (var hooping in plan.Hoopings)
        {
            Whole(hooping.Segments);
            Finite(hooping.HolesPerMm2);
            Finite(hooping.SpotHolesPerMm2);
            Finite(hooping.SewnAs?.LetterHeightExactMm);
        }
    }

    private static IReadOnlyList<T> Whole<T>(IReadOnlyList<T>? list)
        where T : class
    {
        for (int i = 0; i < list?.Count; i++)
        {
            if (list[i] is null)
            {
                throw new JsonException("A list has a gap.");
            }
        }

        return list ?? [];
    }

    private static void Finite(double? number)
    {
        if (number is { } given && !double.IsFinite(given))
        {
            throw new JsonException("A number is beyond all bounds.");
        }
    }
}

/// <summary>The forms of plan.json, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(WrittenPlan))]
internal sealed partial class WrittenPlans : JsonSerializerContext;

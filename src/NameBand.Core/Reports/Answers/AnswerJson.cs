using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using NameBand.Common;

namespace NameBand.Reports.Answers;

/// <summary>An answer as one JSON object, for other programs.</summary>
public static class AnswerJson
{
    internal static AnswerForms Forms { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        RespectNullableAnnotations = true,
        AllowDuplicateProperties = false,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        WriteIndented = true,
        NewLine = "\n",
        Converters = { new JsonStringEnumConverter<Severity>(JsonNamingPolicy.CamelCase) },

        // Names stay readable. It goes to a terminal or a file, never unescaped into a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    public static string Of(CommandAnswer answer) => JsonSerializer.Serialize(answer, answer.GetType(), Forms);

    /// <exception cref="JsonException">It is no such answer, or has a member that none has.</exception>
    public static T Read<T>(string json)
        where T : CommandAnswer =>
        (T)(JsonSerializer.Deserialize(json, typeof(T), Forms) ?? throw new JsonException("There is no answer."));
}

/// <summary>The forms of all answers, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(RefusedAnswer))]
[JsonSerializable(typeof(MakeAnswer))]
[JsonSerializable(typeof(RefusedMakeAnswer))]
[JsonSerializable(typeof(NamesAnswer))]
[JsonSerializable(typeof(HoursAnswer))]
[JsonSerializable(typeof(PlansAnswer))]
[JsonSerializable(typeof(SewnAnswer))]
[JsonSerializable(typeof(SwatchAnswer))]
[JsonSerializable(typeof(RefusedSwatchAnswer))]
[JsonSerializable(typeof(ShorteningAnswer))]
[JsonSerializable(typeof(PullAnswer))]
[JsonSerializable(typeof(MeasureAnswer))]
[JsonSerializable(typeof(FacesAnswer))]
[JsonSerializable(typeof(CheckAnswer))]
[JsonSerializable(typeof(PublicAnswer))]
[JsonSerializable(typeof(InviteAnswer))]
[JsonSerializable(typeof(AnswersAnswer))]
[JsonSerializable(typeof(SpoiledAnswer))]
internal sealed partial class AnswerForms : JsonSerializerContext;

using System.Text.Json;
using System.Text.Json.Serialization;

namespace NameBand.Common;

/// <summary>What a program reads is English, whatever the language of the person.</summary>
internal sealed class SaidJson : JsonConverter<Said>
{
    public override Said? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.GetString() is { } text ? Said.Plain(text) : null;

    public override void Write(Utf8JsonWriter writer, Said value, JsonSerializerOptions options) => writer.WriteStringValue(value.English);
}

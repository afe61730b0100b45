using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace NameBand.PlanFile;

/// <summary>A row of numbers that stays one line in a file that is indented for people.</summary>
internal sealed class OneLineNumbers : JsonConverter<ImmutableArray<double>?>
{
    public override ImmutableArray<double>? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.StartArray)
        {
            throw new JsonException("A row of numbers is a list.");
        }

        var numbers = ImmutableArray.CreateBuilder<double>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            numbers.Add(reader.TokenType == JsonTokenType.Number
                ? reader.GetDouble() : throw new JsonException("A number is wanted here."));
        }

        return numbers.ToImmutable();
    }

    public override void Write(Utf8JsonWriter writer, ImmutableArray<double>? value, JsonSerializerOptions options)
    {
        var row = new ArrayBufferWriter<byte>(256);
        using (var numbers = new Utf8JsonWriter(row))
        {
            numbers.WriteStartArray();
            foreach (double number in value ?? [])
            {
                numbers.WriteNumberValue(number);
            }

            numbers.WriteEndArray();
        }

        writer.WriteRawValue(row.WrittenSpan, skipInputValidation: true);
    }
}

using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>
/// Reads a JSON file (RFC 8259: no comments, no comma after the last value) into pieces that know their place, so
/// that every message can name its line.
/// </summary>
internal static class JsonReading
{
    internal const int DeepestNesting = 16; // Levels: job.json needs a handful, and a file nested without end would use up the stack.

    /// <param name="text">The file, UTF-8 without a byte order mark.</param>
    /// <exception cref="JsonException">Never: what cannot be read comes back as a problem.</exception>
    public static Result<JsonPiece> Read(ReadOnlyMemory<byte> text, string file)
    {
        var lines = new LineFinder(text);
        var reader = new Utf8JsonReader(text.Span, new JsonReaderOptions { MaxDepth = DeepestNesting });
        try
        {
            reader.Read();
            var piece = ReadPiece(ref reader, lines);
            while (reader.Read())
            {
            }

            return Result.Of(piece);
        }
        catch (JsonException error)
        {
            return Result.Fail<JsonPiece>(JsonFaults.Describe(text.Span, error, lines, file));
        }
        catch (InvalidOperationException)
        {
            var (line, column) = lines.Of((int)reader.TokenStartIndex);
            return Result.Fail<JsonPiece>(Problem.CannotUse(
                new Where(file, line, column),
                "A \\u code in this text is half of a character.",
                "Write the character itself instead of the code."));
        }
    }

    private static JsonPiece ReadPiece(ref Utf8JsonReader reader, LineFinder lines)
    {
        var (line, column) = lines.Of((int)reader.TokenStartIndex);
        return reader.TokenType switch
        {
            JsonTokenType.StartObject => new JsonPiece(JsonKind.Group, line, column, "", ReadMembers(ref reader, lines), []),
            JsonTokenType.StartArray => new JsonPiece(JsonKind.Series, line, column, "", [], ReadItems(ref reader, lines)),
            JsonTokenType.String => Leaf(JsonKind.Text, reader.GetString()!),
            JsonTokenType.Number => Leaf(JsonKind.Number, Encoding.ASCII.GetString(reader.ValueSpan)),
            JsonTokenType.True => Leaf(JsonKind.Flag, "true"),
            JsonTokenType.False => Leaf(JsonKind.Flag, "false"),
            _ => Leaf(JsonKind.Nothing, "null"),
        };

        JsonPiece Leaf(JsonKind kind, string text) => new(kind, line, column, text, [], []);
    }

    private static ImmutableArray<JsonMember> ReadMembers(ref Utf8JsonReader reader, LineFinder lines)
    {
        var members = ImmutableArray.CreateBuilder<JsonMember>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
        {
            var (line, column) = lines.Of((int)reader.TokenStartIndex);
            string key = reader.GetString()!;
            reader.Read();
            members.Add(new JsonMember(key, line, column, ReadPiece(ref reader, lines)));
        }

        return members.ToImmutable();
    }

    private static ImmutableArray<JsonPiece> ReadItems(ref Utf8JsonReader reader, LineFinder lines)
    {
        var items = ImmutableArray.CreateBuilder<JsonPiece>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            items.Add(ReadPiece(ref reader, lines));
        }

        return items.ToImmutable();
    }
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

internal enum JsonKind
{
    Group,
    Series,
    Text,
    Number,
    Flag,
    Nothing,
}

/// <summary>A value of a JSON file with the place where it begins; lines and columns count from 1.</summary>
/// <param name="Text">The text, or the number or word as it is written.</param>
internal sealed record JsonPiece(
    JsonKind Kind, int Line, int Column, string Text, ImmutableArray<JsonMember> Members, ImmutableArray<JsonPiece> Items)
{
    /// <summary>What it is, for a message: <c>the text “5”</c>, <c>a list</c>.</summary>
    public Said InWords => Kind switch
    {
        JsonKind.Group => "a group of keys in { }",
        JsonKind.Series => "a list in [ ]",
        JsonKind.Text when Text.Length == 0 => "an empty text",
        JsonKind.Text => (Said)$"the text “{PlainText.Short(Text)}”",
        JsonKind.Number => $"the number {PlainText.Short(Text)}",
        JsonKind.Nothing => "null",
        _ => Said.Plain(Text),
    };
}

/// <summary>A key of a JSON file with its value and the place where the key begins.</summary>
internal sealed record JsonMember(string Key, int Line, int Column, JsonPiece Value);

using System.Text;
using System.Text.Json;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Says in plain words why a file is not JSON, from the character at which reading stopped.</summary>
internal static class JsonFaults
{
    public static Problem Describe(ReadOnlySpan<byte> text, JsonException error, LineFinder lines, string file)
    {
        int offset = Offset(text, error);
        var (line, column) = lines.Of(offset);
        var where = new Where(file, line, column);
        if (text[offset..].IsWhiteSpaceOnly())
        {
            return Problem.CannotUse(
                where, "The file ends in the middle: something that was opened is not closed.",
                "It was probably cut off. Close every { with }, every [ with ] and every text with \", or take a whole copy of the file.");
        }

        Rune.DecodeFromUtf8(text[offset..], out Rune at, out _);
        byte before = LastBefore(text, offset);
        string shown = PlainText.Short(at.ToString());
        if (IsTooDeep(text, offset))
        {
            return Problem.CannotUse(where, "Groups or lists stand inside each other far too deep.", "Remove the extra brackets.");
        }

        return at.Value switch
        {
            '{' or '[' when before is (byte)'{' or (byte)',' => Problem.CannotUse(
                where, $"A key is missing before this {shown}.",
                "Write the key in straight double quotes and a colon, such as \"hem\": {."),
            '/' or '#' => Problem.CannotUse(
                where, "There is a comment here, and a JSON file has none.", "Remove the comment."),
            '}' or ']' when before == ',' => Problem.CannotUse(
                where, $"There is a comma before this {shown} with nothing after it.", "Remove the last comma."),
            ',' when before is (byte)',' or (byte)'[' or (byte)'{' or (byte)':' => Problem.CannotUse(
                where, "There is a comma here with nothing before it.", "Remove it, or write the value that is missing."),
            '\'' or '“' or '”' or '„' or '‘' or '’' or '«' or '»' => Problem.CannotUse(
                where, $"Text stands in straight double quotes, and this is {at}.", "Write \" on both sides of the text."),
            '"' when before is not ((byte)',' or (byte)'{' or (byte)'[' or (byte)':') => Problem.CannotUse(
                where, "A comma or a colon is missing before this.",
                "Write : between a key and its value, and a comma between one key and the next."),
            '\r' or '\n' or '\t' => Problem.CannotUse(
                where, "A text runs over the end of its line, or has a tab in it.",
                "Close the text with \" before the end of the line; write blanks for tabs."),
            _ when IsInText(text, offset, lines.Start(line)) => Problem.CannotUse(
                where, $"In a text a \\ stands here before {shown}, which means nothing in JSON.",
                "Write / between folders, or \\\\ for one \\."),
            _ when Rune.IsLetter(at) => Problem.CannotUse(
                where, $"“{Word(text[offset..])}” stands here without quotes.",
                "Write keys and text in straight double quotes; only numbers, true and false stand without."),
            '+' or '.' or '-' => Problem.CannotUse(
                where, "This is not a number as JSON writes it.", "Begin with a digit, or a minus sign and a digit, such as 0.5."),
            _ when Rune.IsDigit(at) => Problem.CannotUse(
                where, "This is not a number as JSON writes it, or a comma or colon is missing before it.",
                "Write numbers such as 12 or 0.5, without zeros in front."),
            _ => Problem.CannotUse(
                where, $"“{shown}” cannot stand here.", "Compare this place with the examples in docs/job-file.md."),
        };
    }

    private static int Offset(ReadOnlySpan<byte> text, JsonException error)
    {
        int lineStart = 0;
        for (long line = error.LineNumber ?? 0; line > 0; line--)
        {
            lineStart += text[lineStart..].IndexOf((byte)'\n') + 1;
        }

        return (int)Math.Min(text.Length, lineStart + (error.BytePositionInLine ?? 0));
    }

    private static byte LastBefore(ReadOnlySpan<byte> text, int offset)
    {
        var trimmed = text[..offset].TrimEnd(" \t\r\n"u8);
        return trimmed.IsEmpty ? (byte)0 : trimmed[^1];
    }

    private static bool IsWhiteSpaceOnly(this ReadOnlySpan<byte> text) => text.TrimStart(" \t\r\n\0"u8).IsEmpty;

    private static bool IsInText(ReadOnlySpan<byte> text, int offset, int lineStart) =>
        offset > 0 && text[lineStart..offset].Contains((byte)'\\') && text[lineStart..offset].Count((byte)'"') % 2 == 1;

    private static bool IsTooDeep(ReadOnlySpan<byte> text, int offset)
    {
        if (text[offset] is not ((byte)'{' or (byte)'['))
        {
            return false;
        }

        int depth = 0;
        bool isInText = false;
        for (int i = 0; i < offset; i++)
        {
            i += isInText && text[i] == '\\' ? 1 : 0;
            if (i < offset && text[i] == '"')
            {
                isInText = !isInText;
            }
            else if (i < offset && !isInText)
            {
                depth += text[i] is (byte)'{' or (byte)'[' ? 1 : text[i] is (byte)'}' or (byte)']' ? -1 : 0;
            }
        }

        return depth >= JsonReading.DeepestNesting;
    }

    private static string Word(ReadOnlySpan<byte> text)
    {
        string rest = Encoding.UTF8.GetString(text[..Math.Min(text.Length, 120)]);
        return PlainText.Short(string.Concat(rest.TakeWhile(c => char.IsLetterOrDigit(c) || c is '_' or '-' or '.')), 30);
    }
}

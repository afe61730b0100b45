using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Takes values out of a JSON file whose groups stand in lists, and says of each that is wrong where it stands and how
/// to mend it.</summary>
internal sealed class JsonForm(string file, List<Problem> problems)
{
    private const int LongestTextCharacters = 100; // Characters: names of machines, frames and people, which stand in tables and messages.

    public string File => file;

    public void Refuse(JsonPiece at, string path, Said found, Said mend) =>
        problems.Add(Problem.CannotUse(new Where(file, at.Line, at.Column, path), found, mend));

    /// <summary>The members of a group by their keys; null where it is no group. Unknown and doubled keys are problems.</summary>
    public Dictionary<string, JsonPiece>? Group(JsonPiece piece, string path, Said example, params ReadOnlySpan<string> known)
    {
        if (piece.Kind != JsonKind.Group)
        {
            Refuse(piece, path, $"{Shown(path)} takes a group of keys in {{ }}, and this is {piece.InWords}.",
                $"Write for example {example}.");
            return null;
        }

        var members = new Dictionary<string, JsonPiece>(StringComparer.Ordinal);
        foreach (var member in piece.Members)
        {
            string inner = Inner(path, PlainText.Short(member.Key));
            var at = member.Value with { Line = member.Line, Column = member.Column };
            if (!known.Contains(member.Key))
            {
                string[] words = known.ToArray();
                Refuse(
                    at, inner, $"NameBand does not know the key {inner} in {file}.",
                    NearestWord.Find(member.Key, words) is { } near
                    ? (Said)$"Did you mean {near}?" : $"The keys here are {string.Join(", ", words)}.");
            }
            else if (!members.TryAdd(member.Key, member.Value))
            {
                Refuse(at, inner, $"{inner} appears here a second time.", "Keep one of the two.");
            }
        }

        return members;
    }

    /// <summary>The entries of a list; none where it is no list, or has too many.</summary>
    public ImmutableArray<JsonPiece> List(JsonPiece piece, string path, int most, Said example)
    {
        if (piece.Kind != JsonKind.Series)
        {
            Refuse(piece, path, $"{Shown(path)} takes a list in [ ], and this is {piece.InWords}.", $"Write for example {example}.");
            return [];
        }

        if (piece.Items.Length > most)
        {
            Refuse(piece, path, $"{Shown(path)} has {piece.Items.Length} entries.", $"Write at most {most}.");
            return [];
        }

        return piece.Items;
    }

    public string? Text(JsonPiece piece, string path)
    {
        string text = piece.Kind == JsonKind.Text ? piece.Text.Trim() : "";
        if (text.Length is > 0 and <= LongestTextCharacters && !text.Any(char.IsControl))
        {
            return text;
        }

        Refuse(piece, path, $"{path} must be text, and this is {piece.InWords}.",
            $"Write 1 to {LongestTextCharacters} ordinary characters in double quotes.");
        return null;
    }

    public bool? Flag(JsonPiece piece, string path)
    {
        if (piece.Kind == JsonKind.Flag)
        {
            return piece.Text == "true";
        }

        Refuse(piece, path, $"{path} takes true or false, and this is {piece.InWords}.", "Write true or false, without quotes.");
        return null;
    }

    public double? Number(JsonPiece piece, string path, double low, double high)
    {
        if (piece.Kind == JsonKind.Number && double.Parse(piece.Text, CultureInfo.InvariantCulture) is var number && number >= low
            && number <= high)
        {
            return number;
        }

        Refuse(
            piece, path, $"{path} takes a number, and this is {piece.InWords}.",
            $"Write a number from {low:0.##} to {high:0.##}, without quotes.");
        return null;
    }

    public Length? Length(JsonPiece piece, string path)
    {
        LengthFault fault = new("", "");
        if (piece.Kind is not (JsonKind.Text or JsonKind.Number))
        {
            Refuse(piece, path, $"{path} takes a length, and this is {piece.InWords}.", "Write a length such as \"160 mm\" or \"4 in\".");
            return null;
        }

        bool isRead = piece.Kind == JsonKind.Text
            ? LengthReading.TryRead(piece.Text, out var length, out fault)
            : LengthReading.TryCheck(
                double.Parse(piece.Text, CultureInfo.InvariantCulture), PlainText.Short(piece.Text), out length, out fault);
        if (!isRead)
        {
            Refuse(piece, path, fault.Found, fault.Mend);
        }

        return isRead ? length : null;
    }

    public T? Word<T>(JsonPiece piece, string path, ImmutableArray<(string Word, T Value)> choices)
        where T : struct
    {
        foreach (var (word, value) in choices)
        {
            if (piece.Kind == JsonKind.Text && piece.Text == word)
            {
                return value;
            }
        }

        string[] words = [.. choices.Select(c => c.Word)];
        string all = string.Join(" or ", words.Select(w => $"\"{w}\""));
        string? near = piece.Kind == JsonKind.Text ? NearestWord.Find(piece.Text, words) : null;
        Refuse(piece, path, $"{path} takes {all}, and this is {piece.InWords}.",
            near is null ? (Said)$"Write {all}." : $"Did you mean \"{near}\"?");
        return null;
    }

    public static string Inner(string path, string key) => path.Length == 0 ? key : $"{path}.{key}";

    private string Shown(string path) => path.Length == 0 ? file : path;
}

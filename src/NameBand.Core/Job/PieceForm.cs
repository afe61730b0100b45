using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Reads the keys of one entry of a list in job.json, such as a group, and refuses what cannot stand there.</summary>
/// <param name="noun">What an entry is called: “group”.</param>
/// <param name="number">Which entry it is, from 1.</param>
internal sealed class PieceForm(JobValues values, FormKey key, string noun, int number, JsonPiece piece)
{
    // Characters: what is written for one key of an entry is a word or a name, and is repeated in messages of one line.
    private const int MostCharacters = 80;

    /// <summary>Refuses keys that nobody knows, and those that stand there twice.</summary>
    public void CheckKeys(string[] known)
    {
        foreach (var member in piece.Members)
        {
            if (!known.Contains(member.Key))
            {
                Said mend = NearestWord.Find(member.Key, known) is { } near ? (Said)$"Did you mean {near}?"
                    : $"The keys of a {noun} are {string.Join(", ", known)}.";
                Refuse(member.Value, PlainText.Short(member.Key, 100), $"NameBand does not know this key of a {noun}.", mend);
            }
        }

        foreach (var twice in piece.Members.GroupBy(m => m.Key, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            Refuse(twice.Last().Value, twice.Key, $"“{PlainText.Short(twice.Key)}” is in this {noun} twice.",
                "Keep one of the two.");
        }
    }

    public JsonPiece? Of(string name) => piece.Members.FirstOrDefault(m => m.Key == name)?.Value;

    public string? Text(string name, int most = MostCharacters)
    {
        if (Of(name) is not { } given)
        {
            return null;
        }

        if (given.Kind == JsonKind.Text && !string.IsNullOrWhiteSpace(given.Text) && given.Text.Length <= most && !given.Text.Any(
            char.IsControl))
        {
            return PlainText.Normal(given.Text.Trim());
        }

        Refuse(given, name, $"{name} must be text of one to {most} ordinary characters, and this is {given.InWords}.",
            "Write text in double quotes.");
        return null;
    }

    public ImmutableArray<string> Texts(string name, Said mend)
    {
        if (Of(name) is not { } given)
        {
            return [];
        }

        if (given.Kind == JsonKind.Series && !given.Items.IsEmpty && given.Items.All(
            i => i.Kind is JsonKind.Text or JsonKind.Number && i.Text.Trim().Length > 0))
        {
            return [.. given.Items.Select(i => PlainText.Normal(i.Text.Trim()))];
        }

        Refuse(given, name, $"{name} takes a list of texts, and this is {given.InWords}.", mend);
        return [];
    }

    public double? Number(string name, double low, double high, bool isWhole = false)
    {
        if (Of(name) is not { } given)
        {
            return null;
        }

        if (given.Kind == JsonKind.Number && double.Parse(given.Text, CultureInfo.InvariantCulture) is var found && found >= low
            && found <= high
            && (!isWhole || Math.Floor(found) == found))
        {
            return found;
        }

        Refuse(
            given, name, $"{name} takes a {(isWhole ? (Said)"whole " : "")}number from {low:0.##} to {high:0.##}, and this is {given.InWords}.",
            "Write a number without quotes.");
        return null;
    }

    public bool Flag(string name)
    {
        if (Of(name) is { Kind: not JsonKind.Flag } wrong)
        {
            Refuse(wrong, name, $"{name} takes true or false, and this is {wrong.InWords}.", "Write true, without quotes.");
        }

        return Of(name) is { Kind: JsonKind.Flag, Text: "true" };
    }

    public void Refuse(string name, Said found, Said mend) => Refuse(piece, name, found, mend);

    public void Refuse(JsonPiece part, string name, Said found, Said mend) =>
        values.Refuse(key, part, $"{key.Path}[{number.ToString(CultureInfo.InvariantCulture)}].{name}", found, mend);
}

using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>
/// The values of a job.json by their keys' full paths, and everything found wrong with them. A value that is
/// missing or wrong reads as its default, so that the rest of the file can be checked too.
/// </summary>
internal sealed class JobValues
{
    private readonly Dictionary<string, (JsonMember Key, JsonPiece Value)> _given;
    private readonly HashSet<string> _faulty;

    /// <summary>Keys that job.json does not give and the workshop answers.</summary>
    private readonly HashSet<string> _answered = new(StringComparer.Ordinal);
    private string _answeredIn = JobReader.FileName;

    private JobValues(Dictionary<string, (JsonMember Key, JsonPiece Value)> given, HashSet<string> faulty, List<Problem> problems)
    {
        _given = given;
        _faulty = faulty;
        Problems = problems;
    }

    public List<Problem> Problems { get; }

    /// <summary>Takes the values out of a file's groups; keys that are unknown, doubled or in the wrong place are problems.</summary>
    public static JobValues From(JsonPiece root, List<Problem> problems)
    {
        var meant = new HashSet<string>(StringComparer.Ordinal);
        return new JobValues(JobKeySorting.Sort(root, problems, meant), meant, problems);
    }

    /// <summary>Takes what the workshop has of keys that job.json does not give itself.</summary>
    public void Answer(WorkshopFound found, Way way)
    {
        _answeredIn = found.Workshop.File ?? _answeredIn;
        var letters = WorkshopFile.LettersOf(found, way) is { } root ? JobKeySorting.Sort(root, Problems, _faulty, _answeredIn) : [];
        var answers = WorkshopFile.Answers(found, way).Concat(letters.Select(l => (l.Key, l.Value.Key, l.Value.Value)));
        foreach (var (path, key, value) in answers)
        {
            if (_given.TryAdd(path, (key, value)))
            {
                _answered.Add(path);
            }
        }
    }

    /// <summary>Whether job.json itself gives it, whatever the workshop says.</summary>
    public bool IsWritten(JobKey key) => Has(key) && !_answered.Contains(key.Path);

    public bool Has(string path) => _given.ContainsKey(path);

    public bool Has(JobKey key) => Has(key.Path);

    public bool HasGroup(string path) => _given.TryGetValue(path, out var given) && given.Value.Kind == JsonKind.Group;

    /// <summary>True when none of the keys was given wrongly or misspelt: only then do checks between them say anything.</summary>
    public bool AreSound(params JobKey[] keys) => keys.All(k => IsSound(k.Path));

    public bool IsSound(string path) => !_faulty.Contains(path);

    public Where Place(string path) =>
        _given.TryGetValue(path, out var given) ? At(given.Key.Line, given.Key.Column, Spelt(path)) : JobReader.At(null, null, path);

    /// <summary>A key as the file has it: by the name of today, or by the older one.</summary>
    public string Spelt(JobKey key) => Spelt(key.Path);

    private string Spelt(string path) =>
        OlderSpellings.Of(path) is { } older && _given.TryGetValue(path, out var given)
        && older.EndsWith("." + given.Key.Key, StringComparison.Ordinal) ? older : path;

    private Where At(int line, int column, string path) => _answered.Contains(path)
        ? new Where(_answeredIn, line, column, path) : JobReader.At(line, column, path);

    public void Refuse(string path, Said found, Said mend)
    {
        _faulty.Add(path);
        Problems.Add(Problem.CannotUse(Place(path), found, mend));
    }

    public void Refuse(JobKey key, Said found, Said mend) => Refuse(key.Path, found, mend);

    /// <summary>Something about a key that is worth knowing and stops nothing.</summary>
    public void Note(JobKey key, Said found, Said mend) => Problems.Add(Problem.Note(Place(key.Path), found, mend));

    /// <summary>Whether a number stands there, or in its list, without quotes and so without a unit.</summary>
    public bool HasBareNumber(JobKey key) => _given.TryGetValue(key.Path, out var given)
        && (given.Value.Kind == JsonKind.Number || given.Value.Items.Any(i => i.Kind == JsonKind.Number));

    /// <summary>Refuses a part of a key's value, at the part's own place in the file.</summary>
    public void Refuse(JobKey key, JsonPiece part, string path, Said found, Said mend)
    {
        _faulty.Add(key.Path);
        Problems.Add(Problem.CannotUse(JobReader.At(part.Line, part.Column, path), found, mend));
    }

    /// <summary>A value as it stands, or null when it is not given.</summary>
    public JsonPiece? Form(FormKey key) => _given.TryGetValue(key.Path, out var given) ? given.Value : null;

    public Length? Length(LengthKey key)
    {
        if (!_given.TryGetValue(key.Path, out var given) || IsWord(given.Value, key.Word))
        {
            return key.Default;
        }

        return One(key, given.Value, $"{Spelt(key)} takes {key.Takes}") ?? key.Default;
    }

    public Length Certain(LengthKey key) => Length(key) ?? default;

    public ImmutableArray<Length> Lengths(LengthKey key)
    {
        if (!_given.TryGetValue(key.Path, out var given))
        {
            return [];
        }

        if (given.Value.Kind != JsonKind.Series)
        {
            return Length(key) is { } only ? [only] : [];
        }

        if (given.Value.Items.IsEmpty)
        {
            Refuse(
                key, $"{Spelt(key)} is an empty list.",
                key.Each == "round" ? "Give one length, or one for each round, lowest first." : (Said)$"Give one length for each {key.Each}.");
        }

        return [.. given.Value.Items.Select((item, i) => One(key, item, $"Entry {i + 1} of {Spelt(key)} must be a length"))
            .OfType<Length>()];
    }

    /// <summary>The number as it stands, if it is a whole one, whatever the key allows.</summary>
    public double? WholeNumber(NumberKey key) =>
        _given.TryGetValue(key.Path, out var given) && given.Value.Kind == JsonKind.Number
        && double.Parse(given.Value.Text, CultureInfo.InvariantCulture) is var number && Math.Floor(number) == number ? number : null;

    public double? Number(NumberKey key)
    {
        if (!_given.TryGetValue(key.Path, out var given))
        {
            return key.Default;
        }

        if (IsWord(given.Value, key.Word))
        {
            return null;
        }

        if (given.Value.Kind != JsonKind.Number)
        {
            Said quotes = given.Value.Kind == JsonKind.Text ? " without quotes" : "";
            Refuse(
                key, $"{Spelt(key)} takes {key.Takes}, and this is {given.Value.InWords}.",
                $"Write {key.Plain}{quotes}, {key.RangeInWords}{key.OrWord}.");
            return key.Default;
        }

        double number = double.Parse(given.Value.Text, CultureInfo.InvariantCulture);
        if (!double.IsFinite(number) || !key.Allows(number))
        {
            Refuse(key, $"{Spelt(key)} is {PlainText.Short(given.Value.Text)}.", $"Give {key.Plain} {key.RangeInWords}{key.OrWord}.");
            return key.Default;
        }

        return number;
    }

    public bool Flag(FlagKey key)
    {
        if (!_given.TryGetValue(key.Path, out var given))
        {
            return key.Default;
        }

        if (given.Value.Kind != JsonKind.Flag)
        {
            Refuse(key, $"{Spelt(key)} takes true or false, and this is {given.Value.InWords}.", "Write true or false, without quotes.");
            return key.Default;
        }

        return given.Value.Text == "true";
    }

    public T Word<T>(WordKey<T> key)
    {
        if (!_given.TryGetValue(key.Path, out var given))
        {
            return key.Choices[0].Value;
        }

        foreach (var (word, value) in key.Read)
        {
            if (IsWord(given.Value, word))
            {
                return value;
            }
        }

        string? near = given.Value.Kind == JsonKind.Text ? NearestWord.Find(given.Value.Text, key.Words) : null;
        Refuse(
            key, $"{Spelt(key)} takes {key.Takes}, and this is {given.Value.InWords}.",
            near is null ? (Said)$"Write {key.Takes}." : $"Did you mean \"{near}\"?");
        return key.Choices[0].Value;
    }

    public string? Text(TextKey key)
    {
        if (!_given.TryGetValue(key.Path, out var given))
        {
            return key.Default;
        }

        return OneText(key, given.Value, Said.Plain(Spelt(key))) ?? key.Default;
    }

    public ImmutableArray<string> Texts(TextsKey key)
    {
        if (!_given.TryGetValue(key.Path, out var given))
        {
            return [];
        }

        if (given.Value.Kind != JsonKind.Series)
        {
            Said mend = given.Value.Kind == JsonKind.Text
                ? (Said)$"Put it in brackets: [\"{PlainText.Short(given.Value.Text)}\"]." : $"Write a list such as [\"{key.Example}\"].";
            Refuse(key, $"{Spelt(key)} takes {key.Takes}, and this is {given.Value.InWords}.", mend);
            return [];
        }

        if (given.Value.Items.IsEmpty)
        {
            Refuse(
                key, $"{Spelt(key)} is an empty list.",
                $"Write at least one into it, such as [\"{key.Example}\"]{(key.Otherwise == "required" ? (Said)"" : ", or take the key out")}.");
        }

        return [.. given.Value.Items.Select((item, i) => OneText(key, item, $"Entry {i + 1} of {Spelt(key)}")).OfType<string>()];
    }

    /// <summary>Texts as above, where one may be <c>{ "file": …, "sheet": … }</c> too, which comes as <c>file#sheet</c>.</summary>
    public ImmutableArray<string> Lists(TextsKey key)
    {
        if (!_given.TryGetValue(key.Path, out var given) || given.Value.Kind != JsonKind.Series
            || !given.Value.Items.Any(i => i.Kind == JsonKind.Group))
        {
            return Texts(key);
        }

        return [.. given.Value.Items.Select((item, i) => item.Kind == JsonKind.Group ? OneSheet(key, item, i + 1)
            : OneText(key, item, $"Entry {i + 1} of {Spelt(key)}")).OfType<string>()];
    }

    private string? OneSheet(TextsKey key, JsonPiece group, int entry)
    {
        Said name = $"Entry {entry} of {Spelt(key)}";
        var odd = group.Members.FirstOrDefault(m => m.Key is not ("file" or "sheet"));
        string? file = Member("file"), sheet = Member("sheet");
        if (odd is not null || file is null || !file.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase))
        {
            Refuse(
                key, odd is not null ? (Said)$"{name} has “{PlainText.Short(odd.Key)}” in it, which nobody knows." : $"{name} names no workbook.",
                "Write { \"file\": \"names.xlsx\", \"sheet\": \"Friends\" }, or the name of a CSV file alone.");
            return null;
        }

        return sheet is null ? file : $"{file}#{sheet}";

        string? Member(string of) =>
            group.Members.FirstOrDefault(m => m.Key == of) is { } member ? OneText(key, member.Value, $"{name}, {of},") : null;
    }

    private static bool IsWord(JsonPiece value, string? word) =>
        word is not null && value.Kind == JsonKind.Text && value.Text == word;

    private Length? One(LengthKey key, JsonPiece value, Said expected)
    {
        if (value.Kind is not (JsonKind.Text or JsonKind.Number))
        {
            Refuse(key, $"{expected}, and this is {value.InWords}.", "Write a length such as \"2 in\" or \"50 mm\".");
            return null;
        }

        if (key.Word is not null && value.Kind == JsonKind.Text && NearestWord.Find(value.Text, [key.Word]) is { } near)
        {
            Refuse(key, $"{expected}, and this is {value.InWords}.", $"Did you mean \"{near}\"?");
            return null;
        }

        bool isRead = value.Kind == JsonKind.Text
            ? LengthReading.TryRead(value.Text, out var length, out var fault)
            : LengthReading.TryCheck(
                double.Parse(value.Text, CultureInfo.InvariantCulture), PlainText.Short(value.Text), out length, out fault);
        if (!isRead)
        {
            Refuse(key, fault.Found, fault.Mend);
            return null;
        }

        if (length.Mm < key.LowMm || length.Mm > key.HighMm)
        {
            Refuse(
                key, $"{Spelt(key)} is {PlainText.Short(value.Text)}{(value.Kind == JsonKind.Number ? (Said)" mm" : "")}.",
                $"Give a length {key.RangeInWords}.");
            return null;
        }

        return length;
    }

    private string? OneText(JobKey key, JsonPiece value, Said name)
    {
        if (value.Kind != JsonKind.Text)
        {
            Refuse(key, $"{name} must be text, and this is {value.InWords}.", "Write text in double quotes.");
            return null;
        }

        if (string.IsNullOrWhiteSpace(value.Text))
        {
            Refuse(key, $"{name} is empty.", "Write something between the quotes, or leave the key out.");
            return null;
        }

        if (value.Text.Length > 300 || value.Text.Any(char.IsControl))
        {
            Refuse(key, $"{name} is too long or has control characters in it.", "Write at most 300 ordinary characters.");
            return null;
        }

        return value.Text.Trim();
    }
}

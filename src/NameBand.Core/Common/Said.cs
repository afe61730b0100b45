using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json.Serialization;

namespace NameBand.Common;

/// <summary>
/// What a person reads: kept as its English template with what stands in its holes, and said in the language of whoever reads it.
/// A text between quotes becomes one by itself where one is wanted; what a person wrote is <see cref="Plain"/> and never touched.
/// </summary>
[InterpolatedStringHandler]
[JsonConverter(typeof(SaidJson))]
public sealed class Said : IEquatable<Said>
{
    public static readonly Said Nothing = Plain("");

    private readonly bool _isPlain;
    private readonly SaidForms? _forms;
    private readonly Func<string, CultureInfo, string>? _change;
    private object?[] _parts;
    private int _count;
    private string? _english;

    /// <summary>For the compiler, which fills in the text between quotes piece by piece.</summary>
    public Said(int literalLength, int formattedCount)
    {
        _ = literalLength;
        _parts = new object?[(2 * formattedCount) + 1];
    }

    private Said(object?[] parts, bool isPlain = false, SaidForms? forms = null, Func<string, CultureInfo, string>? change = null)
    {
        _parts = parts;
        _count = parts.Length;
        _isPlain = isPlain;
        _forms = forms;
        _change = change;
    }

    /// <summary>In English, alike on every machine: for all that a program reads.</summary>
    public string English => _english ??= Text(null);

    public bool IsEmpty => English.Length == 0;

    /// <summary>The English with a number in each hole, such as <c>{0} of {1}</c>: the key in the resource files.</summary>
    public string Template
    {
        get
        {
            var template = new StringBuilder();
            int hole = 0;
            foreach (object? part in _parts.AsSpan(0, _count))
            {
                _ = part is string text ? template.Append(Braced(text))
                    : template.Append('{').Append(hole++.ToString(CultureInfo.InvariantCulture)).Append('}');
            }

            return template.ToString();
        }
    }

    [return: NotNullIfNotNull(nameof(english))]
    public static implicit operator Said?(string? english) => english is null ? null : new([english]);

    public static Said operator +(Said left, Said right) =>
        left.IsEmpty ? right : right.IsEmpty ? left : new([new Hole(left), new Hole(right)]);

    public static bool operator ==(Said? left, Said? right) => left is null ? right is null : left.Equals(right);

    public static bool operator !=(Said? left, Said? right) => !(left == right);

    /// <summary>A text that comes as its key, such as that of an attribute.</summary>
    public static Said OfKey(string english) => new([english]);

    /// <summary>What is no text of the program: a name, a path, what another program said. The same in every language.</summary>
    public static Said Plain(string text) => new([text], isPlain: true);

    /// <summary>One text for one and another for several; other languages may have more, by CLDR's rules for plurals.</summary>
    public static Said Plural(long count, Said one, Said several) => new([], forms: new SaidForms(count, one, several));

    /// <summary>A number with what is counted.</summary>
    public static Said Counted(double count, string format, string one, string several)
    {
        var number = new Hole(count, format);
        return new([], forms: new SaidForms(count, new([number, " " + one]), new([number, " " + several])));
    }

    public static Said Join(Said between, IEnumerable<Said> texts)
    {
        object?[] parts = [.. texts.SelectMany((t, i) => i == 0 ? [new Hole(t)] : new object?[] { new Hole(between), new Hole(t) })];
        return new(parts);
    }

    /// <summary>The same, changed once it is said, such as with a capital at its head.</summary>
    public Said Changed(Func<string, CultureInfo, string> change) => new([this], change: change);

    /// <summary>Figures that stay in their order where all else runs from right to left, by Unicode's isolates (UAX #9).</summary>
    public Said InOrder() => Changed((text, culture) => culture.TextInfo.IsRightToLeft ? $"\u2066{text}\u2069" : text);

    public void AppendLiteral(string text) => Append(text);

    public void AppendFormatted(Said? value) => Append(new Hole(value));

    public void AppendFormatted(string? value) => Append(new Hole(value));

    public void AppendFormatted<T>(T value, string? format = null) => Append(new Hole(value, format));

    public void AppendFormatted<T>(T value, int alignment, string? format = null) => Append(new Hole(value, format, alignment));

    /// <summary>In the language of whoever reads: that of the thread, where the program has it, else English.</summary>
    public override string ToString() => Language.Now is { } language ? Text(language) : English;

    public bool Equals(Said? other) => ReferenceEquals(this, other) || (other is not null && English == other.English);

    public override bool Equals(object? obj) => obj is Said other && Equals(other);

    public override int GetHashCode() => English.GetHashCode(StringComparison.Ordinal);

    internal string Text(Language? language)
    {
        var culture = language?.Culture ?? CultureInfo.InvariantCulture;
        if (_change is not null)
        {
            return _change(((Said)_parts[0]!).Text(language), culture);
        }

        if (_forms is not null)
        {
            return _forms.Text(language);
        }

        return language is not null && Translated(language, null) is { } said ? said : Filled(language, culture);
    }

    /// <param name="category">Of the plural, such as <c>few</c>; null where there is only one form.</param>
    internal string? Translated(Language language, string? category)
    {
        if (_isPlain || !HasWords())
        {
            return null;
        }

        string key = SaidTemplate.KeyOf(Template);
        string? said = (category is null ? null : language.Find($"{key} [{category}]")) ?? language.Find(key);
        return said is null ? null : Filled(said, language);
    }

    private static string Braced(string text) =>
        text.AsSpan().IndexOfAny('{', '}') < 0 ? text
            : text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);

    /// <summary>Signs alone, such as a dash between two numbers, are the same in every language.</summary>
    private bool HasWords()
    {
        foreach (object? part in _parts.AsSpan(0, _count))
        {
            if (part is string text && text.Any(char.IsLetter))
            {
                return true;
            }
        }

        return false;
    }

    private string Filled(Language? language, CultureInfo culture)
    {
        if (_count == 1 && _parts[0] is string only)
        {
            return only;
        }

        var text = new StringBuilder();
        foreach (object? part in _parts.AsSpan(0, _count))
        {
            text.Append(part is Hole hole ? hole.Text(language, culture) : (string?)part);
        }

        return text.ToString();
    }

    private string Filled(string template, Language language)
    {
        var holes = _parts.Take(_count).OfType<Hole>().ToArray();
        return SaidTemplate.Fill(template, hole => hole < holes.Length ? holes[hole].Text(language, language.Culture) : "");
    }

    /// <summary>Several texts that are added up come with more pieces than the compiler foretells.</summary>
    private void Append(object part)
    {
        if (_count == _parts.Length)
        {
            Array.Resize(ref _parts, (2 * _count) + 1);
        }

        _parts[_count++] = part;
    }

    private sealed record Hole(object? Value, string? Format = null, int Alignment = 0)
    {
        public string Text(Language? language, CultureInfo culture)
        {
            string text = Value switch
            {
                null => "",
                string plain => plain,
                Said said => said.Text(language),
                ITold told => told.InWords.Text(language),
                IFormattable number => number.ToString(Format, culture),
                _ => Value.ToString() ?? "",
            };
            return Alignment < 0 ? text.PadRight(-Alignment) : text.PadLeft(Alignment);
        }
    }
}

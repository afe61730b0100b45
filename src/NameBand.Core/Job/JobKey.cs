using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>A key job.json may have: its full path, what it takes and what is taken when it is not there.</summary>
internal abstract record JobKey(string Path)
{
    /// <summary>What may stand there, for messages and for the table in docs/job-file.md.</summary>
    public abstract Said Takes { get; }

    /// <summary>The default as it would be written, or in words; for the table in docs/job-file.md.</summary>
    public abstract Said DefaultText { get; }

    protected static string InWords(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    protected static Said InWords(Length length)
    {
        if (length.Mm >= 10_000)
        {
            return length.InMetres();
        }

        bool isOfInches = Math.Abs(length.Mm - Math.Round(length.Mm)) > 1e-9
            && Length.TryParse(length.InInches().English, out var back, out _) && Math.Abs(back.Mm - length.Mm) < 1e-9;
        return isOfInches ? length.InInches() : length.InMillimetres();
    }
}

/// <param name="Default">Null: <paramref name="Otherwise"/> says in words what is taken.</param>
/// <param name="Word">A word that may stand in place of a length, and then reads as null.</param>
/// <param name="Many">A list of lengths may stand there too.</param>
/// <param name="Each">What each length of such a list belongs to.</param>
internal sealed record LengthKey(
    string Path, Length? Default, double LowMm, double HighMm, Said? Otherwise = null, string? Word = null, bool Many = false,
    string Each = "round")
    : JobKey(Path)
{
    public override Said Takes =>
        $"a length{(Many ? (Said)$", or a list of one length for each {Each}" : "")}{(Word is null ? "" : (Said)$", or \"{Word}\"")}";

    public override Said DefaultText => Default is { } value ? InWords(value) : Otherwise ?? Said.Nothing;

    public Said RangeInWords => $"from {InWords(Length.FromMm(LowMm))} to {Far(HighMm)}";

    private static Said Far(double mm) => mm >= 1000 ? Length.FromMm(mm).InMetres() : InWords(Length.FromMm(mm));
}

/// <param name="High">The highest number allowed; <paramref name="IsBelow"/> shuts it out itself.</param>
/// <param name="Word">A word that may stand in place of a number, and then reads as null.</param>
internal sealed record NumberKey(
    string Path, double? Default, double Low, double High, Said? Otherwise = null, string? Word = null, bool IsWhole = false,
    bool IsAbove = false, bool IsBelow = false)
    : JobKey(Path)
{
    public override Said Takes => Plain + OrWord;

    public override Said DefaultText => Default is { } value ? Said.Plain(InWords(value)) : Otherwise ?? Said.Nothing;

    /// <summary>What may stand there besides the word.</summary>
    public Said Plain => IsWhole ? "a whole number" : "a number";

    public Said OrWord => Word is null ? "" : (Said)$", or \"{Word}\"";

    public Said RangeInWords => (IsAbove, IsBelow) switch
    {
        (false, false) => (Said)$"from {InWords(Low)} to {InWords(High)}",
        (false, true) => $"from {InWords(Low)} to just below {InWords(High)}",
        (true, false) => $"above {InWords(Low)} to {InWords(High)}",
        (true, true) => $"above {InWords(Low)} to just below {InWords(High)}",
    };

    public bool Allows(double number) =>
        (IsAbove ? number > Low : number >= Low) && (IsBelow ? number < High : number <= High)
            && (!IsWhole || Math.Floor(number) == number);
}

internal sealed record FlagKey(string Path, bool Default) : JobKey(Path)
{
    public override Said Takes => "true or false";

    public override Said DefaultText => Default ? "true" : "false";
}

internal abstract record WordKey(string Path, ImmutableArray<string> Words) : JobKey(Path)
{
    public override Said Takes =>
        Said.Plain(string.Join(" or ", Words.Select(w => $"\"{w}\"")));
}

/// <summary>One of a few words, each of which stands for a value; the first is the default.</summary>
internal sealed record WordKey<T>(string Path, params (string Word, T Value)[] Choices)
    : WordKey(Path, [.. Choices.Select(c => c.Word)])
{
    /// <summary>What is taken where it is not written, in words; null: the first of the choices.</summary>
    public Said? Otherwise { get; init; }

    /// <summary>Further words that are read, for those who write them; nothing of ours does.</summary>
    public ImmutableArray<(string Word, T Value)> Also { get; init; } = [];

    public IEnumerable<(string Word, T Value)> Read => Choices.Concat(Also);

    public override Said DefaultText => Otherwise ?? $"\"{Choices[0].Word}\"";
}

/// <param name="Default">Null: <paramref name="Otherwise"/> says in words what is taken.</param>
internal sealed record TextKey(string Path, string? Default, Said? Otherwise = null) : JobKey(Path)
{
    public override Said Takes => "text";

    public override Said DefaultText => Default is { } value ? (Said)$"\"{value}\"" : Otherwise ?? Said.Nothing;
}

/// <summary>A key whose value has a form of its own.</summary>
internal sealed record FormKey(string Path, Said Form, Said Otherwise) : JobKey(Path)
{
    public override Said Takes => Form;

    public override Said DefaultText => Otherwise;
}

/// <param name="Otherwise">What is taken when it is not given, in words.</param>
/// <param name="Example">One text such as may stand in the list.</param>
internal sealed record TextsKey(string Path, Said Example, Said? Otherwise = null) : JobKey(Path)
{
    public override Said Takes => "a list of texts";

    public override Said DefaultText => Otherwise ?? "required";
}

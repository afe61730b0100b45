using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

namespace NameBand.Common;

/// <summary>What a problem stops.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing is stopped.</summary>
    Note,

    /// <summary>The work is made, but a person has to decide something before sewing (exit status 1).</summary>
    NeedsPerson,

    /// <summary>The input cannot be used and nothing is written (exit status 2).</summary>
    CannotUse,
}

/// <summary>Where a problem lies; lines and columns count from 1.</summary>
public sealed record Where(string? File = null, int? Line = null, int? Column = null, string? Key = null, string? Name = null) : ITold
{
    /// <summary>How a key is said that stands in no file, such as that of a round; null: as it is written.</summary>
    [JsonIgnore]
    public Said? KeyInWords { get; init; }

    public Said InWords => Said.Join(", ", Parts());

    /// <summary>A place that has no key in a file, and so one in words.</summary>
    public static Where Of(string? file, Said part) => new(file, Key: part.English) { KeyInWords = part };

    public override string ToString() => InWords.English;

    private IEnumerable<Said> Parts()
    {
        if (File is { Length: > 0 })
        {
            yield return Said.Plain(File);
        }

        if (Line is { } line)
        {
            yield return $"line {line}";
        }

        if (Column is { } column)
        {
            yield return $"column {column}";
        }

        if (Key is { Length: > 0 })
        {
            yield return KeyInWords ?? Said.Plain(Key);
        }

        if (Name is { } name)
        {
            yield return $"“{name}”";
        }
    }
}

/// <summary>Something wrong or doubtful in what a person gave: where, what was found, and what to do.</summary>
/// <param name="Found">What was found and, where it helps, what was expected: a whole sentence.</param>
/// <param name="Mend">What to do about it: a whole sentence; empty only for a plain note.</param>
public sealed record Problem(Severity Severity, Where Where, Said Found, Said Mend)
{
    /// <summary>The verdict on a fact of the plan that it tells; null where it is of something else.</summary>
    [JsonIgnore]
    public Verdict? Judged { get; init; }

    /// <summary>It asks for something to be done before sewing, and speaks against no plan.</summary>
    [JsonIgnore]
    public bool IsBeforeSewing { get; init; }

    public static Problem Note(Where where, Said found, Said? mend = null) =>
        new(Severity.Note, where, found, mend ?? Said.Nothing);

    public static Problem NeedsPerson(Where where, Said found, Said mend) => new(Severity.NeedsPerson, where, found, mend);

    /// <summary>The machine refused to read or write.</summary>
    /// <param name="what">What it could not: “write”.</param>
    public static Problem OfMachine(Where where, Said what, Exception refusal) => CannotUse(
        where, $"The machine could not {what}: {refusal.Message}",
        Disk.IsHeld(refusal) ? "Another program has a file open, most often a spreadsheet. Close the file there and try again."
            : "Check whether there is room on the disk and whether you may write there.");

    public static Problem CannotUse(Where where, Said found, Said mend) => new(Severity.CannotUse, where, found, mend);
}

/// <summary>
/// What a room made, with what it found wrong on the way. <see cref="Value"/> is null only when a
/// <see cref="Severity.CannotUse"/> problem is among the problems.
/// </summary>
public sealed record Result<T>(T? Value, ImmutableArray<Problem> Problems)
    where T : class
{
    [MemberNotNullWhen(true, nameof(Value))]
    public bool IsUsable => Value is not null && !Problems.Any(p => p.Severity == Severity.CannotUse);
}

public static class Result
{
    public static Result<T> Of<T>(T value, IEnumerable<Problem>? problems = null)
        where T : class => new(value, problems is null ? [] : [.. problems]);

    public static Result<T> Fail<T>(params IEnumerable<Problem> problems)
        where T : class => new(null, [.. problems]);
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>What a screen can ask for a key.</summary>
public enum JobKeyKind
{
    Length,
    Number,
    Flag,

    /// <summary>One of <see cref="JobKeyCard.Words"/>.</summary>
    Word,
    Text,
    Texts,

    /// <summary>A word, or a value with a form of its own in { } or [ ].</summary>
    Form,
}

/// <summary>A key of job.json as it can be shown to a person.</summary>
/// <param name="Path">Such as <c>hem.length</c>.</param>
/// <param name="Takes">What may stand there, in words.</param>
/// <param name="DefaultText">What holds where the key is not there, in words.</param>
/// <param name="Words">The words to choose from; a number or length may have one that stands in its place.</param>
/// <param name="IsMany">A list of lengths may stand there too.</param>
public sealed record JobKeyCard(string Path, JobKeyKind Kind, Said Takes, Said DefaultText, ImmutableArray<string> Words, bool IsMany)
{
    /// <summary>Every key of job.json, theme by theme, as in docs/job-file.md.</summary>
    public static ImmutableArray<JobKeyCard> All { get; } = [.. JobKeys.All.Select(Of)];

    /// <summary>The key that was most likely meant by one that nobody knows; null where none is like it.</summary>
    public static string? MeantBy(string path) => JobKeySorting.Meant(path) is { } meant ? OlderSpellings.ToToday(meant) : null;

    /// <summary>The path by which a key goes now, whichever of its names is given.</summary>
    public static string Today(string path) => OlderSpellings.ToToday(path);

    private static JobKeyCard Of(JobKey key)
    {
        var (kind, words) = key switch
        {
            LengthKey length => (JobKeyKind.Length, Only(length.Word)),
            NumberKey number => (JobKeyKind.Number, Only(number.Word)),
            FlagKey => (JobKeyKind.Flag, ["true", "false"]),
            WordKey word => (JobKeyKind.Word, word.Words),
            TextsKey => (JobKeyKind.Texts, []),
            FormKey => (JobKeyKind.Form, []),
            _ => (JobKeyKind.Text, ImmutableArray<string>.Empty),
        };
        return new JobKeyCard(
            key.Path, kind, key.Takes, key.DefaultText.Changed((text, _) => text.Trim('"')), words, key is LengthKey { Many: true });
    }

    private static ImmutableArray<string> Only(string? word) => word is null ? [] : [word];
}

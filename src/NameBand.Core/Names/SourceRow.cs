using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Whether a row asks not to be shown.</summary>
internal enum Wish
{
    Show,
    LeaveOut,
    Unclear,
}

/// <summary>A cell beside the name that is not blank; its content is compared and never shown.</summary>
internal readonly record struct Detail(string Meaning, Said Label, string Content)
{
    /// <summary>Is an answer to whether the name may be shown.</summary>
    public bool IsAnswer { get; init; }
}

/// <summary>A data row as it was read, before anything is decided about it.</summary>
/// <param name="Details">In order of <see cref="Detail.Meaning"/>.</param>
/// <param name="Answers">What it says of whether its name may be shown.</param>
/// <param name="Doubt">Why the row's form makes its name doubtful; null when it does not.</param>
/// <param name="Notes">Oddities of the row's form, such as missing fields.</param>
internal sealed record SourceRow(
    RowRef Ref, NameText Name, ImmutableArray<Detail> Details, ShowAnswers Answers, Said? Doubt, ImmutableArray<Said> Notes)
{
    /// <summary>Name of its group in job.json; null for none.</summary>
    public string? Group { get; init; }

    /// <summary>What it answers to whether its name may be shown on the web.</summary>
    public WebAnswer Web { get; init; }

    /// <inheritdoc cref="ShowAnswers.Wish"/>
    public Wish Wish => Answers.Wish;

    /// <summary>Equal for rows that say the same beside their names.</summary>
    public string DetailsKey => KeyOf(Details);

    /// <summary>The same without their answers to whether they may be shown.</summary>
    public string BesideAnswers => KeyOf(Details.Where(d => !d.IsAnswer));

    /// <summary>
    /// A short fingerprint of what stands beside the name, from which it cannot be read: so that a row is found again
    /// when its line has moved. Begins with a letter so that a spreadsheet leaves it alone; empty when nothing stands there.
    /// What the row answers to whether it may be shown is not in it: a row that changes its answer is still the same row.
    /// </summary>
    public string DetailsPrint => PrintOf(BesideAnswers);

    /// <summary>The fingerprint as version 0.1 made it, with answers that are unclear.</summary>
    public string EarlierPrint => PrintOf(DetailsKey);

    private static string KeyOf(IEnumerable<Detail> details) => string.Concat(details.Select(d => $"{d.Meaning}\u0001{d.Content}\u0002"));

    private static string PrintOf(string key) => key.Length == 0
        ? ""
        : "d" + Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(key))[..4]);

    /// <summary>Headers under which two rows say different things.</summary>
    public static ImmutableArray<Said> DifferingLabels(SourceRow a, SourceRow b)
    {
        var other = b.Details.ToDictionary(d => d.Meaning, StringComparer.Ordinal);
        var labels = a.Details
            .Where(d => !other.Remove(d.Meaning, out var same) || same.Content != d.Content)
            .Select(d => d.Label)
            .ToList();
        return [.. labels, .. b.Details.Where(d => other.ContainsKey(d.Meaning)).Select(d => d.Label)];
    }
}

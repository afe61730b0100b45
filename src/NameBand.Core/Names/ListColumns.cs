using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>A column in which a row asks not to be shown: with a yes, or (one such as “public”) with a no.</summary>
/// <param name="YesHides">Null: it may be such a column, and nobody has said what it means.</param>
internal readonly record struct LeaveOutColumn(int Index, bool? YesHides);

/// <summary>What the columns of a list are.</summary>
/// <param name="HasHeader">False: a single column of names that begins in the first row.</param>
/// <param name="Labels">Headers fit for a message: one that looks like data is called by its number.</param>
/// <param name="Meanings">What to compare columns of several lists by.</param>
internal sealed record ListColumns(
    bool HasHeader, int Name, ImmutableArray<LeaveOutColumn> LeaveOut, ImmutableArray<Said> Labels, ImmutableArray<string> Meanings)
{
    public int Count => Labels.Length;

    /// <summary>The column that says in which group a row is; null where the list has none.</summary>
    public int? Group { get; init; }

    /// <summary>Columns that say whether a name may be shown on the web; of the garment they say nothing.</summary>
    public ImmutableArray<LeaveOutColumn> Web { get; init; } = [];

    /// <summary>Other columns in which somebody may have written a wish not to be shown.</summary>
    public ImmutableArray<int> Remarks { get; init; } = [];

    public static ImmutableArray<Said> LabelsOf(CsvRow header) => [.. header.Fields.Select(Label)];

    /// <summary>“Name”, “Mail” and “Note”, for a message.</summary>
    public static Said Listed(IEnumerable<string> labels) => Listed(labels.Select(Said.Plain));

    public static Said Listed(IEnumerable<Said> labels)
    {
        Said[] all = [.. labels.Select(l => (Said)$"“{l}”")];
        return all.Length switch
        {
            0 => "none",
            > 12 => $"{Said.Join(", ", all.Take(12))} and more",
            _ => Wording.List(all),
        };
    }

    /// <summary>A first row may be data after all; what looks private or is too long is not repeated.</summary>
    private static Said Label(string header, int index)
    {
        string text = NameText.Clean(header).Text;
        bool shown = text.Length is > 0 and <= 40 && !text.Contains('@') && text.Count(char.IsDigit) < 4
            && !(HeaderWords.Key(text) is var key && key.Length > 0 && key.All(char.IsDigit));
        return shown ? Said.Plain(text) : $"column {index + 1}";
    }
}

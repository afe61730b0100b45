using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>What a person decides about a row.</summary>
/// <param name="Was">The row's name as it stands in the list.</param>
/// <param name="Decision">Keep, leave out or change.</param>
/// <param name="Text">The name to sew, where it is to be another one than the row's.</param>
public sealed record RowDecision(RowRef Row, string Was, Decision Decision, string Text, string Why)
{
    /// <summary>Fingerprint of what stands beside the name, by which the decision follows its row; empty: none.</summary>
    public string Details { get; init; } = "";
}

/// <summary>Writes decisions into the text of corrections.csv; lines about other rows stay as they are.</summary>
public static class CorrectionsEditing
{
    /// <returns>The whole file anew, to be saved.</returns>
    public static Result<KeptFile> Apply(string jobFolder, ImmutableArray<RowDecision> decisions)
    {
        var read = Corrections.Read(jobFolder);
        if (read.Value is not { } there || !read.IsUsable)
        {
            return Result.Fail<KeptFile>(read.Problems);
        }

        char separator = there.Separator;
        var decided = decisions.ToDictionary(d => d.Row);
        var text = new StringBuilder().Append(CsvText.Row(Corrections.Columns, separator)).Append(CsvText.LineEnd);
        foreach (var line in there.Lines.Where(l => !decided.ContainsKey(l.Row)))
        {
            Add(line.Row, line.Was, line.Decision, line.Text, line.Why, line.Details);
        }

        foreach (var d in decisions)
        {
            Add(d.Row, d.Was, d.Decision, d.Text, d.Why, d.Details);
        }

        return Result.Of(KeptFile.Of(Encoding.UTF8.GetBytes(text.ToString())));

        void Add(RowRef row, string was, Decision decision, string wanted, string why, string details) => text
            .Append(CsvText.Row(
                [row.List, row.Line.ToString(CultureInfo.InvariantCulture), was, Word(decision), wanted, why, details], separator))
            .Append(CsvText.LineEnd);
    }

    private static string Word(Decision decision) => decision switch
    {
        Decision.Keep => "keep",
        Decision.LeaveOut => "leave out",
        Decision.Change => "change",
        Decision.NotYet => "",
        _ => "?", // Not understood, and still so.
    };
}

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

    /// <summary>What the row answers to whether its name may be shown; the decision is for that answer.</summary>
    public string Show { get; init; } = "";

    /// <summary>Mark of the lines that ask the same; empty: none.</summary>
    public string Alike { get; init; } = "";

    /// <summary>
    /// Line of corrections.csv that is about the row, wherever it stood when that was written; 0: none is; null: found by the
    /// row's place.
    /// </summary>
    public int? Replaces { get; init; }
}

/// <summary>
/// Writes decisions into the text of corrections.csv. Lines about other rows stay as they are, understood or not, and so do
/// columns of the maker's own, in every line.
/// </summary>
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

        CsvTable table = there.FileExists
            ? CsvFile.Read(jobFolder, Corrections.FileName).Value!
            : new CsvTable(there.Separator, [new CsvRow(1, 1, Corrections.Columns)]);
        ImmutableArray<string> header = [.. table.Rows[0].Fields.Select(f => CsvText.ReadBack(f.Trim('\uFEFF')))];
        header = [.. header, .. Corrections.Columns.Where(c => CorrectionsReader.IndexOf(header, c) < 0)];

        // The line that already speaks of a row says the new decision; what it said before, or a second time, goes.
        var lineOf = there.Lines.GroupBy(l => l.Row).ToDictionary(g => g.Key, g => g.First().FileLine);
        int LineOf(RowDecision d) => d.Replaces ?? lineOf.GetValueOrDefault(d.Row);
        var decidedAt = decisions.Where(d => LineOf(d) > 0).ToDictionary(LineOf);
        var decided = decisions.Select(d => d.Row)
            .Concat(there.Lines.Where(l => decidedAt.ContainsKey(l.FileLine)).Select(l => l.Row)).ToHashSet();
        var saidAnew = decisions.Where(d => d.Replaces is null).Select(d => d.Row).ToHashSet();
        var saidOfOthers = there.Lines.Where(l => !decidedAt.ContainsKey(l.FileLine) && !saidAnew.Contains(l.Row))
            .Select(l => l.FileLine).ToHashSet();
        var text = new StringBuilder();
        Add(header);
        foreach (var row in table.Rows.Skip(1))
        {
            if (decidedAt.TryGetValue(row.Line, out var decision))
            {
                Add(With(row.Fields, header, decision));
            }
            else if (saidOfOthers.Contains(row.Line) || CorrectionsReader.RowOf(row, header) is not { } about || !decided.Contains(about))
            {
                Add([.. row.Fields.Select(CsvText.ReadBack)]);
            }
        }

        foreach (var decision in decisions.Where(d => LineOf(d) == 0))
        {
            Add(With([], header, decision));
        }

        return Result.Of(KeptFile.Of(Encoding.UTF8.GetBytes(text.ToString())));

        void Add(ImmutableArray<string> fields) => text.Append(CsvText.Row(fields, table.Separator)).Append(CsvText.LineEnd);
    }

    /// <summary>A new line of a file with these columns.</summary>
    internal static ImmutableArray<string> Fields(RowDecision decision, ImmutableArray<string> header) => With([], header, decision);

    private static ImmutableArray<string> With(ImmutableArray<string> old, ImmutableArray<string> header, RowDecision d)
    {
        string[] fields = [.. old.Select(CsvText.ReadBack), .. Enumerable.Repeat("", Math.Max(0, header.Length - old.Length))];
        string before = d.Decision == Decision.NotYet
            ? string.Join(", ", new[] { Of("decision"), Of("text"), Of("why") }.Where(t => t.Length > 0)) : "";
        Set("list", d.Row.List);
        Set("line", d.Row.Line.ToString(CultureInfo.InvariantCulture));
        Set("was", d.Was);
        Set("decision", Word(d.Decision));
        Set("text", d.Text);
        Set("why", before.Length > 0 ? $"{d.Why} (before: {before})" : d.Why);
        Set("details", d.Details);
        Set("show", d.Show);
        Set("alike", d.Alike);
        return [.. fields];

        string Of(string column) => CorrectionsReader.IndexOf(header, column) is >= 0 and var at ? fields[at].Trim() : "";

        void Set(string column, string value)
        {
            if (CorrectionsReader.IndexOf(header, column) is >= 0 and var place)
            {
                fields[place] = value;
            }
        }
    }

    private static string Word(Decision decision) => decision switch
    {
        Decision.Keep => "keep",
        Decision.LeaveOut => ((Said)"leave out").English,
        Decision.Change => "change",
        Decision.Elsewhere => "elsewhere",
        Decision.NotYet => "",
        _ => "?", // Not understood, and still so.
    };
}

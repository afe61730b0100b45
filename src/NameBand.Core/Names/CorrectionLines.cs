using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>The lines that a person can paste into corrections.csv and has only to fill in the decision.</summary>
public static class CorrectionLines
{
    /// <summary>
    /// One line for each held row that has none yet, without line ends; before them the header when there is no
    /// corrections.csv. Nothing is held that needs a line: nothing comes back.
    /// </summary>
    /// <param name="corrections">As read for the same job: says which rows have a line, and the file's separator.</param>
    public static ImmutableArray<string> ToAdd(NameList names, Corrections corrections)
    {
        var have = corrections.Lines.Select(l => l.Row).ToHashSet();
        var lines = names.Rows
            .Where(r => r.Outcome == RowOutcome.Held && !have.Contains(r.Row))
            .Select(r => CsvText.Row(
                [
                    r.Row.List, r.Row.Line.ToString(CultureInfo.InvariantCulture), r.Text, "", "", r.Reason,
                    .. corrections.HasDetails ? (string[])[r.DetailsPrint] : [],
                ],
                corrections.Separator))
            .ToList();
        if (lines.Count == 0)
        {
            return [];
        }

        return corrections.FileExists ? [.. lines] : [CsvText.Row(Corrections.Columns, corrections.Separator), .. lines];
    }
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>What the cells of one column look like, taken together; blank ones aside.</summary>
/// <param name="Kinds">Different cells, counted no farther than is of use.</param>
/// <param name="AreAnswers">At least half of them are a yes or a no in some language.</param>
internal sealed record ColumnCells(int Kinds, bool AreBlank, bool AreAnswers, bool AreNumbers)
{
    private const int MostKinds = 5; // A count: yes, no, perhaps, and one more; names and free text have more kinds in any list.

    /// <summary>So few different ones that they were chosen from a form.</summary>
    public bool AreFew => Kinds < MostKinds;

    /// <summary>Rows that are longer than the header have cells pushed out of their columns, and tell nothing of these.</summary>
    /// <returns>One for each field of the header.</returns>
    public static ImmutableArray<Lazy<ColumnCells>> Of(CsvTable table)
    {
        int width = table.Rows[0].Fields.Length;
        var rows = table.Rows.Skip(1).Where(r => r.Fields.Length <= width).ToList();
        if (rows.Count == 0)
        {
            rows = [.. table.Rows.Skip(1)];
        }

        return [.. Enumerable.Range(0, width).Select(i => new Lazy<ColumnCells>(
            () => Of(rows.Select(r => i < r.Fields.Length ? r.Fields[i].Trim() : "").Where(c => c.Length > 0))))];
    }

    private static ColumnCells Of(IEnumerable<string> cells)
    {
        var kinds = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var known = new Dictionary<string, bool>(StringComparer.Ordinal);
        int all = 0;
        int answers = 0;
        bool areNumbers = true;
        bool areCounts = false;
        foreach (string cell in cells)
        {
            all++;
            bool isNumber = cell.Any(char.IsDigit) && !cell.Any(char.IsLetter);
            areNumbers &= isNumber;
            areCounts |= isNumber && cell is not ("0" or "1");
            if (kinds.Count < MostKinds)
            {
                kinds.Add(cell);
            }

            if (cell.Length > NameText.Longest)
            {
                continue;
            }

            if (!known.TryGetValue(cell, out bool isAnswer))
            {
                isAnswer = YesNo.LooksLikeOne(cell);
                if (known.Count < 100)
                {
                    known.Add(cell, isAnswer);
                }
            }

            answers += isAnswer ? 1 : 0;
        }

        return new ColumnCells(kinds.Count, all == 0, !areCounts && all > 0 && 2 * answers >= all, areNumbers);
    }
}

using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>
/// Says in which group a row is. What stands in the column is compared here and goes no farther; only a group's own name does.
/// </summary>
internal sealed class Grouping(GroupSettings groups)
{
    private const int MostNamed = 5; // Rows in one sentence; the list itself shows the rest, and one answer often settles them all.
    private readonly string? _rest = groups.Rest?.Name;
    private readonly List<RowRef> _unclear = [];
    private readonly HashSet<string> _met = new(StringComparer.Ordinal);

    /// <returns>The group's name; null for none.</returns>
    public string? Of(RowRef row, string? cell)
    {
        string text = PlainText.Normal((cell ?? "").Trim());
        var group = groups.All.FirstOrDefault(g => g.Values.Contains(text, StringComparer.OrdinalIgnoreCase));
        if (group is null && text.Length > 0 && groups.All.Any(g => g.GoesByNumber))
        {
            if (Amount.TryRead(text, out double amount))
            {
                group = groups.All.FirstOrDefault(g =>
                    g.GoesByNumber && amount >= (g.From ?? double.NegativeInfinity) && amount < (g.Below ?? double.PositiveInfinity));
            }
            else
            {
                _unclear.Add(row);
            }
        }

        string? found = group?.Name ?? _rest;
        if (found is not null)
        {
            _met.Add(found);
        }

        return found;
    }

    /// <summary>Groups that nobody is in, and rows whose group is not clear; never with what stands in the column.</summary>
    public IEnumerable<Problem> Problems()
    {
        foreach (var empty in groups.All.Where(g => !_met.Contains(g.Name)))
        {
            yield return Problem.Note(
                new Where(JobReader.FileName, Key: "groups"), $"Nobody is in the group “{PlainText.Short(empty.Name)}”.",
                empty.IsRest ? "Everybody is in one of the others; it can be taken out."
                    : empty.Values.IsEmpty ? "Check whether its numbers are meant so."
                    : "Check whether its values are written as they stand in the list.");
        }

        if (_unclear.Count > 0)
        {
            Said rows = Said.Plain(string.Join(", ", _unclear.Take(MostNamed).Select(r => r.ToString())))
                + (_unclear.Count > MostNamed ? (Said)$" and {_unclear.Count - MostNamed} more" : "");
            yield return Problem.NeedsPerson(
                new Where(_unclear[0].List, _unclear[0].Line),
                $"What the column “{PlainText.Short(groups.Column ?? "")}” holds there is not clearly a number, so these rows are in {(_rest is null ? "no group" : (Said)$"the group “{PlainText.Short(_rest)}”")}: {rows}.",
                "Write it there as a plain number, such as 1250 or 1250.00.");
        }
    }
}

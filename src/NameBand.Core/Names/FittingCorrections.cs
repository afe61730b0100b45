using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>Which row each line of corrections.csv is about, now that rows may stand on other lines than when it was written.</summary>
internal sealed class FittingCorrections
{
    private readonly List<Problem> _problems = [];
    private readonly Dictionary<RowRef, Correction> _lines = [];
    private readonly Dictionary<RowRef, Said> _doubtful = [];
    private readonly ImmutableArray<string> _lists;
    private readonly Dictionary<RowRef, SourceRow> _known;
    private readonly HashSet<string> _namesAskingNot;

    public FittingCorrections(Corrections corrections, ImmutableArray<string> lists, IReadOnlyCollection<SourceRow> rows)
    {
        _lists = lists;
        _known = rows.ToDictionary(r => r.Ref);
        _namesAskingNot = rows.Where(r => r.Wish == Wish.LeaveOut).Select(r => r.Name.Text).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<Correction> lines = [.. corrections.Lines.Select(l => l with { Row = l.Row with { List = OwnName(l.Row.List) } })];
        var found = new RowFollower(rows.Select(r =>
            new StandingRow(r.Ref, r.Name.Text, r.DetailsPrint) { EarlierDetails = r.EarlierPrint })).Find(
            [.. lines.Select(l => new SaidOfRow(l.Row, l.Was, l.Details, $"{l.Decision} {l.Text}"))]);
        // Lines that have found their row come first: what stands on the place of another must not push them out.
        foreach (int i in Enumerable.Range(0, lines.Length).OrderBy(i => found[i].Row is null))
        {
            Fit(lines[i], found[i]);
        }

        // A row that another line may be about keeps only a decision that was surely made for it.
        foreach (var row in _doubtful.Keys.Where(r => _lines.TryGetValue(r, out var line) && !IsSurely(line, _known[r])).ToList())
        {
            _lines.Remove(row);
        }
    }

    public IEnumerable<Correction> Lines => _lines.Values;

    /// <summary>Rows that a line may be about, when it cannot be told which: each with the reason to hold it.</summary>
    public IReadOnlyDictionary<RowRef, Said> Doubtful => _doubtful;

    public IReadOnlyList<Problem> Problems => _problems;

    private string OwnName(string list) =>
        _lists.FirstOrDefault(l => l == list) ?? _lists.FirstOrDefault(l => l.Equals(list, StringComparison.OrdinalIgnoreCase)) ?? list;

    private void Fit(Correction line, Followed found)
    {
        if (found.Row is { } moved && IsPerhapsAnother(line, _known[moved]))
        {
            AskWhich(line, [moved]);
        }
        else if (found.Row is { } row)
        {
            _lines.TryAdd(row, line with { Row = row });
            if (row != line.Row && line.Decision != Decision.NotYet)
            {
                _problems.Add(Problem.Note(
                    At(line, "line"),
                    $"The row of “{PlainText.Short(line.Was, 80)}” stood in {line.Row} and now stands in {row}; what you decided went along."));
            }
        }
        else if (found.Candidates.Length > 0)
        {
            AskWhich(line, found.Candidates);
        }
        else if (!_lists.Contains(line.Row.List))
        {
            _problems.Add(Problem.NeedsPerson(At(line, "list"), "The job has no such list, so this line was skipped.",
                $"Write one of {ListColumns.Listed(_lists)}."));
        }
        else if (_known.ContainsKey(line.Row))
        {
            // Another name stands there, and this one nowhere: the row is held and told of by the settler.
            if (!_lines.TryAdd(line.Row, line) && line.Decision != Decision.NotYet)
            {
                _problems.Add(Problem.Note(
                    At(line, "was"), $"“{PlainText.Short(line.Was, 80)}” is in none of the lists any longer; this line was skipped."));
            }
        }
        else
        {
            _problems.Add(Problem.NeedsPerson(At(line, "line"), $"No row begins in {line.Row}, so this line was skipped.",
                "Give the number of the line on which the row begins, counting the header as line 1."));
        }
    }

    /// <summary>
    /// A row of the name with something else beside it may be somebody else's: no decision makes it be sewn where it asks not to
    /// be, nor, on another line, where what it answers is unclear or somebody of its name asks not to be shown.
    /// </summary>
    private bool IsPerhapsAnother(Correction line, SourceRow row) =>
        (row.Wish == Wish.LeaveOut || (row.Ref != line.Row && (row.Wish == Wish.Unclear || _namesAskingNot.Contains(row.Name.Text))))
        && row.Name.Text == NameText.Clean(line.Was).Text
        && line.Details.Length > 0 && line.Details != row.DetailsPrint && line.Details != row.EarlierPrint;

    private static bool IsSurely(Correction line, SourceRow row) =>
        row.Name.Text == NameText.Clean(line.Was).Text
            && (line.Details.Length == 0 || line.Details == row.DetailsPrint || line.Details == row.EarlierPrint);

    private void AskWhich(Correction line, ImmutableArray<RowRef> candidates)
    {
        Said places = Said.Join(" and in ", candidates.Take(4).Select(c => c.InWords));
        _problems.Add(Problem.NeedsPerson(
            At(line, "line"),
            $"“{PlainText.Short(line.Was, 80)}” has moved and may now stand in {places}; "
            + $"it is not clear which of them you decided about, so {(candidates.Length == 1 ? (Said)"it is" : "they are")} held.",
            "Mend “list” and “line”, and decide about each of them."));
        foreach (var row in candidates)
        {
            _doubtful.TryAdd(row, $"a decision in {Corrections.FileName} is about this row or another (in {places}): decide again");
        }
    }

    private static Where At(Correction line, string column) => new(Corrections.FileName, line.FileLine, Key: column);
}

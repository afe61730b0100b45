using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>
/// Decides row by row, in order of arrival, what becomes of it: what a person decided first, then what the row itself
/// asks, then what the check finds odd, then repeats.
/// </summary>
internal sealed class RowSettler
{
    private readonly Dictionary<RowRef, Correction> _corrections;
    private readonly ILookup<string, RowRef> _rowsByText;
    private readonly Repeats _repeats = new();
    private readonly List<Problem> _problems = [];

    private readonly IReadOnlyDictionary<RowRef, string> _doubtful;

    /// <param name="corrections">At most one for each row.</param>
    /// <param name="doubtful">Rows that a decision may be about, each with the reason to hold it.</param>
    public RowSettler(IReadOnlyList<SourceRow> rows, IEnumerable<Correction> corrections, IReadOnlyDictionary<RowRef, string> doubtful)
    {
        _doubtful = doubtful;
        _corrections = corrections.Where(c => c.Decision != Decision.NotYet).ToDictionary(c => c.Row);
        _rowsByText = rows.ToLookup(r => r.Name.Text, r => r.Ref, StringComparer.Ordinal);
    }

    public IReadOnlyList<Problem> Problems => _problems;

    public ListedRow Settle(SourceRow row)
    {
        var correction = _corrections.GetValueOrDefault(row.Ref);
        var settled = correction is not null ? ByPerson(row, correction)
            : _doubtful.TryGetValue(row.Ref, out string? doubt) && row.Wish != Wish.LeaveOut ? Held(row, doubt)
            : ByCheck(row, row.Name);
        if (settled.Outcome != RowOutcome.Merged && settled.Text.Length > 0)
        {
            _repeats.Remember(new Earlier(row, settled.Text, settled.Outcome, correction is not null));
        }

        return settled;
    }

    private ListedRow ByPerson(SourceRow row, Correction correction)
    {
        if (correction.Decision == Decision.Unclear)
        {
            return Held(row, $"what {Corrections.FileName} says about this row cannot be used");
        }

        if (NameText.Clean(correction.Was).Text != row.Name.Text)
        {
            _problems.Add(Moved(row, correction));
            return Held(row, $"{Corrections.FileName} says that another name stood here");
        }

        if (correction.Decision == Decision.LeaveOut)
        {
            return Outcome(row, RowOutcome.LeftOut, row.Name, $"left out, as {Corrections.FileName} says");
        }

        var text = correction.Text.Length > 0 ? NameText.Clean(correction.Text) : row.Name;
        if (text.IsEmpty)
        {
            _problems.Add(Problem.NeedsPerson(new Where(Corrections.FileName, correction.FileLine), "There is no name in this row to be sewn.",
                "Write the name in the column “text”, or take the line out."));
            return Outcome(row, RowOutcome.LeftOut, row.Name, NoName(row));
        }

        if (correction.Decision == Decision.Change)
        {
            return ByCheck(row, text);
        }

        if (text.IsTooLong)
        {
            // Only its beginning was read, and nothing is sewn that its owner did not write.
            return Held(row, $"{NameDoubts.Of(text)}: it cannot be kept; write under “text” in {Corrections.FileName} what is to be sewn");
        }

        string although = row.Wish == Wish.LeaveOut ? ", although the row asks not to be shown" : "";
        return Outcome(row, RowOutcome.Placed, text, $"kept, as {Corrections.FileName} says{although}");
    }

    private ListedRow ByCheck(SourceRow row, NameText name)
    {
        bool changed = !ReferenceEquals(name, row.Name);
        if (row.Wish == Wish.LeaveOut)
        {
            TellOfShownNamesake(row);
            return Outcome(row, RowOutcome.LeftOut, row.Name, "asked not to be shown");
        }

        if (name.IsEmpty)
        {
            return Outcome(row, RowOutcome.LeftOut, name, NoName(row));
        }

        var (repeat, earlier) = _repeats.Find(row, name.Text);
        if (repeat == Repeat.Whole && earlier!.Outcome != RowOutcome.LeftOut)
        {
            return Outcome(row, RowOutcome.Merged, name, $"the same as {earlier.Source.Ref}");
        }

        if (row.Wish == Wish.Unclear)
        {
            return Held(row, row.WishReason);
        }

        if ((changed ? null : row.Doubt) is { } doubt)
        {
            return Held(row, doubt);
        }

        if (NameDoubts.Of(name) is { } odd)
        {
            return Held(row, odd);
        }

        return repeat == Repeat.None
            ? Outcome(row, RowOutcome.Placed, name, changed ? $"changed, as {Corrections.FileName} says" : "")
            : Held(row, Question(row, name.Text, repeat, earlier!));
    }

    /// <summary>Names columns that differ, never what stands in them.</summary>
    private static string Question(SourceRow row, string text, Repeat repeat, Earlier earlier)
    {
        string line = earlier.Source.Ref.ToString();
        if (repeat == Repeat.Resembles)
        {
            string hidden = earlier.Outcome == RowOutcome.LeftOut ? ", which is left out" : "";
            return $"the same person as {line}{hidden}? The two names differ only in {Resemblance.DifferOnlyIn(text, earlier.Text)}";
        }

        if (earlier.Outcome == RowOutcome.LeftOut)
        {
            return earlier.Decided
                ? $"{line} has the same name, and you left it out: leave out this one too?"
                : $"{line} has the same name and asks not to be shown: the same person?";
        }

        var differing = SourceRow.DifferingLabels(row, earlier.Source);
        string which = differing.Length > 0 ? $" with something else under {ListColumns.Listed(differing)}" : "";
        return row.Details.IsEmpty && differing.Length > 0
            ? $"two people of this name? {line} has the same name and says more ({ListColumns.Listed(differing)})"
            : $"two people of this name? {line} has the same name{which}";
    }

    /// <summary>Somebody who asks not to be shown may stand in the list once more without asking it.</summary>
    private void TellOfShownNamesake(SourceRow row)
    {
        if (_repeats.SameName(row.Name.Text) is { Outcome: RowOutcome.Placed, Decided: false } shown)
        {
            _problems.Add(Problem.NeedsPerson(new Where(row.Ref.List, row.Ref.Line),
                $"This row asks not to be shown; {shown.Source.Ref} has the same name and is shown.",
                $"Say in {Corrections.FileName} whether {shown.Source.Ref} is to be kept or left out."));
        }
    }

    private Problem Moved(SourceRow row, Correction correction)
    {
        var now = _rowsByText[NameText.Clean(correction.Was).Text].ToList();
        string mend = now.Count switch
        {
            1 => $"That name now stands in {now[0]}: mend “list” and “line”.",
            0 => "That name is in none of the lists now: mend the line or take it out.",
            _ => $"That name stands in {string.Join(" and in ", now.Take(3))}: mend “list” and “line”.",
        };
        return Problem.NeedsPerson(new Where(Corrections.FileName, correction.FileLine, Key: "was"),
            $"This decision was made for another name than now stands in {row.Ref}, which is therefore held.", mend);
    }

    private static string NoName(SourceRow row) => row.Name.Length == 0
        ? "there is no name in this row" : "there is nothing to be seen in this name";

    private static ListedRow Held(SourceRow row, string reason) => Outcome(row, RowOutcome.Held, row.Name, reason);

    private static ListedRow Outcome(SourceRow row, RowOutcome outcome, NameText name, string reason) => new(
        row.Ref, outcome, name.Text, reason, ReferenceEquals(name, row.Name) ? row.Notes : [.. name.Notes])
    { Group = row.Group, DetailsPrint = row.DetailsPrint, Was = row.Name.Text };
}

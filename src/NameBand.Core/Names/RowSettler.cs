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
    private readonly HiddenNames _hidden;
    private readonly List<Problem> _problems = [];
    private readonly IReadOnlyDictionary<RowRef, Said> _doubtful;

    /// <param name="corrections">At most one for each row.</param>
    /// <param name="doubtful">Rows that a decision may be about, each with the reason to hold it.</param>
    public RowSettler(IReadOnlyList<SourceRow> rows, IEnumerable<Correction> corrections, IReadOnlyDictionary<RowRef, Said> doubtful)
    {
        _doubtful = doubtful;
        _corrections = corrections.ToDictionary(c => c.Row);
        _rowsByText = rows.ToLookup(r => r.Name.Text, r => r.Ref, StringComparer.Ordinal);
        _hidden = new HiddenNames(rows.Where(r => r.Wish == Wish.LeaveOut && !IsKeptAllTheSame(r)));
    }

    public IReadOnlyList<Problem> Problems => _problems;

    public ListedRow Settle(SourceRow row)
    {
        var correction = _corrections.GetValueOrDefault(row.Ref);
        bool isDecided = correction is { Decision: not Decision.NotYet };
        var settled = isDecided ? ByPerson(row, correction!)
            : _doubtful.TryGetValue(row.Ref, out Said? doubt) && row.Wish != Wish.LeaveOut ? Held(row, HeldFor.Doubt, doubt)
            : ByCheck(row, row.Name, answersAreSettled: false);
        if (settled.Outcome != RowOutcome.Merged && settled.Text.Length > 0)
        {
            _repeats.Remember(new Earlier(row, settled.Text, settled.Outcome, isDecided && !settled.AsksNotToBeShown));
        }

        return settled with
        {
            DecidedIn = correction?.FileLine ?? 0,
            Decided = correction?.Decision ?? Decision.NotYet,
            SewnIn = correction is { Decision: Decision.Elsewhere } ? correction.Text : "",
            WouldBe = correction is { Text.Length: > 0 } && isDecided && IsOf(row, correction)
                ? NameText.Clean(correction.Text).Text : row.Name.Text,
        };
    }

    private static bool IsOf(SourceRow row, Correction correction) => NameText.Clean(correction.Was).Text == row.Name.Text;

    /// <summary>What was written down of its answers, if it was of this name.</summary>
    private static string Recorded(SourceRow row, Correction correction) => IsOf(row, correction) ? correction.Show : "";

    private bool IsKeptAllTheSame(SourceRow row) =>
        _corrections.GetValueOrDefault(row.Ref) is { Decision: Decision.Keep } kept && row.Answers.Since(Recorded(row, kept)) == Since.Same;

    private ListedRow ByPerson(SourceRow row, Correction correction)
    {
        string recorded = Recorded(row, correction);
        var since = row.Answers.Since(recorded);
        if (since == Since.AsksNot)
        {
            return AsksNotAfterAll(row, correction);
        }

        if (correction.Decision == Decision.Unclear)
        {
            return Held(row, HeldFor.Doubt, $"what {Corrections.FileName} says about this row cannot be used");
        }

        if (!IsOf(row, correction))
        {
            _problems.Add(Moved(row, correction));
            string then = PlainText.Short(NameText.Clean(correction.Was).Text, 80);
            string now = PlainText.Short(row.Name.Text, 80);
            return Held(
                row, HeldFor.Doubt,
                $"you decided about “{then}”, and the row now says “{now}”: decide again") with
            { IsDecidedForElse = true };
        }

        if (correction.Decision == Decision.Elsewhere && since != Since.Changed)
        {
            return Outcome(row, RowOutcome.LeftOut, row.Name,
                $"sewn elsewhere, as {Corrections.FileName} says: {PlainText.Short(correction.Text, 80)}");
        }

        bool leavesOut = correction.Decision == Decision.LeaveOut;
        if (since == Since.Changed && !(leavesOut && recorded.Length == 0))
        {
            return Held(
                row, HeldFor.Wish,
                $"{Said.Join("; ", row.Answers.ChangedSince(recorded))}: decide again") with
            { IsDecidedForElse = true };
        }

        if (leavesOut)
        {
            return Outcome(row, RowOutcome.LeftOut, row.Name, $"left out, as {Corrections.FileName} says");
        }

        var text = correction.Text.Length > 0 ? NameText.Clean(correction.Text) : row.Name;
        if (text.IsEmpty)
        {
            _problems.Add(Problem.NeedsPerson(
                new Where(Corrections.FileName, correction.FileLine), "There is no name in this row to be sewn.",
                "Write the name in the column “text”, or take the line out."));
            return Outcome(row, RowOutcome.LeftOut, row.Name, NoName(row));
        }

        if (correction.Decision == Decision.Change)
        {
            return ByCheck(row, text, answersAreSettled: recorded.Length > 0);
        }

        if (text.IsTooLong || text.IsBroken)
        {
            // Nothing is sewn that its owner did not write: of one only its beginning was read, in the other a letter is lost.
            return Held(
                row, HeldFor.Letters,
                $"{NameDoubts.Of(text)}: it cannot be kept; write under “text” in {Corrections.FileName} what is to be sewn");
        }

        Said although = row.Wish == Wish.LeaveOut ? ", although the row asks not to be shown" : "";
        return Outcome(row, RowOutcome.Placed, text, $"kept, as {Corrections.FileName} says{although}");
    }

    /// <summary>A later no always wins; how to sew the name with its owner's word is told.</summary>
    private ListedRow AsksNotAfterAll(SourceRow row, Correction correction)
    {
        if (correction.Decision is Decision.Keep or Decision.Change)
        {
            _problems.Add(Problem.Note(
                new Where(Corrections.FileName, correction.FileLine, Name: PlainText.Short(row.Name.Text, 80)),
                $"This decision did not know that {row.Ref} asks not to be shown, so the name is left out.",
                $"If its owner wants it sewn all the same, write in the column “show” of that line: {row.Answers.Text}"));
        }

        return Outcome(row, RowOutcome.LeftOut, row.Name, "asked not to be shown") with { AsksNotToBeShown = true };
    }

    /// <param name="answersAreSettled">A person has decided knowing what the row answers.</param>
    private ListedRow ByCheck(SourceRow row, NameText name, bool answersAreSettled)
    {
        bool changed = !ReferenceEquals(name, row.Name);
        if (row.Wish == Wish.LeaveOut)
        {
            return Outcome(row, RowOutcome.LeftOut, row.Name, "asked not to be shown") with { AsksNotToBeShown = true };
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

        bool waits = row.Wish == Wish.Unclear && !answersAreSettled;
        Said?[] doubts =
        [
            waits ? row.Answers.Question() : null,
            changed ? null : row.Doubt,
            NameDoubts.Of(name),
            repeat != Repeat.None ? Question(row, name.Text, repeat, earlier!) : _hidden.Question(name.Text),
        ];
        Said[] reasons = [.. doubts.OfType<Said>()];
        var what = name.IsBroken || name.IsTooLong ? HeldFor.Letters
            : !waits || reasons.Length > 1 ? HeldFor.Doubt
            : row.Answers.WaitsForColumns ? HeldFor.Column
            : HeldFor.Wish;
        return reasons.Length > 0 ? Held(row, what, Said.Join("; and ", reasons))
            : Outcome(row, RowOutcome.Placed, name, changed ? $"changed, as {Corrections.FileName} says" : "");
    }

    /// <summary>Names columns that differ, never what stands in them.</summary>
    private static Said Question(SourceRow row, string text, Repeat repeat, Earlier earlier)
    {
        var line = earlier.Source.Ref;
        if (repeat == Repeat.Resembles)
        {
            Said hidden = earlier.Outcome == RowOutcome.LeftOut ? ", which is left out" : "";
            return $"the same person as {line}{hidden}? The two names differ only in {Resemblance.DifferOnlyIn(text, earlier.Text)}";
        }

        if (earlier.Outcome == RowOutcome.LeftOut)
        {
            return earlier.Decided
                ? (Said)$"{line} has the same name, and you left it out: leave out this one too?"
                : $"{line} has the same name and asks not to be shown: the same person?";
        }

        var differing = SourceRow.DifferingLabels(row, earlier.Source);
        Said which = differing.Length > 0 ? (Said)$" with something else under {ListColumns.Listed(differing)}" : "";
        return row.Details.IsEmpty && differing.Length > 0
            ? (Said)$"two people of this name? {line} has the same name and says more ({ListColumns.Listed(differing)})"
            : $"two people of this name? {line} has the same name{which}";
    }

    private Problem Moved(SourceRow row, Correction correction)
    {
        var now = _rowsByText[NameText.Clean(correction.Was).Text].ToList();
        Said mend = now.Count switch
        {
            1 => (Said)$"That name now stands in {now[0]}: mend “list” and “line”.",
            0 => "That name is in none of the lists now: mend the line or take it out.",
            _ => $"That name stands in {Said.Join(" and in ", now.Take(3).Select(n => n.InWords))}: mend “list” and “line”.",
        };
        return Problem.NeedsPerson(new Where(Corrections.FileName, correction.FileLine, Key: "was"),
            $"This decision was made for another name than now stands in {row.Ref}, which is therefore held.", mend);
    }

    private static Said NoName(SourceRow row) => row.Name.Length == 0
        ? "there is no name in this row" : "there is nothing to be seen in this name";

    private static ListedRow Held(SourceRow row, HeldFor what, Said reason) =>
        Outcome(row, RowOutcome.Held, row.Name, reason) with { HeldFor = what };

    private static ListedRow Outcome(SourceRow row, RowOutcome outcome, NameText name, Said reason) => new(
        row.Ref, outcome, name.Text, reason, ReferenceEquals(name, row.Name) ? row.Notes : [.. name.Notes])
    { Group = row.Group, DetailsPrint = row.DetailsPrint, Was = row.Name.Text, Show = row.Answers.Text, Web = row.Web };
}

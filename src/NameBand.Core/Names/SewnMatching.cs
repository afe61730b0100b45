using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>A list with what an earlier plan had of it.</summary>
/// <param name="Rows">The rows and names, each sewn name as it was sewn, whatever its row says now.</param>
/// <param name="Before">For each row that the earlier plan had under the same words: its place there.</param>
/// <param name="Gone">Sewn names that no row asks for any longer.</param>
internal sealed record MatchedList(
    NameList Rows, ImmutableDictionary<RowRef, EarlierName> Before, ImmutableArray<EarlierName> Gone, ImmutableArray<Problem> Problems)
{
    /// <summary>For each row whose name is sewn in other words: what the list says now.</summary>
    public ImmutableDictionary<RowRef, string> Changed { get; init; } = ImmutableDictionary<RowRef, string>.Empty;
}

/// <summary>
/// Finds the rows of an earlier plan in the lists as they are now. Lines move when a list is exported anew, so a name is
/// looked for first where it was, then under the same words elsewhere, and last as a changed name on its old line.
/// </summary>
internal static class SewnMatching
{
    /// <param name="isSewn">Whether the name of an earlier plan has been sewn.</param>
    /// <param name="asksFor">Whether the job still has a heading of an earlier plan.</param>
    public static MatchedList Match(NameList list, EarlierPlan earlier, Func<EarlierName, bool> isSewn, Func<EarlierName, bool> asksFor)
    {
        var all = earlier.Names.Where(n => !n.IsGone || isSewn(n)).OrderBy(n => n.Order).ToList();
        var names = all.Where(n => !n.IsHeading).ToList();
        var rowOf = new Dictionary<EarlierName, ListedRow>();
        var taken = new HashSet<RowRef>();
        // A row merged with one above it asks for no name of its own: it stands for a sewn one only where no other row does.
        Pair((name, row) => row.Outcome != RowOutcome.Merged && row.Row == name.Row && row.Text == name.Text);
        Pair((name, row) => row.Outcome != RowOutcome.Merged && row.Row.List == name.Row.List && row.Text == name.Text);
        Pair((name, row) => row.Outcome != RowOutcome.Merged && row.Text == name.Text);
        Pair((name, row) => row.Text == name.Text);
        // A corrected name whose row is held or left out now stands there as the row has it, not as it was sewn.
        Pair((name, row) => row.Row.List == name.Row.List && row.WouldBe == name.Text);
        Pair((name, row) => row.WouldBe == name.Text);
        Pair((name, row) => row.Row == name.Row && (row.Outcome is RowOutcome.Placed or RowOutcome.Held || row.AsksNotToBeShown)
            && AreAlike(name.Text, row.Text));

        return new Settling(list, rowOf, names.Where(isSewn).ToHashSet())
            .Settle(names, all.Where(n => n.IsHeading && asksFor(n)), all.Where(n => n.IsHeading && !asksFor(n) && isSewn(n)));

        void Pair(Func<EarlierName, ListedRow, bool> agree)
        {
            var free = list.Rows.Where(r => !taken.Contains(r.Row)).OrderBy(r => r.Outcome == RowOutcome.Placed ? 0 : 1).ToList();
            var byText = free.ToLookup(r => r.Text, StringComparer.Ordinal);
            var byWouldBe = free.Where(r => r.WouldBe != r.Text && r.WouldBe.Length > 0).ToLookup(r => r.WouldBe, StringComparer.Ordinal);
            var byPlace = free.ToLookup(r => r.Row);
            foreach (var name in names.Where(n => !rowOf.ContainsKey(n)))
            {
                var row = byPlace[name.Row].Concat(byText[name.Text]).Concat(byWouldBe[name.Text])
                    .FirstOrDefault(r => !taken.Contains(r.Row) && agree(name, r));
                if (row is not null)
                {
                    rowOf.Add(name, row);
                    taken.Add(row.Row);
                }
            }
        }
    }

    /// <summary>Whether one text is likely the other with a mistake mended: at most half of it differs.</summary>
    internal static bool AreAlike(string one, string other)
    {
        int[] before = [.. Enumerable.Range(0, other.Length + 1)];
        for (int i = 1; i <= one.Length; i++)
        {
            int[] now = new int[other.Length + 1];
            now[0] = i;
            for (int j = 1; j <= other.Length; j++)
            {
                int change = before[j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1);
                now[j] = Math.Min(change, Math.Min(before[j], now[j - 1]) + 1);
            }

            before = now;
        }

        return 2 * before[other.Length] <= Math.Max(one.Length, other.Length);
    }

    /// <summary>Turns pairs into outcomes and words.</summary>
    private sealed class Settling(NameList list, Dictionary<EarlierName, ListedRow> rowOf, HashSet<EarlierName> sewn)
    {
        private readonly Dictionary<RowRef, ListedRow> _rows = list.Rows.ToDictionary(r => r.Row);
        private readonly ImmutableDictionary<RowRef, EarlierName>.Builder _before =
            ImmutableDictionary.CreateBuilder<RowRef, EarlierName>();
        private readonly ImmutableDictionary<RowRef, string>.Builder _changed = ImmutableDictionary.CreateBuilder<RowRef, string>();
        private readonly List<EarlierName> _gone = [];
        private readonly List<Problem> _problems = [];

        public MatchedList Settle(IEnumerable<EarlierName> names, IEnumerable<EarlierName> headings, IEnumerable<EarlierName> goneHeadings)
        {
            foreach (var heading in headings)
            {
                _before[heading.Row] = heading;
            }

            foreach (var heading in goneHeadings)
            {
                _gone.Add(heading);
                _problems.Add(Problem.NeedsPerson(
                    new Where(JobReader.FileName, Key: "groups"), $"The heading “{heading.Text}” is sewn, and the job no longer has it.",
                    "Put it back, or unpick it; until then it stays on the cloth."));
            }

            foreach (var name in names)
            {
                rowOf.TryGetValue(name, out var row);
                if (sewn.Contains(name))
                {
                    SettleSewn(name, row);
                }
                else if (row is { Outcome: RowOutcome.Placed } && row.Text == name.Text)
                {
                    _before[row.Row] = name;
                }
            }

            ImmutableArray<ListedRow> rows = [.. list.Rows.Select(r => _rows[r.Row])];
            var byRow = list.Names.ToDictionary(n => n.Row);
            var placed = rows.Where(r => r.Outcome == RowOutcome.Placed)
                .Select(r => byRow.TryGetValue(r.Row, out var known) && known.Text == r.Text
                    ? known : new Name(r.Text, r.Row) { Group = r.Group, IsKept = r.Decided == Decision.Keep });
            return new MatchedList(new NameList(rows, [.. placed]), _before.ToImmutable(), [.. _gone], [.. _problems])
            {
                Changed = _changed.ToImmutable(),
            };
        }

        private void SettleSewn(EarlierName name, ListedRow? row)
        {
            if (row is null)
            {
                _gone.Add(name);
                _problems.Add(Problem.NeedsPerson(
                    new Where(name.Row.List, Name: name.Text), "This name is sewn, and no row of the lists asks for it any longer.",
                    "Put its row back, or unpick it; until then it stays on the cloth and is not counted among the names."));
            }
            else if (row.Outcome == RowOutcome.LeftOut)
            {
                _gone.Add(name);
                _problems.Add(Problem.NeedsPerson(
                    new Where(row.Row.List, row.Row.Line, Name: name.Text),
                    row.AsksNotToBeShown ? "This row asks not to be shown, and its name is already sewn."
                        : (Said)$"This row is left out, and its name is already sewn; {row.Reason}.",
                    row.AsksNotToBeShown ? "Unpick it or cover it, and tell the one who asked; it is no longer counted among the names."
                        : "Unpick it or cover it; it is no longer counted among the names."));
            }
            else if (row.Outcome == RowOutcome.Held && row.HeldFor is (HeldFor.Wish or HeldFor.Answer))
            {
                // It stays where it is until somebody has asked: a doubt about a wish is never passed over, sewn or not.
                _before[row.Row] = name;
                _rows[row.Row] =
                    row with { Outcome = RowOutcome.Placed, Text = name.Text, Reason = $"sewn already; otherwise: {row.Reason}" };
                _problems.Add(Problem.NeedsPerson(
                    new Where(row.Row.List, row.Row.Line, Name: name.Text),
                    $"This name is sewn, and its row would now be held: {row.Reason}.",
                    row.HeldFor == HeldFor.Answer
                    ? "If it is a no, unpick it or cover it."
                    : $"Ask, and decide in {Corrections.FileName}: keep, or leave out and unpick it."));
            }
            else if (row.Text != name.Text)
            {
                _before[row.Row] = name;
                _changed[row.Row] = row.Text;
                Said reason = $"sewn as “{name.Text}”, and the list now says “{row.Text}”";
                _rows[row.Row] = row with { Outcome = RowOutcome.Placed, Text = name.Text, Reason = reason };
                _problems.Add(Problem.NeedsPerson(
                    new Where(row.Row.List, row.Row.Line, Name: name.Text),
                    $"This name is sewn as “{name.Text}”, and the list now says “{row.Text}”.",
                    "Leave it as it is, or have its hooping sewn again with the command sewn and --again: then it gets the new words."));
            }
            else
            {
                _before[row.Row] = name;
                _rows[row.Row] = row.Outcome == RowOutcome.Placed
                    ? row : row with { Outcome = RowOutcome.Placed, Reason = $"sewn already; otherwise: {row.Reason}" };
            }
        }
    }
}

using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Output.Changes;

/// <summary>
/// Compares a plan with the one before. A name is found again where it was, then under the same words elsewhere, and
/// last, with other words, on its old line: when they are alike, or when the rows beside it still stand on theirs.
/// </summary>
internal static class PlanComparison
{
    /// <param name="rows">Every row with what finally became of it.</param>
    /// <param name="listNow">For each sewn name that was changed in the list since: what the list says.</param>
    public static PlanChanges Of(
        ImmutableArray<NamePlace> before, ImmutableArray<NamePlace> now, ImmutableArray<ListedRow> rows,
        ImmutableDictionary<RowRef, string> listNow) =>
        new Pairing(before, now).Changes(rows, listNow);

    private sealed class Pairing
    {
        private readonly ImmutableArray<NamePlace> _before;
        private readonly ImmutableArray<NamePlace> _now;
        private readonly Dictionary<NamePlace, NamePlace> _was = new(ReferenceEqualityComparer.Instance);
        private readonly HashSet<NamePlace> _found = new(ReferenceEqualityComparer.Instance);

        public Pairing(ImmutableArray<NamePlace> before, ImmutableArray<NamePlace> now)
        {
            (_before, _now) = (before, now);
            Pair(n => (n.Row, n.Text));
            Pair(n => (n.Row.List, n.Text));
            Pair(n => n.Text);
            PairChanged();
        }

        public PlanChanges Changes(ImmutableArray<ListedRow> rows, ImmutableDictionary<RowRef, string> listNow)
        {
            var byRow = rows.ToDictionary(r => r.Row);
            var unsewn = rows.Where(r => r.Outcome != RowOutcome.Placed).ToLookup(r => r.Text, StringComparer.Ordinal);
            return new PlanChanges(
            [
                .. _now.Select(n => Now(n, listNow)),
                .. _before.Where(b => !_found.Contains(b)).Select(b => Went(b, byRow, unsewn)),
            ]);
        }

        private NameChange Now(NamePlace name, ImmutableDictionary<RowRef, string> listNow)
        {
            var was = _was.GetValueOrDefault(name);
            NameChange With(NameFate fate, Said? why = null) =>
                new(fate, name.Text, was?.Text ?? "", name.Row, name.Hooping, was?.Hooping, why);

            return name.IsGone ? With(NameFate.SewnThenWithdrawn, "it stays on the cloth and is no longer counted")
                : listNow.TryGetValue(name.Row, out string? says) ? With(NameFate.SewnThenChanged, $"the list now says “{says}”")
                : was is null ? With(NameFate.New)
                : was.Text != name.Text ? With(NameFate.TextChanged)
                : was.Hooping != name.Hooping ? With(NameFate.MovedHooping)
                : was.Round != name.Round || was.StartMm != name.StartMm ? With(NameFate.MovedAlong)
                : With(NameFate.Unchanged);
        }

        private static NameChange Went(NamePlace name, Dictionary<RowRef, ListedRow> byRow, ILookup<string, ListedRow> unsewn)
        {
            var row = byRow.TryGetValue(name.Row, out var same) && same.Text == name.Text && same.Outcome != RowOutcome.Placed
                ? same : unsewn[name.Text].FirstOrDefault();
            return row is null
                ? new NameChange(NameFate.Withdrawn, name.Text, name.Text, name.Row, null, name.Hooping)
                : new NameChange(
                    NameFate.NoLongerSewn, name.Text, name.Text, row.Row, null, name.Hooping,
                    row.Outcome == RowOutcome.Held ? (Said)$"held: {row.Reason}" : row.Reason);
        }

        private void Pair<TKey>(Func<NamePlace, TKey> key)
        {
            var free = _before.Where(b => !_found.Contains(b)).ToLookup(key);
            var taken = new Dictionary<NamePlace, bool>(ReferenceEqualityComparer.Instance);
            foreach (var name in _now.Where(n => !_was.ContainsKey(n)))
            {
                if (free[key(name)].FirstOrDefault(b => !taken.ContainsKey(b)) is { } was)
                {
                    taken.Add(was, true);
                    Found(name, was);
                }
            }
        }

        private void PairChanged()
        {
            var stayed = _was.Where(p => p.Key.Row == p.Value.Row).Select(p => p.Key.Row).ToHashSet();
            var lists = _before.GroupBy(b => b.Row.List, StringComparer.Ordinal)
                .ToDictionary(g => g.Key, g => g.Select(b => b.Row.Line).Distinct().Order().ToList(), StringComparer.Ordinal);
            var onLine = _before.Where(b => !_found.Contains(b)).ToLookup(b => b.Row);
            foreach (var name in _now.Where(n => !_was.ContainsKey(n)).ToList())
            {
                if (onLine[name.Row]
                    .FirstOrDefault(b => !_found.Contains(b) && (SewnMatching.AreAlike(b.Text, name.Text) || NeighboursStayed(b.Row)))
                    is { } was)
                {
                    Found(name, was);
                }
            }

            // Names before and after that still stand on their lines: then the list was not sorted anew.
            bool NeighboursStayed(RowRef row)
            {
                var lines = lists[row.List];
                int at = lines.BinarySearch(row.Line);
                return at > 0 && at + 1 < lines.Count && stayed.Contains(row with { Line = lines[at - 1] })
                    && stayed.Contains(row with { Line = lines[at + 1] });
            }
        }

        private void Found(NamePlace name, NamePlace was)
        {
            _was.Add(name, was);
            _found.Add(was);
        }
    }
}

using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Something a person said of a row: which row, and the name that stood there.</summary>
/// <param name="Details">Fingerprint of what stood beside the name; empty where it was not written down.</param>
/// <param name="Says">What was said of it, to compare with what was said of another row.</param>
internal sealed record SaidOfRow(RowRef Row, string Was, string Details, string Says);

/// <summary>A row as it stands now.</summary>
/// <param name="Details">Fingerprint of what stands beside the name.</param>
internal sealed record StandingRow(RowRef Ref, string Text, string Details)
{
    /// <summary>The fingerprint as version 0.1 made it.</summary>
    public string EarlierDetails { get; init; } = "";
}

/// <summary>Where the row of something said stands now.</summary>
/// <param name="Row">Null when it cannot be told.</param>
/// <param name="Candidates">The rows it may be, when it cannot be told; empty when there is none.</param>
internal sealed record Followed(RowRef? Row, ImmutableArray<RowRef> Candidates);

/// <summary>
/// Finds the rows that something was said of, where the list was exported anew and lines have moved: by line and name,
/// then by name and details, then by the details of a single row, and last by the name alone where it leaves no doubt.
/// </summary>
internal sealed class RowFollower
{
    private readonly Dictionary<RowRef, StandingRow> _rows;
    private readonly ILookup<string, StandingRow> _byText;
    private readonly HashSet<RowRef> _taken = [];

    public RowFollower(IEnumerable<StandingRow> rows)
    {
        var all = rows.ToList();
        _rows = all.ToDictionary(r => r.Ref);
        _byText = all.ToLookup(r => r.Text, StringComparer.Ordinal);
    }

    /// <summary>One answer for each thing said, in their order.</summary>
    public ImmutableArray<Followed> Find(ImmutableArray<SaidOfRow> said)
    {
        var found = new Followed?[said.Length];
        Take(said, found, (s, r) => r.Ref == s.Row && IsOf(r, s) && (s.Details.Length == 0 || IsBeside(r, s)));
        Take(said, found, (s, r) => IsOf(r, s) && IsBeside(r, s));
        FindRenamed(said, found);
        Take(said, found, (s, r) => r.Ref == s.Row && IsOf(r, s));
        var open = Enumerable.Range(0, said.Length).Where(i => found[i] is null)
            .GroupBy(i => NameText.Clean(said[i].Was).Text, StringComparer.Ordinal);
        foreach (var name in open.ToList())
        {
            Settle(said, found, [.. name], [.. _byText[name.Key].Where(r => r.Text.Length > 0 && !_taken.Contains(r.Ref))]);
        }

        return [.. found.Select(f => f!)];
    }

    /// <summary>
    /// A single row with the same details beside another name is likely the same person, renamed, where the old name stands
    /// nowhere any longer. Where it does, beside other details, either may be the one.
    /// </summary>
    private void FindRenamed(ImmutableArray<SaidOfRow> said, Followed?[] found)
    {
        var byPrint = _rows.Values.Where(r => r.Details.Length > 0 && !_taken.Contains(r.Ref))
            .ToLookup(r => r.Details, StringComparer.Ordinal);
        foreach (bool isGone in new[] { true, false })
        {
            for (int i = 0; i < said.Length; i++)
            {
                if (found[i] is not null || Renamed(said[i], byPrint) is not { } row)
                {
                    continue;
                }

                var same = _byText[NameText.Clean(said[i].Was).Text].Where(r => r.Text.Length > 0 && !_taken.Contains(r.Ref)).ToList();
                if (same.Count == 0)
                {
                    _taken.Add(row.Ref);
                    found[i] = new Followed(row.Ref, []);
                }
                else if (!isGone)
                {
                    found[i] = new Followed(
                        null, [.. same.Append(row).Select(r => r.Ref).OrderBy(r => r.List, StringComparer.Ordinal).ThenBy(r => r.Line)]);
                }
            }
        }
    }

    /// <summary>The only row with the details of something said, under another name.</summary>
    private StandingRow? Renamed(SaidOfRow said, ILookup<string, StandingRow> byPrint) =>
        byPrint[said.Details].Where(r => !_taken.Contains(r.Ref)).Take(2)
            .ToList() is [var only] && only.Text != NameText.Clean(said.Was).Text ? only : null;

    /// <summary>A row without a name is nothing to be found again by.</summary>
    private static bool IsOf(StandingRow row, SaidOfRow said) =>
        row.Text == NameText.Clean(said.Was).Text && (row.Ref == said.Row || row.Text.Length > 0);

    private static bool IsBeside(StandingRow row, SaidOfRow said) =>
        said.Details.Length > 0 && (said.Details == row.Details || said.Details == row.EarlierDetails);

    private void Take(ImmutableArray<SaidOfRow> said, Followed?[] found, Func<SaidOfRow, StandingRow, bool> agree)
    {
        for (int i = 0; i < said.Length; i++)
        {
            if (found[i] is not null)
            {
                continue;
            }

            var here = _rows.TryGetValue(said[i].Row, out var at) ? [at] : Array.Empty<StandingRow>();
            var row = here.Concat(_byText[NameText.Clean(said[i].Was).Text])
                .FirstOrDefault(r => !_taken.Contains(r.Ref) && agree(said[i], r));
            if (row is not null)
            {
                _taken.Add(row.Ref);
                found[i] = new Followed(row.Ref, []);
            }
        }
    }

    /// <summary>The same name, and nothing more to tell its rows by: clear only where it makes no difference which is which.</summary>
    private void Settle(ImmutableArray<SaidOfRow> said, Followed?[] found, int[] open, StandingRow[] free)
    {
        bool allAlike = free.Select(r => r.Details).Distinct(StringComparer.Ordinal).Count() == 1;
        bool sameSaid = open.Select(i => said[i].Says).Distinct(StringComparer.Ordinal).Count() == 1;
        bool isClear = free.Length > 0 && ((open.Length == 1 && allAlike) || (open.Length >= free.Length && sameSaid));
        for (int k = 0; k < open.Length; k++)
        {
            found[open[k]] = !isClear ? new Followed(null, [.. free.Select(r => r.Ref)])
                : k < free.Length ? new Followed(free[k].Ref, [])
                : new Followed(null, []);
        }

        if (isClear)
        {
            _taken.UnionWith(free.Take(open.Length).Select(r => r.Ref));
        }
    }
}

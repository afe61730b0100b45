using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;

namespace NameBand.Web.Table;

/// <summary>One press that mends a problem, or leads to where it is mended.</summary>
/// <param name="Words">What the press does.</param>
/// <param name="Towards">What it leads to, for those who hear the page.</param>
/// <param name="Row">The row it leads to; null: a part of the sentence.</param>
/// <param name="Theme">The part of the sentence it opens, where it leads to none of the rows.</param>
internal sealed record OfferedMend(Said Words, Said Towards, RowRef? Row, string? Theme)
{
    /// <summary>What the press sets in job.json itself; empty: it only leads somewhere.</summary>
    public ImmutableArray<JobEdit> Edits { get; private init; } = [];

    /// <returns>The likeliest first; none where nothing on the page mends it.</returns>
    public static ImmutableArray<OfferedMend> Of(Problem problem, TableSnapshot table, string folder)
    {
        var where = problem.Where;
        if (RowAt(where, table, folder) is { } row)
        {
            return [new OfferedMend("go to the row", row.InWords, row, null)];
        }

        return CardOf(where.Key is { } key ? JobKeyCard.Today(key) : null) is { } card
            ? [new OfferedMend("set it", KeyLabels.Of(card), null, Web.Table.Theme.OfKey(card.Path).Name)]
            : [.. OfUnknownKey(where, table.JobFile.Bytes.AsSpan())];
    }

    /// <summary>A key that nobody knows is called what was meant, or taken out.</summary>
    private static List<OfferedMend> OfUnknownKey(Where where, ReadOnlySpan<byte> file)
    {
        if (where is not { File: JobReader.FileName, Key: { Length: > 0 } key } || JobEditing.ValueOf(file, key) is not { } value)
        {
            return [];
        }

        var taken = JobEdit.Remove(key);
        var ways = new List<OfferedMend> { new("take it out", Said.Plain(key), null, null) { Edits = [taken] } };
        if (JobKeyCard.MeantBy(key) is { } meant && JobKeyCard.All.Any(c => c.Path == meant) && JobEditing.ValueOf(file, meant) is null)
        {
            ways.Insert(
                0, new OfferedMend(
                    $"call it “{KeyLabels.Of(JobKeyCard.All.First(c => c.Path == meant))}”", Said.Plain(key), null,
                    null)
                { Edits = [taken, new JobEdit(meant, value)] });
        }

        return ways;
    }

    private static RowRef? RowAt(Where where, TableSnapshot table, string folder)
    {
        if (table.Rows is not { } list)
        {
            return null;
        }

        if (where is { File: { } file, Line: { } line })
        {
            var row = file == Corrections.FileName && Corrections.Read(folder).Value is { } corrections
                ? corrections.Lines.FirstOrDefault(l => l.FileLine == line)?.Row
                : new RowRef(file, line);
            if (list.Rows.Any(r => r.Row == row))
            {
                return row;
            }
        }

        return where.Name is { Length: > 0 } name && list.Rows.FirstOrDefault(r => r.Text == name) is { } named ? named.Row : null;
    }

    /// <summary>The key itself, the key that a place inside it belongs to, or the first key of a theme of keys.</summary>
    private static JobKeyCard? CardOf(string? key) => key is null or "" ? null
        : key.StartsWith("round ", StringComparison.Ordinal) ? JobKeyCard.All.First(c => c.Path == "hem.length")
        : JobKeyCard.All.FirstOrDefault(c => c.Path == key)
        ?? JobKeyCard.All.Where(c =>
            key.StartsWith(c.Path + ".", StringComparison.Ordinal) || key.StartsWith(c.Path + "[", StringComparison.Ordinal))
            .MaxBy(c => c.Path.Length)
        ?? JobKeyCard.All.FirstOrDefault(c => c.Path.StartsWith(key + ".", StringComparison.Ordinal));
}

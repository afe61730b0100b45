using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Ways;

/// <summary>
/// Several ways beside each other on one garment. Each name goes the first of them that can do it; what is sewn already
/// keeps the way it went. A name that none can do is held by the last one.
/// </summary>
internal sealed class SideBySideWay(ImmutableArray<SideBySideWay.Part> parts) : IWay
{
    public sealed record Part(Way Way, IWay Sews);

    public Problem? NoSwatch => parts.Any(p => p.Sews.NoSwatch is null) ? null : parts[0].Sews.NoSwatch;

    public Result<NamesRead> Letter(CheckedList checkedList, FaceShelf shelf, CancellationToken cancel)
    {
        var problems = ImmutableArray.CreateBuilder<Problem>();
        var list = WithHeadings(WithLikeFace(checkedList, shelf, problems));
        var divided = Divide(list, shelf, cancel);
        problems.AddRange(divided.Problems);
        if (divided.Value is not { } shares)
        {
            return Result.Fail<NamesRead>(problems);
        }

        var reads = new List<(Part Part, NamesRead Read)>();
        foreach (var (part, names) in shares)
        {
            var read = part.Sews.Letter(list with { InOrder = names }, shelf, cancel);
            problems.AddRange(read.Problems);
            if (read.Value is not { } value)
            {
                return Result.Fail<NamesRead>(problems);
            }

            reads.Add((part, value));
        }

        return Result.Of(Together(checkedList with
        {
            Face = list.Face,
            Job = checkedList.Job with { Lettering = checkedList.Job.Lettering with { Face = list.Job.Lettering.Face } }
        },
            list.InOrder.Names, [.. reads]), problems.Distinct());
    }

    /// <summary>Letters that we draw beside those of a machine look as much like them as they can; what is sewn, or named,
    /// settles the face.</summary>
    private CheckedList WithLikeFace(CheckedList list, FaceShelf shelf, ImmutableArray<Problem>.Builder problems)
    {
        if ((list.Begun is not null && !list.Job.RestMayDiffer) || list.Job.Lettering.IsFaceNamed
            || parts.Select(p => p.Sews.LooksLike(list, shelf)).FirstOrDefault(f => f is not null) is not { } like
                || like.Name == list.Face.Name)
        {
            return list;
        }

        problems.Add(Problem.Note(
            new Where(JobReader.FileName, Key: "lettering.face"),
            $"Names that the machine’s letters cannot sew are drawn in {like.Name}: of the faces here it is nearest to the machine’s letters by look and widths.",
            "To have another one, write \"face\" into “lettering”."));
        return list with { Face = like, Job = list.Job with { Lettering = list.Job.Lettering with { Face = like.Name } } };
    }

    /// <summary>Headings are divided as names are: each goes the first way that can sew it.</summary>
    private static CheckedList WithHeadings(CheckedList list)
    {
        var groups = list.Job.Groups;
        if (groups.All.IsEmpty)
        {
            return list;
        }

        var names = new GroupOrder(groups, _ => null, null)
            .Ordered([.. GroupOrder.Headings(groups, list.InOrder.Names), .. list.InOrder.Names]);
        return list with { Job = WithoutHeadings.Of(list.Job), InOrder = new NameList(list.InOrder.Rows, names) };
    }

    public Result<ImmutableHashSet<RowRef>> Able(CheckedList list, FaceShelf shelf, CancellationToken cancel)
    {
        var able = parts.Select(p => p.Sews.Able(list, shelf, cancel)).ToList();
        return able.Find(a => a.Value is null) ?? Result.Of<ImmutableHashSet<RowRef>>(
            [.. able.SelectMany(a => a.Value!)], [.. able.SelectMany(a => a.Problems)]);
    }

    /// <summary>The names of each way that has any. Rows that are held go to the last one, but for those that another can do.</summary>
    private Result<List<(Part Part, NameList Names)>> Divide(CheckedList list, FaceShelf shelf, CancellationToken cancel)
    {
        var problems = ImmutableArray.CreateBuilder<Problem>();
        var shares = new List<(Part Part, NameList Names)>();
        var sewn = list is { Begun: { } begun, Matched: { } matched } ? begun.SewnRows(matched) : [];
        var left = list.InOrder.Names;
        var asked = HeldRows.AsTheyWouldBe(list.InOrder);
        var settled = new HashSet<RowRef>();
        foreach (var part in parts)
        {
            var mine = left;
            if (part != parts[^1])
            {
                var able = part.Sews.Able(list with { InOrder = new NameList(list.InOrder.Rows, [.. left, .. asked]) }, shelf, cancel);
                problems.AddRange(able.Problems);
                if (able.Value is not { } can)
                {
                    return Result.Fail<List<(Part Part, NameList Names)>>(problems);
                }

                mine = [.. left.Where(n => sewn.TryGetValue(n.Row, out var went) ? went == part.Way : can.Contains(n.Row))];
                left = [.. left.Except(mine)];
                settled.UnionWith(asked.Where(n => can.Contains(n.Row)).Select(n => n.Row));
            }

            ImmutableArray<ListedRow> rows = part == parts[^1] ? [.. list.InOrder.Rows.Where(r => !settled.Contains(r.Row))] : [];
            bool hasAny = !mine.IsEmpty || asked.Any(n => rows.Any(r => r.Row == n.Row));
            if (hasAny || (list.Begun?.HasSewn(part.Way) ?? false) || (shares.Count == 0 && part == parts[^1]))
            {
                shares.Add((part, new NameList(rows, mine)));
            }
        }

        return Result.Of(shares, problems);
    }

    /// <summary>What the ways read, in the order of the list again.</summary>
    /// <param name="order">Names and headings in the order in which they stand.</param>
    private static NamesRead Together(CheckedList list, ImmutableArray<Name> order, ImmutableArray<(Part Part, NamesRead Read)> reads)
    {
        var letters = new SideBySideLetters(
            [.. reads.Select(r =>
                new SideBySideLetters.Part(
                    r.Part.Way, r.Read.Way) { Motif = r.Read.Lettered.Motif is { } own ? own with { Way = r.Part.Way } : null })]);
        var told = reads.SelectMany(r => r.Read.Rows.Rows).ToDictionary(r => r.Row);
        ImmutableArray<HeldRow> held = [.. reads.SelectMany(r => r.Read.Lettered.Held)];
        var rows = new NameList([.. list.InOrder.Rows.Select(r => told.GetValueOrDefault(r.Row, r))], list.InOrder.Names);
        var all = SideBySideLetters.InOrder(order, reads.SelectMany(r => r.Read.Lettered.Names), list.Job);
        var going = reads.Where(r => r.Read.Sewn is not null).Select(r => r.Read.Sewn!.Value).ToList();

        // The way of typed names knows how long they came out, wherever it stands among the ways.
        var lead = going.OrderByDescending(g => g.From.TakesUpLengths).FirstOrDefault();
        return new NamesRead(
            list.Job, list.Corrections, list.Face,
            new LetteredList(
                list.Face.Name, all, held)
            {
                Motif = SideBySideLetters.Widest(reads.Select(r => r.Read.Lettered.Motif)),
                AreMotifsLater = true
            }, HeldRows.Merge(rows, held), letters)
        {
            Sewn = going.Count == 0 ? null
                : (lead.Begun, lead.From with { Gone = [.. going.SelectMany(g => g.From.Gone)] }),
            SewnThenChanged = list.Matched?.Changed,
        };
    }
}

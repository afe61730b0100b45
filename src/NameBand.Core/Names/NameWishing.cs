using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>Finds the names that the wishes of a job are about.</summary>
public static class NameWishing
{
    private const string Key = "names";

    /// <summary>The same list, each name with what is wished for it; and what is wished for names that are not there.</summary>
    public static Result<NameList> Applied(ImmutableArray<NameWish> wishes, NameList list)
    {
        if (wishes.IsEmpty)
        {
            return Result.Of(list);
        }

        var problems = ImmutableArray.CreateBuilder<Problem>();
        var wishOf = new Dictionary<RowRef, NameWish>();
        foreach (var wish in wishes)
        {
            ImmutableArray<ListedRow> meant = [.. Meant(wish, list.Rows)];
            if (meant.Length == 1)
            {
                wishOf.TryAdd(meant[0].Row, wish);
            }
            else
            {
                problems.Add(meant.IsEmpty ? NotThere(wish, list) : Alike(wish, meant));
            }

            if ((wish.After ?? wish.Before) is { } beside && !list.Rows.Any(r => IsCalled(r, beside)))
            {
                problems.Add(Problem.NeedsPerson(
                    Place(wish), $"It is to stand beside “{PlainText.Short(beside)}”, and no row of the lists has that name.",
                    $"{Near(beside, list)}Write the name as the list has it, or remove the wish."));
            }
        }

        return Result.Of(list with
        {
            Names = [.. list.Names.Select(n => wishOf.TryGetValue(n.Row, out var wish) ? n with { Wish = wish }
            : n)]
        }, problems);
    }

    /// <summary>What the job wishes for the name of a row; null: nothing.</summary>
    public static NameWish? Of(ImmutableArray<NameWish> wishes, NameList list, RowRef row) =>
        wishes.FirstOrDefault(w => Meant(w, list.Rows).ToList() is [var only] && only.Row == row);

    /// <summary>The edit of job.json after which what is wished for the name of a row is changed.</summary>
    /// <param name="wishes">All wishes of the job as it stands now.</param>
    /// <param name="change">Given what is wished until now, or a wish that wishes nothing.</param>
    public static JobEdit Edit(ImmutableArray<NameWish> wishes, NameList list, ListedRow row, Func<NameWish, NameWish> change)
    {
        var before = Of(wishes, list, row.Row);
        return WishEditing.Set(wishes, before, change(before ?? For(list, row)));
    }

    /// <summary>A wish that is about a row and no other, and wishes nothing yet.</summary>
    private static NameWish For(NameList list, ListedRow row) =>
        list.Rows.Count(r => r.Outcome == RowOutcome.Placed && IsCalled(r, row.Text)) > 1
            ? new NameWish(row.Text, row.Row.List, row.Row.Line) : new NameWish(row.Text, null, null);

    /// <summary>Whether a row has a name, as it will be sewn or as it was written.</summary>
    private static bool IsCalled(ListedRow row, string name) => row.Text == name || row.Was == name || row.WouldBe == name;

    /// <summary>Lines move when a list is exported anew: where the row that is said has another name, the only one of that name is
    /// meant.</summary>
    private static IEnumerable<ListedRow> Meant(NameWish wish, ImmutableArray<ListedRow> rows)
    {
        var named = rows.Where(r => IsCalled(r, wish.Name) && (wish.List is null || r.Row.List == wish.List)).ToList();
        var sewn = named.Where(r => r.Outcome == RowOutcome.Placed).ToList();
        var own = (sewn.Count > 0 ? sewn : named.Take(1)).ToList();
        return own.Find(r => r.Row.Line == wish.Line) is { } exact ? [exact] : own;
    }

    private static Where Place(NameWish wish) => new(JobReader.FileName, Key: Key, Name: PlainText.Short(wish.Name));

    private static Problem NotThere(NameWish wish, NameList list) => Problem.NeedsPerson(
        Place(wish), "Something is wished for this name, and no row of the lists has it.",
        $"{Near(wish.Name, list)}Write the name as the list has it, or remove the wish.");

    private static Problem Alike(NameWish wish, ImmutableArray<ListedRow> meant) => Problem.NeedsPerson(
        Place(wish), $"Something is wished for this name, and {meant.Length} rows have it: "
            + $"{string.Join(", ", meant.Take(5).Select(r => $"{r.Row.List}, line {r.Row.Line}"))}.",
        $"Say which: add for example \"line\": {meant[0].Row.Line}.");

    private static Said Near(string name, NameList list) =>
        NearestWord.Find(name, list.Rows.Where(r => r.Outcome == RowOutcome.Placed).Select(r => r.Text)) is { } near
            ? (Said)$"Is “{PlainText.Short(near)}” meant? " : "";
}

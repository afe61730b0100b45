using System.Collections.Immutable;

namespace NameBand.Names;

/// <summary>Whose an answer is.</summary>
/// <param name="Rows">One: its own. Several: it cannot be told which of them. None: it is of nobody in the lists.</param>
/// <param name="IsOtherName">The owner wrote the name in other letters than the list has.</param>
/// <param name="IsFromElsewhere">It comes from another address than the list has for this name.</param>
internal sealed record AnswerOwner(ImmutableArray<ListedRow> Rows, bool IsOtherName = false, bool IsFromElsewhere = false);

/// <summary>Finds whose an answer is: by address and name together, by one of them where the other is not there; never by a
/// guess.</summary>
internal sealed class AnswerOwners(NameList list, AddressBook book)
{
    private readonly ImmutableArray<ListedRow> _rows = [.. list.Rows.Where(r => r.Outcome != RowOutcome.Merged && r.Text.Length > 0)];

    public AnswerOwner Of(OwnerAnswer answer)
    {
        var at = Living(_rows.Where(r => answer.Address.Length > 0 && Address(r) == answer.Address));
        var named = Living(_rows.Where(r => answer.Name.Length > 0 && IsNamed(r, answer.Name)));
        var both = at.RemoveAll(r => !named.Contains(r));
        return both.Length > 0 ? new AnswerOwner(both)
            : answer.Name.Length == 0 ? new AnswerOwner(at)
            : at.IsEmpty ? new AnswerOwner(named, IsFromElsewhere: answer.Address.Length > 0 && named.Any(r => Address(r).Length > 0))
            : named.IsEmpty ? new AnswerOwner(Nearest(at, answer.Name), IsOtherName: true)
            : new AnswerOwner([.. at, .. named]);
    }

    private string Address(ListedRow row) => OwnerAnswer.AddressKey(book.Of(row.Row));

    private static bool IsNamed(ListedRow row, string name) => Key(row.Text) == Key(name) || Key(row.Was) == Key(name);

    private static string Key(string name) => Resemblance.Fold(name);

    /// <summary>Of several names at one address the only one that looks like what was written.</summary>
    private static ImmutableArray<ListedRow> Nearest(ImmutableArray<ListedRow> rows, string name)
    {
        var alike = rows.RemoveAll(r => !SewnMatching.AreAlike(Key(name), Key(r.Text)));
        return rows.Length > 1 && alike.Length == 1 ? alike : rows;
    }

    /// <summary>Rows that are left out are meant only where no other can be.</summary>
    private static ImmutableArray<ListedRow> Living(IEnumerable<ListedRow> rows)
    {
        ImmutableArray<ListedRow> all = [.. rows];
        var living = all.RemoveAll(r => r.Outcome == RowOutcome.LeftOut);
        return living.IsEmpty ? all : living;
    }
}

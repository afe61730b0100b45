using NameBand.Common;
using NameBand.Names;

namespace NameBand.Web.Table;

/// <summary>What a list comes to, as somebody would read it out.</summary>
internal static class ReadAloud
{
    /// <summary>Such as <c>63 people; 2 repeats; 15 questions of three kinds; one says no.</c></summary>
    public static Said Of(NameList list)
    {
        var kinds = AlikeRows.Of(list);
        int Count(Func<ListedRow, bool> what) => list.Rows.Count(what);
        int people = Count(r => r.Outcome is RowOutcome.Placed or RowOutcome.Held), repeats = Count(r => r.Outcome == RowOutcome.Merged);
        int no = Count(r => r is { Outcome: RowOutcome.LeftOut, AsksNotToBeShown: true });
        int others = Count(r => r is { Outcome: RowOutcome.LeftOut, AsksNotToBeShown: false });
        int questions = kinds.Sum(k => k.Rows.Length);
        string[] parts =
        [
            Words.Count(people, "person", "people"),
            repeats > 0 ? $"{Words.Count(repeats, "repeat", "repeats")}, sewn once" : "",
            questions > 0
            ? $"{Words.Count(questions, "question", "questions")}{(questions > 1 ? $" of {Words.Kinds(kinds.Length)}" : "")}"
            : "no question",
            no > 0 ? no == 1 ? "one says no" : $"{Words.Few(no)} say no" : "",
            others > 0 ? others == 1 ? "one row is left out" : $"{Words.Few(others)} rows are left out" : "",
        ];
        return Wording.AsSentence(Said.Plain(string.Join("; ", parts.Where(p => p.Length > 0))));
    }
}

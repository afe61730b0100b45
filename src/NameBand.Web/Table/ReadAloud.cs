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
        Said?[] parts =
        [
            Words.Count(people, "person", "people"),
            repeats > 0 ? (Said)$"{Words.Count(repeats, "repeat", "repeats")}, sewn once" : null,
            questions > 1 ? (Said)$"{Words.Count(questions, "question", "questions")} of {Words.Kinds(kinds.Length)}"
            : questions == 1 ? Words.Count(questions, "question", "questions") : "no question",
            no > 0 ? Said.Plural(no, "one says no", $"{Words.Few(no)} say no") : null,
            others > 0 ? Said.Plural(others, "one row is left out", $"{Words.Few(others)} rows are left out") : null,
        ];
        return Wording.AsSentence(Said.Join("; ", parts.OfType<Said>()));
    }
}

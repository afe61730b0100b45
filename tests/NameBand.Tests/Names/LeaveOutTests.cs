using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class LeaveOutTests
{
    [Theory]
    [InlineData("anonymous", "yes")]
    [InlineData("Anonymous?", "TRUE")]
    [InlineData("Anonymous gift", "1")]
    [InlineData("private", "x")]
    [InlineData("Do not show", "Y")]
    [InlineData("Don't show my name", "✓")]
    [InlineData("hide", "on")]
    [InlineData("anonym", "ja")]
    [InlineData("nicht anzeigen", "wahr")]
    [InlineData("anonyme", "oui")]
    [InlineData("anónimo", "sí")]
    [InlineData("ANÓNIMO", "Si")]
    [InlineData("anonimo", "sì")]
    [InlineData("anônimo", "sim")]
    [InlineData("anoniem", "ja")]
    [InlineData("anonimowo", "tak")]
    [InlineData("anonymně", "ano")]
    [InlineData("gizli", "evet")]
    [InlineData("аноним", "да")]
    [InlineData("анонімно", "так")]
    [InlineData("ανώνυμα", "ναι")]
    [InlineData("مجهول", "نعم")]
    [InlineData("אנונימי", "כן")]
    [InlineData("गुमनाम", "हाँ")]
    [InlineData("匿名", "はい")]
    [InlineData("匿名", "是")]
    [InlineData("익명", "예")]
    [InlineData("public", "no")]
    [InlineData("öffentlich", "nein")]
    [InlineData("public", "private")]
    [InlineData("show my name", "hide")]
    [InlineData("öffentlich", "anonym")]
    [InlineData("visible", "hidden")]
    [InlineData("private", "private")]
    public void A_row_that_asks_for_it_is_left_out(string header, string answer)
    {
        var row = Lists.Row(Lists.Read($"Name,{header}\nAnna Berg,{answer}\n"), 2);

        Assert.Equal((RowOutcome.LeftOut, "Anna Berg", "asked not to be shown"), (row.Outcome, row.Text, row.Reason));
    }

    [Theory]
    [InlineData("anonymous", "")]
    [InlineData("anonymous", "no")]
    [InlineData("anonyme", "non")]
    [InlineData("anonym", "Nein")]
    [InlineData("private", "0")]
    [InlineData("匿名", "いいえ")]
    [InlineData("public", "yes")]
    [InlineData("public", "public")]
    [InlineData("show my name", "show")]
    [InlineData("private", "public")]
    [InlineData("anonym", "öffentlich")]
    public void A_row_that_does_not_is_shown(string header, string answer)
    {
        Assert.Equal("2 placed Anna Berg", Lists.Table(Lists.Read($"Name,{header}\nAnna Berg,{answer}\n")));
    }

    [Theory]
    [InlineData("anonymous", "maybe", "asked not to be shown? The column “anonymous” says “maybe”")]
    [InlineData("anonymous", "ask anna@secret.example", "asked not to be shown? The column “anonymous” says neither yes nor no")]
    [InlineData("public", "", "asked not to be shown? The column “public” is empty")]
    public void An_unclear_wish_is_for_a_person(string header, string answer, string reason)
    {
        var row = Lists.Row(Lists.Read($"Name,{header}\nAnna Berg,{answer}\n"), 2);

        Assert.Equal((RowOutcome.Held, reason), (row.Outcome, row.Reason));
    }

    [Fact]
    public void The_column_can_be_chosen_in_the_job()
    {
        const string Csv = "Name,Wish 3\nAnna,yes\nBert,\n";

        Assert.Equal("2 held Anna\n3 held Bert", Lists.Table(Lists.Read(Csv)));
        Assert.Equal("2 leftOut Anna\n3 placed Bert", Lists.Table(Lists.Read(Csv, columns: new ColumnChoice(LeaveOut: "Wish 3"))));
        Assert.Contains("no column “Wihs”", Lists.Refused(Lists.Read(Csv, columns: new ColumnChoice(LeaveOut: "Wihs"))).Found.English);
    }

    [Fact]
    public void Rows_without_a_name_are_left_out_and_say_so()
    {
        var read = Lists.Read("Name,Sum\n,5\n\u200B,6\n,\n\nAnna,7\n");

        Assert.Equal("2 leftOut\n3 leftOut\n4 leftOut\n6 placed Anna", Lists.Table(read));
        Assert.Equal("there is no name in this row", Lists.Row(read, 2).Reason);
        Assert.Equal("there is nothing to be seen in this name", Lists.Row(read, 3).Reason);
    }

    [Fact]
    public void A_namesake_of_somebody_who_asks_not_to_be_shown_is_held_wherever_in_the_list_that_stands()
    {
        var read = Lists.Read("Name,Mail,Anonymous\nAnna,a@x.example,\nAnna,a@x.example,yes\nBert,,\n");

        Assert.Equal("2 held Anna\n3 leftOut Anna\n4 placed Bert", Lists.Table(read));
        Assert.Contains("names.csv, line 3 has the same name and asks not to be shown", Lists.Row(read, 2).Reason.English);
    }

    [Fact]
    public void Later_rows_of_a_name_that_asked_not_to_be_shown_are_held()
    {
        var read = Lists.Read("Name,Anonymous\nAnna,yes\nAnna,\nanna,\n");

        Assert.Equal("2 leftOut Anna\n3 held Anna\n4 held anna", Lists.Table(read));
        Assert.Contains("asks not to be shown", Lists.Row(read, 3).Reason.English);
    }
}

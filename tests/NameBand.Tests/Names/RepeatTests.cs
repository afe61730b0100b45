using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class RepeatTests
{
    [Fact]
    public void Rows_that_agree_in_everything_are_merged()
    {
        var read = Lists.Read("Name,Mail,Note\nAnna,a@x.example,\n Anna ,a@x.example,  \nA\u0301,,\nÁ,,\n");

        Assert.Equal("2 placed Anna\n3 merged Anna\n4 placed Á\n5 merged Á", Lists.Table(read));
        Assert.Equal("the same as names.csv, line 2", Lists.Row(read, 3).Reason);
    }

    [Fact]
    public void A_single_column_has_nothing_to_differ_in()
    {
        Assert.Equal("2 placed Anna\n3 placed Bert\n4 merged Anna", Lists.Table(Lists.Read("Name\nAnna\nBert\nAnna\n")));
    }

    [Fact]
    public void The_same_name_with_other_details_is_held_and_only_the_column_is_named()
    {
        var read = Lists.Read("Name,Mail,Note\nAnna,a@x.example,red\nAnna,b@x.example,red\nAnna,b@x.example,blue\nAnna,b@x.example,red\n");

        Assert.Equal("2 placed Anna\n3 held Anna\n4 held Anna\n5 merged Anna", Lists.Table(read));
        Assert.Equal(
            "two people of this name? names.csv, line 2 has the same name with something else under “Mail”", Lists.Row(read, 3).Reason);
        Assert.Equal(
            "two people of this name? names.csv, line 2 has the same name with something else under “Mail” and “Note”",
            Lists.Row(read, 4).Reason);
        Assert.Equal("the same as names.csv, line 3", Lists.Row(read, 5).Reason);
    }

    [Fact]
    public void A_bare_row_beside_a_full_one_may_be_anybody()
    {
        var read = Lists.Read("Name,Mail\nAnna,a@x.example\nAnna,\n");

        Assert.Equal("two people of this name? names.csv, line 2 has the same name and says more (“Mail”)", Lists.Row(read, 3).Reason);
    }

    [Fact]
    public void Look_alikes_are_held_with_the_row_they_resemble()
    {
        var read = Lists.Read("Name\nAnna Berg\nANNA BERG\nАnna Berg\nAnnaberg\nÁnna Berg\n");

        Assert.Single(read.Value!.Names);
        Assert.Equal(
            [
                "the same person as names.csv, line 2? The two names differ only in capital and small letters",
                "the same person as names.csv, line 2? The two names differ only in letters that look alike",
                "the same person as names.csv, line 2? The two names differ only in accents, blanks or capital letters",
                "the same person as names.csv, line 2? The two names differ only in accents, blanks or capital letters",
            ],
            read.Value.Rows.Skip(1).Select(r => r.Reason));
    }

    [Fact]
    public void It_works_across_lists_whatever_their_columns_are_called()
    {
        var read = Lists.Read(
            [("a.csv", "Name,E-mail,Sum\nAnna,a@x.example,5\nBert,b@x.example,5\n"),
             ("b.csv", "Nom;Courriel;Montant\nAnna;a@x.example;5\nBert;c@x.example;5\nanna;a@x.example;5\n")]);

        Assert.Equal("2 placed Anna\n3 placed Bert\n2 merged Anna\n3 held Bert\n4 held anna", Lists.Table(read));
        Assert.Equal("the same as a.csv, line 2", Lists.Row(read, 2, "b.csv").Reason);
        Assert.Equal(
            "two people of this name? a.csv, line 3 has the same name with something else under “Courriel”",
            Lists.Row(read, 3, "b.csv").Reason);
    }

    [Theory]
    [InlineData("anonymous")]
    [InlineData("Anónimo")]
    [InlineData("N/A")]
    [InlineData("anna@x.example")]
    [InlineData("---")]
    [InlineData("An\uFFFDna")]
    public void What_may_be_no_name_is_held(string text)
    {
        var row = Lists.Row(Lists.Read($"Name\n{text}\n"), 2);

        Assert.Equal((RowOutcome.Held, text), (row.Outcome, row.Text));
        Assert.NotEmpty(row.Reason.English);
    }

    [Fact]
    public void Thirty_thousand_rows_are_each_accounted_for()
    {
        // A hostile list: half of the rows share one name with ever another mail, so every pair would have to be asked about.
        string csv = "Name,Mail\n" + string.Concat(Enumerable.Range(0, 30_000)
            .Select(i => i % 2 == 0 ? $"Anna,{i}@x.example\n" : $"Neighbour {i},{i}@x.example\n"));

        var read = Lists.Read(csv);

        Assert.Equal(30_000, read.Value!.Rows.Length);
        Assert.Equal(Enumerable.Range(2, 30_000), read.Value.Rows.Select(r => r.Row.Line));
        Assert.Equal(14_999, read.Value.Rows.Count(r => r.Outcome == RowOutcome.Held && r.Text == "Anna"));
    }
}

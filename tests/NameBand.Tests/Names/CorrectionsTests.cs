using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class CorrectionsTests
{
    private const string Header = "list,line,was,decision,text,why\n";
    private const string List = "Name,Mail\nAnna Berg,a@x.example\nAnna Berg,b@x.example\nanna berg,c@x.example\nBret Ost,d@x.example\n";

    [Fact]
    public void No_file_is_no_corrections()
    {
        using var folder = new TemporaryFolder();

        Assert.Equal(Corrections.None, Corrections.Read(folder.FullPath).Value);
    }

    [Fact]
    public void Keep_leave_out_and_change_do_what_they_say()
    {
        var read = Lists.Read(List, Header
            + "names.csv,3,Anna Berg,keep,,two cousins\n"
            + "names.csv,4,anna berg,leave out,,written twice\n"
            + "names.csv,5,Bret Ost,change,Bert Ost,typo\n");

        Assert.Equal("2 placed Anna Berg\n3 placed Anna Berg\n4 leftOut anna berg\n5 placed Bert Ost", Lists.Table(read));
        Assert.Empty(read.Problems);
        Assert.Equal("kept, as corrections.csv says", Lists.Row(read, 3).Reason);
    }

    [Theory]
    [InlineData("KEEP", RowOutcome.Placed)]
    [InlineData(" Keep ", RowOutcome.Placed)]
    [InlineData("leaveOut", RowOutcome.LeftOut)]
    [InlineData("Leave  Out", RowOutcome.LeftOut)]
    [InlineData("leave-out", RowOutcome.LeftOut)]
    [InlineData("", RowOutcome.Held)]
    public void Decisions_are_read_leniently(string decision, RowOutcome outcome)
    {
        Assert.Equal(outcome, Lists.Row(Lists.Read(List, Header + $"names.csv,3,Anna Berg,{decision},,\n"), 3).Outcome);
    }

    [Fact]
    public void A_spreadsheets_semicolons_and_order_of_columns_are_fine()
    {
        var read = Lists.Read(List, "Line;List;Decision;Was;Text\n3;names.csv;keep;Anna Berg;\n");

        Assert.Equal(RowOutcome.Placed, Lists.Row(read, 3).Outcome);
    }

    [Fact]
    public void A_decision_goes_with_its_row_and_the_new_place_is_told()
    {
        var read = Lists.Read(List, Header + "names.csv,2,Bret Ost,leave out,,\n");

        Assert.Equal((RowOutcome.Placed, RowOutcome.LeftOut), (Lists.Row(read, 2).Outcome, Lists.Row(read, 5).Outcome));
        var problem = Assert.Single(read.Problems);
        Assert.Equal((Severity.Note, 2), (problem.Severity, problem.Where.Line));
        Assert.Contains("stood in names.csv, line 2 and now stands in names.csv, line 5", problem.Found.English);
    }

    [Fact]
    public void A_name_that_is_gone_holds_the_row_that_stands_on_its_line()
    {
        var read = Lists.Read(List, Header + "names.csv,5,Cleo Marsh,leave out,,\n");

        Assert.Equal(RowOutcome.Held, Lists.Row(read, 5).Outcome);
        Assert.Contains("in none of the lists", Assert.Single(read.Problems).Mend.English);
    }

    [Fact]
    public void Was_is_compared_as_a_clean_name()
    {
        var read = Lists.Read("Name\n  Zoe\u0308   Berg \n", Header + "names.csv,2,Zoë Berg,leave out,,\n");

        Assert.Equal("2 leftOut Zoë Berg", Lists.Table(read));
    }

    [Fact]
    public void A_changed_name_is_checked_like_any_other()
    {
        var read = Lists.Read("Name,Mail\nAnna,a@x.example\nBert,b@x.example\nCarl,c@x.example\nDora,d@x.example\n", Header
            + "names.csv,3,Bert,change,Anna,\n"
            + "names.csv,4,Carl,change, Ca\u200Brl  X ,\n"
            + "names.csv,5,Dora,change,anna,\n");

        Assert.Equal("2 placed Anna\n3 held Bert\n4 placed Carl X\n5 held Dora", Lists.Table(read));
        Assert.Contains("line 2 has the same name", Lists.Row(read, 3).Reason.English);
        Assert.Contains("invisible", Assert.Single(Lists.Row(read, 4).Notes).English);
    }

    [Fact]
    public void A_changed_name_that_repeats_a_row_in_everything_is_merged()
    {
        var read = Lists.Read("Name\nAnna\nAna\n", Header + "names.csv,3,Ana,change,Anna,typo\n");

        Assert.Equal("2 placed Anna\n3 merged Anna", Lists.Table(read));
    }

    [Fact]
    public void Keep_with_a_text_sews_that_text_without_asking_again()
    {
        var read = Lists.Read(List, Header + "names.csv,4,anna berg,keep,Anna Berg,the third of that name\n");

        Assert.Equal("4 placed Anna Berg", Lists.Table(read).Split('\n')[2]);
    }

    [Fact]
    public void Keep_brings_back_a_merged_row_and_with_the_answer_written_down_one_that_asked_not_to_be_shown()
    {
        var read = Lists.Read("Name,Anonymous\nAnna,\nAnna,\nBert,yes\n,\n", "list,line,was,decision,text,why,details,show\n"
            + "names.csv,3,Anna,keep,,father and son\nnames.csv,4,Bert,keep,,he changed his mind,,Anonymous = yes\nnames.csv,5,,keep,Carl,he wrote it in a letter\n");

        Assert.Equal("2 placed Anna\n3 placed Anna\n4 placed Bert\n5 placed Carl", Lists.Table(read));
        Assert.Contains("although the row asks not to be shown", Lists.Row(read, 4).Reason.English);
    }

    [Fact]
    public void Nothing_to_keep_is_told()
    {
        var read = Lists.Read("Name,Mail\n,x\nAnna,y\n", Header + "names.csv,2,,keep,,\n");

        Assert.Equal("2 leftOut\n3 placed Anna", Lists.Table(read));
        Assert.Contains("no name in this row", Assert.Single(read.Problems).Found.English);
    }

    [Fact]
    public void A_copy_of_a_row_that_was_changed_stays_merged_with_it()
    {
        var read = Lists.Read("Name\nAna\nAna\n", Header + "names.csv,2,Ana,change,Anna,\n");

        Assert.Equal("2 placed Anna\n3 merged Ana", Lists.Table(read));
    }

    [Fact]
    public void A_copy_of_a_row_that_was_left_out_is_asked_about()
    {
        var read = Lists.Read("Name\nAnna\nAnna\n", Header + "names.csv,2,Anna,leave out,,asked me\n");

        Assert.Equal("2 leftOut Anna\n3 held Anna", Lists.Table(read));
        Assert.DoesNotContain("asked me", Lists.AllShown(read));
    }

    [Theory]
    [InlineData("names.csv,3,Anna Berg,kep,,", "decision", "This decision is not one we know")]
    [InlineData("names.csv,3,Anna Berg,change,,", "decision", "the column “text” is empty")]
    [InlineData("names.csv,three,Anna Berg,keep,,", "line", "not a whole number")]
    [InlineData("names.csv,-3,Anna Berg,keep,,", "line", "not a whole number")]
    [InlineData(
        "names.csv,99,Anna Berg,keep,,", "line", "may now stand in names.csv, line 2 and in names.csv, line 3; "
        + "it is not clear which of them")]
    [InlineData("names.csv,99,Nobody Here,keep,,", "line", "No row begins in names.csv, line 99")]
    [InlineData("names.csv,1,Name,keep,,", "line", "No row begins in names.csv, line 1")]
    [InlineData("other.csv,3,Nobody Here,keep,,", "list", "no such list")]
    [InlineData(",3,Anna Berg,keep,,", "list", "which list")]
    public void A_faulty_line_is_told_and_the_others_apply(string line, string column, string found)
    {
        var read = Lists.Read(List, Header + line + "\nnames.csv,5,Bret Ost,leave out,,\n");

        Assert.Equal(RowOutcome.Held, Lists.Row(read, 3).Outcome);
        Assert.Equal(RowOutcome.LeftOut, Lists.Row(read, 5).Outcome);
        var problem = Assert.Single(read.Problems);
        Assert.Equal(("corrections.csv", 2), (problem.Where.File, problem.Where.Line));
        Assert.True(problem.Where.Key == column || problem.Where.Column == Corrections.Columns.IndexOf(column) + 1);
        Assert.Contains(found, problem.Found.English);
        Assert.NotEmpty(problem.Mend.English);
    }

    [Fact]
    public void A_misspelt_decision_never_sews_what_was_to_be_left_out()
    {
        var read = Lists.Read(List, Header + "names.csv,5,Bret Ost,leve out,,\n");

        Assert.Equal(RowOutcome.Held, Lists.Row(read, 5).Outcome);
    }

    [Fact]
    public void Two_lines_about_one_row_must_agree()
    {
        var agree = Lists.Read(List, Header + "names.csv,3,Anna Berg,keep,,one\nnames.csv,3,Anna Berg,keep,,two\n");
        var differ = Lists.Read(List, Header + "names.csv,3,Anna Berg,keep,,\nnames.csv,3,Anna Berg,leave out,,\n");

        Assert.Empty(agree.Problems);
        Assert.Equal(RowOutcome.Placed, Lists.Row(agree, 3).Outcome);
        Assert.Equal(RowOutcome.Held, Lists.Row(differ, 3).Outcome);
        Assert.Contains("Line 2 is about the same row", Assert.Single(differ.Problems).Found.English);
    }

    [Fact]
    public void A_file_without_its_columns_is_refused()
    {
        var problem = Lists.Refused(Lists.Read(List, "names.csv,3,Anna Berg,keep,,\n"));

        Assert.Contains("no column “list” and no “line”", problem.Found.English);
        Assert.Contains("list,line,was,decision,text,why", problem.Mend.English);
    }

    [Fact]
    public void Pasted_lines_need_only_the_decision_even_for_names_like_formulas()
    {
        const string Csv = "Name,Mail\n=Anna,a\n=Anna,b\n'+x,a\n'+x,b\n\"Q \"\"q\"\" Z, x\",a\n\"Q \"\"q\"\" Z, x\",b\n";
        var first = Lists.Read(Csv);
        var lines = CorrectionLines.ToAdd(first.Value!, Corrections.None);

        Assert.Equal(4, lines.Length);
        Assert.StartsWith("names.csv,3,'=Anna,,,", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("names.csv,5,''+x,,,", lines[2], StringComparison.Ordinal);
        string filled = string.Join("\r\n", lines).Replace(",,,", ",keep,,", StringComparison.Ordinal);
        var second = Lists.Read(Csv, filled);
        Assert.Empty(second.Problems);
        Assert.All(second.Value!.Rows, r => Assert.Equal(RowOutcome.Placed, r.Outcome));
    }

    [Fact]
    public void Lines_to_add_use_the_files_own_separator_and_skip_rows_that_have_one()
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", List).With("corrections.csv", "list;line;was;decision;text;why\nnames.csv;3;Anna Berg;;;\n");
        var corrections = Corrections.Read(folder.FullPath).Value!;

        string line = Assert.Single(CorrectionLines.ToAdd(Lists.Read(folder).Value!, corrections));

        Assert.StartsWith("names.csv;4;anna berg;;;", line, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_held_is_nothing_to_add() =>
        Assert.Empty(CorrectionLines.ToAdd(Lists.Read("Name\nAnna\n").Value!, Corrections.None));
}

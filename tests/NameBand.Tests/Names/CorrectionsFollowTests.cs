using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>Decisions follow their rows through a list that was exported anew, in another order.</summary>
public class CorrectionsFollowTests
{
    private const string Head = "Name,Mail\n";
    private static readonly string[] Rows =
        ["Anna Berg,a@x.example", "Anna Berg,b@x.example", "anna berg,c@x.example", "Bret Ost,d@x.example", "Cleo Marsh,e@x.example"];

    private static string Csv(params int[] order) => Head + string.Concat(order.Select(i => Rows[i] + "\n"));

    /// <summary>The file as the command offers it, with the decisions filled in.</summary>
    private static string Decided(string csv, params string[] decisions)
    {
        var lines = CorrectionLines.ToAdd(Lists.Read(csv).Value!, Corrections.None);
        Assert.Equal(decisions.Length, lines.Length - 1);
        return string.Concat(lines.Take(1)
            .Concat(lines.Skip(1).Zip(decisions, (l, d) => l.Replace(",,,", $",{d},,", StringComparison.Ordinal))).Select(l => l + "\r\n"));
    }

    [Fact]
    public void A_list_sorted_anew_keeps_every_decision_even_between_namesakes()
    {
        string decided = Decided(Csv(0, 1, 2, 3, 4), "leave out", "keep");
        var read = Lists.Read(Csv(4, 3, 2, 1, 0), decided + "names.csv,5,Bret Ost,change,Bert Ost,,\r\n");
        Assert.Equal(
            "2 placed Cleo Marsh\n3 placed Bert Ost\n4 placed anna berg\n5 leftOut Anna Berg\n6 held Anna Berg", Lists.Table(read));
        Assert.DoesNotContain(read.Problems, p => p.Severity != Severity.Note);
    }

    [Fact]
    public void Between_namesakes_that_nothing_tells_apart_both_are_held_and_both_are_named()
    {
        var read = Lists.Read(Csv(4, 3, 1, 0), "list,line,was,decision,text,why\nnames.csv,3,Anna Berg,leave out,,\n");
        Assert.Equal([RowOutcome.Held, RowOutcome.Held], new[] { 4, 5 }.Select(l => Lists.Row(read, l).Outcome));
        var problem = Assert.Single(read.Problems);
        Assert.Equal(Severity.NeedsPerson, problem.Severity);
        Assert.Contains("names.csv, line 4 and in names.csv, line 5", problem.Found.English);
    }

    [Fact]
    public void Where_all_of_one_name_were_kept_it_makes_no_difference_which_is_which()
    {
        var read = Lists.Read(
            Csv(4, 3, 1, 0), "list,line,was,decision,text,why\nnames.csv,2,Anna Berg,keep,,\nnames.csv,3,Anna Berg,keep,,\n");
        Assert.Equal([RowOutcome.Placed, RowOutcome.Placed], new[] { 4, 5 }.Select(l => Lists.Row(read, l).Outcome));
    }

    [Fact]
    public void Where_all_of_one_name_were_left_out_the_one_that_remains_is_left_out_too()
    {
        var read = Lists.Read(
            Csv(4, 3, 0), "list,line,was,decision,text,why\nnames.csv,6,Anna Berg,leave out,,\nnames.csv,7,Anna Berg,leave out,,\n");
        Assert.Equal(RowOutcome.LeftOut, Lists.Row(read, 4).Outcome);
    }

    [Fact]
    public void Where_two_decisions_differ_and_one_row_remains_it_is_held()
    {
        var read = Lists.Read(
            Csv(4, 3, 0), "list,line,was,decision,text,why\nnames.csv,6,Anna Berg,leave out,,\nnames.csv,7,Anna Berg,keep,,\n");
        Assert.Equal(RowOutcome.Held, Lists.Row(read, 4).Outcome);
        Assert.Contains(
            read.Problems, p => p.Severity == Severity.NeedsPerson && p.Found.English.Contains("so it is held", StringComparison.Ordinal));
    }

    [Fact]
    public void A_decision_follows_its_row_into_a_list_of_another_name()
    {
        var read = Lists.Read([("second.csv", Csv(4, 3))], "list,line,was,decision,text,why\nnames.csv,5,Bret Ost,leave out,,\n");
        Assert.Equal(RowOutcome.LeftOut, read.Value!.Rows.Single(r => r.Text == "Bret Ost").Outcome);
    }

    [Fact]
    public void The_fingerprint_tells_nothing_of_what_stands_beside_a_name()
    {
        Assert.All(Lists.Read(Csv(0, 1, 2)).Value!.Rows, r => Assert.Matches("^d[0-9a-f]{8}$", r.DetailsPrint));
        Assert.Equal("", Lists.Read("Name\nAnna\nBert\n").Value!.Rows[0].DetailsPrint);
    }
}

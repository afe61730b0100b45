using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>A decision belongs to what the row said when it was made: its name, and its answers to whether it may be shown.</summary>
public class DecisionTests
{
    private const string Head = "list,line,was,decision,text,why,details,show,alike\n";

    private static string Csv(string answer, string name = "Bo Marsh") => $"Name,Show my name?\nAda Reed,yes\n{name},{answer}\n";

    private static string Keep(string show = "Show my name? = empty", string decision = "keep", string text = "") =>
        Head + $"names.csv,3,Bo Marsh,{decision},{text},,,{show}\n";

    [Fact]
    public void A_row_that_was_kept_with_an_empty_answer_is_left_out_once_it_says_no()
    {
        Assert.Equal(RowOutcome.Placed, Lists.Row(Lists.Read(Csv(""), Keep()), 3).Outcome);
        var read = Lists.Read(Csv("No"), Keep());
        Assert.Equal((RowOutcome.LeftOut, "asked not to be shown"), (Lists.Row(read, 3).Outcome, Lists.Row(read, 3).Reason));
        var note = Assert.Single(read.Problems);
        Assert.Equal((Severity.Note, 2), (note.Severity, note.Where.Line));
        Assert.EndsWith("Show my name? = no", note.Mend.English);
    }

    [Theory]
    [InlineData("keep", "")]
    [InlineData("change", "Bo M.")]
    [InlineData("nonsense", "")]
    public void A_decision_of_version_0_1_yields_to_any_no(string decision, string text)
    {
        string corrections = $"list,line,was,decision,text,why\nnames.csv,3,Bo Marsh,{decision},{text},\n";
        Assert.Equal(RowOutcome.LeftOut, Lists.Row(Lists.Read(Csv("no"), corrections), 3).Outcome);
    }

    [Fact]
    public void A_decision_of_version_0_1_still_settles_an_empty_answer() =>
        Assert.Equal(
            RowOutcome.Placed, Lists.Row(Lists.Read(Csv(""), "list,line,was,decision,text,why\nnames.csv,3,Bo Marsh,keep,,\n"), 3).Outcome);

    [Theory]
    [InlineData("maybe", "“Show my name?” said empty when you decided, and now says “maybe”: decide again")]
    [InlineData("yes", "“Show my name?” said empty when you decided, and now says yes: decide again")]
    public void Another_answer_holds_the_row_again_with_both_readings(string answer, string reason)
    {
        foreach (string decision in new[] { "keep", "leave out" })
        {
            var row = Lists.Row(Lists.Read(Csv(answer), Keep(decision: decision)), 3);
            Assert.Equal((RowOutcome.Held, reason), (row.Outcome, row.Reason));
        }
    }

    [Fact]
    public void Another_name_holds_the_row_again_with_both_readings()
    {
        var row = Lists.Row(Lists.Read(Csv("", "Bo Marshall"), Keep()), 3);
        Assert.Equal(
            (RowOutcome.Held, "you decided about “Bo Marsh”, and the row now says “Bo Marshall”: decide again"), (row.Outcome, row.Reason));
    }

    [Fact]
    public void Another_name_on_another_line_is_still_known_by_what_stands_beside_it()
    {
        const string Before = "Name,Mail\nAda Reed,a@x.example\nBo Marsh,b@x.example\n";
        string details = Lists.Row(Lists.Read(Before), 3).DetailsPrint;
        var read = Lists.Read(
            "Name,Mail\nBo Marshall,b@x.example\nAda Reed,a@x.example\n", Head + $"names.csv,3,Bo Marsh,leave out,,,{details},none\n");
        Assert.Equal("2 held Bo Marshall\n3 placed Ada Reed", Lists.Table(read));
    }

    [Theory]
    [InlineData("yes", "Ja")]
    [InlineData("“maybe”", "Maybe")]
    [InlineData("empty", "  ")]
    public void The_same_answer_in_other_letters_is_the_same_answer(string then, string now) =>
        Assert.Equal(RowOutcome.Placed, Lists.Row(Lists.Read(Csv(now), Keep($"Show my name? = {then}")), 3).Outcome);

    [Fact]
    public void A_remark_is_recorded_by_its_fingerprint_and_noticed_when_it_changes()
    {
        var first = Lists.Row(Lists.Read(Csv("ask my mother qz7")), 3);
        Assert.Matches("^Show my name\\? = other d[0-9a-f]{8}$", first.Show);
        Assert.Equal(RowOutcome.Placed, Lists.Row(Lists.Read(Csv("ask my mother qz7"), Keep(first.Show)), 3).Outcome);
        var later = Lists.Read(Csv("ask my father qz7"), Keep(first.Show));
        Assert.Equal(RowOutcome.Held, Lists.Row(later, 3).Outcome);
        Assert.DoesNotContain("qz7", Lists.AllShown(later));
    }

    [Fact]
    public void A_column_that_was_not_there_is_a_change_where_it_does_not_plainly_show()
    {
        const string Before = "Name,Mail\nBo Marsh,a@x.example\nBo Marsh,b@x.example\n";
        var lines = CorrectionLines.ToAdd(Lists.Read(Before).Value!, Corrections.None);
        string decided = string.Join("\r\n", lines).Replace(",,,", ",keep,,", StringComparison.Ordinal);
        foreach (var (answer, outcome) in new[] { ("yes", RowOutcome.Placed), ("", RowOutcome.Held), ("no", RowOutcome.LeftOut) })
        {
            var read = Lists.Read($"Name,Mail,Public\nBo Quill,a@x.example,yes\nBo Marsh,b@x.example,{answer}\n", decided);
            Assert.Equal(outcome, Lists.Row(read, 3).Outcome);
        }
    }

    [Fact]
    public void Another_spelling_settles_the_answer_that_was_written_down_with_it()
    {
        string recorded = Keep(decision: "change", text: "Bo M.");
        Assert.Equal("2 placed Ada Reed\n3 placed Bo M.", Lists.Table(Lists.Read(Csv(""), recorded)));
        Assert.Equal(RowOutcome.Held, Lists.Row(Lists.Read(Csv(""), Keep("", "change", "Bo M.")), 3).Outcome);
    }

    [Fact]
    public void An_empty_decision_settles_nothing_and_one_keep_all_settles_all_that_ask_the_same()
    {
        string csv = "Name,Show my name?,Mail\n" + string.Concat(Enumerable.Range(0, 16).Select(i => $"Ada Reed{(char)('a' + i)},,m{i}\n"))
            + "Bo Marsh,perhaps,b\n";
        var first = Lists.Read(csv);
        var lines = CorrectionLines.ToAdd(first.Value!, Corrections.None);
        Assert.Equal(18, lines.Length);
        string[] fields = lines[1].Split(',');
        Assert.Equal(17, lines.Count(l => l.EndsWith("," + fields[^1], StringComparison.Ordinal)) + 1);
        string open = string.Join("\r\n", lines);
        Assert.All(Lists.Read(csv, open).Value!.Rows, r => Assert.Equal(RowOutcome.Held, r.Outcome));

        string all = open.Replace("Ada Reedc,,,", "Ada Reedc,keep all,,", StringComparison.Ordinal)
            .Replace("Ada Reedf,,,", "Ada Reedf,leave out,,", StringComparison.Ordinal);
        var rows = Lists.Read(csv, all).Value!.Rows;
        Assert.Equal(15, rows.Count(r => r.Outcome == RowOutcome.Placed));
        Assert.Equal("Ada Reedf", rows.Single(r => r.Outcome == RowOutcome.LeftOut).Text);
        Assert.Equal("Bo Marsh", rows.Single(r => r.Outcome == RowOutcome.Held).Text);

        // Whoever comes later, and whoever answers otherwise later, was not in the question.
        var later = Lists.Read(csv.Replace("Ada Reeda,,", "Ada Reeda,no,", StringComparison.Ordinal) + "Jo Farrow,,j\n", all).Value!.Rows;
        Assert.Equal(RowOutcome.LeftOut, later[0].Outcome);
        Assert.Equal(RowOutcome.Held, later[^1].Outcome);
    }

    [Fact]
    public void Two_lines_that_decide_for_all_and_differ_decide_for_none()
    {
        const string Rows =
            "names.csv,2,Ada Reed,keep all,,,,Public = empty,a1\nnames.csv,3,Bo Marsh,leave out all,,,,Public = empty,a1\nnames.csv,4,Jo Farrow,,,,,Public = empty,a1\n";
        var read = Lists.Read("Name,Public\nAda Reed,\nBo Marsh,\nJo Farrow,\n", Head + Rows);
        Assert.Equal("2 placed Ada Reed\n3 leftOut Bo Marsh\n4 held Jo Farrow", Lists.Table(read));
        Assert.Contains(read.Problems, p => p.Severity == Severity.NeedsPerson && p.Where.Line == 3);
    }

    [Fact]
    public void A_character_that_could_not_be_read_is_never_kept()
    {
        const string Broken = "Name\nM\uFFFDller\nZo\u009F Holm\n";
        var read = Lists.Read(Broken, Head + "names.csv,2,M\uFFFDller,keep,,,,none\nnames.csv,3,Zo\uFFFD Holm,keep,Zo\uFFFD Holm,,,none\n");
        Assert.All(read.Value!.Rows, r => Assert.Equal((RowOutcome.Held, HeldFor.Letters), (r.Outcome, r.HeldFor)));
        Assert.Contains("write under “text”", Lists.Row(read, 2).Reason.English);
        Assert.Equal(
            "2 placed Müller\n3 held Zo\uFFFD Holm",
            Lists.Table(Lists.Read(Broken, Head + "names.csv,2,M\uFFFDller,change,Müller,,,none\n")));
    }

    [Fact]
    public void A_row_that_is_decided_again_replaces_its_line_wherever_that_stood()
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", "Name,Show my name?\nBo Marsh,perhaps\nAda Reed,yes\nJo Farrow,\n");
        folder.With("corrections.csv", "list,line,was,decision,text,why,mine\nnames.csv,4,Bo Marsh,keep,,his cousin said so,x\n");
        var row = Lists.Row(Lists.Read(folder), 2);
        Assert.Equal((RowOutcome.Placed, 2), (row.Outcome, row.DecidedIn));
        var file = CorrectionsEditing.Apply(
            folder.FullPath,
            [new RowDecision(row.Row, row.Was, Decision.LeaveOut, "", "") { Show = row.Show, Replaces = row.DecidedIn }]).Value!;
        folder.With("corrections.csv", file.Bytes.ToArray());
        Assert.Equal(2, File.ReadAllLines(folder["corrections.csv"]).Length);
        Assert.Equal("2 leftOut Bo Marsh\n3 placed Ada Reed\n4 held Jo Farrow", Lists.Table(Lists.Read(folder)));
    }

    [Fact]
    public void A_no_of_a_second_row_is_not_outvoted_by_a_decision_that_did_not_know_it()
    {
        const string Now = "Name,Mail,Public\nBo Marsh,b@x.example,yes\nBo Marsh,b@x.example,no\n";
        foreach (string show in new[] { "", "Public = yes" })
        {
            var row = Lists.Row(Lists.Read(Now, Head + $"names.csv,2,Bo Marsh,keep,,,,{show}\n"), 2);
            Assert.Equal((RowOutcome.Held, "another row says the same and asks not to be shown: decide again"), (row.Outcome, row.Reason));
        }

        string known = Lists.Row(Lists.Read(Now), 2).Show;
        Assert.Equal("Public = yes; a second row of it = no", known);
        Assert.Equal(
            "2 placed Bo Marsh\n3 leftOut Bo Marsh", Lists.Table(Lists.Read(Now, Head + $"names.csv,2,Bo Marsh,keep,,,,{known}\n")));
    }

    /// <summary>The one it was made for is gone; whether this one is who asks not to be shown, nobody has said.</summary>
    [Theory]
    [InlineData("keep", "")]
    [InlineData("change", "Bo M.")]
    public void A_decision_about_a_namesake_says_nothing_of_a_row_whose_name_somebody_wants_hidden(string decision, string text)
    {
        const string Before = "Name,Mail,Public\nAda Reed,a@x.example,yes\nBo Marsh,b@x.example,yes\nBo Marsh,c@x.example,yes\n";
        var rows = Lists.Read(Before).Value!.Rows;
        string decided = Head + $"names.csv,3,Bo Marsh,{decision},{text},,{rows[1].DetailsPrint},Public = yes\n"
            + $"names.csv,4,Bo Marsh,keep,,,{rows[2].DetailsPrint},Public = yes\n";
        const string Later = "Name,Mail,Public\nBo Marsh,other@x.example,yes\nAda Reed,a@x.example,yes\nBo Marsh,c@x.example,no\n";
        Assert.Equal("2 held Bo Marsh\n3 placed Ada Reed\n4 leftOut Bo Marsh", Lists.Table(Lists.Read(Later, decided)));
    }

    /// <summary>The first may have been renamed, or be the one that stands on the second one's line with something else beside
    /// it.</summary>
    [Fact]
    public void A_row_that_another_decision_may_be_about_keeps_none_that_was_not_surely_made_for_it()
    {
        var rows = Lists.Read("Name,Mail\nBo Marsh,p@x.example\nBo Marsh,x@x.example\n").Value!.Rows;
        string decided = Head
            + $"names.csv,2,Bo Marsh,leave out,,,{rows[0].DetailsPrint},none\nnames.csv,3,Bo Marsh,keep,,,{rows[1].DetailsPrint},none\n";
        Assert.Equal(
            "2 held Bo Marshall\n3 held Bo Marsh",
            Lists.Table(Lists.Read("Name,Mail\nBo Marshall,p@x.example\nBo Marsh,y@x.example\n", decided)));
    }

    /// <summary>Left out by its own wish, whatever was written down with another name on its line.</summary>
    [Fact]
    public void What_was_recorded_with_another_name_does_not_hide_a_wish_from_the_namesakes()
    {
        const string Csv = "Name,Mail,Public\nBo Quill,a@x.example,yes\nBo Quill,b@x.example,no\n";
        Assert.Equal(
            "2 held Bo Quill\n3 leftOut Bo Quill", Lists.Table(Lists.Read(Csv, Head + "names.csv,3,Bo Marsh,keep,,,,Public = no\n")));
    }

    [Fact]
    public void Keep_all_in_a_line_without_a_mark_speaks_for_that_line_alone() =>
        Assert.Equal("2 placed Ada Reed\n3 held Bo Marsh", Lists.Table(Lists.Read(
            "Name,Public\nAda Reed,\nBo Marsh,\n",
            Head + "names.csv,2,Ada Reed,keep all,,,,Public = empty,\nnames.csv,3,Bo Marsh,,,,,Public = empty,\n")));

    [Fact]
    public void Keep_all_does_not_reach_those_who_ask_the_same_later_and_are_written_down_too()
    {
        const string Csv = "Name,Public\nAda Reed,\nBo Marsh,\n";
        const string Later = Csv + "Jo Farrow,\nWenna Tregear,\n";
        string decided = string.Concat(CorrectionLines.ToAdd(Lists.Read(Csv).Value!, Corrections.None).Select(l => l + "\r\n"))
            .Replace("Ada Reed,,,", "Ada Reed,keep all,,", StringComparison.Ordinal);
        using var folder = new TemporaryFolder();
        folder.With("corrections.csv", decided);
        var more = CorrectionLines.ToAdd(Lists.Read(Later, decided).Value!, Corrections.Read(folder.FullPath).Value!);
        Assert.Equal(2, more.Length);
        Assert.Equal(
            "2 placed Ada Reed\n3 placed Bo Marsh\n4 held Jo Farrow\n5 held Wenna Tregear",
            Lists.Table(Lists.Read(Later, decided + string.Join("\r\n", more))));
    }
}

using System.Text;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

public class JobEditingTests
{
    private const string Job = """{ "format": 1, "lists": ["a.csv"], "hem": { "length": "3.66 m", "turn": 0 } }""";

    [Fact]
    public void A_key_is_set_and_taken_out_and_the_rest_stays()
    {
        var set = JobEditing.Apply(Encoding.UTF8.GetBytes(Job), [JobEdit.Text("strip.cutWidth", "2 in"), JobEdit.Remove("hem.turn")])!;

        Assert.Equal("\"2 in\"", JobEditing.ValueOf(set, "strip.cutWidth"));
        Assert.Null(JobEditing.ValueOf(set, "hem.turn"));
        Assert.Equal("\"3.66 m\"", JobEditing.ValueOf(set, "hem.length"));
        var back = JobEditing.Apply(set, [JobEdit.Remove("strip.cutWidth")])!;
        Assert.DoesNotContain("strip", Encoding.UTF8.GetString(back), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Anna & Bo's walk <3 + more")]
    [InlineData("灯籠行列 “Фонари” नदी")]
    public void What_is_not_touched_keeps_its_words(string title)
    {
        string before = $"{{\n  \"format\": 1,\n  \"title\": \"{title}\",\n  \"hem\": {{\n    \"length\": \"12 ft 3\\\"\"\n  }}\n}}\n";
        string after =
            System.Text.Encoding.UTF8.GetString(JobEditing.Apply(
                System.Text.Encoding.UTF8.GetBytes(before), [JobEdit.Text("fabric", "linen")])!);
        Assert.Equal(before.Replace("\n  }\n}\n", "\n  },\n  \"fabric\": \"linen\"\n}\n", StringComparison.Ordinal), after);
    }

    [Fact]
    public void What_is_no_JSON_is_not_touched() => Assert.Null(JobEditing.Apply("{ \"lists\": "u8, [JobEdit.Text("title", "x")]));

    [Fact]
    public void A_save_over_somebody_elses_change_is_refused()
    {
        using var folder = new TemporaryFolder().With("job.json", Job);
        var known = JobStore.Read(folder.FullPath, "job.json");
        File.WriteAllText(folder["job.json"], "{}");

        var saved = JobStore.Save(folder.FullPath, "job.json", KeptFile.Of("{ }"u8), known);

        Assert.Null(saved.Value);
        Assert.Equal("{}", File.ReadAllText(folder["job.json"]));
    }

    [Fact]
    public void A_decision_is_read_back_beside_those_that_were_there()
    {
        using var folder = new TemporaryFolder()
            .With("corrections.csv",
                "list,line,was,decision,text,why\r\nb.csv,4,Ngozi Farrow,keep,,she said so\r\nb.csv,5,Pia,perhaps,,\r\n");

        var made = CorrectionsEditing.Apply(
            folder.FullPath, [new RowDecision(new RowRef("a.csv", 2), "=Ottilie", Decision.Change, "Ottilie, Marsh", "")]);
        folder.With("corrections.csv", [.. made.Value!.Bytes]);

        var read = Corrections.Read(folder.FullPath).Value!;
        Assert.Equal(
            [(4, Decision.Keep, ""), (5, Decision.Unclear, ""), (2, Decision.Change, "Ottilie, Marsh")],
            read.Lines.Select(l => (l.Row.Line, l.Decision, l.Text)));
        Assert.Equal("=Ottilie", read.Lines[2].Was);
    }

    [Fact]
    public void Columns_and_lines_of_the_makers_own_stay_when_a_decision_is_written()
    {
        using var folder = new TemporaryFolder().With(
            "corrections.csv",
            "list;asked;line;was;decision;text;why\r\na.csv;by letter;2;Ottilie;keep;;\r\n;a remark;;;;;\r\na.csv;at the well;3;Pia;perhaps;;her wish\r\na.csv;'=2+2;4;Bram;leave out;;\r\n");

        var made = CorrectionsEditing.Apply(folder.FullPath, [Change(2, "Ottilie", "Ottilia"), Change(9, "Ngozi", "Ngosi")]);

        Assert.Equal(
            "list;asked;line;was;decision;text;why;details;show;alike\r\na.csv;by letter;2;Ottilie;change;Ottilia;asked again;;;\r\n;a remark;;;;;\r\na.csv;at the well;3;Pia;perhaps;;her wish\r\n"
            + "a.csv;'=2+2;4;Bram;leave out;;\r\na.csv;;9;Ngozi;change;Ngosi;asked again;;;\r\n",
            System.Text.Encoding.UTF8.GetString([.. made.Value!.Bytes]));

        static RowDecision Change(int line, string was, string text) =>
            new(new RowRef("a.csv", line), was, Decision.Change, text, "asked again");
    }

    [Fact]
    public void A_row_that_two_lines_speak_of_is_decided_once()
    {
        using var folder = new TemporaryFolder().With(
            "corrections.csv", "list,line,was,decision,text,why,details\r\na.csv,2,Pia,keep,,,\r\na.csv,2,Pia,leave out,,,\r\n");

        var made = CorrectionsEditing.Apply(folder.FullPath, [new RowDecision(new RowRef("a.csv", 2), "Pia", Decision.LeaveOut, "", "")]);

        Assert.Equal(
            "list,line,was,decision,text,why,details,show,alike\r\na.csv,2,Pia,leave out,,,,,\r\n",
            System.Text.Encoding.UTF8.GetString([.. made.Value!.Bytes]));
    }
}

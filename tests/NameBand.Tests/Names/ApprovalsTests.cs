using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>Asking the owners of the names, and what their answers do.</summary>
public class ApprovalsTests
{
    private const string Header = "list,line,name,state,date,text,details\n";
    private const string List = "Name\nAnna Berg\nBret Ost\nCleo Marsh\nDara Quill\n";

    private static ApprovalReport Read(string approvals, string list = List, string? corrections = null)
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", list);
        folder.With("approvals.csv", approvals);
        var names = Lists.Read(folder, corrections).Value!;
        return Approvals.Of(folder.FullPath, names, Corrections.Read(folder.FullPath).Value!)!;
    }

    private static string Table(ApprovalReport report) =>
        string.Join("; ", report.Names.Select(n => $"{n.Row.Text}: {ApprovalsFile.Word(n.State)}"));

    [Fact]
    public void Without_the_file_nobody_is_asked()
    {
        using var folder = new TemporaryFolder();
        Assert.Null(Approvals.Of(folder.FullPath, Lists.Read(List).Value!, Corrections.None));
    }

    [Fact]
    public void An_empty_file_offers_a_line_for_every_name()
    {
        var report = Read("");
        Assert.Equal(["list,line,name,state,date,text,details", "names.csv,2,Anna Berg,,,,", "names.csv,3,Bret Ost,,,,",
            "names.csv,4,Cleo Marsh,,,,", "names.csv,5,Dara Quill,,,,"], report.LinesToAdd.ToArray());
        Assert.Equal(4, report.In(ApprovalState.NotAsked).Count());
    }

    [Fact]
    public void States_are_read_and_who_is_missing_is_known()
    {
        var report = Read(Header
            + "names.csv,2,Anna Berg,agreed,2026-03-02,,\nnames.csv,3,Bret Ost,asked,2026-03-01,,\nnames.csv,4,Cleo Marsh,Change wished,,Cleo M.,\n");
        Assert.Equal("Anna Berg: agreed; Bret Ost: asked; Cleo Marsh: change wished; Dara Quill: ", Table(report));
        Assert.Equal(["names.csv,5,Dara Quill,,,,"], report.LinesToAdd.ToArray());
        Assert.Equal(["names.csv,4,Cleo Marsh,change,Cleo M.,wished,,none,"], report.Corrections.ToArray());
    }

    [Fact]
    public void A_wish_that_corrections_fulfil_counts_as_agreed_and_is_not_offered_again()
    {
        var report = Read(
            Header + "names.csv,4,Cleo Marsh,change wished,,Cleo M.,\n",
            corrections: "list,line,was,decision,text,why\nnames.csv,4,Cleo Marsh,change,Cleo M.,\n");
        Assert.Contains("Cleo M.: agreed", Table(report), StringComparison.Ordinal);
        Assert.Empty(report.Corrections);
    }

    [Fact]
    public void An_answer_to_other_words_than_will_be_sewn_is_no_answer()
    {
        var report = Read(
            Header + "names.csv,4,Cleo Marsh,agreed,,,\n",
            corrections: "list,line,was,decision,text,why\nnames.csv,4,Cleo Marsh,change,Cleo Marshall,\n");
        var name = report.Names.Single(n => n.Row.Row.Line == 4);
        Assert.Equal((ApprovalState.NotAsked, true), (name.State, name.IsOutdated));
    }

    [Fact]
    public void Answers_follow_a_list_sorted_anew()
    {
        var report = Read(
            Header + "names.csv,2,Anna Berg,agreed,,,\nnames.csv,5,Dara Quill,asked,,,\n",
            "Name\nDara Quill\nCleo Marsh\nBret Ost\nAnna Berg\n");
        Assert.Equal("Dara Quill: asked; Cleo Marsh: ; Bret Ost: ; Anna Berg: agreed", Table(report));
        Assert.DoesNotContain(report.Problems, p => p.Severity != Severity.Note);
    }

    [Fact]
    public void An_answer_that_may_be_either_namesakes_is_nobodys_and_both_are_named()
    {
        var report = Read(
            Header + "names.csv,9,Anna Berg,agreed,,,\n", "Name,Mail\nBret Ost,a\nAnna Berg,b\nAnna Berg,c\n",
            "list,line,was,decision,text,why\nnames.csv,4,Anna Berg,keep,,\n");
        Assert.DoesNotContain(report.Names, n => n.State == ApprovalState.Agreed);
        Assert.Contains("names.csv, line 3 and in names.csv, line 4", Assert.Single(report.Problems).Found.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("names.csv,2,Anna Berg,yes please,,,", "is not a state")]
    [InlineData("names.csv,-2,Anna Berg,agreed,,,", "not a whole number")]
    [InlineData("names.csv,2e9,Anna Berg,agreed,,,", "not a whole number")]
    [InlineData("names.csv,4,Cleo Marsh,change wished,,,", "does not say which")]
    [InlineData("other.csv,77,Nobody Here,agreed,,,", "in no list any longer")]
    public void A_faulty_line_is_told_and_the_others_count(string line, string found)
    {
        var report = Read(Header + line + "\nnames.csv,3,Bret Ost,agreed,,,\n");
        Assert.Contains(found, Assert.Single(report.Problems).Found.English, StringComparison.Ordinal);
        Assert.Equal("Bret Ost", Assert.Single(report.In(ApprovalState.Agreed)).Row.Text);
    }

    [Theory]
    [InlineData("name;state\nAnna;agreed\n")]
    [InlineData("\0\0\0\0")]
    [InlineData("list,line,name,state\n\"names.csv,2,Anna")]
    [InlineData("\n\n\n")]
    public void A_spoilt_file_stops_nothing(string file)
    {
        Assert.DoesNotContain(Read(file).Problems, p => p.Severity == Severity.CannotUse);
    }

    [Fact]
    public void A_formula_in_a_wish_comes_out_as_text()
    {
        var report = Read(Header + "names.csv,4,Cleo Marsh,change wished,=1+1,=SUM(A1),\n");
        Assert.Contains("'=SUM(A1)", Assert.Single(report.Corrections), StringComparison.Ordinal);
    }

    [Fact]
    public void Names_not_agreed_to_can_be_planned_last()
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", List);
        folder.With("approvals.csv", Header + "names.csv,3,Bret Ost,agreed,,,\nnames.csv,5,Dara Quill,agreed,,,\n");
        folder.With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "900 mm" }, "lettering": { "least": "5 mm", "agreedFirst": true } }""");
        var plan = Bander.Make(folder.FullPath).Plan!;
        Assert.Equal(
            ["Bret Ost", "Dara Quill", "Anna Berg", "Cleo Marsh"], plan.Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Text));
    }

    [Theory]
    [InlineData("bestFit", true)]
    [InlineData("alphabetical", false)]
    public void That_the_fewest_hoopings_come_before_agreement_is_told(string order, bool isTold)
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", List);
        folder.With("approvals.csv", Header + "names.csv,3,Bret Ost,agreed,,,\n");
        folder.With(
            "job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "900 mm" }, "lettering": { "least": "5 mm", "agreedFirst": true, "order": "{{order}}" } }""");
        var told = Bander.CheckNames(folder.FullPath).Problems.Where(p => p.Where.Key == "lettering.agreedFirst").ToList();
        Assert.Equal(isTold, told.Count == 1);
        Assert.All(told, p => Assert.Equal(NameBand.Common.Severity.Note, p.Severity));
    }
}

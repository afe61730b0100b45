using System.Text.Json;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary><c>names JOB --settle</c> writes the questions into corrections.csv; she fills in the decisions.</summary>
public sealed class SettleTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private void Job(string csv, string more = "") => _folder
        .With("job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3 m", "turn": 0 }{{more}} }""")
        .With("names.csv", csv);

    private string[] Corrections() => File.ReadAllLines(_folder["corrections.csv"]);

    [Fact]
    public void Sixteen_alike_questions_are_written_and_answered_once()
    {
        Job("Name,Show my name?\n" + string.Concat("abcdefghijklmnop".Select(c => $"Ada Reed{c},\n")));
        var run = CliRun.Of("names", _folder.FullPath, "--settle");
        Assert.Equal(1, run.Status);
        Assert.Contains("16 questions written into", run.OutOnOneLine);
        Assert.Contains("“keep all” or “leave out all” in one of them is enough", run.OutOnOneLine);
        Assert.Equal(17, Corrections().Length);
        Assert.Equal("list,line,was,decision,text,why,details,show,alike", Corrections()[0]);
        Assert.All(
            Corrections()[1..], l => Assert.Matches("^names.csv,[0-9]+,Ada Reed[a-p],,,.*,Show my name\\? = empty,a[0-9a-f]{8}$", l));

        Assert.Contains("stand in", CliRun.Of("names", _folder.FullPath, "--settle").OutOnOneLine);
        Assert.Equal(17, Corrections().Length);

        _folder.With(
            "corrections.csv", string.Join("\n", Corrections()).Replace("Ada Reedg,,", "Ada Reedg,keep all,", StringComparison.Ordinal));
        var settled = CliRun.Of("names", _folder.FullPath);
        Assert.Equal(0, settled.Status);
        Assert.Contains("16 names to sew", settled.Out);
        _folder.With("names.csv", File.ReadAllText(_folder["names.csv"]).Replace("Ada Reedb,", "Ada Reedb,no", StringComparison.Ordinal));
        Assert.Contains("15 names to sew and 1 left out", CliRun.Of("names", _folder.FullPath).OutOnOneLine);
    }

    [Fact]
    public void A_sign_that_cannot_be_sewn_and_an_empty_answer_are_one_question_with_one_answer()
    {
        Job("Name,Show my name?\nAda 🌟,\nBo Marsh,yes\n");
        Assert.Equal(1, CliRun.Of("names", _folder.FullPath, "--settle").Status);
        string line = Corrections()[1];
        Assert.Contains("is empty; and the picture sign 🌟", line);
        _folder.With(
            "corrections.csv", string.Join("\n", Corrections()).Replace("Ada 🌟,,,", "Ada 🌟,change,Ada,", StringComparison.Ordinal));
        var run = CliRun.Of("names", _folder.FullPath);
        Assert.Equal(0, run.Status);
        Assert.Contains("2 names to sew", run.Out);
    }

    [Fact]
    public void Keeping_never_drops_a_sign_that_cannot_be_sewn()
    {
        Job("Name,Show my name?\nAda 🌟,\nM\uFFFDller,yes\nBo Marsh,yes\n");
        CliRun.Of("names", _folder.FullPath, "--settle");
        _folder.With("corrections.csv", string.Join("\n", Corrections()).Replace(",,,", ",keep,,", StringComparison.Ordinal));
        var run = CliRun.Of("make", _folder.FullPath);
        Assert.Equal(1, run.Status);
        Assert.Contains("write under “text” in corrections.csv what is to be sewn", run.OutOnOneLine);
        var plan = JsonDocument.Parse(File.ReadAllBytes(_folder["out/plan.json"])).RootElement;
        Assert.Equal(
            ["held", "held", "placed"], plan.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("outcome").GetString()));
    }

    [Fact]
    public void A_column_is_asked_about_once_with_lines_to_paste()
    {
        Job("Name,Zibble\nAda Reed,yes\nBo Marsh,no\nJo Farrow,no\n");
        var run = CliRun.Of("names", _folder.FullPath);
        Assert.Equal(1, run.Status);
        Assert.Single(run.Out.Split("names.csv, line").Skip(1));
        Assert.Contains("\"columns\": { \"show\": [\"Zibble\"] }", run.OutOnOneLine);
        Job("Name,Zibble\nAda Reed,yes\nBo Marsh,no\nJo Farrow,no\n", ", \"columns\": { \"show\": [\"Zibble\"] }");
        Assert.Equal(0, CliRun.Of("names", _folder.FullPath).Status);
        Assert.Contains("1 name to sew and 2 left out", CliRun.Of("names", _folder.FullPath).OutOnOneLine);
    }

    [Fact]
    public void Nothing_is_made_while_all_rows_wait_and_that_is_no_fault()
    {
        Job("Name,Zibble\nAda Reed,yes\nBo Marsh,no\n");
        var run = CliRun.Of("make", _folder.FullPath);
        Assert.Equal(1, run.Status);
        Assert.Contains("“Zibble” may say whether a name may be shown", run.OutOnOneLine);
    }

    [Fact]
    public void The_json_says_how_many_were_written()
    {
        Job("Name,Show my name?\nAda Reed,\nBo Marsh,yes\n");
        var json = JsonDocument.Parse(CliRun.Of("names", _folder.FullPath, "--settle", "--json").Out).RootElement;
        Assert.Equal(1, json.GetProperty("written").GetInt32());
        Assert.Equal(0, json.GetProperty("linesToAdd").GetArrayLength());
    }

    [Fact]
    public void The_help_tells_of_it() => Assert.Contains("--settle", CliRun.Of("names", "--help").Out);
}

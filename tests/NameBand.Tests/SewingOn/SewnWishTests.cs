using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Whose name is sewn already and who then asks not to be shown: that is always said, with status 1.</summary>
public class SewnWishTests
{
    private const string Head = "list,line,was,decision,text,why,details,show\n";

    private static MakeReport Make(SewnJob job, string csv, string corrections = "")
    {
        File.WriteAllText(job["names.csv"], csv);
        File.WriteAllText(job["corrections.csv"], corrections);
        return Bander.Make(job.Folder);
    }

    /// <summary>A job whose first hooping is sewn.</summary>
    private static SewnJob Sewn(string csv, string corrections = "")
    {
        var job = new SewnJob();
        Assert.Equal(ExitStatus.AllPlaced, Make(job, csv, corrections).Status);
        Assert.NotNull(job.Say(1).Said);
        return job;
    }

    [Theory]
    [InlineData("list,line,was,decision,text,why\nnames.csv,2,Bo Reed,keep,,\n")]
    [InlineData(Head + "names.csv,2,Bo Reed,keep,,,,Show my name? = empty\n")]
    [InlineData(Head + "names.csv,2,Bo Reed,change,Bo R. Reed,,,Show my name? = empty\n")]
    public void A_later_no_is_said_when_the_name_is_sewn_and_no_decision_silences_it(string corrections)
    {
        using var job = Sewn("Name,Show my name?\nBo Reed,\nIlse Varga,yes\n", corrections);
        foreach (string later in new[] { "Name,Show my name?\nBo Reed,No\nIlse Varga,yes\n",
            "Name,Show my name?\nIlse Varga,yes\nBo Reed,No\n" })
        {
            var report = Make(job, later, corrections);
            Assert.Equal(ExitStatus.NeedsPerson, report.Status);
            Assert.Equal(RowOutcome.LeftOut, report.Names!.Rows.Single(r => r.Text == "Bo Reed").Outcome);
            var said = Assert.Single(report.Problems, p => p.Severity == Severity.NeedsPerson);
            Assert.Equal("This row asks not to be shown, and its name is already sewn.", said.Found);
            Assert.Equal(["Ilse Varga"], report.Names.Names.Select(n => n.Text));
        }
    }

    [Fact]
    public void A_later_doubt_about_a_sewn_name_is_said_and_can_be_settled()
    {
        const string Kept = Head + "names.csv,2,Bo Reed,keep,,,,Show my name? = empty\n";
        const string Later = "Name,Show my name?\nBo Reed,perhaps\nIlse Varga,yes\n";
        using var job = Sewn("Name,Show my name?\nBo Reed,\nIlse Varga,yes\n", Kept);
        var report = Make(job, Later, Kept);
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        var said = Assert.Single(report.Problems, p => p.Severity == Severity.NeedsPerson);
        Assert.Contains("“Show my name?” said empty when you decided, and now says “perhaps”", said.Found.English);

        Assert.Equal(1, Bander.SettleNames(job.Folder).Written);
        string[] lines = File.ReadAllLines(job["corrections.csv"]);
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("names.csv,2,Bo Reed,,,", lines[1], StringComparison.Ordinal);
        Assert.Contains("(before: keep)", lines[1]);
        Assert.Equal(
            ExitStatus.AllPlaced,
            Make(job, Later, string.Join("\n", lines).Replace("Bo Reed,,,", "Bo Reed,keep,,", StringComparison.Ordinal)).Status);
    }

    [Fact]
    public void A_sewn_name_that_is_left_out_by_decision_is_said_in_its_own_words()
    {
        using var job = Sewn("Name,Show my name?\nBo Reed,yes\nIlse Varga,yes\n");
        var report = Make(
            job, "Name,Show my name?\nBo Reed,yes\nIlse Varga,yes\n", Head + "names.csv,2,Bo Reed,leave out,,,,Show my name? = yes\n");
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Equal(
            "This row is left out, and its name is already sewn; left out, as corrections.csv says.",
            Assert.Single(report.Problems, p => p.Severity == Severity.NeedsPerson).Found);
    }
}

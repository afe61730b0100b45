using NameBand.Job;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Of rows that say the same only one is sewn, and it stays so when the list moves.</summary>
public class TwinsTests
{
    [Fact]
    public void A_sewn_name_is_not_planned_again_when_its_merged_twin_comes_to_stand_on_its_line()
    {
        using var job = new SewnJob("Bo Reed", "Ilse Varga", "Ilse Varga", "Jo Marsh");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        Assert.Equal(["Bo Reed", "Ilse Varga", "Jo Marsh"], job.PlacedTexts());
        job.Say(2);
        job.Names.RemoveAt(0);
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        Assert.Single(job.PlacedTexts(), "Ilse Varga");
        Assert.Single(job.PlacedTexts(), "Jo Marsh");
    }

    [Fact]
    public void Whichever_hooping_is_sewn_no_row_is_sewn_twice()
    {
        for (int sewn = 1; sewn <= 2; sewn++)
        {
            using var job = new SewnJob("Bo Reed", "Ilse Varga", "Ilse Varga", "Jo Marsh", "Tobiah Quill", "Tobiah Quill", "Nia Yeo");
            job.Make();
            job.Say(sewn);
            job.Names.RemoveAt(0);
            job.Make();
            Assert.Equal(["Ilse Varga", "Jo Marsh", "Nia Yeo", "Tobiah Quill"], job.PlacedTexts().Order(StringComparer.Ordinal));
        }
    }

    /// <summary>The job may be named by its job.json; what is sewn is then known as well.</summary>
    [Fact]
    public void A_job_named_by_its_file_is_the_same_job()
    {
        using var job = new SewnJob("Bo Reed", "Ilse Varga", "Jo Marsh");
        job.Settings("", lettering: ", \"height\": \"8 mm\"");
        job.Make();
        string file = job["job.json"];
        Assert.NotNull(Bander.Sewn(file, null, new SewingWord(1, SewingDeed.Sewn, When: "2026-11-25T20:00"), () => { }).Said);
        Assert.Equal(Bander.Hours(job.Folder).Left!.Hoopings, Bander.Hours(file).Left!.Hoopings);
        byte[] path = job.Path(1);
        job.Names.Add("Nia Yeo");
        File.AppendAllText(job["names.csv"], "Nia Yeo\r\n");
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(file).Status);
        Assert.Equal(path, job.Path(1));
        Assert.Equal(path, job.Path(1, "sewn"));
        Assert.Contains("Nia Yeo", job.PlacedTexts());
    }
}

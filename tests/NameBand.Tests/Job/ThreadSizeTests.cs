using NameBand.Cloth;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

public class ThreadSizeTests
{
    [Theory]
    [InlineData("40 wt", 26.67)]
    [InlineData("60wt", 16.67)]
    [InlineData("27 tex", 27)]
    [InlineData("tex 27", 27)]
    [InlineData("ticket 120", 25)]
    [InlineData("Tkt. 120", 25)]
    [InlineData("240 den", 26.67)]
    [InlineData("240 denier", 26.67)]
    [InlineData("Nm 40", 25)]
    public void Each_way_of_stating_a_thread_is_read(string text, double tex) => Assert.Equal(tex, ThreadSize.Parse(text)!.Tex, 2);

    [Theory]
    [InlineData("")]
    [InlineData("40")]
    [InlineData("thick")]
    [InlineData("0 wt")]
    [InlineData("-3 tex")]
    [InlineData("1e9 tex")]
    [InlineData("40 wt 40 wt")]
    [InlineData("٤٠ wt")]
    public void What_is_no_thread_is_refused(string text) => Assert.Null(ThreadSize.Parse(text));

    [Fact]
    public void The_usual_thread_leaves_a_cloth_as_the_table_has_it()
    {
        foreach (var cloth in FabricTable.All)
        {
            Assert.Equal(cloth, JobCloth.With(cloth, new StitchSettings(Thread: ThreadSize.Parse("40 wt"))));
            Assert.Equal(0.40, cloth.Thread.DiameterMm, 12);
        }
    }

    /// <summary>A thread of a quarter of the tex has a quarter of the section and half the width.</summary>
    [Fact]
    public void A_quarter_of_the_tex_lies_half_as_wide_and_twice_as_close()
    {
        var cotton = FabricTable.Find("quilting cotton")!;
        var fine = JobCloth.With(cotton, new StitchSettings(Thread: ThreadSize.Parse("60 den")));

        Assert.Equal(0.20, fine.Thread.DiameterMm, 9);
        Assert.Equal(0.20, fine.SpacingMm, 9);
        Assert.StartsWith("65/9", fine.Needle.English, StringComparison.Ordinal);
        Assert.Equal(12 * Math.Pow(0.75 / 0.65, 2), fine.MostPenetrationsPerMm2, 9);
    }

    [Fact]
    public void What_the_swatch_showed_goes_before_the_table()
    {
        var cloth = JobCloth.With(FabricTable.Find("linen")!, new StitchSettings(0.37, 0.31, ThreadSize.Parse("60 wt")));

        Assert.Equal(0.37, cloth.SpacingMm);
        Assert.Equal(0.31, cloth.PullCompensationMm);
    }

    [Theory]
    [InlineData("\"thread\": \"9 tons\"", "thread")]
    [InlineData("\"thread\": \"3 wt\"", "thread")]
    [InlineData("\"thread\": 40", "thread")]
    [InlineData("\"stitches\": { \"spacing\": \"0.01 mm\" }", "stitches.spacing")]
    [InlineData("\"stitches\": { \"pullCompensation\": \"-1 mm\" }", "stitches.pullCompensation")]
    public void A_wrong_setting_is_refused_by_its_key(string line, string key)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["names.csv"], "name\nMaren Aldous\n");
        File.WriteAllText(
            folder["job.json"], "{ \"format\": 1, \"lists\": [\"names.csv\"], \"hem\": { \"length\": \"2 m\" }, " + line + " }");

        var read = JobReader.Read(folder.FullPath);

        Assert.False(read.IsUsable);
        Assert.Equal(key, Assert.Single(read.Problems, p => p.Severity == NameBand.Common.Severity.CannotUse).Where.Key);
    }
}

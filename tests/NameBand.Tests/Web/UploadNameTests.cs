using CsCheck;
using NameBand.Tests.CommonRoom;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.WebRoom;

public class UploadNameTests
{
    [Theory]
    [InlineData("names.CSV", "names.csv")]
    [InlineData("../../etc/names.csv", "names.csv")]
    [InlineData("C:\\lists\\names.csv", "names.csv")]
    [InlineData("...csv", "list.csv")]
    [InlineData("a:b|c?.csv", "abc.csv")]
    [InlineData("corrections.csv", "list corrections.csv")]
    [InlineData("Corrections.csv", "list Corrections.csv")]
    [InlineData("SEWING-LOG.csv", "list SEWING-LOG.csv")]
    [InlineData("approvals.csv", "list approvals.csv")]
    [InlineData("drift.csv", "list drift.csv")]
    [InlineData("Con.csv", "list Con.csv")]
    public void A_list_keeps_its_name_but_never_that_of_a_file_of_the_job(string sent, string kept) =>
        Assert.Equal(kept, Uploads.SafeName(sent));

    /// <summary>Put together at random of what some system keeps for itself, cannot write, or takes for something else.</summary>
    [Fact]
    public void Whatever_a_list_was_called_it_gets_a_name_that_every_system_bears()
    {
        string[] pieces =
        [
            "con", "NUL", "aux", "COM1", "LPT¹", "com", "1", "¹", ".", "..", " ", "  ",
            "/", "\\", ":", "*", "?", "|", "<", ">", "\"", "\0", "\n",
            "~", "-", "_", "a", "names", "Corrections", "sewing-log", "ü",
            "u\u0308", "名", "\u202E", "\u200B", "\uD83D\uDCA1", "\uD83D", "\uFEFF",
            "\u00A0", "\u3000", new string('x', 79), new string('名', 90),
        ];
        string[] endings = [".csv", ".CSV", ".xlsx", ".tsv", " .txt"];
        Gen.Select(Gen.Int[0, pieces.Length - 1].Array[0, 6], Gen.Int[0, endings.Length - 1]).Sample(
            (parts, ending) =>
            {
                string kept = Uploads.SafeName(string.Concat(parts.Select(p => pieces[p])) + endings[ending]);
                Assert.True(NamesEverywhere.Is(kept), kept);
                Assert.False(OwnFiles.Has(kept), kept);
                Assert.True(NamesEverywhere.Is($"{Path.GetFileNameWithoutExtension(kept)} 12{Path.GetExtension(kept)}"), kept);
            },
            seed: "0000AnyNames", iter: 5000);
    }

    /// <summary>Where case makes no difference, the second would be written over the first.</summary>
    [Fact]
    public void Two_lists_that_differ_only_in_the_case_of_their_names_get_two_names()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(("names.csv", ""), Uploads.Keep(folder.FullPath, "names.csv", "name\nAna\n"u8.ToArray()));
        Assert.Equal(("Names 2.csv", ""), Uploads.Keep(folder.FullPath, "Names.csv", "name\nBo\n"u8.ToArray()));
        string[] files = Directory.GetFiles(folder.FullPath, "*.csv");
        Assert.Equal(2, files.Select(f => Path.GetFileName(f).ToUpperInvariant()).Distinct().Count());
    }
}

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
}

using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Web;

public class GroupDraftTests
{
    [Theory]
    [InlineData("""[{"name":"patrons","from":100,"heightFactor":1.25,"place":"ownRound","heading":"Patrons"},{"name":"others","rest":true}]""")]
    [InlineData("""[{"name":"gold","values":["Gold","old gold"],"face":"Vollkorn Bold"},{"name":"few","from":2.5,"below":10}]""")]
    public void What_stands_in_the_job_comes_back_as_it_was(string json) => Assert.Equal(json, GroupDraft.Write(GroupDraft.Read(json)));

    [Fact]
    public void No_groups_leave_no_key_behind() => Assert.Null(GroupDraft.Write([]));

    [Fact]
    public void What_is_no_number_is_written_as_it_was_typed_for_the_reader_to_name()
    {
        var draft = new GroupDraft { Name = "patrons", From = " 100 ", HeightFactor = "large" };

        Assert.Equal("""[{"name":"patrons","from":100,"heightFactor":"large"}]""", GroupDraft.Write([draft]));
    }
}

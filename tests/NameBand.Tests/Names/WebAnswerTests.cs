using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>To be shown on the web is a question of its own, told apart from the wish not to be sewn.</summary>
public class WebAnswerTests
{
    [Theory]
    [InlineData("Show on the web?", "yes", WebAnswer.Yes)]
    [InlineData("Show on the web?", "No", WebAnswer.No)]
    [InlineData("Show on the web?", "", WebAnswer.None)]
    [InlineData("Show on the web?", "ask me", WebAnswer.Unclear)]
    [InlineData("Show on the web?", "private", WebAnswer.No)]
    [InlineData("May we show your name online?", "no", WebAnswer.No)]
    [InlineData("OK for the website", "x", WebAnswer.Yes)]
    [InlineData("Website", "no", WebAnswer.No)]
    [InlineData("Webseite", "ja", WebAnswer.Yes)]
    [InlineData("Not on the website", "yes", WebAnswer.No)]
    [InlineData("Do not show my name on the web", "x", WebAnswer.No)]
    [InlineData("Not on the web", "no", WebAnswer.Yes)]
    public void A_question_about_the_web_is_of_the_web_alone(string header, string answer, WebAnswer expected)
    {
        var read = Lists.Read($"Name,{header}\nAda Reed,{answer}\nBo Marsh,\n");
        Assert.Equal("2 placed Ada Reed\n3 placed Bo Marsh", Lists.Table(read));
        Assert.Equal(expected, Lists.Row(read, 2).Web);
        Assert.Equal(WebAnswer.None, Lists.Row(read, 3).Web);
        Assert.Empty(read.Problems);
    }

    /// <summary>One that asks of the garment too, or of more than is known, is no leave for the web, and a no there still keeps
    /// the name off the cloth.</summary>
    [Theory]
    [InlineData("May we print it on the banner and the website?", "leftOut")]
    [InlineData("May we show it on the web and on the hem?", "leftOut")]
    [InlineData("Can we show your name, also online?", "held")]
    [InlineData("Publish my name", "held")]
    [InlineData("May we publish it?", "leftOut")]
    public void A_question_about_more_than_the_web_is_none_about_the_web(string header, string outcome)
    {
        var read = Lists.Read($"Name,\"{header}\"\nAda Reed,no\n");
        Assert.Equal($"2 {outcome} Ada Reed", Lists.Table(read));
        Assert.Equal(WebAnswer.None, Lists.Row(read, 2).Web);
        Assert.Equal(WebAnswer.None, Lists.Row(Lists.Read($"Name,\"{header}\"\nAda Reed,yes\n"), 2).Web);
    }

    [Fact]
    public void A_column_of_addresses_is_no_answer_and_job_json_can_name_one()
    {
        const string List = "Name,Website,Zibble\nAda Reed,https://a.example,yes\nBo Marsh,https://b.example,no\n";
        Assert.Equal(WebAnswer.None, Lists.Row(Lists.Read(List), 2).Web);
        var told = Lists.Read(List, columns: new() { Web = ["Zibble"] });
        Assert.Equal("2 placed Ada Reed\n3 placed Bo Marsh", Lists.Table(told));
        Assert.Equal((WebAnswer.Yes, WebAnswer.No), (Lists.Row(told, 2).Web, Lists.Row(told, 3).Web));
    }

    /// <summary>A wish that goes farther than the question is not lost under it.</summary>
    [Fact]
    public void A_wish_not_to_be_shown_at_all_holds_the_row_wherever_it_stands()
    {
        var read = Lists.Read("Name,Show on the web?\nAda Reed,please keep me anonymous\nBo Marsh,yes\n");
        Assert.Equal("2 held Ada Reed\n3 placed Bo Marsh", Lists.Table(read));
    }
}

using System.Text;
using NameBand.Common;
using NameBand.Tests.CommandLine;
using NameBand.Tests.NamesRoom;
using Xunit;

namespace NameBand.Tests.CommonRoom;

public class PlainTextTests
{
    [Fact]
    public void What_no_text_may_hold_does_not_keep_it_from_a_normal_form()
    {
        (string Text, string Normal)[] cases =
        [
            ("e\u0301", "\u00e9"), ("\ud83d\udca1", "\ud83d\udca1"), ("a\ud83d", "a\ufffd"), ("\udca1a", "\ufffda"),
            ("a\ufffeb", "a\ufffdb"), ("\uffff", "\uffff"),
        ];
        Assert.All(cases, c =>
        {
            Assert.Equal(c.Normal, PlainText.Normal(c.Text));
            Assert.True(PlainText.Normal(c.Text, NormalizationForm.FormKD).IsNormalized(NormalizationForm.FormKD));
        });
    }

    /// <summary>Found by the hostile run: the header was cut after 200 units, which can be in the middle of a character.</summary>
    [Fact]
    public void A_long_header_cut_inside_a_character_is_read()
    {
        for (int before = 196; before <= 201; before++)
        {
            var read = Lists.Read($"name,{new string('x', before)}💡💡\nAna,5\n");
            Assert.Equal("2 placed Ana", Lists.Table(read));
        }
    }

    [Theory]
    [InlineData("names.csv", "name,paid\ufffe\nAna,3\n")]
    [InlineData("names.csv", "name,Gift,public\nAna\ufffe,3\ufffe,yes\ufffe\nBo,\ufffe,\ufffe\n")]
    [InlineData("letters.csv", "letter,width_mm\nA,5\n\ufffe,3\nn,4\na,4\n")]
    public void The_code_of_a_swapped_byte_order_mark_is_no_fault_of_ours(string file, string content)
    {
        using var folder = new TemporaryFolder()
            .With("job.json",
                """{ "format": 1, "lists": ["names.csv"], "columns": { "group": "Gift" }, "groups": [{ "name": "a\ufffe", "values": ["3\ufffe"] }, { "name": "b", "rest": true }], "way": "machineLetters", "letters": { "sizes": ["9 mm"] }, "hem": { "length": "60 cm", "turn": 0 } }""")
            .With("names.csv", "name,Gift\nAna,3\n").With(file, content);
        var run = CliRun.Of("names", folder.FullPath);
        Assert.True(run.Status is 0 or 1 or 2, run.Errors);
        Assert.DoesNotContain("fault in NameBand", run.Errors, StringComparison.Ordinal);
    }
}

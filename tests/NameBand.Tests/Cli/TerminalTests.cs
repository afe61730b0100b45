using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>How text reaches a terminal or a file.</summary>
public class TerminalTests
{
    [Fact]
    public void Marks_and_control_characters_of_a_persons_name_do_nothing()
    {
        string shown = Written(width: 80, colour: true, page => page.Line("[bold]Ada[/] {0} \u001b[31mred\u0007 \u202Eturned\r\nnext"));

        Assert.Equal("[bold]Ada[/] {0} [31mred turned next\n", shown);
    }

    [Theory]
    [InlineData(true, "\u001b[1mTitle\u001b[0m\n")]
    [InlineData(false, "Title\n")]
    public void Escape_codes_are_written_only_where_there_is_colour(bool colour, string expected) =>
        Assert.Equal(expected, Written(80, colour, page => page.Line("Title", tone: Tone.Heading)));

    [Theory]
    [InlineData(36)]
    [InlineData(40)]
    [InlineData(80)]
    public void Lines_keep_within_the_window(int width)
    {
        const string Text = "Łucja Brzoza とても長い名前です ليلى النهري and many more names that go on and on";
        string shown = Written(width, colour: false, page =>
        {
            page.Line(Text, 4);
            page.Facts([("Round 1", Text, Tone.Plain)]);
            page.Problems([Problem.NeedsPerson(new Where("names.csv", 4, Name: "Ada"), Text, Text)], Tone.Attention);
        });

        Assert.All(shown.Split('\n'), l => Assert.InRange(Wrapping.Cells(l), 0, width));
        string words = string.Join(' ', shown.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(5, words.Split(Text).Length);
    }

    [Fact]
    public void A_number_and_its_unit_stay_together() =>
        Assert.Equal(["it takes", "about", "1 h 10 min"], Wrapping.Wrap("it takes about " + Words.Duration(70).English, 10));

    [Fact]
    public void A_word_wider_than_the_line_stands_alone() =>
        Assert.Equal(["see", "samples/lantern-walk/out", "first"], Wrapping.Wrap("see samples/lantern-walk/out first", 10));

    [Fact]
    public void What_is_to_be_copied_is_not_wrapped()
    {
        string line = string.Join(' ', Enumerable.Repeat("word", 60));
        Assert.Equal(line + "\n", Written(40, colour: false, page => page.Verbatim(line)));
    }

    [Theory]
    [InlineData(0, "0 min")]
    [InlineData(0.2, "1 min")]
    [InlineData(11.4, "12 min")]
    [InlineData(59.7, "1 h")]
    [InlineData(61, "1 h")]
    [InlineData(263, "4 h 25 min")]
    [InlineData(6000, "100 h")]
    public void Durations_are_said_as_a_person_says_them_and_alike_in_commands_on_paper_and_on_the_page(double minutes, string expected)
    {
        string tied = expected.Replace(' ', Words.Tie);
        Assert.Equal(tied, Words.Duration(minutes).English);
        Assert.Equal(tied, NameBand.Output.Packet.JobInWords.Time(minutes).English);
        Assert.Equal(tied, NameBand.Web.Table.Words.Time(minutes).English);
    }

    [Fact]
    public void Thousands_have_one_mark_everywhere()
    {
        Assert.Equal("36,473 stitches", Words.Count(36473, "stitch", "stitches").English.Replace(Words.Tie, ' '));
        Assert.Equal("36,473", NameBand.Output.Packet.JobInWords.Whole(36473));
        Assert.Equal("36,473 stitches", NameBand.Web.Table.Words.Count(36473, "stitch", "stitches"));
    }

    [Fact]
    public void A_figure_is_said_with_its_range()
    {
        Assert.Equal("about 4 h (3 h to 5 h 30 min)", Words.Duration(new ToldFigure(180, 240, 330)).English.Replace(Words.Tie, ' '));
        Assert.Equal("4 h", Words.Duration(new ToldFigure(240, 240, 240)).English.Replace(Words.Tie, ' '));
    }

    [Theory]
    [InlineData(10.4, "10.4 mm (7/16 in)")]
    [InlineData(499, "499 mm (19 5/8 in)")]
    [InlineData(3646.04, "3.646 m (143 9/16 in)")]
    public void Lengths_are_said_in_both_systems(double mm, string expected) =>
        Assert.Equal(expected, Words.Both(mm).English.Replace(Words.Tie, ' '));

    [Fact]
    public void Progress_is_one_line_within_the_window_and_gone_at_the_end()
    {
        using var writer = new StringWriter();
        using var outlet = new Outlet(writer, isTerminal: true, width: 50);
        using (var line = new ProgressLine(outlet))
        {
            line.Report(new Progress("sewing", 0, 60));
            line.Report(new Progress("sewing a name that is far too long to be shown in one line", 60, 60));
            line.Report(new Progress("drawing", 0, 0));
        }

        string[] frames = writer.ToString().Split('\r', StringSplitOptions.RemoveEmptyEntries);
        Assert.All(frames, f => Assert.Equal(49, f.Length));
        Assert.Contains("0 of 60  sewing", frames[0], StringComparison.Ordinal);
        Assert.Equal("", frames[^1].Trim());
        Assert.DoesNotContain('\n', writer.ToString());
    }

    [Fact]
    public void Without_a_terminal_there_is_no_progress()
    {
        using var writer = new StringWriter();
        using (var line = new ProgressLine(new Outlet(writer)))
        {
            line.Report(new Progress("sewing", 1, 60));
        }

        Assert.Equal("", writer.ToString());
    }

    private static string Written(int width, bool colour, Action<Page> write)
    {
        using var writer = new StringWriter { NewLine = "\n" };
        using var outlet = new Outlet(writer, colour, isTerminal: true, width);
        write(new Page(outlet));
        return writer.ToString();
    }
}

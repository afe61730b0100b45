using NameBand.Common;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Measuring;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>What a maker can get wrong in her sheets is told by line, with the mend.</summary>
public class SheetReadingTests
{
    [Theory]
    [InlineData("letter,width_mm\na,0\n", 2, "nothing under", "Measure again")]
    [InlineData("letter,width_mm\na,-3\n", 2, "nothing under", "Measure again")]
    [InlineData("letter,width_mm\na,5\nb,52\n", 3, "nothing under", "decimal mark")]
    [InlineData("letter,width_mm\na,5\nb,wide\n", 3, "“wide” is not a number", "47.5")]
    [InlineData("letter,width_mm\na,5\nb,6\na,5.1\n", 4, "second time; the first is in line 2", "Keep the line that is right")]
    [InlineData("letter,width_mm\na,5\nab,6\n", 3, "“ab” is not one letter", "word blank")]
    [InlineData("letter,width_mm\na,5\n,6\n", 3, "no letter", "blank")]
    [InlineData("letter,width_mm\na,5\nb,\n", 3, "“b” has no width", "Fill in")]
    [InlineData("letter,width_mm,seconds\na,5,-2\n", 2, "seconds is -2", "Measure again")]
    [InlineData("letter,wide\na,5\n", 1, "no column width_mm", "letter,width_mm,seconds")]
    [InlineData("letter,width_mm,letter\na,5,a\n", 1, "column letter twice", "Keep the one")]
    public void A_wrong_alphabet_is_refused_by_line(string text, int line, string found, string mend)
    {
        var read = Alphabet(text);
        Assert.Null(read.Value);
        var problem = Assert.Single(read.Problems);
        Assert.Equal(("letters.csv", line), (problem.Where.File, problem.Where.Line));
        Assert.Contains(found, problem.Found.English);
        Assert.Contains(mend, problem.Mend.English);
    }

    [Fact]
    public void An_alphabet_by_hand_needs_three_columns_and_takes_a_comma_for_decimals()
    {
        var alphabet = Alphabet("letter;width_mm;seconds\na;5,5;7\nblank;4;\n'-;3;2\n").Value!.BySize.Single();
        Assert.Equal(5.5, alphabet.Letters["a"].WidthMm);
        Assert.Equal((4.5, 6.5), (alphabet.Letters["a"].LowMm, alphabet.Letters["a"].HighMm));
        Assert.Equal(7, alphabet.Letters["a"].Seconds);
        Assert.True(alphabet.Has(" ") && alphabet.Has("-"));
        Assert.Equal(0.8, alphabet.Gap.WidthMm);
    }

    [Fact]
    public void What_is_written_is_read_back()
    {
        var machine = new FakeMachine(21, FakeMachine.Alphabet(56).Append(" ").Append("é").Append(","));
        var solved = WidthSolver.Solve(machine.Measured(machine.Design().Lines), machine.WidthMm.Keys, machine.Priors).Alphabet;
        var both = new MeasuredAlphabets([solved]).With(solved with { HeightMm = 6, Lacking = ["ß"] });
        string text = AlphabetFile.Write(both);
        var read = Alphabet(text).Value!;
        Assert.Equal([8.0, 6.0], read.BySize.Select(a => a.HeightMm));
        Assert.Equal(solved.Letters.Keys, read.BySize[0].Letters.Keys);
        Assert.All(solved.Letters.Values, l => Assert.Equal(l.WidthMm, read.BySize[0].Letters[l.Letter].WidthMm, 0.006));
        Assert.Equal(["ß"], read.BySize[1].Lacking);
        Assert.Equal(text, AlphabetFile.Write(read));
    }

    [Theory]
    [InlineData("line,key_in,length_mm\n1,aa,0\n", 2, "nothing under")]
    [InlineData("line,key_in,length_mm\n1,aa,10\n1,bb,10\n", 3, "second time")]
    [InlineData("line,key_in,length_mm\n1,aa,10\n2,,10\n", 3, "what was keyed in")]
    [InlineData("line,key_in,length_mm\n1,aa,ten\n", 2, "not a number")]
    [InlineData("line,key_in,length_mm\n1,aa,4000\n", 2, "over 1000")]
    [InlineData("line,key_in\n1,aa\n", 1, "no column length_mm")]
    public void A_wrong_sheet_is_refused_by_line(string text, int line, string found)
    {
        var read = Sheet(text);
        Assert.Null(read.Value);
        Assert.Equal(line, Assert.Single(read.Problems).Where.Line);
        Assert.Contains(found, read.Problems[0].Found.English);
    }

    [Fact]
    public void A_half_filled_sheet_says_which_lines_are_open()
    {
        var sheet = Sheet("line,key_in,length_mm,seconds,sew\n1,aaaa,20.5,12,1\n2,a␣a␣a,,,1\n3,'----,none,,2\n").Value!;
        Assert.Equal([(2, 3)], sheet.Unfilled.Select(u => (u.Line.Number, u.Row)));
        Assert.Equal("a a a", sheet.Lines[1].Text);
        Assert.Equal("----", sheet.Lines[2].Text);
        Assert.True(sheet.Lines[2].CannotBeKeyed);
        Assert.Equal([1, 1, 2], sheet.Lines.Select(l => l.Run));
    }

    [Fact]
    public void The_sheet_is_read_back_as_written()
    {
        var machine = new FakeMachine(22, FakeMachine.Alphabet(56).Append(" "));
        var lines = LineRuns.Together(machine.Design().Lines, l => machine.FaceMm[l] + 1, 16);
        string text = LineSheet.Write(lines);
        var read = Sheet(text).Value!;
        Assert.Equal(lines.Select(l => l.Text), read.Lines.Select(l => l.Text));
        Assert.Equal(text, LineSheet.Write(read.Lines));
        Assert.All(lines.GroupBy(l => l.Run), run =>
            Assert.True(Letters.Of(string.Join(LineRuns.Between, run.Select(l => l.Text))).Count <= 16));
    }

    private static Result<MeasuredAlphabets> Alphabet(string text) =>
        AlphabetFile.Read(CsvFile.Parse(text, new Where("letters.csv")).Value!, "letters.csv", 8, null, 1);

    private static Result<LineSet> Sheet(string text) =>
        LineSheet.Read(CsvFile.Parse(text, new Where("measure.csv")).Value!, "measure.csv");
}

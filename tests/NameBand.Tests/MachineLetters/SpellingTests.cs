using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Spelling;
using NameBand.Names;
using NameBand.Tests.NamesRoom;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

public class SpellingTests
{
    private static readonly Func<string, bool> Plain = MachineSpelling.Has(LettersSettings.Usual, null);

    [Theory]
    [InlineData("Renée", "Renee")]
    [InlineData("Søren Løvdal", "Soren Lovdal")]
    [InlineData("Łucja", "Lucja")]
    [InlineData("Weiß", "Weiss")]
    [InlineData("Ægir", "Aegir")]
    [InlineData("O’Dell", "O'Dell")]
    [InlineData("Σοφία", "Sofia")]
    [InlineData("Nguyễn", "Nguyen")]
    public void The_nearest_spelling_keeps_what_the_machine_has(string name, string nearest) =>
        Assert.Equal(nearest, NearestSpelling.Find(name, Plain));

    [Fact]
    public void One_apostrophe_and_one_hyphen_are_keyed_for_all()
    {
        Assert.Equal("O'Dell-Bray", string.Concat(Letters.Of("O’Dell‑Bray")));
        Assert.Empty(NearestSpelling.Lacking("O’Dell‑Bray", Plain));
    }

    [Fact]
    public void Accents_the_machine_has_are_kept() =>
        Assert.Equal("Nguyên é", NearestSpelling.Find("Nguyễn é", l => Plain(l) || l is "ê" or "é"));

    [Fact]
    public void A_name_with_lacking_letters_is_held_with_the_line_to_add_and_never_changed()
    {
        var names = new NameList([], [new Name("Zoë Tidewell", new RowRef("crews.csv", 11)), new Name("Kit", new RowRef("crews.csv", 12))]);
        var spelled = MachineSpelling.Check(names, Corrections.None, Plain);
        Assert.Equal(["Kit"], spelled.Names.Select(n => n.Text));
        Assert.Contains("“ë”", Assert.Single(spelled.Held).Reason.English);
        var problem = Assert.Single(spelled.Problems);
        Assert.Equal(Severity.NeedsPerson, problem.Severity);
        Assert.Contains("crews.csv,11,Zoë Tidewell,change,Zoe Tidewell,agreed with its owner", problem.Mend.English);
    }

    [Fact]
    public void The_line_to_paste_is_for_what_the_row_answers_and_takes_the_place_of_an_earlier_one()
    {
        const string Csv = "Name,Mail,Show my name?\nWeiß Tidewell,z@x.example,\nKit,k@x.example,yes\n";
        string head = string.Join(',', Corrections.Columns) + "\n";
        string kept = "names.csv,2,Weiß Tidewell,keep,,,,Show my name? = empty,\n";
        string mend = Mend(Csv, head + kept);
        Assert.Contains("put this line in the place of line 2 of corrections.csv: ", mend);
        string line = mend[mend.IndexOf("names.csv,", StringComparison.Ordinal)..];
        Assert.Matches(
            "^names.csv,2,Weiß Tidewell,change,Weiss Tidewell,agreed with its owner,d[0-9a-f]{8},Show my name\\? = empty,$", line);
        Assert.Equal("2 placed Weiss Tidewell\n3 placed Kit", Lists.Table(Lists.Read(Csv, head + line + "\n")));

        // Its owner may still say no.
        Assert.Equal(
            "2 leftOut Weiß Tidewell\n3 placed Kit",
            Lists.Table(Lists.Read(Csv.Replace("example,\n", "example,no\n", StringComparison.Ordinal), head + line + "\n")));
    }

    [Fact]
    public void The_line_to_paste_has_the_columns_of_the_file_and_says_what_stands_in_the_row()
    {
        string mend = Mend("Name\nZoe T.\nKit\n", "list;line;was;decision;text;why\nnames.csv;2;Zoe T.;change;Zoë Tidewell;\n");
        Assert.EndsWith("line 2 of corrections.csv: names.csv;2;Zoe T.;change;Zoe Tidewell;agreed with its owner", mend);
    }

    private static string Mend(string csv, string corrections)
    {
        using var folder = new TemporaryFolder();
        folder.With("corrections.csv", corrections);
        return Assert.Single(MachineSpelling.Check(
            Lists.Read(csv, corrections).Value!, Corrections.Read(folder.FullPath).Value!, Plain).Problems).Mend.English;
    }

    [Theory]
    [InlineData("é", "é: acute accent on e")]
    [InlineData("ø", "ø: stroke on o")]
    [InlineData("Ł", "Ł: stroke on L")]
    [InlineData("ấ", "ấ: circumflex and acute accent on a")]
    [InlineData("ǿ", "ǿ: stroke and acute accent on o")]
    [InlineData("ç", "ç: cedilla on c")]
    [InlineData("ï", "ï: two dots on i, its dot taken out")]
    [InlineData("į", "į: hook below on i")]
    [InlineData("e", null)]
    [InlineData("ð", null)]
    [InlineData("æ", null)]
    [InlineData("ß", null)]
    [InlineData("й", null)]
    [InlineData("ά", null)]
    [InlineData("が", null)]
    public void Marks_that_are_lacking_are_added_to_the_plain_letter_by_hand(string letter, string? words) =>
        Assert.Equal(words, MarksByHand.Of(letter, Plain)?.InWords);

    [Fact]
    public void Marks_are_those_of_the_letters_the_machine_has()
    {
        Assert.Equal("й: breve on и", MarksByHand.Of("й", l => l == "и")!.InWords);
        Assert.Equal("ΐ: two dots and acute accent on ι", MarksByHand.Of("ΐ", l => l == "ι")!.InWords);
        Assert.Equal("ấ: acute accent on â", MarksByHand.Of("ấ", l => l is "a" or "â")!.InWords);
        Assert.Null(MarksByHand.Of("が", l => l == "か"));
    }

    [Fact]
    public void One_word_settles_all_names_of_a_list_that_lack_nothing_but_marks()
    {
        // Letters of the lantern walk that a machine with A to Z alone lacks.
        string[] marked = ["Łucja Brzoza", "Søren Aaby", "Anaïs Corbeau", "Đỗ Thu Lan", "Žofie Říčná"];
        string[] others = ["Guðný Hrafnsdóttir", "Weiß Ober", "Ваня Речной"];
        var names = new NameList([], [.. marked.Concat(others).Select((n, i) => new Name(n, new RowRef("names.csv", i + 2)))]);
        var asked = MachineSpelling.Check(names, Corrections.None, Plain);
        Assert.Equal(8, asked.Held.Length);
        Assert.Equal(marked.Length, asked.Held.Count(h => h.IsForMarks));
        var all = MachineSpelling.AllAtOnce(asked.Held)!;
        Assert.StartsWith("5 names lack nothing but marks", all.Found.English, StringComparison.Ordinal);
        Assert.Contains("\"lacking\": \"byHand\"", all.Mend.English, StringComparison.Ordinal);
        var byHand = MachineSpelling.Check(names, Corrections.None, Plain, _ => true);
        Assert.Equal(marked, byHand.Names.Select(n => n.Text));
        Assert.Equal(others.Length, byHand.Held.Length);
        Assert.Null(MachineSpelling.AllAtOnce(byHand.Held));
    }

    [Fact]
    public void A_name_with_marks_has_three_ways_and_keeping_it_is_one()
    {
        const string Csv = "Name\nZoë Tidewell\nKit\n";
        string mend = Mend(Csv, "list,line,was,decision\n");
        Assert.Contains("names.csv,2,Zoë Tidewell,keep", mend, StringComparison.Ordinal);
        Assert.Contains("\"ways\": [\"machineLetters\", \"traced\"]", mend, StringComparison.Ordinal);
        Assert.Contains("names.csv,2,Zoë Tidewell,change", mend, StringComparison.Ordinal);
        const string Kept = "list,line,was,decision,text\nnames.csv,2,Zoë Tidewell,keep,\n";
        var list = Lists.Read(Csv, Kept).Value!;
        Assert.Equal(["Zoë Tidewell", "Kit"], MachineSpelling.Check(list, Corrections.None, Plain).Names.Select(n => n.Text));

        // To be kept does not give the machine a letter.
        var sharp = Lists.Read(Csv.Replace("ë", "ß", StringComparison.Ordinal), Kept.Replace("ë", "ß", StringComparison.Ordinal)).Value!;
        Assert.Equal(["Kit"], MachineSpelling.Check(sharp, Corrections.None, Plain).Names.Select(n => n.Text));
    }

    [Fact]
    public void Names_that_lack_marks_are_one_question_with_one_answer_for_all()
    {
        var list = Lists.Read("Name\nZoë Tidewell\nSøren Aaby\nWeiß Ober\n", "").Value!;
        var held = MachineSpelling.Check(list, Corrections.None, Plain).Held.ToDictionary(h => h.Row);
        var rows = list with
        {
            Rows = [.. list.Rows.Select(r => r.HeldBecause(held[r.Row].IsForMarks ? HeldFor.Marks : HeldFor.Letters, held[r.Row].Reason))],
        };
        var asked = CorrectionLines.Questions(rows);
        Assert.Equal(asked[0].Alike, asked[1].Alike);
        Assert.NotEmpty(asked[0].Alike);
        Assert.Empty(asked[2].Alike);
        Assert.Contains("2 rows ask this: “keep all”", asked[0].Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_found_lacking_while_measuring_are_lacking()
    {
        var alphabet = new Alphabet(8, new MachineLetter("", 1, 1, 1, null, WidthOrigin.Measured),
            System.Collections.Immutable.ImmutableSortedDictionary<string, MachineLetter>.Empty, ["&"]);
        Assert.False(MachineSpelling.Has(LettersSettings.Usual, new MeasuredAlphabets([alphabet]))("&"));
    }
}

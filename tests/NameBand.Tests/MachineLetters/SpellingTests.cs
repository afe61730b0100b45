using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters;
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
        Assert.Contains("“ë”", Assert.Single(spelled.Held).Reason);
        var problem = Assert.Single(spelled.Problems);
        Assert.Equal(Severity.NeedsPerson, problem.Severity);
        Assert.Contains("crews.csv,11,Zoë Tidewell,change,Zoe Tidewell,agreed with its owner", problem.Mend);
    }

    [Fact]
    public void The_line_to_paste_is_for_what_the_row_answers_and_takes_the_place_of_an_earlier_one()
    {
        const string Csv = "Name,Mail,Show my name?\nZoë Tidewell,z@x.example,\nKit,k@x.example,yes\n";
        string head = string.Join(',', Corrections.Columns) + "\n";
        string kept = "names.csv,2,Zoë Tidewell,keep,,,,Show my name? = empty,\n";
        string mend = Mend(Csv, head + kept);
        Assert.Contains("put this line in the place of line 2 of corrections.csv: ", mend);
        string line = mend[mend.IndexOf("names.csv,", StringComparison.Ordinal)..];
        Assert.Matches("^names.csv,2,Zoë Tidewell,change,Zoe Tidewell,agreed with its owner,d[0-9a-f]{8},Show my name\\? = empty,$", line);
        Assert.Equal("2 placed Zoe Tidewell\n3 placed Kit", Lists.Table(Lists.Read(Csv, head + line + "\n")));

        // Its owner may still say no.
        Assert.Equal("2 leftOut Zoë Tidewell\n3 placed Kit", Lists.Table(Lists.Read(Csv.Replace("example,\n", "example,no\n", StringComparison.Ordinal), head + line + "\n")));
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
        return Assert.Single(MachineSpelling.Check(Lists.Read(csv, corrections).Value!, Corrections.Read(folder.FullPath).Value!, Plain).Problems).Mend;
    }

    [Fact]
    public void Letters_found_lacking_while_measuring_are_lacking()
    {
        var alphabet = new Alphabet(8, new MachineLetter("", 1, 1, 1, null, WidthOrigin.Measured),
            System.Collections.Immutable.ImmutableSortedDictionary<string, MachineLetter>.Empty, ["&"]);
        Assert.False(MachineSpelling.Has(LettersSettings.Usual, new MeasuredAlphabets([alphabet]))("&"));
    }
}

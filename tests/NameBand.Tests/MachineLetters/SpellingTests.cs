using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Spelling;
using NameBand.Names;
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
        var names = new[] { new Name("Zoë Tidewell", new RowRef("crews.csv", 11)), new Name("Kit", new RowRef("crews.csv", 12)) };
        var spelled = MachineSpelling.Check(names, Plain);
        Assert.Equal(["Kit"], spelled.Names.Select(n => n.Text));
        Assert.Contains("“ë”", Assert.Single(spelled.Held).Reason);
        var problem = Assert.Single(spelled.Problems);
        Assert.Equal(Severity.NeedsPerson, problem.Severity);
        Assert.Contains("crews.csv,11,Zoë Tidewell,change,Zoe Tidewell,agreed with its owner", problem.Mend);
    }

    [Fact]
    public void Letters_found_lacking_while_measuring_are_lacking()
    {
        var alphabet = new Alphabet(8, new MachineLetter("", 1, 1, 1, null, WidthOrigin.Measured),
            System.Collections.Immutable.ImmutableSortedDictionary<string, MachineLetter>.Empty, ["&"]);
        Assert.False(MachineSpelling.Has(LettersSettings.Usual, new MeasuredAlphabets([alphabet]))("&"));
    }
}

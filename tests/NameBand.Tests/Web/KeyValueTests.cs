using System.Text;
using NameBand.Job;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>What is typed on the page is never a length without a unit, whatever key it is typed for.</summary>
public class KeyValueTests
{
    public static TheoryData<string> LengthKeys() => [.. JobKeyCard.All.Where(c => c.Kind == JobKeyKind.Length).Select(c => c.Path)];

    [Theory]
    [MemberData(nameof(LengthKeys))]
    public void A_number_beside_a_length_is_asked_about(string path)
    {
        var card = JobKeyCard.All.Single(c => c.Path == path);
        foreach (string typed in card.IsMany ? (string[])["70", "70.5", " 70 ", "1 m; 70"] : ["70", "70.5", " 70 "])
        {
            using var folder = new TemporaryFolder().With("names.csv", "name\nOttilie Marsh\n");
            byte[] file = JobEditing.Apply(
                Encoding.UTF8.GetBytes("""{ "format": 1, "lists": ["names.csv"] }"""), [KeyValue.Edit(card, typed)])!;

            var read = JobReader.Check(folder.FullPath, file);

            Assert.Contains(
                read.Problems, p => p.Severity == Common.Severity.CannotUse && p.Where.Key!.StartsWith(path, StringComparison.Ordinal)
                && $"{p.Found} {p.Mend}".Contains("unit", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("70", "70 mm")]
    [InlineData("[70, \"1 m\"]", "70 mm; 1 m")]
    [InlineData("0", "0")]
    [InlineData("\"70 cm\"", "70 cm")]
    [InlineData(null, "")]
    public void A_bare_number_of_the_file_is_shown_with_its_unit_and_can_be_set_again(string? json, string shown)
    {
        var card = JobKeyCard.All.Single(c => c.Path == "hem.length");
        Assert.Equal(shown, KeyValue.Shown(card, json));
        Assert.Equal(shown, KeyValue.Shown(card, KeyValue.Edit(card, shown).Json));
    }
}

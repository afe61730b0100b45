using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Names that are traced or keyed in are gone through by their numbers: a name keeps the one it was first given.</summary>
public sealed class NameNumbersTests
{
    [Fact]
    public void A_name_keeps_its_number_wherever_its_row_goes_and_another_one_in_its_row_gets_a_new_one()
    {
        using var folder = new TemporaryFolder().With("job.json", """
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "1.5 m", "turn": 0 }, "way": "traced", "lettering": { "order": "listed" } }
            """);
        Assert.Equal("Ada Marsh 1, Bo Reed 2, Cara Quill 3, Dov Tarn 4", Made("Ada Marsh", "Bo Reed", "Cara Quill", "Dov Tarn"));

        // Another name in the row of one that is gone, a spelling mended, two rows exchanged.
        Assert.Equal("Fenna Weir 5, Boo Reed 2, Dov Tarn 4, Cara Quill 3", Made("Fenna Weir", "Boo Reed", "Dov Tarn", "Cara Quill"));

        // Whoever comes back is a latecomer: a number that was on a sheet is nobody else's.
        Assert.Equal("Ada Marsh 6, Fenna Weir 5, Boo Reed 2", Made("Ada Marsh", "Fenna Weir", "Boo Reed"));

        string Made(params string[] names)
        {
            folder.With("names.csv", "Name\n" + string.Join('\n', names) + "\n");
            var plan = Bander.Make(folder.FullPath).Plan!;
            return string.Join(", ", plan.Rounds.SelectMany(r => r.Names).OrderBy(n => n.Lettered.Name.Row.Line)
                .Select(n => $"{n.Lettered.Name.Text} {n.Order}"));
        }
    }
}
